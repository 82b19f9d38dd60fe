import { RECORD_MESSAGES } from '../model/messages/record.js';
import type { OpenItem } from '../model/open-item.js';
import type { PlannedProtector } from '../model/plan.js';
import { volts } from '../model/quantity.js';
import type { RecordReading } from '../model/record.js';
import { itemOf } from './items.js';
import { readingKey } from './readings.js';

/** What hangs at a housing; `gone`: nothing; `open`: no record came back. */
export type Hanging = PlannedProtector | 'gone' | 'open';

/**
 * The checks of what was read: of each reading the one of the latest day.
 * @param hanging what hangs at a housing now, whose ratings count
 */
export function readingChecks(
  readings: readonly RecordReading[],
  hanging: (tag: string) => Hanging,
): readonly OpenItem[] {
  const latest = new Map(readings.map((one) => [readingKey(one), one]));
  return [...latest.values()].flatMap((one) => {
    const there = hanging(one.tag);
    if (there === 'gone' || there === 'open') return [];
    if (one.found === '') return missing(one);
    return one.kind === 'volts' ? voltsCheck(one, Number(one.found), there) : lookCheck(one);
  });
}

function missing({ tag, channel, kind, state, from, to, due, origin }: RecordReading): OpenItem[] {
  // A fault is never waited for.
  if (due || state === 'ground-fault device open') return [];
  return [itemOf(RECORD_MESSAGES.noReading, { tag, channel, kind, state, from, to }, origin, 'found', tag)];
}

function voltsCheck(reading: RecordReading, found: number, there: PlannedProtector): OpenItem[] {
  const { tag, from, to, low, high, expected, origin } = reading;
  const p = { tag, from, to, volts: volts(found) };
  const size = Math.abs(found);
  const mcov = there.figures?.mcov ?? null;
  // MCOV is from a conductor to where its channel leads.
  const isAtChannel = to === 'ground' || there.channels.some((channel) => channel.to === to);
  const items: OpenItem[] = [];
  const add = (item: OpenItem): void => void items.push(item);
  if (mcov !== null && isAtChannel && size > mcov)
    add(itemOf(RECORD_MESSAGES.aboveMcov, { ...p, mcov: volts(mcov) }, origin, 'found', tag));
  const isPositive = expected === 'positive';
  if ((isPositive && found < 0) || (expected === 'negative' && found > 0))
    add(
      itemOf(
        RECORD_MESSAGES.wrongSign,
        { ...p, expected: isPositive ? 'positive' : 'negative' },
        origin,
        'found',
        tag,
      ),
    );
  if (items.length === 0 && ((low !== null && size < low) || (high !== null && size > high)))
    add(
      itemOf(
        RECORD_MESSAGES.outsideBand,
        { ...p, low: low === null ? null : volts(low), high: high === null ? null : volts(high) },
        origin,
        'found',
        tag,
      ),
    );
  return items;
}

function lookCheck({ tag, channel, kind, state, expected, found, origin }: RecordReading): OpenItem[] {
  const may = expected.split('; ');
  const isFine = may.includes(found) || (may.includes('either') && found !== 'used');
  if (isFine || kind === 'volts') return [];
  return [
    itemOf(
      RECORD_MESSAGES.lookOther,
      { tag, channel, kind, state, expected: may, found },
      origin,
      'found',
      tag,
    ),
  ];
}
