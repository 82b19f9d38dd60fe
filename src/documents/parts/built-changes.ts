import type { Plan, PlannedProtector } from '../../model/plan.js';
import { hundredths } from '../../model/rounding.js';
import type { RecordEntry, RecordFact, RecordReading, SiteRecord } from '../../model/record.js';
import { SEEN_LOOKS, type Changed } from '../../words/languages/as-built-words.js';
import { mostLead } from '../../words/lengths.js';
import { latestReadings, probesOf } from './built-readings.js';
import type { BuiltValue, Change, Outcome } from './as-built.js';

type Found = Omit<Change, 'tag' | 'accepted'>;

const NOTHING: BuiltValue = { is: 'nothing' };
const UNKNOWN: BuiltValue = { is: 'volts', value: null };
const text = (of: string): BuiltValue => (of === '' ? NOTHING : { is: 'text', text: of });

const change = (what: Changed, planned: BuiltValue, found: BuiltValue, more: Partial<Found> = {}): Found => ({
  what,
  of: '',
  at: null,
  planned,
  found,
  against: NOTHING,
  result: 'none',
  ...more,
});

/** What the record holds against a cell of the crew's forms: `fails` where it contradicts something; undefined: nothing. */
type Held = (heading: string) => 'fails' | 'told' | undefined;

const failing = (held: ReturnType<Held>): Change['result'] => (held === 'fails' ? 'fails' : 'none');

const GONE: { readonly [O in string]?: Outcome } = { 'not fitted': 'notFitted', removed: 'removed' };

/** Voltage protection level with the leads; V. */
const levelOf = ({ figures }: PlannedProtector): number | null =>
  figures?.up == null || figures.leadVoltage === null ? null : figures.up + figures.leadVoltage;

/** How a figure stands to what it must keep, as the plan that was made anew has it. */
function keeps(margin: number | null | undefined): Change['result'] {
  if (margin === null || margin === undefined) return 'unknown';
  return margin < 0 ? 'fails' : 'holds';
}

/** Null is the whole run only where there is a level. */
const reachOf = ({ figures }: PlannedProtector): BuiltValue =>
  figures === null || (figures.reach === null && figures.up === null)
    ? UNKNOWN
    : { is: 'reach', value: figures.reach };

/** True where a level is no higher than planned: shorter leads are no deviation. */
const isNoHigher = (before: number | null, now: number | null): boolean =>
  before === now || (before !== null && now !== null && now < before);

/** True where a protector reaches as far as planned, or farther. */
function isNoNearer(far: BuiltValue, near: BuiltValue): boolean {
  if (far.is !== 'reach' || near.is !== 'reach') return far.is === near.is;
  return (near.value ?? Infinity) >= (far.value ?? Infinity);
}

/** Level and reach as they are now, where they are worse than planned. */
function figureChanges(was: PlannedProtector, is: PlannedProtector): Found[] {
  const [before, now] = [levelOf(was), levelOf(is)];
  const withstand = is.figures?.impulseWithstand ?? null;
  const against: BuiltValue = withstand === null ? NOTHING : { is: 'most', value: withstand };
  const [far, near] = [reachOf(was), reachOf(is)];
  return [
    ...(isNoHigher(before, now)
      ? []
      : [
          change(
            'level',
            { is: 'level', value: before },
            { is: 'level', value: now },
            { against, result: keeps(is.figures?.margin) },
          ),
        ]),
    ...(isNoNearer(far, near) ? [] : [change('reach', far, near)]),
  ];
}

function partChange(was: PlannedProtector, { partFitted }: RecordEntry, held: Held): Found[] {
  const planned = was.part ?? was.existing ?? '';
  const told = held('part_fitted');
  if (told === undefined) return [];
  const result = told === 'fails' ? 'fails' : 'holds';
  return [change('part', text(planned), text(partFitted === '' ? planned : partFitted), { result })];
}

function leadChange({ wiring }: PlannedProtector, { leadLength }: RecordEntry, held: Held): Found[] {
  if (leadLength === null) return [];
  const most = mostLead(wiring);
  const told = held('lead_length');
  if (told === undefined && hundredths(leadLength) <= hundredths(most)) return [];
  const found: BuiltValue = { is: 'lead', value: leadLength };
  return [change('lead', { is: 'limit', value: most }, found, { result: failing(told) })];
}

