import { RECORD_MESSAGES } from '../model/messages/record.js';
import { inOrder } from '../model/item-order.js';
import { itemAt, note } from '../model/message.js';
import { byNaturalOrder } from '../model/natural-order.js';
import type { OpenItem } from '../model/open-item.js';
import type { Plan, PlannedProtector } from '../model/plan.js';
import type { RecordFact, SiteRecord } from '../model/record.js';
import { MONTHS_BETWEEN_LOOKS, nextLook } from '../register/next-look.js';
import { siteForms } from '../site-forms/rows.js';
import { conductorText } from '../words/conductors.js';
import {
  factAnew,
  fittedOf,
  housingsAnew,
  plansAlike,
  type Anew,
  type FittedThere,
  type FoundOtherwise,
  type NoPlanner,
  type Planner,
} from './anew.js';
import { builtProtector } from './built-protector.js';
import { stateOf, withDeviations, type SaidDeviation } from './deviations.js';
import { entryOf, isFilledIn, withEntries, type RowOfHousing } from './entries.js';
import { factChecks, otherwise } from './fact-checks.js';
import { housingChecks, levelOf, newPlace } from './housing-checks.js';
import { readingChecks, type Hanging } from './reading-checks.js';
import { askedFacts, askedReadings, mergedFacts, mergedReadings, type FoundReading } from './readings.js';

/** What came back of one job, as typed rows. */
export interface CameBack {
  readonly rows: readonly RowOfHousing[];
  /** By {@link readingKey}. */
  readonly readings: ReadonlyMap<string, readonly FoundReading[]>;
  readonly facts: readonly RecordFact[];
  readonly deviations: readonly SaidDeviation[];
  /** Cells that aren't understood, rows that the plan doesn't have, photos that aren't there. */
  readonly items: readonly OpenItem[];
  readonly files: SiteRecord['files'];
}

/** What a record is made of. */
export interface RecordInput {
  readonly plan: Plan;
  /** The record so far; undefined: none. */
  readonly before: SiteRecord | undefined;
  readonly back: CameBack;
  /** Where a serial hangs already, at other housings of any job; by what {@link serialKey} gives. */
  readonly planner: Planner | NoPlanner;
}

type Housing = SiteRecord['housings'][number];

/** Items that tell of files rather than of what hangs there: those of a file stay until it is read again. */
const OF_FILES: ReadonlySet<string> = new Set([
  RECORD_MESSAGES.cellWrong.code,
  RECORD_MESSAGES.noSuchProtector.code,
  RECORD_MESSAGES.noSuchReading.code,
  RECORD_MESSAGES.noSuchFact.code,
  RECORD_MESSAGES.otherPlan.code,
  RECORD_MESSAGES.photoNotThere.code,
]);

function housingOf(
  p: PlannedProtector,
  before: SiteRecord | undefined,
  rows: readonly RowOfHousing[],
): Housing {
  const partPlanned = p.part ?? p.existing ?? '';
  const known = before?.housings.find(({ tag }) => tag === p.tag)?.entries ?? [];
  const mine = rows.filter(({ tag, row }) => tag === p.tag && isFilledIn(row, p.place)).map(entryOf);
  return {
    tag: p.tag,
    partPlanned,
    maker: p.partDetails?.maker ?? '',
    place: p.place,
    ports: p.ports.map(({ equipment, port }) => ({ equipment, port })),
    conductors: p.channels.map(({ wire }) => conductorText(wire)),
    level: null,
    ...withEntries({ partPlanned, entries: known }, mine),
  };
}

/** Items of files read in earlier runs that still stand. */
function itemsKept(before: SiteRecord | undefined, back: CameBack, housings: readonly Housing[]): OpenItem[] {
  const fresh = new Set(back.files.map(({ file }) => file));
  const isOf = (file: string): boolean =>
    fresh.has(file) || [...fresh].some((one) => file.startsWith(`${one}!`));
  return [...(before?.items ?? []), ...(before?.accepted ?? [])].filter((item) => {
    if (!OF_FILES.has(item.code) || isOf(item.file)) return false;
    if (item.code !== RECORD_MESSAGES.cellWrong.code) return true;
    // A cell of a row that another one corrected since.
    const entries = housings.find(({ tag }) => tag === item.equipment)?.entries ?? [];
    const counts = entries.at(-1)?.origin;
    return counts === undefined || (counts.file === item.file && counts.line === item.line);
  });
}

/** Replaces what is taken more than once. */
function filesOf(before: SiteRecord | undefined, back: CameBack): SiteRecord['files'] {
  const known = before?.files ?? [];
  return [...known, ...back.files.filter(({ sha256 }) => !known.some((one) => one.sha256 === sha256))];
}

/**
 * The record of a job with what came back since: held against its plan, which stays as it is.
 * @param input plan, record so far, rows, and how the job is planned anew
 * @returns the same record where nothing new came back
 */
