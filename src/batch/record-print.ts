import { EXIT, type ExitStatus } from '../model/exit-status.js';
import { itemAt, note } from '../model/message.js';
import { RECORD_MESSAGES } from '../model/messages/record.js';
import type { JobItem } from '../model/open-item.js';
import type { Plan } from '../model/plan.js';
import { embeddedFonts } from '../print/fonts.js';
import { jobOfPlan } from '../read/list/job-of-plan.js';
import { sharedFingerprints, type UnprintedContext } from './batch-context.js';
import type { BatchOptions } from './batch-options.js';
import { jobFingerprints } from './fingerprint.js';
import { openGivenPlans } from './given-plans.js';
import type { CompanyRead } from './job-planner.js';
import type { PackRecords } from './pack-records.js';
import { openPhotos } from './photos.js';
import { openPreviousPlans } from './previous-plans.js';
import type { RecordOptions } from './record-options.js';
import { makeAll, stepsOf } from './run-batch.js';

/** A job whose as-built papers are to be printed. */
export interface RecordedPlan {
  readonly folder: string;
  readonly plan: Plan;
  /** `plan.json` as it stands there. */
  readonly text: string;
}

/** What they are printed with. */
export interface PrintingRecords {
  readonly options: RecordOptions;
  readonly out: string;
  readonly own: string;
  readonly signal: AbortSignal;
  readonly records: PackRecords;
  /** Undefined: not known any more. */
  readonly company: CompanyRead | undefined;
  readonly logo: string | undefined;
}

/** What was printed. */
export interface PrintedRecords {
  /** Names of the jobs' folders. */
  readonly folders: ReadonlySet<string>;
  readonly items: readonly JobItem[];
  readonly exitStatus: ExitStatus;
}

/**
 * Prints the as-built papers of jobs from their plans as they stand in their folders, without planning anything.
 * @returns never throws for what befalls one job
 */
export async function printRecorded(
  plans: readonly RecordedPlan[],
  { options, out, own, signal, records, company, logo }: PrintingRecords,
): Promise<PrintedRecords> {
  if (company === undefined) {
    const items = plans.map(({ plan, folder }) => ({
      job: plan.job,
      item: itemAt(note(RECORD_MESSAGES.notPrinted, { folder }), { file: '', line: 0, column: '' }),
    }));
    return { folders: new Set(), items, exitStatus: EXIT.drafts };
  }
  const { catalogue, settings } = company;
  const batchOptions: BatchOptions = {
    make: 'pack',
    lists: [],
    out,
    date: options.date,
    dateGiven: options.dateGiven,
    photos: options.photos,
    browser: options.browser,
    workers: options.workers,
    onNotice: options.onNotice,
  };
  const byJob = new Map(plans.map((one) => [one.plan.job, one]));
  const [shared, fonts, photos] = await Promise.all([
    sharedFingerprints({ settings, catalogue, logo }, batchOptions),
    embeddedFonts(),
    openPhotos(options.photos),
  ]);
  const context: UnprintedContext = {
    ...shared,
    options: batchOptions,
    steps: stepsOf({
      planJob: ({ job }) => {
        const plan = byJob.get(job)?.plan;
        if (!plan) throw new Error(`no plan of ${job}`);
        return plan;
      },
    }),
    settings,
    catalogue,
    logo,
    out,
    own,
    folders: new Map(plans.map(({ plan, folder }) => [plan.job, folder])),
    records,
    previous: openPreviousPlans(own, out),
    given: openGivenPlans(own, out),
    photos,
    cutSheets: undefined,
    fonts: fonts.kit,
    jobFingerprint: jobFingerprints(),
    planAsKept: (job) => byJob.get(job)?.text,
    fatal: { failure: undefined },
    signal,
  };
  const made = await makeAll(
    plans.map(({ plan }) => jobOfPlan(plan, settings)),
    context,
    true,
  );
  await records.tidy();
  const failed = made.filter(({ line }) => line.status === 'failed');
  return {
    folders: new Set(made.filter(({ line }) => line.done === 'printed').map(({ line }) => line.folder)),
    items: failed.flatMap(({ line, items }) =>
      items.filter(({ values }) => 'packNotMade' in values).map((item) => ({ job: line.job, item })),
    ),
    exitStatus: failed.length > 0 ? EXIT.failed : EXIT.complete,
  };
}
