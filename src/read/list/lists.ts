import type { Field, JobField, JobList, MissingModel, RowField, Sheet } from '../../model/list.js';
import type { OpenItem } from '../../model/open-item.js';
import type { Settings } from '../../model/settings.js';
import { itemAt, note } from '../../model/message.js';
import { FIGURES_LEFT_OUT } from '../../model/messages/list.js';
import { NO_ROWS } from '../../model/messages/list-file.js';
import { TAG_HEADING_MISSING } from '../../model/messages/list-heading.js';
import type { LeftOut } from '../table/body.js';
import type { Column } from '../table/columns.js';
import { factColumns, type FactColumn } from '../table/fact-columns.js';
import { headingIndex } from '../table/headings.js';
import { shownPaths } from '../../words/shown-path.js';
import { finishJobs, takeJobFacts, type JobDraft, type JobDrafts } from './job-drafts.js';
import { takeJobFactsFile } from './job-facts.js';
import { jobsOfRows } from './jobs-of-rows.js';
import { decimalsUnsure } from './decimal-unsure.js';
import type { ListOptions, NamedContent } from './list-options.js';
import type { OpenList } from './open-list.js';
import { libraryJoin, type LibraryJoin } from './library-join.js';
import { takeRow, takeShiftedRow, type RowColumns } from './list-rows.js';
import { finishSupply, isInFeet, readingSupply } from './reading-supply.js';
import type { Supply } from './supply.js';
import { isJobField, isRowField, LIST_VOCABULARY } from '../table/list-vocabulary.js';
import { atOneGo, ROWS_A_STEP, withPauses, type InSteps } from '../file/in-steps.js';
import { jobOfFile, listFiles, readBytes, STANDARD_INPUT } from '../file/sources.js';
import type { Table, Understood } from '../table/table.js';
import { readingTables } from '../table/tables.js';
import { wordsOfCells } from '../table/words-of-cells.js';

/** Lists to read, and what to read them with. */
export interface ReadOptions extends ListOptions {
  /** Files, folders or `-`. */
  readonly lists: readonly string[];
  /** Path of the CSV of job facts. */
  readonly jobFacts?: string | undefined;
  /** Paths of files of answers, in their order. */
  readonly answers?: readonly string[] | undefined;
  /** Paths of files of equipment facts and of cable schedules, in their order. */
  readonly equipmentFacts?: readonly string[] | undefined;
  /** Files that a folder must not give as lists, and that are read all the same: catalogue, library, settings. */
  readonly exclude?: readonly string[] | undefined;
  readonly stdin?: (() => Promise<Uint8Array>) | undefined;
  /** Ends the reading. */
  readonly signal?: AbortSignal | undefined;
}

/** How many lists there were. */
export interface ListCount {
  /** Those that were named or found in a folder, whether they could be read or not. */
  readonly all: number;
  readonly unreadable: number;
}

/** Everything that was read. */
export interface ReadResult {
  readonly lists: ListCount;
  /** In natural order of their ids. */
  readonly jobs: readonly JobList[];
  /** Items of no job. */
  readonly items: readonly OpenItem[];
  /** Lists that couldn't be read at all. */
  readonly unreadable: readonly OpenItem[];
  readonly missingModels: readonly MissingModel[];
  readonly understood: readonly Understood[];
}

/**
 * Reads equipment lists and job facts into jobs. A list that can't be read doesn't keep the others from being read.
 * @param options what to read, and with what
 * @returns jobs and items; never throws for what stands in a file
 * @throws the reason of the signal that ended it
 */
export async function readLists(options: ReadOptions): Promise<ReadResult> {
  const { files, unreadable, items } = await listFiles(options.lists, [
    ...(options.exclude ?? []),
    ...(options.jobFacts === undefined ? [] : [options.jobFacts]),
    ...(options.answers ?? []),
    ...(options.equipmentFacts ?? []),
  ]);
  const failed: OpenItem[] = [...unreadable];
  const contents: NamedContent[] = [];
  for (const name of files) {
    options.signal?.throwIfAborted();
    if (name === STANDARD_INPUT && options.stdin !== undefined) {
      contents.push({ name, content: await options.stdin() });
      continue;
    }
    const reading = await readBytes(name);
    if (reading.ok) contents.push({ name, content: reading.bytes });
    else failed.push(reading.item);
  }
  const unopened = failed.length;
  const named = async (paths: readonly string[]): Promise<NamedContent[]> => {
    const read: NamedContent[] = [];
    for (const name of paths) {
      const reading = await readBytes(name);
      if (reading.ok) read.push({ name, content: reading.bytes });
      else failed.push(reading.item);
    }
    return read;
  };
  const [jobFacts] = await named(options.jobFacts === undefined ? [] : [options.jobFacts]);
  const answers = await named(options.answers ?? []);
  const equipmentFacts = await named(options.equipmentFacts ?? []);
  const beside = { jobFacts, answers, equipmentFacts };
  const result = await withPauses(readingContents(contents, options, beside), options.signal);
  const { all, unreadable: unread } = result.lists;
  return {
    ...result,
    items: [...items, ...result.items],
    lists: { all: all + unopened, unreadable: unread + unopened },
    unreadable: [...failed, ...result.unreadable],
  };
}

