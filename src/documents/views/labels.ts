import { z } from 'zod';
import type { Plan } from '../../model/plan.js';
import { filled } from '../../text/languages.js';
import type { OwnerStrings } from '../../text/languages/owner-strings.js';
import type { DocumentContext } from '../context.js';
import { lightGroups } from './owner-lights.js';

export const LabelSchema = z.object({
  title: z.string(),
  guards: z.string(),
  lights: z.array(z.object({ state: z.string(), looks: z.string() })),
  hazard: z.string(),
  avoid: z.string(),
  date: z.string(),
});

export const LabelsSchema = z.object({
  language: z.string(),
  style: z.string(),
  title: z.string(),
  warningWord: z.string(),
  words: z.object({ guards: z.string(), lights: z.string(), date: z.string(), draft: z.string() }),
  draft: z.boolean(),
  /** One sheet of labels a page. */
  sheets: z.array(z.object({ number: z.number().int(), heading: z.string(), labels: z.array(LabelSchema) })),
  empty: z.string(),
});
export type LabelsView = z.infer<typeof LabelsSchema>;

/** The view of the sheets of labels, on the grid of the settings. */
export function labelsView(
  plan: Plan,
  context: DocumentContext,
  strings: OwnerStrings,
  style: string,
): LabelsView {
  const { columns, rows } = context.settings.labels;
  const { label } = strings;
  const labels = plan.protectors.map((protector) => ({
    title: filled(label.title, { tag: protector.tag }),
    guards: protector.ports.map((p) => `${p.equipment} ${p.port}`).join(', '),
    lights: lightGroups(plan, protector, strings.states)
      .flatMap((g) => g.states)
      .map((s) => ({
        state: s.state,
        looks: s.lights.map((l) => `${l.number} ${strings.looks[l.look]}`).join(', '),
      })),
    hazard: protector.wiring.fedFromTwoSupplies ? label.twoSuppliesHazard : label.shockHazard,
    avoid: protector.wiring.fedFromTwoSupplies ? label.twoSuppliesAvoid : label.shockAvoid,
    date: context.date,
  }));
  const perSheet = columns * rows;
  const count = Math.ceil(labels.length / perSheet);
  return {
    language: strings.language,
    style,
    title: `Labels, job ${plan.job}`,
    warningWord: strings.warningWord,
    words: { guards: label.guards, lights: label.lights, date: label.date, draft: strings.draftMark },
    draft: !plan.submittable,
    sheets: Array.from({ length: count }, (_, index) => ({
      number: index + 1,
      heading: `Labels ${index + 1}`,
      labels: labels.slice(index * perSheet, (index + 1) * perSheet),
    })),
    empty: strings.introNone.join(' '),
  };
}