function faultCurrentChange(was: PlannedProtector, { faultCurrent }: RecordEntry, held: Held): Found[] {
  const { required, figures } = was;
  const told = held('fault_current');
  if (faultCurrent === null) return [];
  // What is there is no more than what the plan was held against.
  if (told === undefined && required.sccr !== null && faultCurrent <= required.sccr) return [];
  const sccr = figures?.sccr ?? null;
  const rated = sccr === null ? 'unknown' : 'holds';
  return [
    change(
      'faultCurrent',
      { is: 'amperes', value: required.sccr },
      { is: 'amperes', value: faultCurrent },
      {
        against: sccr === null ? NOTHING : { is: 'rated', value: sccr },
        result: told === 'fails' ? 'fails' : rated,
      },
    ),
  ];
}

function entryChanges(was: PlannedProtector, entry: RecordEntry, held: Held): Found[] {
  const gone = entry.outcome === null ? undefined : GONE[entry.outcome];
  if (gone !== undefined)
    return [
      change(
        'outcome',
        { is: 'outcome', outcome: 'fitted' },
        { is: 'outcome', outcome: gone },
        { result: failing(held('outcome')) },
      ),
    ];
  const moved = held('place');
  return [
    ...partChange(was, entry, held),
    ...(moved === undefined || entry.place === ''
      ? []
      : [change('place', text(was.place), text(entry.place), { result: failing(moved) })]),
    ...leadChange(was, entry, held),
    ...faultCurrentChange(was, entry, held),
  ];
}

function readingChange(reading: RecordReading, told: ReturnType<Held>): Found[] {
  const { kind, channel, found, low, high, expected } = reading;
  if (found === '' || told === undefined) return [];
  const result = failing(told);
  if (kind === 'volts') {
    const planned: BuiltValue = { is: 'band', low, high };
    return [
      change('volts', planned, { is: 'volts', value: Number(found) }, { at: probesOf(reading), result }),
    ];
  }
  const look = SEEN_LOOKS.find((one) => one === found);
  const [may] = expected.split('; ').flatMap((word) => SEEN_LOOKS.find((one) => one === word) ?? []);
  const planned: BuiltValue = may === undefined ? NOTHING : { is: 'look', look: may };
  const seen: BuiltValue = look === undefined ? text(found) : { is: 'look', look };
  return [change('light', planned, seen, { of: String(channel ?? ''), result })];
}

/** Which checks that somebody can accept are of which change, where they aren't called the same. */
const CHECKS: { readonly [C in Changed]?: readonly string[] } = {
  faultCurrent: ['fault_current'],
  light: ['light', 'flag'],
  level: ['lead'],
};

/**
 * What is otherwise than planned, by housing, then what was assumed and found otherwise. What contradicts something is in the record:
 * here it is only told.
 * @param plan of the job, which the record belongs to
 */
export function builtChanges(plan: Plan, record: SiteRecord): Change[] {
  const anew = new Map(record.asBuilt.protectors.map((one) => [one.tag, one]));
  const items = [...record.items, ...(record.accepted ?? [])].filter(
    ({ severity }) => severity !== 'missing',
  );
  const heldOf =
    (tag: string, row?: RecordReading | RecordFact): Held =>
    (heading) => {
      const own = items.filter(
        (item) =>
          item.equipment === tag &&
          item.field === heading &&
          (row === undefined || (item.file === row.origin.file && item.line === row.origin.line)),
      );
      if (own.length === 0) return undefined;
      return own.some(({ severity }) => severity === 'conflict') ? 'fails' : 'told';
    };
  const acceptedOf = (tag: string, what: Changed): Change['accepted'] => {
    const checks = CHECKS[what] ?? [what];
    const found = record.deviations.find(
      ({ protector, check }) => protector === tag && checks.includes(check),
    );
    if (found === undefined) return null;
    const { by, date, reason, paper } = found;
    return { by, date, reason, paper };
  };
  const readings = latestReadings(record.readings);
  const ofHousings = plan.protectors.flatMap((was): Change[] => {
    const { tag } = was;
    const housing = record.housings.find((one) => one.tag === tag);
    const entry = housing?.entries[housing.current];
    const is = anew.get(tag);
    const found = [
      ...(entry === undefined ? [] : entryChanges(was, entry, heldOf(tag))),
      ...(is === undefined ? [] : figureChanges(was, is)),
      ...readings
        .filter((reading) => reading.tag === tag)
        .flatMap((reading) => readingChange(reading, heldOf(tag, reading)('found'))),
    ];
    return found.map((one) => ({ tag, ...one, accepted: acceptedOf(tag, one.what) }));
  });
  const ofFacts = record.facts.flatMap((fact): Change[] => {
    const { assumption, tag, assumed, found } = fact;
    const told = heldOf(tag, fact)('found');
    if (found === '' || told === undefined) return [];
    const one = change('fact', text(assumed), text(found), { of: assumption, result: failing(told) });
    return [{ tag, ...one, accepted: acceptedOf(tag, 'fact') }];
  });
  return [...ofHousings, ...ofFacts];
}
