import type { Stated } from '../../model/fact.js';
import type { LibraryHeading, RowFacts, RowField } from '../../model/list.js';
import type { OpenItem } from '../../model/open-item.js';
import { defaultSettings, type Settings } from '../../model/settings.js';
import { unstatedBasis } from '../../model/settled.js';
import { itemAt, note } from '../../model/message.js';
import { LIBRARY_MODEL_MISSING, LIBRARY_MODEL_TWICE } from '../../model/messages/company-files.js';
import { modelKey } from '../../words/model-key.js';
import { bareLengthIsFeet } from '../cell/bare-length.js';
import { takeAlsoStated, type AlsoStated, type RowInHand } from '../cell/kind-facts.js';
import { factColumns } from '../table/fact-columns.js';
import { headingIndex } from '../table/headings.js';
import { LIBRARY_VOCABULARY } from '../table/list-vocabulary.js';
import { atOneGo, ROWS_A_STEP, withPauses, type InSteps } from '../file/in-steps.js';
import { readBytes } from '../file/sources.js';
import type { Table } from '../table/table.js';
import { readingTables } from '../table/tables.js';
import { shownPath } from '../../words/shown-path.js';

/** What the library knows of one model. */
export interface LibraryEntry {
  readonly maker: string;
  readonly model: string;
  /** The library, or the sheet of it. */
  readonly file: string;
  readonly line: number;
  readonly facts: Stated<RowFacts>;
}

/** The company's equipment library. */
export interface Library {
  readonly file: string;
  /** By `modelKey` of maker and model. */
  readonly entries: ReadonlyMap<string, LibraryEntry>;
  /** In the order of the file. */
  readonly headings: readonly LibraryHeading[];
}

export interface LibraryReading {
  readonly library: Library;
  readonly items: readonly OpenItem[];
  readonly unreadable: readonly OpenItem[];
}

/**
 * Reads an equipment library.
 * @param path as it was given
 * @param settings for bare numbers; by default those of a company without a settings file
 * @param signal ends the reading
 * @returns the library (empty where it can't be read) and its items; never throws for what stands in the file
 * @throws the reason of the signal that ended it
 */
export async function readLibrary(
  path: string,
  settings: Settings = defaultSettings(),
  signal?: AbortSignal,
): Promise<LibraryReading> {
  const file = await readBytes(path);
  if (!file.ok)
    return {
      library: { file: shownPath(path), entries: new Map(), headings: [] },
      items: [],
      unreadable: [file.item],
    };
  return withPauses(readingLibrary(path, file.bytes, settings), signal);
}

/** As `readLibrary`, from a file's content. */
export function readLibraryText(
  given: string,
  content: Uint8Array | string,
  settings: Settings = defaultSettings(),
): LibraryReading {
  return atOneGo(readingLibrary(given, content, settings));
}

function* readingLibrary(
  given: string,
  content: Uint8Array | string,
  settings: Settings,
): InSteps<LibraryReading> {
  const path = shownPath(given);
  const index = headingIndex<RowField>(LIBRARY_VOCABULARY, new Map());
  const { tables, unreadable, items } = yield* readingTables(path, content, index);
  const found: OpenItem[] = [...items];
  const entries = new Map<string, LibraryEntry>();
  for (const table of tables) yield* takeModels(table, settings, entries, found);
  if (unreadable.length > 0)
    return { library: { file: path, entries: new Map(), headings: [] }, items: [], unreadable };
  const headings: LibraryHeading[] = [];
  for (const { understood } of tables) {
    const before = new Set(headings.map(({ heading }) => heading));
    for (const { heading, field } of understood.columns)
      if (!before.has(heading)) headings.push({ heading, field });
  }
  return { library: { file: path, entries, headings }, items: found, unreadable: [] };
}

/** Takes the models of a table, with an item for every row or cell that can't be used. */
function* takeModels(
  table: Table<RowField>,
  settings: Settings,
  entries: Map<string, LibraryEntry>,
  items: OpenItem[],
): InSteps<void> {
  const { file } = table;
  items.push(...table.grave, ...table.slight, ...table.shifted.values());
  const columns = factColumns<RowField>(table.columns, table.mark, settings, undefined);
  const feet = bareLengthIsFeet(settings, unstatedBasis(settings));
  for (const [r, row] of table.rows.entries()) {
    if (r % ROWS_A_STEP === 0) yield;
    if (table.shifted.has(r)) continue;
    const line = table.lines[r] ?? 0;
    const facts: RowInHand = {};
    let also: AlsoStated | null = null;
    for (const { field, heading, index, read } of columns) {
      const text = row[index] ?? '';
      const cell = read(text);
      if (cell.is === 'blank') continue;
      if (cell.note !== null) items.push(itemAt(cell.note, { file, line, column: heading }));
      if (cell.is === 'wrong') continue;
      const value = feet && cell.feet !== null ? cell.feet : cell.value;
      facts[field] = { value, text, origin: { from: 'library', file, line, column: heading } };
      if (cell.also !== undefined) also = cell.also;
    }
    const stated = facts as Stated<RowFacts>;
    const maker = stated.maker?.value ?? '';
    const model = stated.model?.value ?? '';
    const contradicts = also === null ? null : takeAlsoStated(facts, new Set(), also, `${maker} ${model}`);
    if (contradicts !== null) items.push(itemAt(contradicts, { file, line, column: '' }));
    if (model === '' || maker === '') {
      items.push(itemAt(note(LIBRARY_MODEL_MISSING, {}), { file, line, column: '' }));
      continue;
    }
    const key = modelKey(maker, model);
    const before = entries.get(key);
    if (before !== undefined) {
      const sheet = before.file === file ? '' : before.file;
      const said = note(LIBRARY_MODEL_TWICE, { maker, model, line: before.line, sheet });
      items.push(itemAt(said, { file, line, column: '' }));
      continue;
    }
    entries.set(key, { maker, model, file, line, facts: stated });
  }
}
