import { stat } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { EXIT } from '../../model/exit-status.js';
import { Failure } from '../../model/failure.js';
import { note } from '../../model/message.js';
import { COMMAND_MESSAGES } from '../../model/messages/command.js';
import { STANDARD_INPUT } from './sources.js';
import { WORKBOOK_ENDINGS } from './workbook/workbook.js';

/** The company's files that go with the lists; undefined: none. */
export interface CompanyFiles {
  readonly catalogue: string | undefined;
  readonly library: string | undefined;
  readonly columns: string | undefined;
  readonly settings: string | undefined;
}

const TABLE_ENDINGS = ['.csv', ...WORKBOOK_ENDINGS];

const NAMES: Readonly<Record<keyof CompanyFiles, readonly string[]>> = {
  catalogue: TABLE_ENDINGS.map((ending) => `catalogue${ending}`),
  library: TABLE_ENDINGS.map((ending) => `library${ending}`),
  columns: ['columns.json'],
  settings: ['settings.json'],
};

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
 * @throws Failure (64) where a catalogue or a library is there in two forms: nobody knows which is the true one
 */
export async function findCompanyFiles(
  lists: readonly string[],
  given: Partial<CompanyFiles>,
): Promise<CompanyFiles> {
  const folder = await folderOf(lists[0]);
  const find = async (which: keyof CompanyFiles): Promise<string | undefined> => {
    if (given[which] !== undefined) return given[which];
    if (folder === null) return undefined;
    const found: string[] = [];
    for (const name of NAMES[which]) if (await isFile(join(folder, name))) found.push(name);
    if (found.length > 1)
      throw new Failure(note(COMMAND_MESSAGES.whichFile, { option: which, names: found }), EXIT.usage);
    const [name] = found;
    return name === undefined ? undefined : join(folder, name);
  };
  return {
    catalogue: await find('catalogue'),
    library: await find('library'),
    columns: await find('columns'),
    settings: await find('settings'),
  };
}

/** Those that are there. */
export function companyPaths({ catalogue, library, columns, settings }: CompanyFiles): string[] {
  return [catalogue, library, columns, settings].filter((path) => path !== undefined);
}
