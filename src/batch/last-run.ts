import { told } from '../words/messages/told.js';
import type { JobItem } from '../model/message.js';
import { join } from 'node:path';
import { z } from 'zod';
import type { ReportLine } from '../output/tables.js';
import { readRegularFile } from '../output/regular-file.js';
import { writeWholeFile } from '../output/whole-file.js';

const lastRunSchema = z.object({
  date: z.string(),
  jobs: z.array(z.object({ job: z.string(), status: z.string(), blocking: z.array(z.string()) })),
});

/** What is kept of a run, so that the next report can say what changed. */
export type LastRun = z.infer<typeof lastRunSchema>;

const FILE = 'last-run.json';
/** Bytes; a line for each item of 10,000 jobs is a tenth of it. */
const LARGEST = 400_000_000;

/**
 * What the last whole run into an output folder gave.
 * @param own the folder of our own files inside it
 * @returns undefined where there was none
 */
export async function readLastRun(own: string): Promise<LastRun | undefined> {
  try {
    const bytes = await readRegularFile(join(own, FILE), { most: LARGEST, followLinks: false });
    return lastRunSchema.parse(JSON.parse(bytes.toString('utf8')));
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
  const blocking = new Map<string, string[]>();
  for (const { job, item } of items) {
    if (item.severity !== 'confirm') blocking.set(job, [...(blocking.get(job) ?? []), told(item).message]);
  }
  return { date, jobs: lines.map(({ job, status }) => ({ job, status, blocking: blocking.get(job) ?? [] })) };
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
    for (const message of was.blocking.filter((m) => !blocking.includes(m)))
      said.push(`${job}, supplied: ${message}`);
    for (const message of blocking.filter((m) => !was.blocking.includes(m)))
      said.push(`${job}, newly open: ${message}`);
  }
  for (const job of old.keys()) said.push(`${job} is on no list any more.`);
  return said;
}
