import { extname, join } from 'node:path';
import type { FileToWrite } from '../output/whole-file.js';
import type { Fingerprint } from './fingerprint.js';
import { bytesFingerprint, contentOf, isFileItself, isIntact, type RecordedFile } from './recorded-file.js';

/** So many forms that someone filled in may stand beside each other. */
const MOST_KEPT = 99;

/** A form that is given to a crew. */
export interface GivenForm extends FileToWrite {
  /** What it asks for, and what the plan knows: two forms of one fingerprint take the same answers. */
  readonly asks: Fingerprint;
}

/** Where the forms of a pack go. */
export interface PlacedForms {
  readonly write: readonly GivenForm[];
  /** Those that someone filled in and that ask for the same still: they stay, as the record names them. */
  readonly stay: readonly RecordedFile[];
  /** Those that someone filled in, and that a new one stands beside. */
  readonly kept: readonly { readonly file: string; readonly fresh: string }[];
}

/** A table that is filled in asks for what stands in it. */
export function tableForm(file: FileToWrite): GivenForm {
  return { ...file, asks: bytesFingerprint(file.content) };
}

/**
 * Finds where forms go, so that nothing that a crew filled in is ever written over.
 * @param folder the job's folder
 * @param forms of the new pack
 * @param before what the record of the folder names
 * @throws Error where a hundred filled-in forms of one name stand there
 */
export async function placeForms(
  folder: string,
  forms: readonly GivenForm[],
  before: readonly RecordedFile[],
): Promise<PlacedForms> {
  const recorded = new Map(before.map((file) => [file.name, file]));
  const write: GivenForm[] = [];
  const stay: RecordedFile[] = [];
  const kept: { file: string; fresh: string }[] = [];
  for (const form of forms) {
    for (let n = 1; ; n += 1) {
      if (n > MOST_KEPT) throw new Error(`${MOST_KEPT} files like ${form.name} stand there, filled in`);
      const name = nthName(form.name, n);
      const known = recorded.get(name);
      if (await isFree(join(folder, name), known, form)) {
        write.push({ ...form, name });
        if (n > 1) kept.push({ file: form.name, fresh: name });
        break;
      }
      if (known?.asks === form.asks) {
        stay.push(known);
        break;
      }
    }
  }
  return { write, stay, kept };
}

/** `site-record.csv`, `site-record.new.csv`, `site-record.new-2.csv`. */
function nthName(name: string, n: number): string {
  if (n === 1) return name;
  const end = extname(name);
  return `${name.slice(0, -end.length)}.new${n === 2 ? '' : `-${String(n - 1)}`}${end}`;
}

/** True where nothing stands there that someone wrote: it is as it was written, or as it is to be written, or no file at all. */
async function isFree(path: string, known: RecordedFile | undefined, form: FileToWrite): Promise<boolean> {
  if (!(await isFileItself(path))) return true;
  if (known && (await isIntact(path, known))) return true;
  // A run that was killed before it could record them leaves files that are as the new ones.
  return (await contentOf(path)) === bytesFingerprint(form.content);
}
