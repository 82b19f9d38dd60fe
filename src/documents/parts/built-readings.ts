import type { RecordReading } from '../../model/record.js';
import { CONDUCTORS } from '../../model/words.js';
import type { BuiltVolts } from './as-built.js';

type Point = BuiltVolts['wire'];

/** `L1`, `ac-in L1`, `L1 (doubled)`; undefined: no conductor. */
function pointOf(text: string): Point | undefined {
  const [, port, word] = /^(?:(\S+) )?(\S+?)(?: \(doubled\))?$/.exec(text) ?? [];
  const name = CONDUCTORS.find((one) => one === word);
  return name === undefined ? undefined : { port: port ?? null, name };
}

/** Between what volts were found; null: of something else, or not known. */
export function probesOf({
  from,
  to,
}: Pick<RecordReading, 'from' | 'to'>): Pick<BuiltVolts, 'wire' | 'to'> | null {
  const wire = pointOf(from);
  const other = to === 'ground' ? null : pointOf(to);
  return wire === undefined || other === undefined ? null : { wire, to: other };
}

const keyOf = ({ tag, channel, kind, from, to, state }: RecordReading): string =>
  JSON.stringify([tag, kind, kind === 'volts' ? [from, to] : channel, state]);

/** Each reading as it was taken first: how things looked on the first day. */
export function firstReadings(readings: readonly RecordReading[]): RecordReading[] {
  return [...new Map([...readings].reverse().map((one) => [keyOf(one), one])).values()].reverse();
}

/** Each reading as it was taken last. */
export function latestReadings(readings: readonly RecordReading[]): RecordReading[] {
  return [...new Map(readings.map((one) => [keyOf(one), one])).values()];
}
