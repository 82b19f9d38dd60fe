import { basename, join } from 'node:path';
import { z } from 'zod';
import { openItemSchema } from '../model/plan.js';
import { BASES } from '../model/editions.js';
import { EXIT } from '../model/exit-status.js';
import { Failure } from '../model/failure.js';
import type { OpenItem } from '../model/open-item.js';
import { isCode } from '../output/make-folder.js';
import { NotAFile, openToAppend, readRegularFile } from '../output/regular-file.js';
import { notWritten, writeWholeFile } from '../output/whole-file.js';
import { BATCH_MESSAGES } from '../model/messages/batch.js';
import { OUTPUT_MESSAGES } from '../model/messages/output.js';
import { itemAt, note } from '../model/message.js';
import { visible } from '../words/visible.js';
import { isPackFile, isPackFolder } from './pack-names.js';
import { placedSchema } from './placed.js';

/** 32 hex digits; they are parts of paths. */
const fingerprintSchema = z.string().regex(/^[0-9a-f]{32}$/);
const perhapsSchema = z.union([z.literal(''), fingerprintSchema]);

const fileSchema = z.object({
  name: z.string().refine(isPackFile),
  size: z.number(),
  /** ms; as the disk had it when the file was written. */
  modified: z.number(),
  content: fingerprintSchema,
  /** Of a form, what it asks for; of all else, and in records of before, ``. */
  asks: z.union([z.literal(''), fingerprintSchema]).default(''),
});

const recordSchema = z.object({
  job: z.string(),
  name: z.string(),
  folder: z.string().refine(isPackFolder),
  /** What the plan was made from. */
  planFrom: fingerprintSchema,
  /** The plan in the folder. */
  plan: fingerprintSchema,
  /** What the forms of that plan carry as its fingerprint; ``: none were given out. */
  mark: z
    .string()
    .regex(/^[A-Z]{0,16}$/)
    .default(''),
  /** The plan that the printed pages show; ``: none were printed. */
  printedPlan: perhapsSchema,
  /** The plan of the pack before, which the pages are compared with; ``: none. */
  previousPlan: perhapsSchema,
  /** What the pages were made from, but for the date. */
  pagesFrom: perhapsSchema,
  /** `YYYY-MM-DD` on the pages. */
  date: z.string(),
  files: z.array(fileSchema),
  basis: z.enum(BASES),
  submittable: z.boolean(),
  protectors: z.number(),
  /** What the report tells of the job beside its name; records of before don't say. */
  address: z.string().default(''),
  revision: z.string().default(''),
  /** Its protectors, as the report lists and finds them; records of before don't say. */
  placed: z.array(placedSchema).default([]),
  /** Clauses that its papers cite and that nobody of the company has checked; records of before don't say. */
  unchecked: z.array(z.string()).default([]),
  items: z.array(openItemSchema),
  orders: z.array(z.object({ part: z.string(), quantity: z.number() })),
});

/** What is known of the pack in a job's folder; strings without a remark are fingerprints. */
export type PackRecord = z.infer<typeof recordSchema>;

/** The records of the packs in an output folder. */
export interface PackRecords {
  /** The record of a job's folder; undefined: nothing is known of it. */
  readonly get: (folder: string) => PackRecord | undefined;
  /** The name of a job's folder; undefined: nothing is known of it. */
  readonly folderOf: (job: string) => string | undefined;
  /** Keeps a record, on the disk as well: a run that is killed after this needn't make the pack again. */
  readonly put: (record: PackRecord) => Promise<void>;
  /** Writes all records anew, each once. */
  readonly tidy: () => Promise<void>;
  /** What stands among the records and can be none of ours, a line each. */
  readonly ignored: readonly OpenItem[];
}

const FILE = 'packs.ndjson';
/** What of a record becomes part of a path. */
const NAMING: ReadonlySet<unknown> = new Set([
  'folder',
  'name',
  'plan',
  'mark',
  'printedPlan',
  'previousPlan',
]);
/** Bytes; the records of 10,000 jobs are a tenth of it. */
const LARGEST = 400_000_000;

/**
 * Opens the records of an output folder. They are one line a pack; a later line of a folder counts.
 * A line that was cut off by a kill, or that another version wrote, is passed over: its pack is made again. So is one with a
 * name that no pack has, which is told: whoever can write to the output folder must not lead us out of it.
 * @param folder the folder of our own files inside the output folder
 * @throws Failure `output/not-a-file` (70) where no file of ours stands in its place
 */
export async function openPackRecords(folder: string): Promise<PackRecords> {
  const path = join(folder, FILE);
  const text = await textOf(path);
  const records = new Map<string, PackRecord>();
  const ignored: OpenItem[] = [];
  for (const [index, line] of text.split('\n').entries()) {
    const { record, name } = parseRecord(line);
    if (record) records.set(record.folder, record);
    if (name === undefined) continue;
    const place = { file: `${basename(folder)}/${FILE}`, line: index + 1, column: '' };
    ignored.push(itemAt(note(BATCH_MESSAGES.recordIgnored, { name: visible(name) }), place));
  }
  let lead = text === '' || text.endsWith('\n') ? '' : '\n';
  let appended = 0;
  const rewrite = (): Promise<void> =>
    writeWholeFile(path, Array.from(records.values(), (record) => `${JSON.stringify(record)}\n`).join(''));
  const append = async (line: string): Promise<void> => {
    const file = await openToAppend(path);
    try {
      // A copy of the folder that was made of hard links shares the file: it keeps its own.
      if ((await file.stat()).nlink > 1) await rewrite();
      else await file.writeFile(line);
    } finally {
      await file.close();
    }
  };
  return {
    get: (name) => records.get(name),
    folderOf: (job) => [...records.values()].find((record) => record.job === job)?.folder,
    put: async (record) => {
      records.set(record.folder, record);
      appended += 1;
      const line = `${lead}${JSON.stringify(record)}\n`;
      lead = '';
      await append(line).catch((error: unknown) => {
        throw refused(path, error) ?? notWritten(path, error);
      });
    },
    tidy: async () => {
      if (appended > 0 || ignored.length > 0) await rewrite();
    },
    ignored,
  };
}

async function textOf(path: string): Promise<string> {
  try {
    return (await readRegularFile(path, { most: LARGEST, followLinks: false })).toString('utf8');
  } catch (error) {
    if (isCode(error, 'ENOENT')) return '';
    throw refused(path, error) ?? notWritten(path, error);
  }
}

function refused(path: string, error: unknown): Failure | undefined {
  if (!(error instanceof NotAFile)) return undefined;
  return new Failure(note(OUTPUT_MESSAGES.notAFile, { path, because: error.message }), EXIT.failed);
}

/** The record of a line, or else the name in it that no pack of ours has. */
function parseRecord(line: string): { readonly record?: PackRecord; readonly name?: string } {
  if (line === '') return {};
  try {
    const { data, error } = recordSchema.safeParse(JSON.parse(line), { reportInput: true });
    if (data) return { record: data };
    // A fingerprint too stands in a name: that of a plan kept aside.
    const name = error.issues.flatMap(({ path, input }) =>
      NAMING.has(path.at(-1)) && typeof input === 'string' ? [input] : [],
    );
    return name[0] === undefined ? {} : { name: name[0] };
  } catch {
    return {};
  }
}
