import { z } from 'zod';
import type { Plan, PlannedProtector } from '../../model/plan.js';
import type { IsolationStep } from '../../model/planned-isolation.js';
import { list } from '../../words/figures.js';
import { say } from '../../words/reasons/say.js';

const StepRowSchema = z.object({ number: z.string(), does: z.string(), tags: z.string() });
type StepRow = z.infer<typeof StepRowSchema>;

export const IsolationViewSchema = z.object({
  heading: z.string(),
  /** `` where every source is on the list. */
  unknown: z.string(),
  steps: z.array(StepRowSchema),
  back: z.array(StepRowSchema),
});

export const BoxIsolationViewSchema = z.object({
  unknown: z.boolean(),
  /** What stays live in the protector's own conductors, said before any step. */
  first: z.array(z.string()),
  steps: z.string(),
  /** What else stays live, each with who can make it dead. */
  live: z.array(z.string()),
});

/** How each part of the site is made dead and live again. */
export function isolationViews({ isolation: { parts } }: Plan): z.infer<typeof IsolationViewSchema>[] {
  return parts.map(({ number, unknown, steps, back }) => ({
    heading: parts.length === 1 ? 'Isolation, in order' : `Isolation, in order: part ${number} of the site`,
    unknown: unknown.length === 0 ? '' : `The list does not say what feeds ${list(unknown)}.`,
    steps: steps.flatMap(stepRows),
    back: back.flatMap(stepRows),
  }));
}

/** One row a thing to do, each with the number of its step, since a row is read by itself. */
function stepRows({ number, acts }: IsolationStep): StepRow[] {
  return acts.map(({ does, tags }) => ({
    number: String(number),
    does: say(does),
    tags: tags.length === 0 ? 'all of them' : tags.join(', '),
  }));
}

/** Which of the steps a housing needs, and what stays live there. */
export function boxIsolationView(
  { wiring: { isolation } }: PlannedProtector,
  plan: Plan,
): z.infer<typeof BoxIsolationViewSchema> {
  const { part, steps, live, unknown } = isolation;
  const ofPart = plan.isolation.parts.length > 1 ? `, part ${part ?? ''}` : '';
  const each = list(steps.map(String));
  return {
    unknown: unknown || part === null,
    steps:
      steps.length === 0
        ? 'No step is known: find every source before you start.'
        : `Steps ${each} of section 1${ofPart}, in this order.`,
    first: liveTexts(live.filter(({ here }) => here)),
    live: liveTexts(live.filter(({ here }) => !here)),
  };
}

function liveTexts(live: PlannedProtector['wiring']['isolation']['live']): string[] {
  return live.map(({ what, who }) => `${say(what)}: ${say(who)}.`);
}
