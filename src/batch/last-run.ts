import { told } from '../words/messages/told.js';
import { itemKey, type JobItem } from '../model/open-item.js';
import { openItemSchema } from '../model/plan.js';
import { join } from 'node:path';
import { z } from 'zod';
import type { ReportLine } from '../output/tables.js';
import { readRegularFile } from '../output/regular-file.js';
import { writeWholeFile } from '../output/whole-file.js';

const blockingSchema = openItemSchema.pick({ code: true, equipment: true, values: true });

const lastRunSchema = z.object({
  date: z.string(),
  jobs: z.array(z.object({ job: z.string(), status: z.string(), blocking: z.array(blockingSchema) })),
});
type Blocking = z.infer<typeof blockingSchema>;

/** What is kept of a run, so that the next report can say what changed. */
export type LastRun = z.infer<typeof lastRunSchema>;

const FILE = 'last-run.json';
/** Bytes; a line for each item of 10,000 jobs is a tenth of it. */
const LARGEST = 400_000_000;

/**
 * What the last whole run into an output folder gave.
 * @param own the folder of our own files inside it
 * @returns undefined where there was none, or one of another shuntbook that this one can't tell
 */
export async function readLastRun(own: string): Promise<LastRun | undefined> {
  try {
    const bytes = await readRegularFile(join(own, FILE), { most: LARGEST, followLinks: false });
    const run = lastRunSchema.parse(JSON.parse(bytes.toString('utf8')));
    // What this shuntbook has no words for, as another one wrote it, can't be told: nothing is compared then.
    for (const { blocking } of run.jobs) blocking.forEach(told);
    return run;
  } catch {
    return undefined;
  }
}

/**
 * Keeps what a whole run gave.
 * @param own the folder of our own files inside the output folder
 * @param run what it gave
 */
export function writeLastRun(own: string, run: LastRun): Promise<void> {
  return writeWholeFile(join(own, FILE), `${JSON.stringify(run)}\n`);
}

/** What is to be kept of a run: the state of each job, and the items that hold its pack back. */
export function runToKeep(date: string, lines: readonly ReportLine[], items: readonly JobItem[]): LastRun {
  const blocking = new Map<string, Blocking[]>();
  for (const { job, item } of items) {
    if (item.severity === 'confirm') continue;
    const { code, equipment, values } = item;
    blocking.set(job, [...(blocking.get(job) ?? []), { code, equipment, values }]);
  }
  return { date, jobs: lines.map(({ job, status }) => ({ job, status, blocking: blocking.get(job) ?? [] })) };
}

/** Those of some items that aren't among others. */
function without(items: readonly Blocking[], others: readonly Blocking[]): Blocking[] {
  const keys = new Set(others.map(itemKey));
  return items.filter((item) => !keys.has(itemKey(item)));
}

/**
 * Says what changed from one run to the next, a sentence each.
 * @param before the run before
 * @param now this run
 */
export function changesSince(before: LastRun, now: LastRun): string[] {
  const old = new Map(before.jobs.map((job) => [job.job, job]));
  const said: string[] = [];
  for (const { job, status, blocking } of now.jobs) {
    const was = old.get(job);
    old.delete(job);
    if (!was) {
      said.push(`${job} is new: ${status}.`);
      continue;
    }
    if (was.status !== status) said.push(`${job} was ${was.status} and is ${status}.`);
    for (const item of without(was.blocking, blocking)) said.push(`${job}, supplied: ${told(item).message}`);
    for (const item of without(blocking, was.blocking))
      said.push(`${job}, newly open: ${told(item).message}`);
  }
  for (const job of old.keys()) said.push(`${job} is on no list any more.`);
  return said;
}
