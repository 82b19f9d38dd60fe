import { readdir, readFile, stat } from 'node:fs/promises';
import { basename, extname, join, resolve } from 'node:path';
import type { OpenItem } from '../../model/open-item.js';
import {
  FILE_NOT_READABLE,
  FILE_NOT_THERE,
  FILES_NOT_READ,
  FOLDER_WITHOUT_LISTS,
} from '../../model/messages/list-file.js';
import { itemAt, note, type MessageKind } from '../../model/message.js';
import { byNaturalOrder } from '../../model/natural-order.js';
import { WORKBOOK_ENDINGS } from './workbook/workbook.js';
import { shownPath } from '../../words/shown-path.js';
import { visible } from '../../words/visible.js';

/** The name of standard input on the command line and in messages. */
export const STANDARD_INPUT = '-';
const LIST_ENDINGS = new Set(['.csv', '.tsv', '.txt', ...WORKBOOK_ENDINGS]);

/** A file's bytes, or why there are none. */
export type FileReading =
  { readonly ok: true; readonly bytes: Uint8Array } | { readonly ok: false; readonly item: OpenItem };

function at<P extends object>(entry: MessageKind<P>, p: P, file: string): OpenItem {
  return itemAt(note(entry, p), { file, line: 0, column: '' });
}

function failure(error: unknown): { readonly code: string; readonly message: string } {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  const words = new Map([
    ['EACCES', 'it may not be read'],
    ['EISDIR', 'it is a folder'],
    ['EPERM', 'it may not be read'],
  ]);
  return {
    code,
    message: words.get(code) ?? (code === '' ? 'it cannot be read' : `the system says ${code}`),
  };
}

function notRead(error: unknown, given: string): OpenItem {
  const { code, message } = failure(error);
  const path = shownPath(given);
  return code === 'ENOENT' || code === 'ENOTDIR'
    ? at(FILE_NOT_THERE, { path }, path)
    : at(FILE_NOT_READABLE, { path, because: message }, path);
}

/**
 * Reads a file.
 * @param path as it was given
 * @returns its bytes, or the item that says why not; never throws
 */
export async function readBytes(path: string): Promise<FileReading> {
  try {
    return { ok: true, bytes: await readFile(path) };
  } catch (error) {
    return { ok: false, item: notRead(error, path) };
  }
}

/** The files that LIST arguments name, in order, each once. */
export interface ListFiles {
  readonly files: readonly string[];
  readonly unreadable: readonly OpenItem[];
  /** Files of the folders that are no lists by their endings. */
  readonly items: readonly OpenItem[];
}

/** What spreadsheet programs put beside a workbook that someone has open: no file of anyone’s. */
const PASSED_OVER = /^(?:~\$|\.~lock)/;

const isList = (name: string): boolean => LIST_ENDINGS.has(extname(name).toLowerCase());

/**
 * Turns LIST arguments into files: a folder gives its lists in natural order, not those below it; what else lies in it is told.
 * @param lists files, folders or `-`, as given
 * @param exclude files that a folder must not give, and that are read all the same: catalogue, library, job facts, settings
 */
export async function listFiles(lists: readonly string[], exclude: readonly string[]): Promise<ListFiles> {
  const files: string[] = [];
  const unreadable: OpenItem[] = [];
  const seen = new Set<string>();
  const others: string[] = [];
  const left = new Set(exclude.map((path) => resolve(path)));
  const add = (path: string): void => {
    const key = path === STANDARD_INPUT ? path : resolve(path);
    if (!seen.has(key)) files.push(path);
    seen.add(key);
  };
  for (const path of lists) {
    if (path === STANDARD_INPUT) {
      add(path);
      continue;
    }
    const names = await namesIn(path);
    if (names === null) {
      add(path);
      continue;
    }
    if ('code' in names) {
      unreadable.push(names);
      continue;
    }
    const files = names
      .filter((name) => !PASSED_OVER.test(name))
      .map((name) => join(path, name))
      .filter((file) => !left.has(resolve(file)));
    const inside = files.filter(isList);
    others.push(...files.filter((file) => !isList(file)));
    if (inside.length === 0)
      unreadable.push(at(FOLDER_WITHOUT_LISTS, { path: shownPath(path) }, shownPath(path)));
    for (const file of inside) add(file);
  }
  return { files, unreadable, items: notLists(others.filter((file) => !seen.has(resolve(file)))) };
}

/** One item for all that isn't read. */
function notLists(files: readonly string[]): OpenItem[] {
  const [first] = files;
  if (first === undefined) return [];
  const p = { names: files.map((file) => visible(shownPath(file))), endings: [...LIST_ENDINGS] };
  return [at(FILES_NOT_READ, p, shownPath(first))];
}

/** The names in a folder in natural order; null: it is no folder. */
async function namesIn(path: string): Promise<string[] | OpenItem | null> {
  try {
    if (!(await stat(path)).isDirectory()) return null;
    const entries = await readdir(path, { withFileTypes: true });
    return (
      entries
        // A pipe is read where it is named, and nowhere else: it may never end.
        .filter((e) => e.isFile() || e.isSymbolicLink())
        .map((e) => e.name)
        .sort(byNaturalOrder)
    );
  } catch (error) {
    return notRead(error, path);
  }
}

/**
 * The job of a list without a job column: the file's name without its ending.
 * @param file as given; `-` is standard input
 * @param stdinJob the job given for standard input
 */
export function jobOfFile(file: string, stdinJob?: string): string {
  if (file === STANDARD_INPUT) return stdinJob ?? 'stdin';
  const name = basename(file);
  return isList(name) ? name.slice(0, -extname(name).length) : name;
}
