import { createHash } from 'node:crypto';
import { readdir, stat } from 'node:fs/promises';
import { dirname, extname, join, resolve } from 'node:path';
import { itemAt, note } from '../model/message.js';
import { RECORD_MESSAGES } from '../model/messages/record.js';
import { byNaturalOrder } from '../model/natural-order.js';
import type { OpenItem } from '../model/open-item.js';
import type { FormRow } from '../model/site-form-rows.js';
import { withPauses } from '../read/file/in-steps.js';
import { readBytes } from '../read/file/sources.js';
import { formRows } from '../read/record/form-rows.js';
import { shownPath, shownPaths } from '../words/shown-path.js';
import { pdfFormRows } from './pdf-form-rows.js';

/** A file that came back. */
export interface FormFile {
  /** As messages name it. */
  readonly file: string;
  readonly sha256: string;
  /** The folder that it lies in: photos lie beside it. */
  readonly folder: string;
  readonly rows: readonly FormRow[];
}

/** What came back. */
export interface FormFiles {
  readonly files: readonly FormFile[];
  readonly items: readonly OpenItem[];
  readonly unreadable: readonly OpenItem[];
}

/** Names of our forms in a folder, those that stand beside one that was filled in among them; workbooks of any name. */
const OURS =
  /^(?:site-(?:record|readings|facts)(?:[ ._-].*)?\.(?:csv|tsv|txt|pdf)|deviations.*\.(?:csv|tsv|txt)|.*\.(?:xlsx|xlsm|ods))$/i;
const PASSED_OVER = /^(?:~\$|\.~lock|\.)/;

/** Files that arguments name, in order, each once; of a folder those that are named as our forms, one folder below it too. */
async function namedFiles(
  given: readonly string[],
): Promise<{ readonly files: readonly string[]; readonly unreadable: readonly OpenItem[] }> {
  const files: string[] = [];
  const unreadable: OpenItem[] = [];
  const seen = new Set<string>();
  const add = (path: string): void => {
    if (!seen.has(resolve(path))) files.push(path);
    seen.add(resolve(path));
  };
  for (const path of given) {
    const isFolder = await stat(path).then(
      (state) => state.isDirectory(),
      () => false,
    );
    if (!isFolder) {
      add(path);
      continue;
    }
    const inside = await formsIn(path, true);
    if (inside.length === 0) {
      const file = shownPath(path);
      unreadable.push(
        itemAt(note(RECORD_MESSAGES.nothingToRead, { path: file }), { file, line: 0, column: '' }),
      );
    }
    for (const file of inside) add(file);
  }
  return { files, unreadable };
}

async function formsIn(folder: string, below: boolean): Promise<string[]> {
  const entries = await readdir(folder, { withFileTypes: true }).catch(() => []);
  const names = entries
    .filter(({ name }) => !PASSED_OVER.test(name))
    .sort((a, b) => byNaturalOrder(a.name, b.name));
  const own = names
    .filter((entry) => entry.isFile() && OURS.test(entry.name))
    .map(({ name }) => join(folder, name));
  if (!below) return own;
  const deeper = await Promise.all(
    names.filter((entry) => entry.isDirectory()).map(({ name }) => formsIn(join(folder, name), false)),
  );
  return [...own, ...deeper.flat()];
}

const isPdf = (path: string, bytes: Uint8Array): boolean =>
  extname(path).toLowerCase() === '.pdf' || Buffer.from(bytes.subarray(0, 5)).toString('latin1') === '%PDF-';

/**
 * Reads the files that crews filled in.
 * @param given files and folders as they were given
 * @param signal ends the reading
 * @returns never throws for what stands in a file
 */
export async function readFormFiles(
  given: readonly string[],
  signal: AbortSignal | undefined,
): Promise<FormFiles> {
  const named = await namedFiles(given);
  const shown = shownPaths(named.files);
  const files: FormFile[] = [];
  const items: OpenItem[] = [];
  const unreadable: OpenItem[] = [...named.unreadable];
  for (const [i, path] of named.files.entries()) {
    const read = await readBytes(path);
    if (!read.ok) {
      unreadable.push(read.item);
      continue;
    }
    const file = shown[i] ?? shownPath(path);
    const { bytes } = read;
    const lines = isPdf(path, bytes)
      ? await pdfFormRows(file, bytes)
      : await withPauses(formRows(file, bytes), signal);
    items.push(...lines.items);
    unreadable.push(...lines.unreadable);
    if (lines.unreadable.length > 0 && lines.lines.length === 0) continue;
    const sha256 = createHash('sha256').update(bytes).digest('hex');
    files.push({ file, sha256, folder: dirname(path), rows: lines.lines });
  }
  return { files, items, unreadable };
}