export function recordOfJob({ plan, before, back, planner }: RecordInput): SiteRecord {
  const forms = siteForms(plan);
  const protectors = [...plan.protectors].sort((a, b) => byNaturalOrder(a.tag, b.tag));
  const housings = protectors.map((one) => housingOf(one, before, back.rows));
  const entryAt = (tag: string): Housing['entries'][number] | undefined => {
    const housing = housings.find((one) => one.tag === tag);
    return housing?.entries[housing.current];
  };
  const readings = mergedReadings(
    askedReadings(plan),
    before?.readings ?? [],
    back.readings,
    (tag) => entryAt(tag)?.outcome != null,
  );
  const facts = mergedFacts(askedFacts(forms), before?.facts ?? [], back.facts);
  const fitted = new Map<string, FittedThere>();
  for (const one of protectors) {
    const entry = entryAt(one.tag);
    const there = fittedOf(one, entry, entry && newPlace(plan, one, entry)?.outdoors);
    if (there) fitted.set(one.tag, there);
  }
  const found = planAnew(plan, planner, fitted, facts);
  const asBuilt: PlannedProtector[] = [];
  const items: OpenItem[] = [...back.items, ...itemsKept(before, back, housings), ...found.items];
  const hanging = new Map<string, Hanging>();
  for (const [i, planned] of protectors.entries()) {
    const housing = housings[i];
    if (housing === undefined) continue;
    const entry = housing.entries[housing.current];
    const anew = found.anew.get(planned.tag);
    const isUntold = anew === undefined && (fitted.has(planned.tag) || found.isUntold);
    const is = builtProtector(planned, entry, anew?.protector, isUntold);
    hanging.set(planned.tag, is ?? (entry === undefined || entry.outcome === null ? 'open' : 'gone'));
    if (is !== undefined) {
      asBuilt.push(is);
      housing.level = levelOf(is);
      if (is.partDetails) housing.maker = is.partDetails.maker;
    }
    items.push(...housingChecks({ housing, planned, is, anew, plan }));
  }
  items.push(...readingChecks(readings, (tag) => hanging.get(tag) ?? 'gone'));
  const result = withDeviations(
    inOrder(items),
    before?.deviations ?? [],
    back.deviations,
    (tag) => entryAt(tag)?.date ?? '',
  );
  return {
    version: 1,
    job: plan.job,
    jobName: plan.jobName,
    address: plan.address,
    plan: forms.plan,
    state: stateOf(result, housings),
    files: filesOf(before, back),
    housings,
    readings,
    facts,
    items: result.open as SiteRecord['items'],
    ...(result.accepted.length === 0 ? {} : { accepted: result.accepted as SiteRecord['items'] }),
    deviations: [...result.deviations],
    due: dueOf(housings, readings),
    asBuilt: { protectors: asBuilt },
  };
}

/** What planning anew tells. */
interface PlannedAnew {
  readonly anew: ReadonlyMap<string, Anew>;
  readonly items: readonly OpenItem[];
  /** True where every housing might be otherwise, and nobody can tell. */
  readonly isUntold: boolean;
}

function planAnew(
  plan: Plan,
  planner: Planner | NoPlanner,
  fitted: ReadonlyMap<string, FittedThere>,
  facts: readonly RecordFact[],
): PlannedAnew {
  const others = facts.filter(otherwise);
  const tags = [...fitted.keys()];
  if (tags.length === 0 && others.length === 0) return { anew: new Map(), items: [], isUntold: false };
  const base = typeof planner === 'string' ? undefined : planner.plan([], () => undefined);
  const because =
    typeof planner === 'string'
      ? planner
      : base === undefined || 'notUnderstood' in base || !plansAlike(plan, base)
        ? 'plan-differs'
        : undefined;
  if (because !== undefined || typeof planner === 'string' || base === undefined || 'notUnderstood' in base) {
    const p = { because: because ?? 'plan-differs', tags };
    const at = { file: '', line: 0, column: '' };
    return {
      anew: new Map(),
      items: [itemAt(note(RECORD_MESSAGES.notPlannedAnew, p), at), ...factChecks(others, () => 'untold')],
      isUntold: others.length > 0,
    };
  }
  const understood: FoundOtherwise[] = [];
  const checks = factChecks(others, (fact) => {
    if (fact === null) return 'no-field';
    const one = factAnew(base, planner, fact);
    if (one === undefined) return 'not-understood';
    understood.push(fact);
    return one;
  });
  return { anew: housingsAnew(plan, base, planner, understood, fitted), items: checks, isUntold: false };
}

function dueOf(housings: readonly Housing[], readings: SiteRecord['readings']): SiteRecord['due'] {
  const visits = new Map<string, SiteRecord['due'][number]>();
  for (const { tag, kind, state, date, due } of readings) {
    if (due) visits.set(JSON.stringify([tag, kind, state]), { protector: tag, kind, state, on: date });
  }
  const looks = housings.flatMap(({ tag, entries, current }): SiteRecord['due'] => {
    const entry = entries[current];
    if (!entry || entry.date === '' || entry.outcome === null) return [];
    if (entry.outcome === 'not fitted' || entry.outcome === 'removed') return [];
    const seen = readings.filter((one) => one.tag === tag && one.kind !== 'volts' && one.found !== '');
    const last = seen.map(({ date }) => date).reduce((a, b) => (a > b ? a : b), entry.date);
    return [{ protector: tag, kind: 'look', state: '', on: nextLook(last, MONTHS_BETWEEN_LOOKS) }];
  });
  return [...visits.values(), ...looks];
}