/**
 * Reads one list from memory.
 * @param name as messages shall call it; without a job column the job is this name without its ending
 * @param content the list
 * @param options what to read it with
 */
export function readListText(name: string, content: Uint8Array | string, options: ListOptions): ReadResult {
  return readListContents([{ name, content }], options);
}

/**
 * Reads lists and job facts from memory: first the jobs and their facts, since a job's basis says what a bare length means, then the rows.
 */
export function readListContents(
  contents: readonly NamedContent[],
  options: ListOptions,
  jobFacts?: NamedContent,
  more: Omit<Beside, 'jobFacts'> = {},
): ReadResult {
  return atOneGo(readingContents(contents, options, { ...more, jobFacts }));
}

/** What is read beside the lists. */
interface Beside {
  readonly jobFacts?: NamedContent | undefined;
  readonly answers?: readonly NamedContent[];
  readonly equipmentFacts?: readonly NamedContent[];
}

function* readingContents(
  contents: readonly NamedContent[],
  options: ListOptions,
  { jobFacts, answers = [], equipmentFacts = [] }: Beside,
): InSteps<ReadResult> {
  const index = headingIndex(LIST_VOCABULARY, new Map(Object.entries(options.columns?.columns ?? {})));
  const drafts: JobDrafts = new Map();
  const items: OpenItem[] = [];
  const unreadable: OpenItem[] = [];
  const lists: OpenList[] = [];
  const count = { all: contents.length, unreadable: 0 };
  const understood: Understood[] = [];
  const beside = [...(jobFacts === undefined ? [] : [jobFacts]), ...answers, ...equipmentFacts];
  const names = shownPaths([...contents, ...beside].map((c) => c.name));
  const besideNames = names.slice(contents.length);
  for (const [i, { name, content }] of contents.entries()) {
    const job = jobOfFile(name, options.stdinJob);
    yield;
    const shown = names[i] ?? '';
    const before = lists.length;
    const dialect = options.columns?.dialect;
    const read = yield* readingTables(shown, content, index, dialect, options.dialect);
    unreadable.push(...read.unreadable);
    items.push(...read.items);
    // Also of a list that can't be used: its headings are what a column map is made from.
    understood.push(...read.unknown);
    for (const table of read.tables) {
      understood.push({ ...table.understood, words: wordsOfCells(table, options.settings, options.columns) });
      const jobOfAll = read.tables.length > 1 && table.sheet !== null ? table.sheet : job;
      const list = yield* openList(table, jobOfAll, options, drafts);
      if ('code' in list) {
        unreadable.push(list);
        continue;
      }
      items.push(...list.table.slight);
      lists.push(list);
    }
    if (lists.length === before) count.unreadable += 1;
  }
  if (jobFacts !== undefined) {
    const taken = yield* takeJobFactsFile({ ...jobFacts, name: besideNames.shift() ?? '' }, drafts, options);
    items.push(...taken.items);
    unreadable.push(...taken.unreadable);
  }
  const named = (files: readonly NamedContent[]): NamedContent[] =>
    files.map((file) => ({ ...file, name: besideNames.shift() ?? '' }));
  const given = yield* readingSupply(named(answers), named(equipmentFacts), lists, drafts, options);
  items.push(...given.items);
  unreadable.push(...given.unreadable);
  const library = libraryJoin(options.library);
  for (const list of lists) yield* takeRows(list, options.settings, library.join, given.supply);
  finishSupply(given.supply, drafts, options.settings);
  items.push(...decimalsUnsure(drafts.values()));
  const missingModels = library.missing();
  return { lists: count, jobs: finishJobs(drafts), items, unreadable, missingModels, understood };
}

