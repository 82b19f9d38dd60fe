import { z } from 'zod';
import { editionOf, isNec, type Basis } from '../../model/editions.js';
import type { Plan } from '../../model/plan.js';
import type { CrewPackWords } from '../../words/languages/crew-pack-words.js';
import type { AsBuiltWords } from '../../words/languages/as-built-words.js';
import type { AsBuilt } from '../parts/as-built.js';
import type { DocumentContext } from '../parts/context.js';

export const CoverSchema = z.object({
  heading: z.string(),
  logo: z.string().regex(/^(data:image\/(png|jpeg|svg\+xml);base64,[A-Za-z0-9+/=]+)?$/),
  company: z.string().describe('Its name, for the logo'),
  facts: z.array(z.object({ name: z.string(), text: z.string() })).describe('Job, address, code, company'),
  /** `` where the pack is no draft. */
  draft: z.object({ says: z.string(), does: z.string() }).nullable(),
  made: z
    .object({ says: z.string(), grave: z.boolean() })
    .describe('How far the work is; grave while it is open'),
  deference: z.string().describe('The sentence that defers to local code, authority and licensed practice'),
});
export type CoverView = z.infer<typeof CoverSchema>;

/** What a basis is called on the crew’s pages. */
export function codeName(basis: Basis, { cover: { bases } }: CrewPackWords): string {
  return isNec(basis) ? bases.nec(editionOf(basis)) : bases.iec;
}

/** The code of a job; said to be assumed where nobody states it. */
function codeText(plan: Plan, words: CrewPackWords): string {
  const { cover } = words;
  const own = codeName(plan.basis, words);
  const text = plan.basis === 'iec' ? `${own}, ${cover.earthing(plan.earthing)}` : own;
  return plan.facts.some(({ field }) => field === 'basis') ? text : cover.assumed(text);
}

/** How far the work is, in a sentence. */
function madeText(built: AsBuilt | undefined, { states }: AsBuiltWords): string {
  if (built === undefined) return states.planned;
  const { made, open, deviations } = built;
  const of = (severity: 'missing' | 'conflict'): number =>
    open.filter((item) => item.severity === severity).length;
  switch (made) {
    case 'planned':
      return states.planned;
    case 'open':
      return states.open(of('missing'), of('conflict'));
    case 'built':
      return states.built;
    case 'deviating':
      return states.deviating(deviations);
  }
}

/** Who did the work, and when; `` where nobody says. */
function doneBy(built: AsBuilt | undefined): string {
  const days = new Map<string, Set<string>>();
  for (const { name, date } of built?.housings.values() ?? []) {
    if (name === '') continue;
    const known = days.get(name) ?? new Set();
    days.set(name, date === '' ? known : known.add(date));
  }
  return Array.from(days, ([name, on]) => [name, ...[...on].sort()].join(', ')).join('; ');
}

/** What the cover says of the job. */
export function coverView(
  plan: Plan,
  context: DocumentContext,
  words: CrewPackWords,
  built: AsBuilt | undefined,
  own: AsBuiltWords,
): CoverView {
  const { cover, notStated } = words;
  const { company } = context.settings;
  const stated = (text: string): string => (text === '' ? notStated : text);
  const missing = plan.openItems.filter(({ severity }) => severity !== 'confirm').length;
  const called = [company.name, company.address, company.phone, company.email].filter((one) => one !== '');
  const facts: readonly (readonly [name: string, text: string])[] = [
    [cover.job, plan.jobName === '' ? plan.job : `${plan.job}, ${plan.jobName}`],
    [cover.address, stated(plan.address.replaceAll('\n', ', '))],
    [cover.code, codeText(plan, words)],
    [cover.revision, plan.revision],
    [cover.date, context.date],
    [cover.company, called.join(', ')],
    [cover.licence, company.licence],
    [own.done, doneBy(built)],
  ];
  return {
    heading: cover.heading,
    logo: context.logo ?? '',
    company: company.name,
    facts: facts.filter(([, text]) => text !== '').map(([name, text]) => ({ name, text })),
    draft: plan.submittable ? null : { says: cover.draft(missing), does: cover.draftDo },
    made: { says: madeText(built, own), grave: built?.made === 'open' },
    deference: cover.deference,
  };
}
