import type { FileLine } from '../model/fact.js';
import { FIELD_NAMES } from '../model/fields.js';
import { rankOf } from '../model/item-order.js';
import type { Field, JobList, ListRow } from '../model/list.js';
import { byNaturalOrder } from '../model/natural-order.js';
import type { OpenItem } from '../model/open-item.js';
import { ACCEPT } from '../model/questions.js';
import { PLACE_MESSAGES } from '../model/messages/place.js';
import { byGravity } from '../model/words.js';
import { exampleOf } from '../words/questions/examples.js';
import { expectedText, foundText, questionText, type Takes } from '../words/questions/question-words.js';
import { visible } from '../words/visible.js';
import { factAt, isAnswered, rowsByTag, type RowsByTag } from './question-cells.js';

/** A question to whoever can supply a fact, or confirm one; of items alike one question. */
export interface Question extends FileLine {
  readonly job: string;
  /** Tags of rows of the list; none: the job itself, or a file. */
  readonly tags: readonly string[];
  /** ``: none that could be answered. */
  readonly field: Field | '';
  readonly code: string;
  readonly items: readonly OpenItem[];
  readonly question: string;
  readonly found: string;
  readonly expected: string;
  /** An answer that would be taken; ``: none would. */
  readonly example: string;
}

/** Rows by name, the most that one question is about: so many an item names, too. */
const ROWS = 12;

/** Fields by code, of items whose values name none. */
const FIELD_OF: Readonly<Record<string, Field>> = {
  'row/kind-missing': 'kind',
  'row/kind-unclear': 'kind',
};

/** What a value of the field that they are about doesn't settle: rows have to be told apart, joined otherwise or planned by hand. */
const BY_LIST: ReadonlySet<string> = new Set([
  'site/bipolar-array',
  'site/string-twice',
  'site/strings-differ',
  'site/variable-speed-drive',
]);

/** What was said about files of answers and facts is settled there; what a run did to the files of a pack, nowhere. */
const ABOUT_FILES = /^(?:answers|facts)\//;
const OF_RUN = /^(?:batch|photo|print|output|machine)\//;

/**
 * The field that an item is about.
 * @returns `` where it is about none
 */
export function fieldOf(item: OpenItem): Field | '' {
  const named = 'field' in item.values ? item.values.field : undefined;
  const name = item.field ?? named ?? FIELD_OF[item.code];
  return FIELD_NAMES.find((field) => field === name) ?? '';
}

/** An item as far as one question asks it. */
interface Asked {
  readonly item: OpenItem;
  readonly tags: readonly string[];
  readonly field: Field | '';
}

/**
 * The questions that the items of one job ask, those alike as one.
 * @param job `` for items of no job
 * @param list the job as it was read; undefined: there is none
 * @param items of the job
 */
export function questionsOf(
  job: string,
  list: JobList | undefined,
  items: readonly OpenItem[],
): readonly Question[] {
  const rows = rowsByTag(list);
  const groups = new Map<string, Asked[]>();
  const grave = new Set<string>();
  for (const one of items.flatMap((item) => asked(item, rows))) {
    const { item, tags, field } = one;
    const fact = field === '' ? item.code : field;
    const isGrave = item.severity !== 'confirm';
    // One fact is asked for once, whoever asks; what is to be confirmed about it can wait.
    const key = JSON.stringify(isGrave && field !== '' ? [tags, fact] : [tags, fact, item.code]);
    if (isGrave) grave.add(JSON.stringify([tags, fact]));
    const mine = groups.get(key);
    if (mine) mine.push(one);
    else groups.set(key, [one]);
  }
  return [...groups.values()].flatMap((group) => {
    const [first] = group;
    if (first === undefined) return [];
    const isLater = first.item.severity === 'confirm' && grave.has(JSON.stringify([first.tags, first.field]));
    return isLater
      ? []
      : [
          question(
            job,
            list,
            rows,
            first,
            group.map(({ item }) => item),
          ),
        ];
  });
}

