import { isUnsaid, told } from '../../words/messages/told.js';
import { placeText } from '../../words/origin.js';
import { z } from 'zod';
import type { Plan, PlanItem } from '../../model/plan.js';
import { byLead } from '../../model/item-order.js';
import { WHOS } from '../../model/words.js';
import type { Severity, Who } from '../../model/words.js';

export const OpenItemViewSchema = z.object({
  severity: z.string(),
  open: z.boolean(),
  code: z.string(),
  message: z.string(),
  found: z.string(),
  expected: z.string(),
  hint: z.string(),
  where: z.string(),
});

export const OpenItemGroupSchema = z.object({
  who: z.string(),
  heading: z.string(),
  openCount: z.number().int(),
  confirmCount: z.number().int(),
  items: z.array(OpenItemViewSchema),
});
export type OpenItemGroup = z.infer<typeof OpenItemGroupSchema>;

const WHO_HEADINGS: { readonly [W in Who]: string } = {
  office: 'For the office',
  designer: 'For the designer',
  installer: 'For the installer',
  owner: 'For the owner',
  utility: 'For the utility',
  maker: 'For the maker of the equipment',
};
const SEVERITY_TEXT: { readonly [S in Severity]: string } = {
  missing: 'missing',
  conflict: 'conflict',
  confirm: 'to confirm',
};

/** One open item as its table prints it. */
export function openItemView(item: PlanItem): z.infer<typeof OpenItemViewSchema> {
  const { message, found, expected, hint } = told(item);
  return {
    severity: SEVERITY_TEXT[item.severity],
    open: item.severity !== 'confirm',
    code: item.code,
    message,
    found: isUnsaid(found) ? 'nothing' : found,
    expected,
    hint,
    where: placeText(item) || 'no file',
  };
}

/** The open items and those to confirm, grouped by who can supply them; within a group what blocks stands first. */
export function openItemGroups(plan: Plan): OpenItemGroup[] {
  return WHOS.map((who) => {
    const items = plan.openItems.filter((i) => i.who === who).sort(byLead);
    const confirmCount = items.filter((i) => i.severity === 'confirm').length;
    return {
      who,
      heading: WHO_HEADINGS[who],
      openCount: items.length - confirmCount,
      confirmCount,
      items: items.map(openItemView),
    };
  }).filter((group) => group.items.length > 0);
}

/** The items that make the pack a draft, for the cover. */
export function blockingItems(plan: Plan): z.infer<typeof OpenItemViewSchema>[] {
  return plan.openItems.filter((i) => i.severity !== 'confirm').map(openItemView);
}
