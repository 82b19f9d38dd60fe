import type { Fact } from '../../model/fact.js';
import type { ListRow } from '../../model/list.js';
import { itemAt, note } from '../../model/message.js';
import { GIVEN_FACT_MESSAGES } from '../../model/messages/answers.js';
import { visible } from '../../words/visible.js';
import { givenFact, type Cable, type GivenFact } from '../answers/given-fact.js';
import { sameValue } from '../answers/readers.js';
import type { JobDraft } from './job-drafts.js';
import { sayOverridden } from './supplied-row.js';

/** The lengths that a schedule gives for one row, by the place of what the row connects to. */
type Lengths = Map<number, GivenFact>;

const tagOf = ({ facts }: ListRow): string => facts.tag?.value ?? '';

/** The place of a tag among those that a row connects to; -1: it isn't there. */
function placeIn({ facts }: ListRow, tag: string): number {
  return (
    facts.connects_to?.value.each.findIndex(({ whole, tag: part }) => whole === tag || part === tag) ?? -1
  );
}

/**
 * Gives the rows of a job the lengths of a cable schedule: each belongs to the row that names the other end. A length that the list
 * states goes before.
 * @param draft the job, all its rows read
 * @param cables of the job
 * @param feet a bare length is in feet
 */
export function takeCables(draft: JobDraft, cables: readonly Cable[], feet: boolean): void {
  if (cables.length === 0) return;
  const byTag = new Map<string, number>();
  for (const [index, row] of draft.rows.entries()) if (!byTag.has(tagOf(row))) byTag.set(tagOf(row), index);
  const lengths = new Map<number, Lengths>();
  for (const cable of cables) {
    const owner = ownerOf(draft, byTag, cable);
    if (owner === null) {
      const p = { from: visible(cable.from), to: visible(cable.to), length: visible(cable.length.text) };
      draft.items.push(itemAt(note(GIVEN_FACT_MESSAGES.noConnection, p), cable.length.origin));
      continue;
    }
    const mine = lengths.get(owner.row) ?? new Map<number, GivenFact>();
    lengths.set(owner.row, mine);
    const first = mine.get(owner.place);
    if (first === undefined) mine.set(owner.place, cable.length);
    else sayDiffers(draft, owner.row, first, cable.length, feet);
  }
  for (const [index, mine] of lengths) {
    const row = draft.rows[index];
    if (row !== undefined) draft.rows[index] = withLengths(draft, row, mine, feet);
  }
}

/** The row that a cable belongs to; null: neither end names the other. */
function ownerOf(
  { rows }: JobDraft,
  byTag: ReadonlyMap<string, number>,
  { from, to }: Cable,
): { readonly row: number; readonly place: number } | null {
  for (const [own, other] of [
    [from, to],
    [to, from],
  ] as const) {
    const index = byTag.get(own);
    const row = index === undefined ? undefined : rows[index];
    const place = row === undefined ? -1 : placeIn(row, other);
    if (index !== undefined && place >= 0) return { row: index, place };
  }
  return null;
}

/** Two cables between the same rows, as there are in parallel, have one length; else it isn't known which is meant. */
function sayDiffers(
  draft: JobDraft,
  index: number,
  first: GivenFact,
  second: GivenFact,
  feet: boolean,
): void {
  if (sameValue(givenFact(first, feet).value, givenFact(second, feet).value)) return;
  const row = draft.rows[index];
  const tag = row === undefined ? '' : tagOf(row);
  const p = {
    tag: visible(tag),
    field: 'run_length',
    first: visible(first.text),
    firstPlace: { ...first.origin, column: '' },
    second: visible(second.text),
  };
  draft.items.push(itemAt(note(GIVEN_FACT_MESSAGES.differ, p), second.origin, tag));
}

function withLengths(draft: JobDraft, row: ListRow, lengths: Lengths, feet: boolean): ListRow {
  const targets = row.facts.connects_to?.value.each ?? [];
  const lacks = targets.filter((_, place) => !lengths.has(place)).map(({ whole }) => visible(whole));
  const ordered = [...lengths].sort(([a], [b]) => a - b).map(([, length]) => length);
  const [first] = ordered;
  if (first === undefined || row.unreadable.has('run_length')) return row;
  const tag = tagOf(row);
  const own = row.facts.run_length;
  if (lacks.length > 0) {
    if (own === undefined)
      draft.items.push(
        itemAt(
          note(GIVEN_FACT_MESSAGES.cablesShort, { tag: visible(tag), lacks }),
          first.origin,
          tag,
          'run_length',
        ),
      );
    return row;
  }
  const facts = ordered.map((length) => givenFact(length, feet));
  const value = facts.flatMap((fact) => (Array.isArray(fact.value) ? (fact.value as number[]) : []));
  const text = ordered.map((length) => length.text.trim()).join('; ');
  const given: Fact<readonly number[]> = {
    value,
    text,
    origin: { from: 'equipment-facts', ...first.origin },
  };
  if (own === undefined) return { ...row, facts: { ...row.facts, run_length: given } };
  const at = { draft, tag, file: row.sheet.file, line: row.line };
  if (own.origin.from === 'list' && !isEveryLength(own.value, value))
    sayOverridden(at, 'run_length', own, given);
  return row;
}

/** One length stands for each. */
function isEveryLength(own: readonly number[], given: readonly number[]): boolean {
  return given.every((length, i) => sameValue(own.length === 1 ? own[0] : own[i], length));
}
