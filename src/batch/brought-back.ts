import { lstat } from 'node:fs/promises';
import { join } from 'node:path';
import type { RecordPhotos } from '../documents/parts/context.js';
import { BATCH_MESSAGES } from '../model/messages/batch.js';
import { itemAt, note } from '../model/message.js';
import type { OpenItem } from '../model/open-item.js';
import { RecordSchema, type SiteRecord } from '../model/record.js';
import { isCode } from '../output/make-folder.js';
import { NotAFile, readRegularFile } from '../output/regular-file.js';
import { fingerprint, type Fingerprint } from './fingerprint.js';
import { findRecordPhotos, readRecordPhotos } from './brought-photos.js';

/** Name of the record of a job, in its folder. */
const RECORD_FILE = 'record.json';
/** Bytes; the record of a job at the limits is a tenth of it. */
const LARGEST = 200_000_000;

/** What came back from the work of a job. */
export interface BroughtBack {
  /** The record and its photos; `` none. */
  readonly from: Fingerprint;
  /** Undefined: nothing came back, or it can't be read. */
  readonly record: SiteRecord | undefined;
  /** That it can't be read: its papers say no more than that the work is planned. */
  readonly items: readonly OpenItem[];
  /** Reads the photos that the record names. */
  readonly photos: () => Promise<RecordPhotos>;
}

const NOTHING: BroughtBack = {
  from: '',
  record: undefined,
  items: [],
  photos: () => Promise.resolve({ printed: [], notPrinted: [] }),
};

/** A record as it was written; undefined: it is none of ours. */
function parsed(text: string): SiteRecord | undefined {
  try {
    return RecordSchema.safeParse(JSON.parse(text)).data;
  } catch {
    return undefined;
  }
}

/**
 * Finds what came back from the work of a job.
 * @param out the output folder
 * @param folder name of the job's folder in it
 * @param job its id
 * @param photos the folder that `--photos` names; undefined: none
 * @returns never throws for a record that can't be read: an item says so, and the pack is made as planned
 */
export async function broughtBack(
  out: string,
  folder: string,
  job: string,
  photos: string | undefined,
): Promise<BroughtBack> {
  const path = join(out, folder, RECORD_FILE);
  if ((await lstat(path).catch(() => undefined)) === undefined) return NOTHING;
  let text: string;
  try {
    text = (await readRegularFile(path, { most: LARGEST, followLinks: false })).toString('utf8');
  } catch (error) {
    if (isCode(error, 'ENOENT')) return NOTHING;
    if (error instanceof NotAFile) return notRead(folder, job, '');
    throw error;
  }
  const record = parsed(text);
  if (record?.job !== job) return notRead(folder, job, fingerprint(text));
  const found = await findRecordPhotos(record, { folder: join(out, folder), photos, jobs: [job, folder] });
  return {
    from: fingerprint(text, JSON.stringify(found)),
    record,
    items: [],
    photos: () => readRecordPhotos(found),
  };
}

function notRead(folder: string, job: string, from: Fingerprint): BroughtBack {
  const file = `${folder}/${RECORD_FILE}`;
  const told = note(BATCH_MESSAGES.recordNotRead, { file, job });
  return { ...NOTHING, from, items: [itemAt(told, { file, line: 0, column: '' })] };
}
