import { z } from 'zod';
import { byNaturalOrder } from '../../../model/natural-order.js';
import type { Plan } from '../../../model/plan.js';
import { DECIDES, type Assumption } from '../../../words/assumptions/assumption-kit.js';
import { settledAssumed } from '../../../words/assumptions/defaults.js';
import { assumptionOf } from '../../../words/assumptions/told.js';
import { settledBy } from '../../../words/settled.js';
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
  more: number;
  readonly end: string;
}

const VERIFY = 'Verify';
/** The first of what assumptions decide, which no reader may overlook. */
const GRAVE = 2;

function told(plan: Plan): Told[] {
  const found: Told[] = [];
  const add = (assumption: Assumption | 'office', end: string): void => {
    if (assumption === 'office') return;
    const tags = [...assumption.tags, ...tagsAt(plan, assumption.at)];
    const same = found.find(
      (one) =>
        one.assumption.says === assumption.says &&
        one.assumption.decides === assumption.decides &&
        one.end === end,
    );
    if (!same) {
      found.push({ assumption, tags, more: assumption.more, end });
      return;
    }
    same.more += assumption.more;
    for (const tag of tags) if (!same.tags.includes(tag)) same.tags.push(tag);
  };
  for (const item of plan.openItems) if (item.severity === 'confirm') add(assumptionOf(item), VERIFY);
  for (const one of plan.settled) add(settledAssumed(one), capital(settledBy(one)));
  return found;
}

const capital = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);

/** `PV circuits ungrounded, no pole bonded (ARR-E, ARR-W). Verify.` */
function text({ assumption, tags, more, end }: Told): string {
  const named =
    tags.length === 0
      ? ''
      : ` (${tagList([...tags].sort(byNaturalOrder))}${more === 0 ? '' : ` and ${String(more)} more`})`;
  return `${assumption.says}${named}. ${end}.`;
}

/** Every fact that was taken for granted, numbered, by what it decides: those first that could turn a result. */
export function assumptionRows(plan: Plan): AssumptionsView {
  const rank = ({ assumption }: Told): number => DECIDES.indexOf(assumption.decides);
  const rows = told(plan).sort((a, b) => rank(a) - rank(b));
  const runs = runsOf(plan);
  return {
    title: 'Assumptions',
    rows: rows.map((one, index) => ({
      number: `A${String(index + 1)}`,
      text: runs(text(one)),
      grave: DECIDES.indexOf(one.assumption.decides) < GRAVE,
    })),
    none: 'None: the equipment list states every fact that decides.',
  };
}