/** What an item asks: of many rows, so many at a time. */
function asked(item: OpenItem, rows: RowsByTag): Asked[] {
  if (OF_RUN.test(item.code)) return [];
  const field = fieldOf(item);
  const named = defaultRows(item);
  if (named.length === 0) {
    const tag = rows.tagOf(item.equipment);
    return [{ item, field, tags: tag === undefined || tag === '' ? [] : [tag] }];
  }
  const tags = [...new Set(named.flatMap((tag) => rows.tagOf(tag) ?? []))];
  const parts: Asked[] = [];
  for (let i = 0; i < tags.length; i += ROWS) {
    const part = tags.slice(i, i + ROWS);
    parts.push({ item: ofRows(item, part), field, tags: part });
  }
  return parts;
}

/** All rows that a default stands in for; none of another item, and of a default of the job. */
export function defaultRows({ code, values }: OpenItem): readonly string[] {
  if (code !== PLACE_MESSAGES.defaultsUsed.code) return [];
  const { rows = [] } = values as { rows?: readonly string[] };
  return rows;
}

/** The item of a default as far as it is about some rows. */
export function ofRows(item: OpenItem, tags: readonly string[]): OpenItem {
  return { ...item, equipment: tags[0] ?? '', values: { ...item.values, rows: [...tags] } };
}

function question(
  job: string,
  list: JobList | undefined,
  rows: RowsByTag,
  first: Asked,
  items: readonly OpenItem[],
): Question {
  const { item, tags, field } = first;
  const fact = list === undefined ? undefined : factAt(list, rows, tags, field);
  const takes = takesOf(first, fact !== undefined, fact !== undefined && isAnswered(fact));
  const isValue = takes === 'value' || takes === 'value or accept';
  const row = tags[0] === undefined ? undefined : rows.rowOf(tags[0]);
  return {
    job,
    tags,
    field,
    code: item.code,
    items,
    question: questionText(items, rows.tagOf),
    found: isValue && fact !== undefined ? visible(fact.cell.trim()) : foundText(item),
    expected: expectedText(item, takes, field === '' ? undefined : field),
    example: takes === 'list' ? '' : takes === 'value' ? valueFor(item, field, row, rows) : ACCEPT,
    file: item.file,
    line: item.line,
  };
}

/** What can settle a question; an answer that is part of what is asked about is corrected where it stands. */
function takesOf({ item, tags }: Asked, isFact: boolean, answered: boolean): Takes {
  const { code, severity, equipment } = item;
  const isNamed = equipment === '' || tags.length > 0;
  const byValue = isFact && isNamed && !answered && !BY_LIST.has(code) && !ABOUT_FILES.test(code);
  if (severity !== 'confirm') return byValue ? 'value' : 'list';
  if (!isNamed) return 'list';
  return byValue ? 'value or accept' : 'accept';
}

/** An answer that would be taken: one of those that the item names, another row to connect to, or any of the field. */
function valueFor(item: OpenItem, field: Field | '', row: ListRow | undefined, rows: RowsByTag): string {
  const { values } = item;
  if (field === '') return '';
  if (field === 'kind' && 'kinds' in values && Array.isArray(values.kinds))
    return String(values.kinds[0] ?? '');
  if (field === 'connects_to') return rows.otherThan(item.equipment) ?? exampleOf(field, undefined) ?? '';
  return exampleOf(field, row?.facts.kind?.value) ?? '';
}

/** Compares for a sort that puts the gravest first, and questions alike together, whichever job they are of. */
export function alikeTogether(a: Question, b: Question): number {
  const [x, y] = [a.items[0], b.items[0]];
  const gravity = x && y ? byGravity(x.severity, y.severity) : 0;
  return (
    gravity ||
    rankOf(a.code) - rankOf(b.code) ||
    byNaturalOrder(a.code, b.code) ||
    byNaturalOrder(a.field, b.field) ||
    byNaturalOrder(a.job, b.job) ||
    byNaturalOrder(a.tags[0] ?? '', b.tags[0] ?? '')
  );
}
