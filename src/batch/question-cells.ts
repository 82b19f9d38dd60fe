import type { Fact } from '../model/fact.js';
import { FIELDS } from '../model/fields.js';
import type { Field, JobList, ListRow } from '../model/list.js';

/** The rows of a job by tag, and by the tags that a quantity makes of one. */
export interface RowsByTag {
  readonly rowOf: (tag: string) => ListRow | undefined;
  /** The tag of the row that an equipment is of; undefined where no row states it. */
  readonly tagOf: (equipment: string) => string | undefined;
  /** The tag of the first other row. */
  readonly otherThan: (tag: string) => string | undefined;
}

/** Looks up the rows of a job; of none where there is no job. */
export function rowsByTag(list: JobList | undefined): RowsByTag {
  const rows = new Map<string, ListRow>();
  for (const row of list?.rows ?? []) {
    const tag = row.facts.tag?.value;
    if (tag !== undefined && !row.unreadable.has('tag') && !rows.has(tag)) rows.set(tag, row);
  }
  const tagOf = (equipment: string): string | undefined => {
    if (rows.has(equipment)) return equipment;
    const group = /^(.+)-\d+$/s.exec(equipment)?.[1];
    return group !== undefined && rows.has(group) ? group : undefined;
  };
  return {
    rowOf: (tag) => rows.get(tag),
    tagOf,
    otherThan: (tag) => [...rows.keys()].find((other) => other !== (tagOf(tag) ?? tag)),
  };
}

/** A fact that a list can state, as it stands now. */
export interface FactAt {
  /** As the list has it; `` where it is blank, or there is no such column. */
  readonly cell: string;
  readonly fact: Fact<unknown> | undefined;
}

/**
 * What the list says of a field.
 * @param list the job
 * @param tags of the rows; none: the job
 * @returns undefined where no cell could state it
 */
export function factAt(
  list: JobList,
  rows: RowsByTag,
  tags: readonly string[],
  field: Field | '',
): FactAt | undefined {
  if (field === '' || field === 'job' || field === 'tag') return undefined;
  if (FIELDS[field].of === 'job') {
    const facts: { readonly [F in Field]?: Fact<unknown> } = list.facts;
    const fact = facts[field];
    return { fact, cell: list.typed?.[field] ?? (isFrom(fact, ['list', 'job-facts']) ? fact.text : '') };
  }
  const row = tags[0] === undefined ? undefined : rows.rowOf(tags[0]);
  if (row === undefined) return undefined;
  const facts: { readonly [F in Field]?: Fact<unknown> } = row.facts;
  const fact = facts[field];
  // What the word of a kind states beside the kind stands in the cell of the kind.
  const isOwn =
    isFrom(fact, ['list']) && 'column' in fact.origin && fact.origin.column === row.sheet.headings[field];
  return { fact, cell: row.typed?.[field] ?? (isOwn ? fact.text : '') };
}

function isFrom(fact: Fact<unknown> | undefined, from: readonly string[]): fact is Fact<unknown> {
  return fact !== undefined && from.includes(fact.origin.from);
}

/** True for a fact that somebody answered already. */
export function isAnswered({ fact }: FactAt): boolean {
  return isFrom(fact, ['answer']);
}
