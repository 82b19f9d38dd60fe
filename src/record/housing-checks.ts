import { CHOOSE_MESSAGES } from '../model/messages/choose.js';
import { RECORD_MESSAGES } from '../model/messages/record.js';
import type { OpenItem } from '../model/open-item.js';
import type { Plan, PlannedProtector } from '../model/plan.js';
import { kiloamperes, metres, volts, type Quantity } from '../model/quantity.js';
import type { Reason } from '../model/reason.js';
import type { RecordEntry, SiteRecord } from '../model/record.js';
import type { AnyHeading } from '../model/site-form-rows.js';
import type { Anew } from './anew.js';
import { isContested, sameText } from './entries.js';
import { itemOf } from './items.js';

type Housing = SiteRecord['housings'][number];

/** One housing, with what it was planned as and what it has become. */
export interface HousingCase {
  readonly housing: Housing;
  readonly planned: PlannedProtector;
  /** As it is there; undefined: nothing hangs there, or it can't be planned anew. */
  readonly is: PlannedProtector | undefined;
  /** Undefined: as planned. */
  readonly anew: Anew | undefined;
  readonly plan: Plan;
}

/** Columns without which nobody knows what hangs there. */
const ASKED: readonly (readonly [AnyHeading, (entry: RecordEntry) => boolean])[] = [
  ['serial', ({ serials }) => serials.some(({ serial }) => serial !== '')],
  [
    'date_code',
    ({ serials }) => serials.every(({ serial, dateCode }) => serial !== 'none' || dateCode !== ''),
  ],
  ['torque', ({ torque }) => torque !== ''],
];

/** Columns that the register and the papers show, and nothing rests on. */
const WISHED: readonly (readonly [AnyHeading, (entry: RecordEntry) => boolean])[] = [
  ['lead_length', ({ leadLength }) => leadLength !== null],
  ['date', ({ date }) => date !== ''],
  ['name', ({ name }) => name !== ''],
];

/** True where something hangs there that a crew brought. */
const isFitted = ({ outcome }: RecordEntry): boolean =>
  outcome === 'fitted' || outcome === 'moved' || outcome === 'replaced';

/** The checks of what a record says of one housing. */
export function housingChecks(one: HousingCase): readonly OpenItem[] {
  const { housing } = one;
  const entry = housing.entries[housing.current];
  const { tag } = housing;
  if (entry === undefined)
    return [itemOf(RECORD_MESSAGES.nothingRecorded, { tag }, { file: '', line: 0 }, 'outcome', tag)];
  const at = entry.origin;
  const contested = isContested(housing)
    ? [itemOf(RECORD_MESSAGES.twoAtOnce, { tag, date: entry.date, time: entry.time }, at, 'date', tag)]
    : [];
  if (entry.outcome === null)
    return [...contested, itemOf(RECORD_MESSAGES.lacks, { tag, heading: 'outcome' }, at, 'outcome', tag)];
  if (entry.outcome === 'not fitted' || entry.outcome === 'removed') {
    const kind = one.planned.strength === 'required' ? RECORD_MESSAGES.requiredGone : RECORD_MESSAGES.gone;
    return [...contested, itemOf(kind, { tag, is: entry.outcome }, at, 'outcome', tag)];
  }
  const lacks = (
    asked: typeof ASKED,
    kind: typeof RECORD_MESSAGES.lacks | typeof RECORD_MESSAGES.notSaid,
  ): OpenItem[] =>
    asked.flatMap(([heading, isThere]) =>
      isThere(entry) ? [] : [itemOf(kind, { tag, heading }, at, heading, tag)],
    );
  return [
    ...contested,
    ...(isFitted(entry) ? lacks(ASKED, RECORD_MESSAGES.lacks) : []),
    ...(isFitted(entry) ? lacks(WISHED, RECORD_MESSAGES.notSaid) : []),
    ...partCheck(one, entry),
    ...leadCheck(one, entry),
    ...placeCheck(one, entry),
    ...faultCurrentCheck(one, entry),
  ];
}

/** What fails of the part that hangs there, held against every rule. */
function failsOf({ anew }: HousingCase): readonly Reason[] {
  return (anew?.items ?? []).flatMap(({ code, values }) =>
    code === CHOOSE_MESSAGES.byHandFails.code && 'fails' in values ? (values.fails as readonly Reason[]) : [],
  );
}

function partCheck(one: HousingCase, entry: RecordEntry): OpenItem[] {
  const { planned, housing, anew } = one;
  const { tag } = housing;
  const was = planned.part ?? planned.existing ?? '';
  const fails = failsOf(one);
  const p = { tag, planned: was, fitted: entry.partFitted };
  const at = entry.origin;
  if (entry.partFitted === '' || sameText(entry.partFitted, was)) {
    // The part as planned may fail where it hangs now: at another place, or with longer leads.
    const failsHere = fails.filter(({ code }) => !code.startsWith('level/'));
    return failsHere.length === 0
      ? []
      : [itemOf(RECORD_MESSAGES.partFails, { ...p, fails: failsHere }, at, 'part_fitted', tag)];
  }
  if (anew?.items.some(({ code }) => code === CHOOSE_MESSAGES.byHandUnknown.code))
    return [itemOf(RECORD_MESSAGES.partUnknown, p, at, 'part_fitted', tag)];
  return fails.length > 0
    ? [itemOf(RECORD_MESSAGES.partFails, { ...p, fails }, at, 'part_fitted', tag)]
    : [itemOf(RECORD_MESSAGES.partOther, p, at, 'part_fitted', tag)];
}