function sheetOf(file: string, columns: readonly Column<Field>[]): Sheet {
  const headings: { [F in Field]?: string } = {};
  for (const { field, heading } of columns) headings[field] = heading;
  return { file, headings };
}

/** Reads a list's jobs and their facts; `jobOfAll` is the job of all its rows where it has no job column. */
function* openList(
  table: Table<Field>,
  jobOfAll: string,
  options: ListOptions,
  drafts: JobDrafts,
): InSteps<OpenList | OpenItem> {
  const name = table.file;
  if (table.rows.length === 0) {
    return (
      table.grave[0] ??
      itemAt(note(NO_ROWS, { path: name }), { file: name, line: table.headingLine, column: '' })
    );
  }
  const jobRefused = table.refused.get('job');
  if (jobRefused !== undefined) return jobRefused;
  const readers = factColumns(table.columns, table.mark, options.settings, options.columns);
  const sheet = sheetOf(name, table.columns);
  const jobs = jobsOfRows(table, readers.find((c) => c.field === 'job') ?? null, jobOfAll, sheet, drafts);
  const tag = readers.find((c): c is FactColumn<RowField> => c.field === 'tag') ?? null;
  const grave = [...table.grave];
  if (tag === null && !table.refused.has('tag'))
    grave.push(itemAt(note(TAG_HEADING_MISSING, {}), { file: name, line: table.headingLine, column: '' }));
  for (const draft of new Set(jobs)) {
    for (const item of grave) draft.items.push(item);
    for (const cell of table.lostCells) draft.lost.push(cell);
    for (const field of table.refused.keys()) if (isJobField(field)) draft.unreadable.add(field);
  }
  const jobColumns = readers.filter((c): c is FactColumn<JobField> => isJobField(c.field));
  for (const [r, draft] of jobs.entries()) {
    if (r % ROWS_A_STEP === 0) yield;
    const shifted = table.shifted.get(r);
    if (shifted !== undefined) {
      draft.items.push(shifted);
      const name = tag === null ? '' : (table.rows[r]?.[tag.index] ?? '');
      // What names the row by its tag without the mark is no second fault.
      if (name.includes('"')) draft.lost.push(name.replaceAll('"', '').trim());
    } else takeJobFacts(draft, jobColumns, table.rows[r] ?? [], 'list', name, table.lines[r] ?? 0);
  }
  sayFiguresLeftOut(table, jobs);
  const others = readers.filter((c): c is FactColumn<RowField> => isRowField(c.field) && c.field !== 'tag');
  const refused = new Set<Field>([...table.refused.keys()].filter(isRowField));
  return { table, jobs, columns: { sheet, file: name, tag, others, refused, tagSaid: tag === null } };
}

/** Tells each job which records that were taken for totals stand among its rows and hold figures. */
function sayFiguresLeftOut({ figuresLeftOut, file }: Table<Field>, jobs: readonly JobDraft[]): void {
  const byJob = new Map<JobDraft, LeftOut[]>();
  for (const out of figuresLeftOut) {
    const draft = jobs[out.row - 1] ?? jobs[out.row];
    if (draft !== undefined) byJob.set(draft, [...(byJob.get(draft) ?? []), out]);
  }
  for (const [draft, outs] of byJob) {
    const [first] = outs;
    const said = note(FIGURES_LEFT_OUT, { lines: outs.map((o) => o.line), found: first?.text ?? '' });
    draft.items.push(itemAt(said, { file, line: first?.line ?? 0, column: '' }));
  }
}

/** True where a row states nothing but facts of its job. */
function isJobOnly(row: readonly string[], columns: RowColumns): boolean {
  const says = (index: number): boolean => (row[index] ?? '') !== '' && row[index]?.trim() !== '';
  return !(columns.tag !== null && says(columns.tag.index)) && !columns.others.some((c) => says(c.index));
}

function* takeRows(
  { table, columns, jobs }: OpenList,
  settings: Settings,
  library: LibraryJoin,
  supply: Supply | undefined,
): InSteps<void> {
  let last: JobDraft | null = null;
  let feet = false;
  for (const [r, draft] of jobs.entries()) {
    if (r % ROWS_A_STEP === 0) yield;
    if (draft !== last) {
      last = draft;
      feet = isInFeet(draft, settings);
    }
    const row = table.rows[r] ?? [];
    const line = table.lines[r] ?? 0;
    if (table.shifted.has(r)) takeShiftedRow(columns, row, line, draft);
    else if (!isJobOnly(row, columns)) takeRow(columns, row, line, draft, feet, library, supply);
  }
}
