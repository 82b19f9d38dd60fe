import { z } from 'zod';
import { isNec } from '../../../model/editions.js';
import { byNaturalOrder } from '../../../model/natural-order.js';
import type { Plan, PlanItem, PlannedProtector } from '../../../model/plan.js';
import { DECIDES, type Assumption } from '../../../words/assumptions/assumption-kit.js';
import { settledAssumed } from '../../../words/assumptions/defaults.js';
import { assumptionOf } from '../../../words/assumptions/told.js';
import { acceptedBy, settledBy } from '../../../words/settled.js';
import { tagList } from '../../../words/tag-list.js';
import { tagsAt } from './at-ports.js';
import { runsOf, RunsSchema } from './runs.js';

export const AssumptionsSchema = z.object({
  title: z.string(),
  rows: z.array(
    z.object({
      /** `A1`. */
      number: z.string(),
      text: RunsSchema,
      /** True where the assumption could mean that a protector doesn't protect, or a source isn't known. */
      grave: z.boolean(),
    }),
  ),
  none: z.string(),
});
export type AssumptionsView = z.infer<typeof AssumptionsSchema>;

/** An assumption with the tags that it names, and how it ends. */
interface Told {
  readonly assumption: Assumption;
  readonly tags: string[];
  readonly end: string;
  /** What it stems from: the code of an item, of a default with its field. */
  readonly stems: Set<string>;
}

/** What a default is told by, be it open or settled: its field decides. */
const ofDefault = (field: string): string => `default/used ${field}`;

/** The grounding of the wires of a control circuit, which is another matter than that of arrays and batteries. */
const OF_CONTROL = 'default/used in a control circuit';

function isOfControl({ values }: PlanItem): boolean {
  const why = 'why' in values ? (values.why as { readonly code?: string } | null) : null;
  return why?.code === 'default-decides/recorded-lights';
}

const VERIFY = 'Verify';
/** The first of what assumptions decide, which no reader may overlook. */
const GRAVE = 2;

function told(plan: Plan): Told[] {
  const found: Told[] = [];
  const add = (taken: Assumption | 'office', end: string, stem: string): void => {
    if (taken === 'office') return;
    const assumption = isNec(plan.basis) ? taken : { ...taken, says: taken.underIec ?? taken.says };
    const tags = [...assumption.tags, ...tagsAt(plan, assumption.at)];
    const same = found.find(
      (one) =>
        one.assumption.says === assumption.says &&
        one.assumption.decides === assumption.decides &&
        one.end === end,
    );
    if (!same) {
      found.push({ assumption, tags, end, stems: new Set([stem]) });
      return;
    }
    same.stems.add(stem);
    for (const tag of tags) if (!same.tags.includes(tag)) same.tags.push(tag);
  };
  const stemOf = (item: PlanItem): string => {
    const field = 'field' in item.values && typeof item.values.field === 'string' ? item.values.field : '';
    if (item.code !== 'default/used') return item.code;
    return isOfControl(item) ? OF_CONTROL : ofDefault(field);
  };
  for (const item of plan.openItems)
    if (item.severity === 'confirm') add(assumptionOf(item), VERIFY, stemOf(item));
  for (const item of plan.accepted ?? []) add(assumptionOf(item), capital(acceptedBy(item)), stemOf(item));
  for (const one of plan.settled) add(settledAssumed(one), capital(settledBy(one)), ofDefault(one.field));
  const rank = ({ assumption }: Told): number => DECIDES.indexOf(assumption.decides);
  return found.sort((a, b) => rank(a) - rank(b));
}

const numberOf = (index: number): string => `A${String(index + 1)}`;
const capital = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);

/** `PV circuits ungrounded, no pole bonded (ARR-E, ARR-W). Verify.` */
function text({ assumption, tags, end }: Told): string {
  const named = tags.length === 0 ? '' : ` (${tagList([...tags].sort(byNaturalOrder))})`;
  return `${assumption.says}${named}. ${end}.`;
}

/** Every fact that was taken for granted, numbered, by what it decides: those first that could turn a result. */
export function assumptionRows(plan: Plan): AssumptionsView {
  const rows = told(plan);
  const runs = runsOf(plan);
  return {
    title: 'Assumptions',
    rows: rows.map((one, index) => ({
      number: numberOf(index),
      text: runs(text(one)),
      grave: DECIDES.indexOf(one.assumption.decides) < GRAVE,
    })),
    none: 'None: the equipment list states every fact that decides.',
  };
}

/** Fields that say how the circuits of a place are grounded, by the current there. */
const GROUNDING: Readonly<Record<'ac' | 'dc' | 'control', string>> = {
  control: OF_CONTROL,
  ac: ofDefault('system_grounding'),
  dc: ofDefault('dc_grounding'),
};

/**
 * Numbers of the assumptions on which the grounding of a place rests.
 * @returns of a protector, those that name what it guards; on DC, where the array or battery that feeds it has none of its own stated,
 * those of the arrays and batteries of the job
 */
export function groundingNumbers(plan: Plan): (protector: PlannedProtector) => string[] {
  const all = told(plan).map(({ tags, stems }, index) => ({ tags, stems, number: numberOf(index) }));
  const isStated = plan.site.equipments.some(({ facts }) =>
    facts.some(({ field }) => field === 'dc_grounding'),
  );
  return ({ required: { current }, ports }) => {
    if (current === null) return [];
    const isControl = ports.every(({ port }) => port === 'terminals');
    const meant = all.filter(({ stems }) => stems.has(GROUNDING[isControl ? 'control' : current]));
    const here = new Set(ports.map(({ equipment }) => equipment));
    const own = meant.filter(({ tags }) => tags.some((tag) => here.has(tag)));
    const isOwn = own.length > 0 || (current === 'ac' && !isControl) || isStated;
    const found = isOwn ? own : meant;
    return found.map(({ number }) => number);
  };
}

/** What an assumption stems from, by why a standing is to be confirmed. */
const STEMS: Readonly<Record<string, readonly string[]>> = {
  'standing/backfeed-unknown': ['choose/backfeed-unknown'],
  'level/near-withstand': ['choose/shortfall', 'choose/may-not-protect'],
  'fault-current/not-stated': ['choose/fault-current-unknown'],
  'listing/turbine-floats': ['rate/turbine-floats'],
  'overcurrent/array-below': [ofDefault('backfeed_a')],
  'overcurrent/by-supply-of-control': ['choose/overcurrent-control'],
  'overcurrent/by-maker-of-turbine': ['choose/overcurrent-turbine'],
};

/** Numbers of the assumptions on which it rests that something is to be confirmed at a protector, by codes of why it is. */
export type AssumptionNumbers = (protector: PlannedProtector, because: readonly string[]) => string[];

/**
 * Numbers of the assumptions of a plan.
 * @returns the assumptions of the protector or of what it guards; where none of them names either, all that stem from the same
 */
export function assumptionNumbers(plan: Plan): AssumptionNumbers {
  const all = told(plan);
  return ({ tag, ports }, because) => {
    const stems = because.flatMap((code) => STEMS[code] ?? []);
    const meant = all.flatMap(({ tags, stems: of }, index) =>
      stems.some((stem) => of.has(stem)) ? [{ number: numberOf(index), tags }] : [],
    );
    const here = new Set([tag, ...ports.map(({ equipment }) => equipment)]);
    const own = meant.filter(({ tags }) => tags.some((one) => here.has(one)));
    return (own.length > 0 ? own : meant).map(({ number }) => number);
  };
}
