import type { Plan, PlannedProtector } from '../../model/plan.js';
import type { SiteRecord } from '../../model/record.js';
import type { Changed } from '../../words/languages/as-built-words.js';
import { SEEN_LOOKS } from '../../words/languages/as-built-words.js';
import { probesOf } from './built-readings.js';
import { mostLead } from '../../words/lengths.js';
import type { BuiltValue, Change, Outcome } from './as-built.js';

type Housing = SiteRecord['housings'][number];
type Entry = Housing['entries'][number];
type Reading = SiteRecord['readings'][number];
type Found = Omit<Change, 'tag' | 'accepted'>;

const NOTHING: BuiltValue = { is: 'nothing' };
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

/** True where a check of this housing that looked at one of these columns failed. */
type Failing = (...columns: readonly string[]) => boolean;

const GONE: { readonly [O in string]?: Outcome } = { 'not fitted': 'notFitted', removed: 'removed' };

/** Voltage protection level with the leads; V. */
const levelOf = ({ figures }: PlannedProtector): number | null =>
  figures?.up == null || figures.leadVoltage === null ? null : figures.up + figures.leadVoltage;

/** How a figure stands to what it must keep. */
function held(margin: number | null | undefined): Change['result'] {
  if (margin === null || margin === undefined) return 'unknown';
  return margin < 0 ? 'fails' : 'holds';
}

/** Level and reach as they are now, where they aren't as planned. */
function figureChanges(was: PlannedProtector, is: PlannedProtector): Found[] {
  const [before, now] = [levelOf(was), levelOf(is)];
  const withstand = is.figures?.impulseWithstand ?? null;
  const [far, near] = [was.figures?.reach ?? null, is.figures?.reach ?? null];
  return [
    ...(before === now
      ? []
      : [
          change(
            'level',
            { is: 'level', value: before },
            { is: 'level', value: now },
            { against: { is: 'most', value: withstand }, result: held(is.figures?.margin) },
          ),
        ]),
    ...(far === near ? [] : [change('reach', { is: 'reach', value: far }, { is: 'reach', value: near })]),
  ];
}

function entryChanges(was: PlannedProtector, entry: Entry, fails: Failing): Found[] {
  const gone = entry.outcome === null ? undefined : GONE[entry.outcome];
  if (gone !== undefined)
    return [
      change(
        'outcome',
        { is: 'outcome', outcome: 'fitted' },
        { is: 'outcome', outcome: gone },
        fails('outcome') ? { result: 'fails' } : {},
      ),
    ];
  const { wiring, required, figures } = was;
  const planned = was.part ?? was.existing ?? '';
  const most = mostLead(wiring);
  const { partFitted, place, leadLength, faultCurrent } = entry;
  const sccr = figures?.sccr ?? null;
  return [
    ...(partFitted === '' || partFitted === planned
      ? []
      : [
          change('part', text(planned), text(partFitted), {
            result: fails('part_fitted') ? 'fails' : 'holds',
          }),
        ]),
    ...(place === '' || place === was.place ? [] : [change('place', text(was.place), text(place))]),
    ...(leadLength === null || leadLength <= most
      ? []
      : [
          change(
            'lead',
            { is: 'limit', value: most },
            { is: 'lead', value: leadLength },
            { result: fails('lead_length') ? 'fails' : 'none' },
          ),
        ]),
    ...(faultCurrent === null || faultCurrent === required.sccr
      ? []
      : [
          change(
            'faultCurrent',
            { is: 'amperes', value: required.sccr },
            { is: 'amperes', value: faultCurrent },
            {
              against: sccr === null ? NOTHING : { is: 'amperes', value: sccr },
              result: fails('fault_current') ? 'fails' : 'holds',
            },
          ),
        ]),
  ];
}

function readingChange(reading: Reading): Found[] {
  const { kind, channel, found, low, high, expected } = reading;
  if (found === '') return [];
  if (kind !== 'volts') {
    const may = expected.split('; ');
    const look = SEEN_LOOKS.find((one) => one === found);
    if (look === undefined || may.includes(look) || may.includes('either')) return [];
    const [first] = may.flatMap((word) => SEEN_LOOKS.find((one) => one === word) ?? []);
    const planned: BuiltValue = first === undefined ? text(expected) : { is: 'look', look: first };
    return [
      change(
        'light',
        planned,
        { is: 'look', look },
        {
          of: String(channel ?? ''),
          result: 'fails',
        },
      ),
    ];
  }
  const volts = Number(found);
  const isOut = (high !== null && Math.abs(volts) > high) || (low !== null && Math.abs(volts) < low);
  if (!isOut) return [];
  const at = probesOf(reading);
  const planned: BuiltValue = { is: 'band', low, high };
  return [change('volts', planned, { is: 'volts', value: volts }, { at, result: 'fails' })];
}

/** Which checks that somebody can accept are of which change. */
const CHECKS: { readonly [C in Changed]?: readonly string[] } = {
  faultCurrent: ['fault_current'],
  light: ['light', 'flag'],
};

/**
 * What is otherwise than planned, by housing, then what was assumed and found otherwise.
 * @param plan of the job, which the record belongs to
 */
export function builtChanges(plan: Plan, record: SiteRecord): Change[] {
  const anew = new Map(record.asBuilt.protectors.map((one) => [one.tag, one]));
  const acceptedOf = (tag: string, what: Changed): Change['accepted'] => {
    const found = record.deviations.find(
      ({ protector, check }) =>
        protector === tag && (check === what || CHECKS[what]?.includes(check) === true),
    );
    return found === undefined
      ? null
      : { by: found.by, date: found.date, reason: found.reason, paper: found.paper };
  };
  const ofHousings = plan.protectors.flatMap((was): Change[] => {
    const { tag } = was;
    const housing = record.housings.find((one) => one.tag === tag);
    const entry = housing?.entries[housing.current];
    const fails: Failing = (...columns) =>
      record.items.some(
        (item) =>
          item.severity === 'conflict' &&
          item.equipment === tag &&
          columns.includes(item.field ?? item.column),
      );
    const is = anew.get(tag);
    const found = [
      ...(entry === undefined ? [] : entryChanges(was, entry, fails)),
      ...(is === undefined ? [] : figureChanges(was, is)),
      ...record.readings.filter((reading) => reading.tag === tag).flatMap(readingChange),
    ];
    return found.map((one) => ({ tag, ...one, accepted: acceptedOf(tag, one.what) }));
  });
  const ofFacts = record.facts.flatMap(({ assumption, tag, assumed, found }): Change[] =>
    found === '' || found === assumed
      ? []
      : [{ tag, ...change('fact', text(assumed), text(found), { of: assumption }), accepted: null }],
  );
  return [...ofHousings, ...ofFacts];
}
