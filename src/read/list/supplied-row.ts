import type { Field } from '../../model/list.js';
import { itemAt, note } from '../../model/message.js';
import { GIVEN_FACT_MESSAGES } from '../../model/messages/answers.js';
import { visible } from '../../words/visible.js';
import { sameValue } from '../answers/readers.js';
import { answeredFact, goesBefore } from '../answers/take-answer.js';
import { givenFact } from '../answers/given-fact.js';
import type { CellReading } from '../cell/cell-reading.js';
import type { RowInHand } from '../cell/kind-facts.js';
import type { FactColumn } from '../table/fact-columns.js';
import type { JobDraft } from './job-drafts.js';
import type { RowSupply } from './supply.js';

/** The row that takes what was supplied for it. */
export interface SuppliedRow {
  readonly draft: JobDraft;
  readonly tag: string;
  readonly file: string;
  readonly line: number;
  readonly feet: boolean;
}

/**
 * Takes the answer about a cell, where there is one that goes before it.
 * @param cell as its column reads it
 * @returns the reading of the answer; null: the cell itself counts
 */
export function takeAnswer(
  supply: RowSupply | undefined,
  { field, heading }: Pick<FactColumn<Field>, 'field' | 'heading'>,
  cell: { readonly text: string; readonly reading: CellReading },
  { file, line, feet }: SuppliedRow,
  facts: RowInHand,
): CellReading | null {
  const answers: ReadonlyMap<Field, Parameters<typeof goesBefore>[0]> | undefined = supply?.answers;
  const answer = answers?.get(field);
  if (answer === undefined || !goesBefore(answer, { ...cell, file, line, column: heading }, feet))
    return null;
  facts[field] = answeredFact(answer, feet);
  return answer.reading;
}

const BLANK: CellReading = { is: 'blank' };

/**
 * Takes what was supplied for fields that the list has no column for, and the equipment facts that the row doesn't state.
 * @param columns of the list
 * @param refused fields whose cells an item stands for already
 * @returns the reading of a kind that it takes; null: none
 */
export function takeSupplied(
  supply: RowSupply,
  columns: ReadonlySet<Field>,
  refused: ReadonlySet<Field>,
  row: SuppliedRow,
  facts: RowInHand,
): CellReading | null {
  let kind: CellReading | null = null;
  for (const field of supply.answers.keys()) {
    if (columns.has(field) || refused.has(field)) continue;
    const reading = takeAnswer(supply, { field, heading: '' }, { text: '', reading: BLANK }, row, facts);
    if (field === 'kind') kind = reading;
  }
  for (const [field, given] of supply.facts) {
    const own = facts[field];
    if (own === undefined) {
      if (refused.has(field)) continue;
      facts[field] = givenFact(given, row.feet);
      if (field === 'kind') kind = given.reading;
    } else if (own.origin.from === 'list') {
      const fact = givenFact(given, row.feet);
      if (!sameValue(own.value, fact.value)) sayOverridden(row, field, own, fact);
    }
  }
  return kind;
}

type Stated = NonNullable<RowInHand[Field]>;

/**
 * Says that the list states a fact otherwise than the equipment facts.
 * @param own what the list states
 * @param given what isn't used
 */
export function sayOverridden(
  { draft, tag, file, line }: Omit<SuppliedRow, 'feet'>,
  field: Field,
  own: Stated,
  given: Stated,
): void {
  const givenPlace =
    'line' in given.origin
      ? { file: given.origin.file, line: given.origin.line, column: '' }
      : { file: '', line: 0, column: '' };
  const column = 'column' in own.origin ? own.origin.column : '';
  const p = { tag: visible(tag), field, list: visible(own.text), given: visible(given.text), givenPlace };
  draft.items.push(itemAt(note(GIVEN_FACT_MESSAGES.overridden, p), { file, line, column }, tag));
}
