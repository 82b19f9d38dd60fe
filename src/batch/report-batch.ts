import { readdir, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { EXIT, type ExitStatus } from '../model/exit-status.js';
import { byLead } from '../model/item-order.js';
import type { AskedModel } from '../model/list.js';
import type { OpenItem, JobItem } from '../model/open-item.js';
import type { RegisteredJob } from '../model/register.js';
import { missingModelsCsv, openItemsCsv, orderListCsv, reportCsv } from '../output/tables.js';
import { writeWhole, writeWholeFile, type FileToWrite } from '../output/whole-file.js';
import { BATCH_MESSAGES } from '../model/messages/batch.js';
import { itemAt, note } from '../model/message.js';
import type { UnprintedContext } from './batch-context.js';
import type { BatchInputs } from './batch-inputs.js';
import type { BatchResult } from './batch-options.js';
import { changesSince, readLastRun, runToKeep, writeLastRun, type LastRun } from './last-run.js';
import type { MadeJob } from './make-job.js';
import { modelsAskedFor } from './missing-models.js';
import { questionsOfBatch, writeQuestions } from './questions-files.js';
import { makeRegister } from './register.js';
import { reportPage } from './report-page.js';

/** Puts items of no job under the empty job. */
export const ofNoJob = (items: readonly OpenItem[]): JobItem[] => items.map((item) => ({ job: '', item }));

/**
 * Writes the batch's files beside the job folders, and sums the batch up.
 * @param made the jobs that were made, in their order
 * @param all number of jobs that were to be made; more than `made`: the run was stopped
 * @param batch what the jobs shared
 * @param inputs catalogue (prices), library (headings) and the models that it lacks
 * @throws Failure where the disk refuses, or the report's template can't be used
 */
export async function reportBatch(
  made: readonly MadeJob[],
  all: number,
  batch: UnprintedContext,
  inputs: BatchInputs,
): Promise<BatchResult> {
  const { out } = batch;
  const whole = made.length === all;
  const left = whole && inputs.unreadable.length === 0 ? await foldersLeft(out, batch.folders.values()) : [];
  // A job of a list that can't be read may have its photos there.
  const strays = inputs.unreadable.length === 0 ? batch.photos.ofNoJob(namesOf(batch)) : [];
  const items: JobItem[] = [
    ...ofNoJob(
      [
        ...inputs.unreadable,
        ...inputs.items,
        ...batch.records.ignored,
        ...strays,
        ...itemsOfRun(left, made.length, all),
      ].sort(byLead),
    ),
    ...made.flatMap(({ line, items: own }) => own.map((item) => ({ job: line.job, item }))),
  ];
  const planned = new Set(made.map((job) => job.line.job));
  const jobs = inputs.jobs.filter(({ job }) => planned.has(job));
  const models = modelsAskedFor(inputs.missingModels, jobs, items);
  // A run that was stopped, or could read nothing, knows too little to ask.
  if (whole && made.length > 0) {
    const kept = await writeQuestions(out, batch.own, questionsOfBatch(items, jobs));
    items.unshift(...ofNoJob(kept));
  }
  const register = await makeRegister(out, batch.options.date);
  items.unshift(...ofNoJob(register.items));
  const recorded = withRecords(made, register.jobs);
  await writeWhole(out, tables(recorded, items, models, whole, inputs));
  // Nothing was read: what an earlier run wrote is left alone.
  if (made.length > 0) await compareRuns(recorded, items, whole ? models : [], all, batch, inputs);
  const statuses: ExitStatus[] = [
    ...made.map((job) => job.exitStatus),
    inputs.unreadable.length > 0 ? EXIT.unreadable : EXIT.complete,
    whole ? EXIT.complete : EXIT.interrupted,
  ];
  return {
    exitStatus: statuses.reduce((worst, status) => (status > worst ? status : worst), EXIT.complete),
    out,
    lists: inputs.lists,
    jobs: recorded.map((job) => job.line),
    items,
    unreadable: inputs.unreadable,
    missingModels: models,
    leftFolders: left,
    interrupted: !whole,
  };
}

/** A job that was made, and what the register holds of it. */
interface RecordedJob extends MadeJob {
  readonly registered: RegisteredJob | undefined;
}

/** The jobs with what came back of each. */
function withRecords(made: readonly MadeJob[], registered: readonly RegisteredJob[]): RecordedJob[] {
  const byFolder = new Map(registered.map((job) => [job.folder, job]));
  return made.map((job) => {
    const own = byFolder.get(job.line.folder);
    const line = own === undefined ? job.line : { ...job.line, record: own.state };
    return { ...job, line, registered: own };
  });
}

/** The names that a job's folder of photos may have, of all jobs on the lists. */
const namesOf = ({ folders }: UnprintedContext): string[] => [...folders.keys(), ...folders.values()];

function itemsOfRun(left: readonly string[], done: number, all: number): OpenItem[] {
  const nowhere = { file: '', line: 0, column: '' };
  const folders = left.map((folder) => itemAt(note(BATCH_MESSAGES.folderLeft, { folder }), nowhere));
  return done === all
    ? folders
    : [itemAt(note(BATCH_MESSAGES.interrupted, { done, all }), nowhere), ...folders];
}

function tables(
  made: readonly RecordedJob[],
  items: readonly JobItem[],
  models: readonly AskedModel[],
  whole: boolean,
  { catalogue, libraryHeadings }: BatchInputs,
): FileToWrite[] {
  const files: FileToWrite[] = [{ name: 'open-items.csv', content: openItemsCsv(items) }];
  if (made.length === 0) return files;
  files.push({ name: 'report.csv', content: reportCsv(made.map((job) => job.line)) });
  // A run that was stopped knows too little for an order list.
  if (!whole) return files;
  const orders = made.flatMap((job) => job.orders);
  files.push({ name: 'order-list.csv', content: orderListCsv(orders, catalogue) });
  files.push({ name: 'missing-models.csv', content: missingModelsCsv(models, libraryHeadings) });
  return files;
}

/** Says in `report.html` what changed since the last run, and keeps this one for the next. */
async function compareRuns(
  made: readonly RecordedJob[],
  items: readonly JobItem[],
  models: readonly AskedModel[],
  all: number,
  { out, own, options }: UnprintedContext,
  { lists, unreadable }: BatchInputs,
): Promise<void> {
  const before = await readLastRun(own);
  const lines = made.map((job) => job.line);
  const now = runToKeep(options.date, lines, items);
  const partial = options.job !== undefined || made.length < all;
  const compared = before && partial ? { ...before, jobs: sharedJobs(before, now) } : before;
  if (options.make === 'pack') {
    const changes = compared && changesSince(compared, now);
    const otherUnreadable = unreadable.length - lists.unreadable;
    const orders = made.length === all ? made.flatMap((job) => job.orders) : [];
    const source = {
      date: options.date,
      lists,
      otherUnreadable,
      jobs: made,
      orders,
      items,
      models,
      changes,
      all,
    };
    const page = await reportPage(source, options.templates);
    await writeWholeFile(join(out, 'report.html'), page);
  }
  const jobs = new Map([...(partial ? (before?.jobs ?? []) : []), ...now.jobs].map((job) => [job.job, job]));
  await writeLastRun(own, { date: options.date, jobs: [...jobs.values()] });
}

function sharedJobs(before: LastRun, now: LastRun): LastRun['jobs'] {
  const made = new Set(now.jobs.map((job) => job.job));
  return before.jobs.filter((job) => made.has(job.job));
}

/** The folders of packs in the output folder that no list names any more. */
async function foldersLeft(out: string, named: Iterable<string>): Promise<string[]> {
  const known = new Set(named);
  const entries = await readdir(out, { withFileTypes: true });
  const others = entries.filter((e) => e.isDirectory() && !e.name.startsWith('.') && !known.has(e.name));
  const left: string[] = [];
  for (const { name } of others) {
    if (await stat(join(out, name, 'plan.json')).catch(() => undefined)) left.push(name);
  }
  return left.sort();
}