/** V; voltage protection level with the leads; null: not known. */
export function levelOf(one: PlannedProtector | undefined): number | null {
  const figures = one?.figures;
  if (figures?.up === null || figures?.up === undefined || figures.leadVoltage === null) return null;
  return figures.up + figures.leadVoltage;
}

const orNull = (value: number | null | undefined, of: (value: number) => Quantity): Quantity | null =>
  value === null || value === undefined ? null : of(value);

function reachOf(one: PlannedProtector | undefined): Quantity | 'unknown' | 'unlimited' {
  const figures = one?.figures;
  if (!figures) return 'unknown';
  return figures.reach === null ? 'unlimited' : metres(figures.reach);
}

/** m; lengths are written in hundredths of a foot. */
const NO_LONGER = 0.005;

function leadCheck(one: HousingCase, entry: RecordEntry): OpenItem[] {
  const { planned, housing, is, anew } = one;
  const { tag } = housing;
  const was = planned.wiring.leadLengthPlanned;
  const { leadLength } = entry;
  if (leadLength === null) return [];
  const p = {
    tag,
    lead: metres(leadLength),
    planned: metres(was),
    level: orNull(levelOf(is), volts),
    margin: orNull(is?.figures?.margin, volts),
    reach: reachOf(is),
  };
  const isTooLong = (anew?.items ?? []).some(({ code }) => code === CHOOSE_MESSAGES.leadTooLong.code);
  const isAboveWithstand =
    leadLength > was + NO_LONGER && failsOf(one).some(({ code }) => code.startsWith('level/'));
  if (isTooLong || isAboveWithstand)
    return [itemOf(RECORD_MESSAGES.leadTooLong, p, entry.origin, 'lead_length', tag)];
  return leadLength > was + NO_LONGER
    ? [itemOf(RECORD_MESSAGES.leadOther, p, entry.origin, 'lead_length', tag)]
    : [];
}

/** Where a housing hangs now, as far as the site knows the place. */
export interface NewPlace {
  /** m along the cable from the port that it guards; null: not known. */
  readonly distance: number | null;
  /** Undefined: nobody says. */
  readonly outdoors: boolean | undefined;
  /** True in another building than the port that it guards. */
  readonly elsewhere: boolean;
}

/** A place that a record names, held against the places of the site; undefined: it hangs where it was planned. */
export function newPlace(plan: Plan, planned: PlannedProtector, entry: RecordEntry): NewPlace | undefined {
  if (entry.place === '' || sameText(entry.place, planned.place)) return undefined;
  const own = planned.ports[0]?.equipment ?? '';
  const there = plan.site.equipments.filter(({ place }) => sameText(place, entry.place));
  const [first] = there;
  if (first === undefined) return { distance: null, outdoors: undefined, elsewhere: false };
  const tags = new Set(there.map(({ tag }) => tag));
  const runs = plan.site.runs.filter(
    ({ from, to }) =>
      (from.equipment === own && tags.has(to.equipment)) ||
      (to.equipment === own && tags.has(from.equipment)),
  );
  const lengths = runs.map(({ length }) => length);
  const isSame = tags.has(own);
  const known = lengths.filter((length) => length !== null);
  return {
    distance: isSame ? 0 : known.length > 0 ? Math.max(...known) : null,
    outdoors: there.every(({ outdoors }) => outdoors === first.outdoors) ? first.outdoors : undefined,
    elsewhere: runs.some(({ betweenBuildings }) => betweenBuildings),
  };
}

function placeCheck({ plan, planned, housing, is }: HousingCase, entry: RecordEntry): OpenItem[] {
  const now = newPlace(plan, planned, entry);
  const { tag } = housing;
  if (now === undefined) {
    if (entry.outcome !== 'moved') return [];
    // It says that it was moved, and not where to.
    return [itemOf(RECORD_MESSAGES.lacks, { tag, heading: 'place' }, entry.origin, 'place', tag)];
  }
  const reach = reachOf(is);
  const { distance, elsewhere } = now;
  const covers =
    distance !== null &&
    !elsewhere &&
    (reach === 'unlimited' || (reach !== 'unknown' && reach.value >= distance));
  const kind = planned.strength === 'required' && !covers ? RECORD_MESSAGES.movedAway : RECORD_MESSAGES.moved;
  const p = { tag, from: planned.place, to: entry.place, distance: orNull(distance, metres), reach };
  return [itemOf(kind, p, entry.origin, 'place', tag)];
}

function faultCurrentCheck({ housing, is }: HousingCase, entry: RecordEntry): OpenItem[] {
  const { faultCurrent, device, origin } = entry;
  const { tag } = housing;
  if (faultCurrent === null) return [];
  const ratings = [
    ['part', is?.figures?.sccr ?? null],
    ['device', device.interrupting],
  ] as const;
  return ratings.flatMap(([of, rating]) =>
    rating === null || faultCurrent <= rating
      ? []
      : [
          itemOf(
            RECORD_MESSAGES.faultCurrent,
            { tag, found: kiloamperes(faultCurrent), rating: kiloamperes(rating), of },
            origin,
            'fault_current',
            tag,
          ),
        ],
  );
}
