import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import type { Note } from '../model/open-item.js';
import { note } from '../model/message.js';
import { placeOfRecord, REGISTER_MESSAGES, type RecordFault } from '../model/messages/register.js';
import { itemAt } from '../model/message.js';
import { byNaturalOrder } from '../model/natural-order.js';
import type { OpenItem } from '../model/open-item.js';
import { RegisterRecordSchema, type RegisterRecord } from '../model/register-record.js';
import { isCode } from '../output/make-folder.js';
import { NotAFile, readRegularFile } from '../output/regular-file.js';
import { isPackFolder } from './pack-names.js';

/** The record of one job, or why it can't be told. */
export type JobRecord =
  | { readonly folder: string; readonly record: RegisterRecord; readonly item?: undefined }
  | { readonly folder: string; readonly record?: undefined; readonly item: OpenItem };

/** Bytes; no record is nearly as large. */
const LARGEST = 200_000_000;
/** Records that are on their way from the disk while one is looked at. */
const AHEAD = 8;

/**
 * The records of all jobs of an output folder, one after another: never more than a few stand in memory.
 * @param out the output folder
 * @returns in natural order of the folders; a folder without a record isn't among them
 * @throws the system's error where the output folder can't be read
 */
export async function* recordsOf(out: string): AsyncGenerator<JobRecord> {
  const entries = await readdir(out, { withFileTypes: true });
  const folders = entries
    .filter((entry) => entry.isDirectory() && isPackFolder(entry.name))
    .map((entry) => entry.name)
    .sort(byNaturalOrder);
  const coming: Promise<JobRecord | undefined>[] = [];
  let next = 0;
  const holder = new Map<string, string>();
  for (;;) {
    while (coming.length < AHEAD && next < folders.length) {
      coming.push(readRecord(out, folders[next] ?? ''));
      next += 1;
    }
    const first = coming.shift();
    if (first === undefined) return;
    const found = await first;
    if (found === undefined) continue;
    if (found.record === undefined) {
      yield found;
      continue;
    }
    const { job } = found.record;
    const kept = holder.get(job);
    if (kept === undefined) {
      holder.set(job, found.folder);
      yield found;
    } else {
      yield fault(found.folder, note(REGISTER_MESSAGES.jobTwice, { job, kept, folder: found.folder }));
    }
  }
}

/**
 * The record in one job's folder.
 * @param out the output folder
 * @param folder the job's, below it
 * @returns undefined where there is none
 */
export async function readRecord(out: string, folder: string): Promise<JobRecord | undefined> {
  const because = (recordFault: RecordFault): JobRecord =>
    fault(folder, note(REGISTER_MESSAGES.recordNotRead, { record: `${folder}/record.json`, recordFault }));
  let bytes: Buffer;
  try {
    bytes = await readRegularFile(join(out, folder, 'record.json'), { most: LARGEST, followLinks: false });
  } catch (error) {
    if (isCode(error, 'ENOENT')) return undefined;
    return because(error instanceof NotAFile ? 'no-file' : 'unreadable');
  }
  const record = registerPart(bytes) ?? recordIn(bytes);
  if (record === undefined) return because(isJson(bytes) ? 'no-record' : 'no-json');
  return { folder, record };
}

/** Where the last part of a record begins and how a whole one ends, as shuntbook writes them: a line break stands in no text of JSON. */
const BUILT = '\n  "asBuilt": {';
const END = '\n}\n';

/**
 * What the register asks of a record without the plans of what there is now, which are most of it and stand last.
 * @returns undefined where the file isn't as shuntbook writes it: it is to be read whole then
 */
function registerPart(bytes: Buffer): RegisterRecord | undefined {
  const at = bytes.indexOf(BUILT);
  const isWhole = bytes.subarray(-END.length).toString('latin1') === END;
  if (at < 0 || !isWhole) return undefined;
  return recordIn(Buffer.concat([bytes.subarray(0, at), Buffer.from(`${BUILT}}}`)]));
}

function recordIn(bytes: Buffer): RegisterRecord | undefined {
  try {
    return RegisterRecordSchema.safeParse(JSON.parse(bytes.toString('utf8'))).data;
  } catch {
    return undefined;
  }
}

function isJson(bytes: Buffer): boolean {
  try {
    JSON.parse(bytes.toString('utf8'));
    return true;
  } catch {
    return false;
  }
}

const fault = (folder: string, told: Note): JobRecord => ({
  folder,
  item: itemAt(told, placeOfRecord(folder)),
});
