import type { PlannedBand } from '../../model/planned-measuring.js';
import type { Wire } from '../../model/wire.js';
import { expectedLooks, type PlannedReading } from '../../site-forms/rows.js';
import { figure } from '../../words/figures.js';
import { unparted } from '../../words/unparted.js';
import { crewWire } from '../parts/crew-wire.js';
import type { SiteWords } from './site-words.js';

/** What is read, and when: `+ to ground`, `In sun`. */
export function readingName(
  reading: PlannedReading,
  { site, note, pack }: SiteWords,
): { readonly what: string; readonly state: string } {
  const { states } = note;
  const state =
    reading.state === 'ground-fault device open' ? site.readings.faultState : states[reading.state];
  if (reading.kind !== 'volts') {
    const wire = crewWire(reading.channel.wire, pack);
    return { what: `${wire}, ${site.readings.kinds[reading.kind]}`, state };
  }
  const point = (wire: Wire): string => crewWire(wire, pack);
  const { wire, to } = reading.probes;
  const what = to === null ? note.table.toGround(point(wire)) : note.table.fromTo(point(wire), point(to));
  return { what, state };
}

/** Volts as a limit that is kept: never wider than the plan's, to a tenth. */
const atMost = (value: number): string => figure(Math.floor(value * 10 + 1e-6) / 10, '');
const atLeast = (value: number): string => figure(Math.ceil(value * 10 - 1e-6) / 10, '');

function voltsText(
  { low, high, current }: PlannedBand,
  sign: '+' | '-' | null,
  { site, note }: SiteWords,
): string {
  if (high === null) return site.readings.notKnown;
  const signed = (text: string): string =>
    text === '0' || sign === null ? text : `${sign === '-' ? '−' : '+'}${text}`;
  const most = `${signed(atMost(high))} V${current === null ? '' : ` ${note.systems[current]}`}`;
  return unparted(low === null ? site.readings.upTo(most) : site.readings.volts(signed(atLeast(low)), most));
}

/** What is expected there: `+297 to +461.4 V DC`, `ON`, `BLINKS or OFF`. */
export function expectedText(reading: PlannedReading, words: SiteWords): string {
  if (reading.kind === 'volts') return voltsText(reading.band, reading.probes.sign, words);
  const [shows = 'either', dark] = expectedLooks(reading.indicator);
  return words.note.looks[dark === undefined ? shows : 'flickersOrDark'];
}
