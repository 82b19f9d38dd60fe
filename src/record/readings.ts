import { byNaturalOrder } from '../model/natural-order.js';
import type { Plan } from '../model/plan.js';
import type { RecordFact, RecordOrigin, RecordReading } from '../model/record.js';
import { SYSTEM_STATES_UNSEEN } from './unseen-states.js';
import { plannedReadings, type SiteForms } from '../site-forms/rows.js';

/** A reading as it came back. */
export interface FoundReading {
  readonly found: string;
  readonly whyNot: string;
  readonly date: string;
  readonly name: string;
  readonly origin: RecordOrigin;
}

/** What tells one reading that is asked for from another. */
export function readingKey({
  tag,
  channel,
  conductor,
  kind,
  from,
  to,
  state,
}: Pick<RecordReading, 'tag' | 'channel' | 'conductor' | 'kind' | 'from' | 'to' | 'state'>): string {
  // A look is told by its channel; volts by the two points.
  const at = kind === 'volts' ? [from, to] : [channel ?? conductor];
  return JSON.stringify([tag, kind, ...at, state]);
}

const NOWHERE: RecordOrigin = { file: '', line: 0 };
const figure = (cell: string | number): number | null => (typeof cell === 'number' ? cell : null);

/** The readings that a plan asks for, none of them taken. */
export function askedReadings(plan: Plan): RecordReading[] {
  return plannedReadings(plan).map(({ cells, state, kind }) => ({
    tag: String(cells.protector),
    channel: figure(cells.channel),
    conductor: String(cells.conductor),
    kind,
    from: String(cells.from),
    to: String(cells.to),
    state,
    low: figure(cells.low),
    high: figure(cells.high),
    expected: String(cells.expected),
    found: '',
    whyNot: '',
    due: false,
    date: '',
    name: '',
    origin: NOWHERE,
  }));
}

/** Why a reading that wasn't taken is due: it couldn't be seen that day. A fault is never waited for. */
function isDue({ state, kind }: RecordReading, whyNot: string, isDone: boolean): boolean {
  if (!isDone || state === 'ground-fault device open' || state === 'always') return false;
  return whyNot !== '' || (kind !== 'volts' && SYSTEM_STATES_UNSEEN.has(state));
}

/**
 * The readings of a record: every one that the plan asks for at least once, taken or not; those taken on another day behind the first.
 * @param asked by the plan, none of them taken
 * @param before of the record so far
 * @param more as they came back, by key; blank ones among them
 * @param isDone housings of which a record came back
 */
export function mergedReadings(
  asked: readonly RecordReading[],
  before: readonly RecordReading[],
  more: ReadonlyMap<string, readonly FoundReading[]>,
  isDone: (tag: string) => boolean,
): RecordReading[] {
  const known = new Map<string, RecordReading[]>();
  for (const one of before) {
    const key = readingKey(one);
    known.set(key, [...(known.get(key) ?? []), one]);
  }
  return asked.flatMap((one) => {
    const key = readingKey(one);
    const own = known.get(key) ?? [];
    const taken = own.filter(({ found }) => found !== '');
    let blank = own.find(({ found }) => found === '') ?? one;
    for (const { found, whyNot, date, name, origin } of more.get(key) ?? []) {
      const reading: RecordReading = { ...one, found, whyNot, date, name, origin };
      if (found === '') {
        // Where it stands on the form is known even of one that nobody took.
        if (whyNot !== '' || blank.whyNot === '') blank = reading;
        continue;
      }
      const sameDay = taken.findIndex((other) => other.date === date);
      if (sameDay >= 0) taken.splice(sameDay, 1, reading);
      else taken.push(reading);
    }
    if (taken.length > 0) return taken.sort((a, b) => byNaturalOrder(a.date, b.date));
    return [
      {
        ...blank,
        low: one.low,
        high: one.high,
        expected: one.expected,
        due: isDue(one, blank.whyNot, isDone(one.tag)),
      },
    ];
  });
}

/** The assumptions that a plan's papers ask to verify, none of them verified. */
export function askedFacts({ facts }: SiteForms): RecordFact[] {
  return facts.map(({ assumption, tag, fact, assumed }) => ({
    assumption,
    tag,
    fact,
    assumed,
    found: '',
    by: '',
    date: '',
    photos: [],
    origin: NOWHERE,
  }));
}

/** What tells one assumption from another: its number may be another in the next plan. */
export const factKey = ({ tag, fact }: Pick<RecordFact, 'tag' | 'fact'>): string =>
  JSON.stringify([tag, fact]);

/** The assumptions of a record: of each the verification of the latest day, of one day that read last. */
export function mergedFacts(
  asked: readonly RecordFact[],
  before: readonly RecordFact[],
  more: readonly RecordFact[],
): RecordFact[] {
  const found = new Map<string, RecordFact>();
  for (const one of [...before, ...more]) {
    const key = factKey(one);
    const last = found.get(key);
    if (one.found !== '' && (last === undefined || one.date >= last.date)) found.set(key, one);
  }
  const own = asked.map((one) => {
    const fact = found.get(factKey(one));
    found.delete(factKey(one));
    return fact === undefined ? one : { ...fact, assumption: one.assumption, assumed: one.assumed };
  });
  return own;
}
