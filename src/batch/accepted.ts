import { inOrder } from '../model/item-order.js';
import type { Accepted, JobList } from '../model/list.js';
import { itemAt, note } from '../model/message.js';
import { ANSWER_MESSAGES } from '../model/messages/answers.js';
import type { OpenItem } from '../model/open-item.js';
import type { Plan, PlannedAccepted } from '../model/plan.js';
import { isAskedAlike, questionText } from '../words/questions/question-words.js';
import { visible } from '../words/visible.js';
import { rowsByTag, type RowsByTag } from './question-cells.js';
import { defaultRows, fieldOf, ofRows, questionsOf, type Question } from './questions.js';

/** What one acceptance makes of the items. */
interface Settling {
  readonly left: readonly OpenItem[];
  readonly accepted: readonly OpenItem[];
  /** True where it is asked otherwise than it was accepted. */
  readonly isOther: boolean;
}

/**
 * A plan without what people accepted of what was to be confirmed; papers say by whom and when. What is asked otherwise by now than it
 * was accepted stays open, and a conflict names the answer.
 * @param plan of the job
 * @param list the job as it was read, with what was accepted
 * @returns the same plan where nothing was
 */
export function withAccepted(plan: Plan, list: JobList): Plan {
  const acceptances = list.accepted ?? [];
  if (acceptances.length === 0) return plan;
  const rows = rowsByTag(list);
  let items: readonly OpenItem[] = plan.openItems;
  const accepted: PlannedAccepted[] = [];
  const others: OpenItem[] = [];
  const asked = new Map(questionsOf(list.job, list, items).map((question) => [keyOf(question), question]));
  for (const one of acceptances) {
    const settling =
      one.code === 'default/used'
        ? settleDefault(one, items, rows)
        : settle(one, items, asked.get(keyOf(one)));
    items = settling.left;
    const { by, date } = one;
    accepted.push(...settling.accepted.map((item) => ({ ...item, by, date })));
    if (settling.isOther) others.push(acceptedOther(one));
  }
  const openItems = inOrder([...items, ...others]);
  const submittable = openItems.every(({ severity }) => severity === 'confirm');
  return { ...plan, openItems, submittable, accepted };
}

function acceptedOther({ code, tags, question, file, line, field }: Accepted): OpenItem {
  const p = { code: visible(code), tags: tags.map(visible), asked: visible(question) };
  return itemAt(note(ANSWER_MESSAGES.acceptedOther, p), { file, line, column: '' }, tags[0] ?? '', field);
}

/** What names a question within its job. */
function keyOf({ tags, field, code }: Pick<Question, 'tags' | 'code'> & { readonly field: string }): string {
  return JSON.stringify([[...tags].sort(), field, code]);
}

/** An acceptance of items alike: all of them, or none. */
function settle(one: Accepted, items: readonly OpenItem[], asked: Question | undefined): Settling {
  if (asked === undefined) return { left: items, accepted: [], isOther: false };
  if (!isAskedAlike(one.question, asked.question)) return { left: items, accepted: [], isOther: true };
  const mine = new Set(asked.items);
  return {
    left: items.filter((item) => !mine.has(item)),
    accepted: items.filter((item) => mine.has(item)),
    isOther: false,
  };
}

/** An acceptance of a default for some of the rows that it stands in for: it stays open for the others. */
function settleDefault(one: Accepted, items: readonly OpenItem[], rows: RowsByTag): Settling {
  const tags = new Set(one.tags);
  const left: OpenItem[] = [];
  const accepted: OpenItem[] = [];
  let isOther = false;
  for (const item of items) {
    const named = defaultRows(item);
    const mine = named.filter((tag) => tags.has(rows.tagOf(tag) ?? tag));
    const isMeant =
      item.code === one.code &&
      fieldOf(item) === one.field &&
      (mine.length > 0 || (named.length === 0 && tags.size === 0));
    if (!isMeant) {
      left.push(item);
    } else if (
      !isAskedAlike(one.question, questionText([named.length === 0 ? item : ofRows(item, one.tags)]))
    ) {
      isOther = true;
      left.push(item);
    } else {
      accepted.push(named.length === 0 ? item : ofRows(item, mine));
      const others = named.filter((tag) => !mine.includes(tag));
      if (others.length > 0) left.push(placedAt(ofRows(item, others), rows));
    }
  }
  // Two defaults of one field: what is accepted is the one that reads so.
  return { left, accepted, isOther: isOther && accepted.length === 0 };
}

/** An item at the row that it is about first. */
function placedAt(item: OpenItem, rows: RowsByTag): OpenItem {
  const row = rows.rowOf(rows.tagOf(item.equipment) ?? '');
  return row === undefined ? item : { ...item, file: row.sheet.file, line: row.line };
}
