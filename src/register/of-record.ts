import type { RecordEntry, RecordReading } from '../model/record.js';
import type { DueCheck, RegisterLine, SeenLight } from '../model/register.js';
import type { RegisterRecord } from '../model/register-record.js';
import { MONTHS_BETWEEN_LOOKS, nextLook } from './next-look.js';
import { termsOf, type HousingEntry, type Term } from './terms.js';

type Housing = RegisterRecord['housings'][number];
type Reading = RecordReading;
type Entry = RecordEntry & HousingEntry;

/** What the register holds of one job. */
export interface JobOfRegister {
  /** In the order of the housings, first to last within one. */
  readonly lines: readonly RegisterLine[];
  readonly checks: readonly DueCheck[];
}

/**
 * What the register holds of one job, told from its record alone.
 * @param record of the job
 * @param today `YYYY-MM-DD`: by then is due what is due and has no day on record
 * @returns a line a serial of a housing; the readings that are due, and the next look at each protector that hangs there
 */
export function registerOf(record: RegisterRecord, today: string): JobOfRegister {
  const lines: RegisterLine[] = [];
  const checks: DueCheck[] = [];
  for (const housing of record.housings) {
    const readings = record.readings.filter(({ tag }) => tag === housing.tag);
    const stated = record.due.find(({ protector, kind }) => protector === housing.tag && kind === 'look');
    for (const term of termsOf<Entry>(housing.entries.flatMap(counted))) {
      const own = readingsOf(term, readings);
      const look = lookAt(term, own, stated?.on ?? '');
      lines.push(...linesOf(record, housing, term, own, look));
      if (term.end === undefined) checks.push(...checksOf(record, housing, term, own, look, today));
    }
  }
  return { lines, checks };
}

/** An entry that says what became of the housing; one with a serial tells of a protector that hangs there, whatever else it leaves open. */
function counted(entry: RecordEntry): Entry[] {
  const { outcome, serials } = entry;
  if (outcome !== null) return [{ ...entry, outcome }];
  return serials.length > 0 ? [{ ...entry, outcome: 'fitted' }] : [];
}

/** Readings of a protector: taken while it hung there; those of an unknown day are of the one that hangs there now. */
function readingsOf({ from, end }: Term<Entry>, readings: readonly Reading[]): readonly Reading[] {
  return readings.filter(({ date }) =>
    date === '' ? end === undefined : date >= from && (end === undefined || date < end.date),
  );
}

const isLook = ({ kind, found }: Reading): boolean => kind !== 'volts' && found !== '';

/**
 * The day of the next look at a protector; `` of one that hangs no longer, or of which no day is on record.
 * @param stated the day that the record itself states
 */
function lookAt({ from, end }: Term<Entry>, readings: readonly Reading[], stated: string): string {
  if (end !== undefined || stated !== '') return end === undefined ? stated : '';
  const last = readings
    .filter(isLook)
    .map(({ date }) => date)
    .reduce((a, b) => (a > b ? a : b), from);
  return last === '' ? '' : nextLook(last, MONTHS_BETWEEN_LOOKS);
}

function linesOf(
  record: RegisterRecord,
  housing: Housing,
  { entry, from, end }: Term<Entry>,
  readings: readonly Reading[],
  look: string,
): RegisterLine[] {
  const { job, jobName, address } = record;
  const shared = {
    part: entry.partFitted,
    maker: housing.maker,
    job,
    jobName,
    address,
    place: entry.place === '' ? housing.place : entry.place,
    protector: housing.tag,
    equipments: [...new Set(housing.ports.map(({ equipment }) => equipment))],
    ports: housing.ports.map(({ port }) => port),
    conductors: housing.conductors,
    dateFitted: from,
    by: entry.name,
    leadLength: entry.leadLength,
    // Of what hangs there now: figures of what hung before aren't kept.
    level: end === undefined ? housing.level : null,
    firstLook: firstLook(readings),
    nextCheck: look,
    replacedBy: end?.by ?? [],
    replacedOn: end?.date ?? '',
    reason: end?.reason ?? '',
    photos: entry.photos.map(({ file }) => file),
  };
  // What hangs there without a serial on record is in the register all the same.
  const serials = entry.serials.length > 0 ? entry.serials : [{ serial: '', dateCode: '' }];
  return serials.map(({ serial, dateCode }) => ({ serial, dateCode, ...shared }));
}

/** Each light as it was seen first. */
function firstLook(readings: readonly Reading[]): SeenLight[] {
  const first = new Map<string, Reading>();
  for (const reading of readings.filter(isLook)) {
    const key = keyOf(reading);
    const known = first.get(key);
    if (known === undefined || reading.date < known.date) first.set(key, reading);
  }
  return [...first.values()].map(({ conductor, state, found }) => ({ conductor, state, found }));
}

const keyOf = ({ channel, kind, state }: Reading): string => JSON.stringify([channel, kind, state]);

/** Readings that are due: those of one kind and state together, since they are taken at one visit; and the next look. */
function checksOf(
  { job, jobName, address, due: onRecord }: RegisterRecord,
  { tag, place }: Housing,
  { entry, from }: Term<Entry>,
  readings: readonly Reading[],
  look: string,
  today: string,
): DueCheck[] {
  const shared = {
    job,
    jobName,
    address,
    place: entry.place === '' ? place : entry.place,
    protector: tag,
    part: entry.partFitted,
    serials: entry.serials.map(({ serial }) => serial).filter((serial) => serial !== ''),
  };
  const taken = new Set(readings.filter(({ found }) => found !== '').map(keyOf));
  const due = new Map<string, [Reading, ...Reading[]]>();
  for (const reading of readings) {
    if (!reading.due || taken.has(keyOf(reading))) continue;
    const visit = JSON.stringify([reading.kind, reading.state]);
    const others = due.get(visit);
    if (others === undefined) due.set(visit, [reading]);
    else others.push(reading);
  }
  const visits = [...due.values()].map((of): DueCheck => {
    const [{ kind, state, date }] = of;
    const expected = of.map((reading) => reading.expected);
    const stated = onRecord.find((one) => one.protector === tag && one.kind === kind && one.state === state);
    return {
      ...shared,
      // As soon as it can be seen.
      due: [stated?.on ?? '', date, from, today].find((day) => day !== '') ?? today,
      what: 'reading',
      kind,
      state,
      conductors: of.map(({ conductor }) => conductor),
      expected: new Set(expected).size === 1 ? expected.slice(0, 1) : expected,
    };
  });
  const none = { kind: '', state: '', conductors: [], expected: [] } as const;
  return look === '' ? visits : [...visits, { ...shared, due: look, what: 'look', ...none }];
}
