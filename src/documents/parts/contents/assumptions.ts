import { z } from 'zod';
import { byNaturalOrder } from '../../../model/natural-order.js';
import type { Plan, PlannedProtector } from '../../../model/plan.js';
import { DECIDES } from '../../../words/assumptions/assumption-kit.js';
import {
  OF_CONTROL,
  ofDefault,
  planAssumptions,
  type PlanAssumption,
} from '../../../words/assumptions/of-plan.js';
import { tagList } from '../../../words/tag-list.js';
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

/** The first of what assumptions decide, which no reader may overlook. */
const GRAVE = 2;

/** `PV circuits ungrounded, no pole bonded (ARR-E, ARR-W). Verify.` */
function text({ assumption, tags, end }: PlanAssumption): string {
  const named = tags.length === 0 ? '' : ` (${tagList([...tags].sort(byNaturalOrder))})`;
  return `${assumption.says}${named}. ${end}.`;
}

/** Every fact that was taken for granted, numbered, by what it decides: those first that could turn a result. */
export function assumptionRows(plan: Plan): AssumptionsView {
  const rows = planAssumptions(plan);
  const runs = runsOf(plan);
  return {
    title: 'Assumptions',
    rows: rows.map((one) => ({
      number: one.number,
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

/** What gives a DC place its voltage: its grounding is that of the array or battery. */
function sourcesOf({ wiring, required }: PlannedProtector): readonly string[] {
  const { state } = wiring.measuring;
  return required.current === 'dc' && state?.code === 'measure-state/sources-on' ? state.values.sources : [];
}

/**
 * Numbers of the assumptions on which the grounding of a place rests.
 * @returns of a protector, those that name what it guards, or what feeds it with DC; at either end of a control circuit, where none
 * names it, those of control circuits. None of a turbine's own lines, which float.
 */
export function groundingNumbers(plan: Plan): (protector: PlannedProtector) => string[] {
  const all = planAssumptions(plan);
  return (protector) => {
    const { required, ports, grounding } = protector;
    const { current } = required;
    if (current === null || (current === 'ac' && grounding === 'floating')) return [];
    const isControl = ports.every(({ port }) => port === 'terminals');
    const meant = all.filter(({ stems }) => stems.has(GROUNDING[isControl ? 'control' : current]));
    const here = new Set([...ports.map(({ equipment }) => equipment), ...sourcesOf(protector)]);
    const own = meant.filter(({ tags }) => tags.some((tag) => here.has(tag)));
    return (own.length > 0 || !isControl ? own : meant).map(({ number }) => number);
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
  const all = planAssumptions(plan);
  return ({ tag, ports }, because) => {
    const stems = because.flatMap((code) => STEMS[code] ?? []);
    const meant = all.flatMap(({ number, tags, stems: of }) =>
      stems.some((stem) => of.has(stem)) ? [{ number, tags }] : [],
    );
    const here = new Set([tag, ...ports.map(({ equipment }) => equipment)]);
    const own = meant.filter(({ tags }) => tags.some((one) => here.has(one)));
    return (own.length > 0 ? own : meant).map(({ number }) => number);
  };
}
