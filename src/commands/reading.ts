import type { ColumnMap, OpenItem, ReadResult, Settings } from '../index.js';
import type { CommonOptions, Context } from './context.js';
import { dialectOf, type DialectArguments } from './dialect.js';
import { textOption, textOptions } from './usage.js';

/** The options of a command that reads lists. */
export interface ReadingArguments extends CommonOptions, DialectArguments {
  readonly catalogue?: string | undefined;
  readonly library?: string | undefined;
  readonly columns?: string | undefined;
  readonly settings?: string | undefined;
  readonly jobFacts?: string | undefined;
  readonly answers?: string | readonly string[] | undefined;
  readonly equipmentFacts?: string | readonly string[] | undefined;
  readonly job?: string | undefined;
}

/** Lists as read, with the settings that they were read with. */
export interface Reading {
  readonly read: ReadResult;
  readonly settings: Settings;
  /** The column map and its path; null: none, or one that couldn't be read. */
  readonly map: { readonly path: string; readonly map: ColumnMap } | null;
  /** Items of no job, of all files. */
  readonly items: readonly OpenItem[];
  /** Files that couldn't be read at all. */
  readonly unreadable: readonly OpenItem[];
}

/**
 * Reads lists with the company's files beside them, for commands that plan nothing.
 * @param lists files, folders or `-`
 * @param given the command line
 * @param context where standard input is
 */
export async function readAll(
  lists: readonly string[],
  given: ReadingArguments,
  context: Context,
): Promise<Reading> {
  const { companyPaths, findCompanyFiles, readColumnMap, readLibrary, readLists, readSettings } =
    await import('../index.js');
  const named = Object.entries({
    catalogue: textOption('catalogue', given.catalogue),
    library: textOption('library', given.library),
    columns: textOption('columns', given.columns),
    settings: textOption('settings', given.settings),
  }).filter((entry): entry is [string, string] => entry[1] !== undefined);
  const files = await findCompanyFiles(lists, Object.fromEntries(named));
  const settings = await readSettings(files.settings);
  const map = files.columns === undefined ? undefined : await readColumnMap(files.columns);
  const library =
    files.library === undefined ? undefined : await readLibrary(files.library, settings.settings);
  const read = await readLists({
    lists,
    settings: settings.settings,
    library: library?.unreadable.length === 0 ? library.library : undefined,
    columns: map?.map ?? undefined,
    dialect: dialectOf(given),
    jobFacts: textOption('job-facts', given.jobFacts),
    answers: textOptions('answers', given.answers),
    equipmentFacts: textOptions('equipment-facts', given.equipmentFacts),
    stdinJob: textOption('job', given.job),
    exclude: companyPaths(files),
    stdin: context.stdin,
  });
  return {
    read,
    settings: settings.settings,
    map: files.columns === undefined || !map?.map ? null : { path: files.columns, map: map.map },
    items: [...settings.items, ...(library?.items ?? []), ...read.items],
    unreadable: [
      ...settings.unreadable,
      ...(map?.unreadable ?? []),
      ...(library?.unreadable ?? []),
      ...read.unreadable,
    ],
  };
}
