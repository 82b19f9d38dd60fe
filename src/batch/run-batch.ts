import { setImmediate as pause } from 'node:timers/promises';
import { EXIT } from '../model/exit-status.js';
import { Failure } from '../model/failure.js';
import type { JobList } from '../model/list.js';
import { folderNames } from '../output/folder-name.js';
import { lockOutput } from '../output/lock.js';
import { ownFolder } from '../output/make-folder.js';
import { notWritten, sweepTemporaryFiles } from '../output/whole-file.js';
import { embeddedFonts } from '../print/fonts.js';
import { withPrinter } from '../print/printer.js';
import { BATCH_MESSAGES } from '../model/messages/batch.js';
import { itemAt, note } from '../model/message.js';
import { LIMIT_MESSAGES } from '../model/messages/limits.js';
import { LIMITS } from '../model/limits.js';
import {
  sharedFingerprints,
  type BatchContext,
  type BatchSteps,
  type UnprintedContext,
} from './batch-context.js';
import { readInputs, type BatchInputs } from './batch-inputs.js';
import type { BatchOptions, BatchResult } from './batch-options.js';
import { keepCompany } from './company-kept.js';
import { jobFingerprints } from './fingerprint.js';
import { makeJob, type MadeJob } from './make-job.js';
import { OWN_FOLDER } from './own-folder.js';
import { openPackRecords } from './pack-records.js';
import { openGivenPlans } from './given-plans.js';
import { openPhotos } from './photos.js';
import { openSheets } from './cut-sheets.js';
import { openPreviousPlans } from './previous-plans.js';
import { progressOf } from './progress.js';
import { openRenderers } from './renderers.js';
import { stopping } from './stopping.js';
import { ofNoJob, reportBatch } from './report-batch.js';

// Jobs begun beyond the pages that print: one is planned and rendered while the others print.
const AHEAD = 2;

/**
 * Reads the lists, plans every job, prints what changed, and writes packs and reports.
 * One job that fails doesn't keep the others from being made.
 * @param options what to do
 * @param given steps in place of the program's own
 * @throws Failure where nothing can be done at all: no such job (64), the output folder is held (75) or can't be written to (70)
 */
export async function runBatch(options: BatchOptions, given: Partial<BatchSteps> = {}): Promise<BatchResult> {
  const stop = stopping(options.signal, options.stopOnSignals === true);
  try {
    const out = options.out ?? 'out';
    const inputs = await readInputs(options, stop.signal).catch((error: unknown) => {
      if (stop.signal.aborted) return undefined;
      throw error;
    });
    if (!inputs) return stoppedWhileReading(out);
    if (!inputs.usable) return nothingMade(out, inputs);
    const jobs = chosenJobs(inputs.jobs, options);
    if (jobs.length > LIMITS.jobs) return tooManyJobs(jobs.length, out, inputs);
    if (options.templates !== undefined) await checkTemplates(options.templates);
    const photos = await openPhotos(options.photos);
    const cutSheets = options.cutSheets === undefined ? undefined : await openSheets(options.cutSheets);
    const own = await ownFolder(out, OWN_FOLDER).catch((error: unknown) => {
      throw notWritten(out, error);
    });
    const lock = await lockOutput(own, out);
    try {
      if (lock.tookOver) await sweepTemporaryFiles(out);
      const [shared, fonts, records] = await Promise.all([
        sharedFingerprints(inputs, options),
        embeddedFonts(),
        openPackRecords(own),
      ]);
      const context: UnprintedContext = {
        ...shared,
        options,
        steps: stepsOf(given),
        settings: inputs.settings,
        catalogue: inputs.catalogue,
        logo: inputs.logo,
        out,
        own,
        folders: folderNames(inputs.jobs.map((job) => job.job)),
        records,
        previous: openPreviousPlans(own, out),
        given: openGivenPlans(own, out),
        photos,
        cutSheets,
        fonts: fonts.kit,
        jobFingerprint: jobFingerprints(),
        fatal: { failure: undefined },
        signal: stop.signal,
      };
      await keepCompany(own, {
        // One that couldn't be read stood in no plan.
        catalogue: inputs.catalogue === undefined ? undefined : inputs.files.catalogue,
        settings: inputs.files.settings,
        logo: inputs.logo,
      });
      const made = await makeAll(jobs, context, given.renderDocuments === undefined);
      const result = await reportBatch(made, jobs.length, context, inputs);
      await records.tidy();
      return result;
    } finally {
      await lock.release();
    }
  } finally {
    stop.dispose();
  }
}

