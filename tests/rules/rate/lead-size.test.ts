import { expect, test } from 'vitest';
import { parseWireGauge } from '../../../src/electrical/wire-gauge.js';
import type { WireRange } from '../../../src/model/catalogue.js';
import { leadSize } from '../../../src/rules/rate/lead-size.js';
import { say } from '../../../src/words/reasons/say.js';
import { fitFacts, leadPlace, part } from '../facts.js';
import { fitTable } from '../table.js';

function range(metal: WireRange['metal'], least: string, most: string): WireRange {
  const [a, b] = [parseWireGauge(least), parseWireGauge(most)];
  if (!a || !b) throw new Error(`${least}, ${most}`);
  return { metal, least: a, most: b };
}
const copper = [range('copper', '14 AWG', '6 AWG')];
const narrow = range('copper', '14 AWG', '10 AWG');
/** mm2; ASTM B258. */
const area = (gauge: string): number => parseWireGauge(gauge)?.area ?? 0;

export const table = fitTable(import.meta.url, leadSize, [
  { name: 'no range is stated: nothing to hold it against', part: { overcurrentMost: 60 } },
  { name: 'as thick as the terminals take', part: { overcurrentMost: 60, wireRanges: copper } },
  {
    name: 'thicker than the terminals take (240.4(D), Table 310.16: values from memory)',
    part: { overcurrentMost: 70, wireRanges: copper },
    rejects: 'line lead of at least 4 AWG Cu, and its terminals take no more than 6 AWG Cu',
    gap: Math.round((1 - area('6 AWG') / area('4 AWG')) * 10_000) / 10_000,
  },
  {
    name: 'the circuit’s own device will do, and is smaller',
    given: { leadPlaces: [leadPlace({ ownDevice: 20 })] },
    part: { overcurrentMost: 70, wireRanges: copper },
  },
  {
    name: 'of two metals one fits',
    part: { overcurrentMost: 40, wireRanges: [narrow, range('aluminium', '12 AWG', '6 AWG')] },
  },
  {
    name: 'of two metals none fits: copper is named',
    part: { overcurrentMost: 40, wireRanges: [range('aluminium', '12 AWG', '10 AWG'), narrow] },
    rejects: 'line lead of at least 8 AWG Cu, and its terminals take no more than 10 AWG Cu',
    gap: Math.round((1 - area('10 AWG') / area('8 AWG')) * 10_000) / 10_000,
  },
  {
    name: 'aluminium alone, too thick',
    part: { overcurrentMost: 40, wireRanges: [range('aluminium', '12 AWG', '10 AWG')] },
    rejects: 'line lead of at least 6 AWG Al, and its terminals take no more than 10 AWG Al',
    gap: Math.round((1 - area('10 AWG') / area('6 AWG')) * 10_000) / 10_000,
  },
  {
    name: 'a device beyond the table',
    part: { overcurrentMost: 250, wireRanges: copper },
    rejects: 'no lead of the table of ampacities is for 250 A',
  },
  {
    name: 'a device beyond the table, no range',
    part: { overcurrentMost: 250 },
    rejects: 'no lead of the table of ampacities is for 250 A',
  },
  {
    name: 'iec: the ground lead of a class T1 part is too thick (534.4.10, value from memory)',
    given: { basis: 'iec', classOneAsked: true },
    part: { wireRanges: [range('copper', '2.5 mm2', '10 mm2')] },
    rejects: 'ground lead of at least 16 mm2 Cu, and its terminals take no more than 10 mm2 Cu',
    gap: 0.375,
  },
  {
    name: 'iec: that of a class T2 part isn’t (534.4.10, value from memory)',
    given: { basis: 'iec' },
    part: { wireRanges: [range('copper', '2.5 mm2', '10 mm2')] },
  },
  {
    name: 'iec, aluminium: no figure is known, nothing is compared',
    given: { basis: 'iec' },
    part: { wireRanges: [range('aluminium', '2.5 mm2', '4 mm2')] },
  },
]);

const doubts = (...given: Parameters<typeof part>): string => {
  const because = leadSize.doubt({ ...fitFacts({ part: part(...given) }) });
  return because === undefined ? '' : say(because);
};

test('what nobody states can’t be called met', () => {
  expect(doubts({ overcurrentMost: 20, wireRanges: copper })).toBe('');
  expect(doubts({ overcurrentMost: 20 })).toBe('its wire_range isn’t stated');
  expect(doubts({ wireRanges: copper })).toBe(
    'its overcurrent_a isn’t stated, and the device decides how thick the leads are',
  );
});
