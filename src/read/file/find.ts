import { stat } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { STANDARD_INPUT } from './sources.js';

/** The company's files that go with the lists; undefined: none. */
export interface CompanyFiles {
  readonly catalogue: string | undefined;
  readonly library: string | undefined;
  readonly columns: string | undefined;
  readonly settings: string | undefined;
}

const NAMES = {
  catalogue: 'catalogue.csv',
  library: 'library.csv',
  columns: 'columns.json',
  settings: 'settings.json',
} as const;

/** The folder beside whose files the first list lies: the folder itself where it is one; standard input has none. */
async function folderOf(first: string | undefined): Promise<string | null> {
  if (first === undefined || first === STANDARD_INPUT) return null;
  try {
    return (await stat(first)).isDirectory() ? first : dirname(first);
  } catch {
    return dirname(first);
  }
}

async function isFile(path: string): Promise<boolean> {
  try {
    return (await stat(path)).isFile();
  } catch {
    return false;
  }
}

/**
 * Finds the company's files: those given, else those beside the first list, where they exist.
 * @param lists as given on the command line
 * @param given paths by option; a path that is given is taken whether it is there or not (reading it says so)
 */
export async function findCompanyFiles(
  lists: readonly string[],
  given: Partial<CompanyFiles>,
): Promise<CompanyFiles> {
  const folder = await folderOf(lists[0]);
  const find = async (which: keyof CompanyFiles): Promise<string | undefined> => {
    if (given[which] !== undefined) return given[which];
    if (folder === null) return undefined;
    const path = join(folder, NAMES[which]);
    return (await isFile(path)) ? path : undefined;
  };
  return {
    catalogue: await find('catalogue'),
    library: await find('library'),
    columns: await find('columns'),
    settings: await find('settings'),
  };
}