async function checkTemplates(folder: string): Promise<void> {
  const { checkOwnTemplates } = await import('../documents/parts/own-templates.js');
  await checkOwnTemplates(folder);
}

/** The program's own steps, loaded where they are used, but for those that the caller gives. */
export function stepsOf(given: Partial<BatchSteps>): BatchSteps {
  const planJob: BatchSteps['planJob'] = async (job, context) => {
    const { planJob: plan } = await import('../plan/plan-job.js');
    return plan(job, context);
  };
  const renderDocuments: BatchSteps['renderDocuments'] = async (plan, context) => {
    const { renderDocuments: render } = await import('../documents/render.js');
    return render(plan, context);
  };
  return { planJob: given.planJob ?? planJob, renderDocuments: given.renderDocuments ?? renderDocuments };
}

function nothingMade(out: string, inputs: BatchInputs): BatchResult {
  return {
    exitStatus: EXIT.unreadable,
    out,
    lists: inputs.lists,
    jobs: [],
    items: ofNoJob([...inputs.unreadable, ...inputs.items]),
    unreadable: inputs.unreadable,
    missingModels: [],
    leftFolders: [],
    interrupted: false,
  };
}

function stoppedWhileReading(out: string): BatchResult {
  const item = itemAt(note(BATCH_MESSAGES.interruptedReading, {}), { file: '', line: 0, column: '' });
  return {
    exitStatus: EXIT.interrupted,
    out,
    lists: { all: 0, unreadable: 0 },
    jobs: [],
    items: ofNoJob([item]),
    unreadable: [],
    missingModels: [],
    leftFolders: [],
    interrupted: true,
  };
}

function tooManyJobs(jobs: number, out: string, inputs: BatchInputs): BatchResult {
  const item = itemAt(note(LIMIT_MESSAGES.jobs, { jobs, most: LIMITS.jobs }), {
    file: '',
    line: 0,
    column: '',
  });
  return nothingMade(out, { ...inputs, unreadable: [...inputs.unreadable, item] });
}

function chosenJobs(jobs: readonly JobList[], { job }: BatchOptions): readonly JobList[] {
  if (job === undefined) return jobs;
  const chosen = jobs.filter((list) => list.job === job);
  if (chosen.length > 0) return chosen;
  const nearest = jobs.find((list) => list.job.toLowerCase() === job.toLowerCase())?.job ?? '';
  throw new Failure(note(BATCH_MESSAGES.noSuchJob, { job, nearest }), EXIT.usage);
}

/** Makes the jobs, a few at a time, so that planning and rendering overlap printing. */
export async function makeAll(
  jobs: readonly JobList[],
  context: UnprintedContext,
  inThreads: boolean,
): Promise<MadeJob[]> {
  const { options, signal, steps } = context;
  const made = new Map<JobList, MadeJob>();
  const progress = progressOf(jobs.length, () => performance.now());
  const settings = {
    browser: options.browser,
    pages: options.workers,
    documentTimeout: options.documentTimeout,
    ...(options.onNotice ? { onNotice: options.onNotice } : {}),
  };
  let all: Promise<unknown> = Promise.resolve();
  await withPrinter(settings, async (printer) => {
    const renderers = openRenderers(steps.renderDocuments, printer.pages);
    const renderDocuments = inThreads ? renderers.render : steps.renderDocuments;
    const batch: BatchContext = { ...context, printer, steps: { ...steps, renderDocuments } };
    const waiting = jobs.values();
    const worker = async (): Promise<void> => {
      for (const job of waiting) {
        // A job that is unchanged, or refused, waits for nothing: signals are heard between two of them all the same.
        await pause();
        if (signal.aborted) return;
        const result = await makeJob(job, batch);
        if (!result) return;
        made.set(job, result);
        options.onProgress?.(progress(result));
      }
    };
    const workers = Array.from({ length: printer.pages + AHEAD }, worker);
    all = Promise.allSettled(workers);
    // Leaving ends the threads and the browser, and with them the pages in hand.
    await Promise.race([Promise.all(workers), aborted(signal)]).finally(() => renderers.close());
  });
  await all;
  return jobs.flatMap((job) => made.get(job) ?? []);
}

const aborted = (signal: AbortSignal): Promise<void> =>
  new Promise((resolve) => {
    if (signal.aborted) resolve();
    signal.addEventListener('abort', () => {
      resolve();
    });
  });
