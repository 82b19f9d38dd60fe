import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import type { z } from 'zod';
import { byNaturalOrder } from '../model/natural-order.js';
import { RecordSchema, type SiteRecord } from '../model/record.js';
import { isCode } from '../output/make-folder.js';
import { readRegularFile } from '../output/regular-file.js';
import { isPackFolder } from './pack-names.js';

/** The name of a job's record, in its folder. */
export const RECORD_FILE = 'record.json';
/** Bytes; no record is nearly as large. */
const LARGEST = 200_000_000;

const BriefSchema = RecordSchema.pick({ job: true, housings: true, items: true });
/** Of a record what all records are asked for. */
export type BriefRecord = z.infer<typeof BriefSchema>;

/** A record with its text; `none`: there is none; `unread`: it is none of ours, or broken. */
export type RecordRead = { readonly record: SiteRecord; readonly text: string } | 'none' | 'unread';

async function textOf(out: string, folder: string): Promise<{ readonly text: string } | 'none' | 'unread'> {
  try {
    const path = join(out, folder, RECORD_FILE);
    return { text: (await readRegularFile(path, { most: LARGEST, followLinks: false })).toString('utf8') };
  } catch (error) {
    return isCode(error, 'ENOENT') ? 'none' : 'unread';
  }
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

/**
 * The record in one job's folder.
 * @param out the output folder
 * @param folder the job's, below it
 */
export async function readJobRecord(out: string, folder: string): Promise<RecordRead> {
  const read = await textOf(out, folder);
  if (typeof read === 'string') return read;
  const { text } = read;
  const record = RecordSchema.safeParse(parsed(text));
  return record.success ? { record: record.data, text } : 'unread';
}

/**
 * The records of all jobs of an output folder, one after another, those that can't be read left out: the register tells them.
 * @param out the output folder
 */
export async function* briefRecords(out: string): AsyncGenerator<BriefRecord> {
  const entries = await readdir(out, { withFileTypes: true });
  const folders = entries.filter((entry) => entry.isDirectory() && isPackFolder(entry.name));
  for (const { name } of folders.sort((a, b) => byNaturalOrder(a.name, b.name))) {
    const read = await textOf(out, name);
    if (typeof read === 'string') continue;
    const record = BriefSchema.safeParse(parsed(read.text));
    if (record.success) yield record.data;
  }
}
