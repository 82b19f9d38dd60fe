import { expect, test } from 'vitest';
import { readWireRanges } from '../../src/read/cell/wire-range.js';

const told = (text: string): string | null =>
  readWireRanges(text)
    ?.map(({ metal, least, most }) => `${metal}: ${least.name} to ${most.name}`)
    .join('; ') ?? null;

test.each([
  ['14 to 6 AWG Cu', 'copper: 14 AWG to 6 AWG'],
  ['6 to 14 AWG copper', 'copper: 14 AWG to 6 AWG'],
  ['14 to 6 AWG', 'copper: 14 AWG to 6 AWG'],
  ['14-6 AWG Cu', 'copper: 14 AWG to 6 AWG'],
  ['#14 – #6 AWG Cu', 'copper: 14 AWG to 6 AWG'],
  ['10 AWG to 1/0 AWG Cu/Al', 'copper: 10 AWG to 1/0 AWG; aluminium: 10 AWG to 1/0 AWG'],
  ['Cu 14 to 6 AWG; Al 12 to 4 AWG', 'copper: 14 AWG to 6 AWG; aluminium: 12 AWG to 4 AWG'],
  ['Al: 12 to 4 AWG', 'aluminium: 12 AWG to 4 AWG'],
  ['4 to 16 mm² Cu', 'copper: 4 mm2 to 16 mm2'],
  ['2.5 … 16 mm2', 'copper: 2.5 mm2 to 16 mm2'],
  ['14 to 6 AWG Cu or Al', 'copper: 14 AWG to 6 AWG; aluminium: 14 AWG to 6 AWG'],
  ['10 AWG Cu', 'copper: 10 AWG to 10 AWG'],
  ['14 AWG to 16 mm2 Cu', 'copper: 14 AWG to 16 mm2'],
])('%s', (text, then) => {
  expect(told(text)).toBe(then);
});

test.each([
  '',
  'see the instructions',
  '14 to 6',
  '14 to 6 Cu',
  '14 to 10 to 6 AWG Cu',
  '14 to 6 AWG Cu; 12 to 4 AWG Cu',
  '14 to 6 AWG Cu; as marked',
  '14 to 6 AWG Cu or Al, torque 18',
  '99 AWG Cu',
  '0 to 6 mm2',
])('“%s” is no range of sizes', (text) => {
  expect(readWireRanges(text)).toBeNull();
});

test('a range holds the sizes of its wires in m and mm2', () => {
  const [range] = readWireRanges('14 to 6 AWG Cu') ?? [];
  // ASTM B258: 14 AWG is 1.628 mm, 6 AWG 4.115 mm.
  expect((range?.least.diameter ?? 0) * 1000).toBeCloseTo(1.628, 3);
  expect((range?.most.diameter ?? 0) * 1000).toBeCloseTo(4.115, 3);
  expect(range?.least.area).toBeCloseTo((Math.PI / 4) * 1.628 ** 2, 2);
});
