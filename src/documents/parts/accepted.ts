import { z } from 'zod';
import type { Plan } from '../../model/plan.js';
import { told } from '../../words/messages/told.js';
import { placeText } from '../../words/origin.js';
import { acceptedBy } from '../../words/settled.js';

export const AcceptedViewSchema = z.object({
  code: z.string(),
  /** What was to be confirmed. */
  message: z.string(),
  how: z.string(),
  /** Where it is about. */
  where: z.string(),
});

/** What was to be confirmed, and somebody accepted: it is no longer open, and stays to be seen. */
export function acceptedViews(plan: Plan): z.infer<typeof AcceptedViewSchema>[] {
  return (plan.accepted ?? []).map((item) => ({
    code: item.code,
    message: told(item).message,
    how: acceptedBy(item),
    where: placeText(item) || 'no file',
  }));
}
