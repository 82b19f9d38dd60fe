import { lineOf, type Fact } from '../../model/fact.js';
import { FIELDS } from '../../model/fields.js';
import type { Field, MissingModel, RowField, Sheet } from '../../model/list.js';
import { itemAt, note } from '../../model/message.js';
import {
  LIBRARY_KIND_CONTRADICTS,
  LIBRARY_NEAR,
  LIBRARY_OVERRIDDEN,
} from '../../model/messages/company-files.js';
import { modelKey } from '../../words/model-key.js';
import { byNaturalOrder } from '../../model/natural-order.js';
import { editDistance } from '../../words/closeness.js';
import { visible } from '../../words/visible.js';
import type { JobDraft } from './job-drafts.js';
import type { Library, LibraryEntry } from '../company/library.js';

type Facts = { [F in Field]?: Fact<unknown> };

/** The row that takes facts from the library. */
export interface JoiningRow {
  readonly sheet: Sheet;
  readonly line: number;
  readonly tag: string;
}

/** Fills what a row doesn't state from the library; the list's facts win, and a contradiction is an item. */
export type LibraryJoin = (
  facts: Facts,
  unreadable: ReadonlySet<Field>,
  draft: JobDraft,
  row: JoiningRow,
) => void;

/** A join and the models that it found no entry for. */
export interface Joining {
  readonly join: LibraryJoin;
  readonly missing: () => MissingModel[];
}

interface Wanted {
  readonly maker: string;
  readonly model: string;
  readonly jobs: Set<string>;
  /** As in {@link MissingModel}. */
  readonly near?: string;
}

function sameValue(a: unknown, b: unknown): boolean {
  if (typeof a === 'object' && a !== null) return JSON.stringify(a) === JSON.stringify(b);
  return a === b || (typeof a === 'number' && typeof b === 'number' && Math.abs(a - b) <= 1e-9 * Math.abs(a));
}

/** The columns of an entry that a row may take: all but the two that joined them. */
function takenFrom(entry: LibraryEntry): (readonly [RowField, Fact<unknown>])[] {
  return (Object.entries(entry.facts) as [RowField, Fact<unknown>][]).filter(
    ([field]) => field !== 'maker' && field !== 'model',
  );
}

/**
 * Makes the join of lists with a library.
 * @param library undefined: none was given; then every model that the lists name is missing
 */
export function libraryJoin(library: Library | undefined): Joining {
  const wanted = new Map<string, Wanted>();
  const entries = library?.entries ?? new Map<string, LibraryEntry>();
  const columns = new Map<LibraryEntry, (readonly [RowField, Fact<unknown>])[]>();
  const keys = new Map<string, string>();
  const near = new Map<string, LibraryEntry | null>();

  const join: LibraryJoin = (facts, unreadable, draft, row) => {
    const { maker, model } = facts;
    if (typeof maker?.value !== 'string' || typeof model?.value !== 'string') return;
    const typed = `${maker.value}\n${model.value}`;
    let key = keys.get(typed);
    if (key === undefined) keys.set(typed, (key = modelKey(maker.value, model.value)));
    const entry = entries.get(key);
    if (entry === undefined) {
      if (!near.has(key)) near.set(key, nearestEntry(key, entries));
      const close = near.get(key) ?? null;
      const missing = wanted.get(key) ?? {
        maker: maker.value,
        model: model.value,
        jobs: new Set<string>(),
        ...(close !== null && { near: `${close.maker} ${close.model}` }),
      };
      wanted.set(key, missing);
      if (close !== null && !missing.jobs.has(draft.job)) draft.items.push(nearItem(facts, row, close));
      missing.jobs.add(draft.job);
      return;
    }
    let cells = columns.get(entry);
    if (cells === undefined) columns.set(entry, (cells = takenFrom(entry)));
    for (const [field, fact] of cells) {
      const own = facts[field];
      if (own === undefined) {
        if (!unreadable.has(field)) facts[field] = fact;
      } else if (!sameValue(own.value, fact.value)) {
        contradiction(field, own, fact, draft, row, entry);
      }
    }
  };
  const missing = (): MissingModel[] =>
    [...wanted.values()]
      .map((one) => ({ ...one, jobs: [...one.jobs].sort(byNaturalOrder) }))
      .sort((a, b) => byNaturalOrder(a.maker, b.maker) || byNaturalOrder(a.model, b.model));
  return { join, missing };
}

function contradiction(
  field: RowField,
  own: Fact<unknown>,
  fact: Fact<unknown>,
  draft: JobDraft,
  row: JoiningRow,
  entry: LibraryEntry,
): void {
  if (FIELDS[field].type === 'text') return;
  const place = { file: row.sheet.file, line: row.line, column: row.sheet.headings[field] ?? '' };
  const p = {
    tag: visible(row.tag),
    field,
    list: visible(own.text),
    library: visible(fact.text),
    libraryPlace: lineOf(fact.origin),
    model: visible(`${entry.maker} ${entry.model}`),
  };
  draft.items.push(
    itemAt(
      field === 'kind' ? note(LIBRARY_KIND_CONTRADICTS, p) : note(LIBRARY_OVERRIDDEN, p),
      place,
      row.tag,
    ),
  );
}

/** The entry that a slip of the hand away: one in the model, two in the maker, or the same model of no maker that is known. */
function nearestEntry(key: string, entries: ReadonlyMap<string, LibraryEntry>): LibraryEntry | null {
  const [maker = '', model = ''] = key.split('\n');
  for (const [other, entry] of entries) {
    const [otherMaker = '', otherModel = ''] = other.split('\n');
    if (model !== '' && model === otherModel) return entry;
    if (
      model.length > 2 &&
      editDistance(model, otherModel, 1) <= 1 &&
      editDistance(maker, otherMaker, 2) <= 2
    )
      return entry;
  }
  return null;
}

function nearItem(facts: Facts, row: JoiningRow, close: LibraryEntry): ReturnType<typeof itemAt> {
  const place = { file: row.sheet.file, line: row.line, column: row.sheet.headings.model ?? '' };
  const model = visible(`${facts.maker?.text ?? ''} ${facts.model?.text ?? ''}`);
  const p = {
    tag: visible(row.tag),
    model,
    near: visible(`${close.maker} ${close.model}`),
    nearPlace: { file: close.file, line: close.line, column: '' },
  };
  return itemAt(note(LIBRARY_NEAR, p), place, row.tag);
}
