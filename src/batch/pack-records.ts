import { appendFile, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { z } from 'zod';
import { openItemSchema } from '../model/plan.js';
import { BASES } from '../model/editions.js';
import { notWritten, writeWholeFile } from '../output/whole-file.js';

const fileSchema = z.object({
  name: z.string(),
  size: z.number(),
  /** ms; as the disk had it when the file was written. */
  modified: z.number(),
  content: z.string(),
});

const recordSchema = z.object({
  job: z.string(),
  name: z.string(),
  folder: z.string(),
  /** What the plan was made from. */
  planFrom: z.string(),
  /** The plan in the folder. */
  plan: z.string(),
  /** The plan that the printed pages show; ``: none were printed. */
  printedPlan: z.string(),
  /** The plan of the pack before, which the pages are compared with; ``: none. */
  previousPlan: z.string(),
  /** What the pages were made from, but for the date. */
  pagesFrom: z.string(),
  /** `YYYY-MM-DD` on the pages. */
  date: z.string(),
  files: z.array(fileSchema),
  basis: z.enum(BASES),
  submittable: z.boolean(),
  protectors: z.number(),
  items: z.array(openItemSchema),
  orders: z.array(z.object({ part: z.string(), quantity: z.number() })),
});

/** What is known of the pack in a job's folder; strings without a remark are fingerprints. */
export type PackRecord = z.infer<typeof recordSchema>;

/** The records of the packs in an output folder. */
export interface PackRecords {
  /** The record of a job's folder; undefined: nothing is known of it. */
  readonly get: (folder: string) => PackRecord | undefined;
  /** Keeps a record, on the disk as well: a run that is killed after this needn't make the pack again. */
  readonly put: (record: PackRecord) => Promise<void>;
  /** Writes all records anew, each once. */
  readonly tidy: () => Promise<void>;
}

const FILE = 'packs.ndjson';

/**
 * Opens the records of an output folder. They are one line a pack; a later line of a folder counts.
 * A line that was cut off by a kill, or that another version wrote, is passed over: its pack is made again.
 * @param folder the folder of our own files inside the output folder
 */
export async function openPackRecords(folder: string): Promise<PackRecords> {
  const path = join(folder, FILE);
  const text = await readFile(path, 'utf8').catch(() => '');
  const records = new Map<string, PackRecord>();
  for (const line of text.split('\n')) {
    const record = parseRecord(line);
    if (record) records.set(record.folder, record);
  }
  let lead = text === '' || text.endsWith('\n') ? '' : '\n';
  let appended = 0;
  return {
    get: (name) => records.get(name),
    put: async (record) => {
      records.set(record.folder, record);
      appended += 1;
      const line = `${lead}${JSON.stringify(record)}\n`;
      lead = '';
      await appendFile(path, line).catch((error: unknown) => {
        throw notWritten(path, error);
      });
    },
    tidy: async () => {
      if (appended === 0) return;
      await writeWholeFile(
        path,
        Array.from(records.values(), (record) => `${JSON.stringify(record)}\n`).join(''),
      );
    },
  };
}

function parseRecord(line: string): PackRecord | undefined {
  if (line === '') return undefined;
  try {
    return recordSchema.parse(JSON.parse(line));
  } catch {
    return undefined;
  }
}
