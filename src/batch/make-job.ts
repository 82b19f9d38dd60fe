import { join } from 'node:path';
import { setImmediate as pause } from 'node:timers/promises';
import { uncheckedClauses } from '../documents/parts/clause-checks.js';
import { documentsLeftOut } from '../documents/parts/context.js';
import { withAccepted } from './accepted.js';
import { EXIT, type ExitStatus } from '../model/exit-status.js';
import { Failure } from '../model/failure.js';
import { inOrder } from '../model/item-order.js';
import type { JobList } from '../model/list.js';
import type { Note, OpenItem } from '../model/open-item.js';
import type { Plan } from '../model/plan.js';
import { planJson } from '../output/plan-file.js';
import { siteTables } from '../output/site-tables.js';
import { scheduleCsv, type JobOrder, type ReportLine } from '../output/tables.js';
import type { FileToWrite } from '../output/whole-file.js';
import { PRINT_MESSAGES } from '../model/messages/print.js';
import { BATCH_MESSAGES } from '../model/messages/batch.js';
import { itemAt, note } from '../model/message.js';
import { MACHINE_MESSAGES } from '../model/messages/machine.js';
import { siteForms } from '../site-forms/rows.js';
import { runOut } from '../words/refusals.js';
import { withoutPaths } from '../words/shown-path.js';
import type { BatchContext } from './batch-context.js';
import { broughtBack, type BroughtBack } from './brought-back.js';
import { dataFingerprint, fingerprint, type Fingerprint } from './fingerprint.js';
import { tableForm } from './given-forms.js';
import { recordOf, submittedSheets } from './as-submitted.js';
import { areIntact, writePack } from './pack-files.js';
import { isFormFile, isPlanFile } from './pack-names.js';
import type { PackRecord } from './pack-records.js';
import { placedIn, type Placed } from './placed.js';
import { printPages, type Enclosed } from './print-pages.js';
import type { JobPhotos } from './photos.js';
import { writtenTold } from './written-told.js';

/** What came of one job. */
export interface MadeJob {
  readonly line: ReportLine;
  readonly placed: readonly Placed[];
  /** Names of the PDFs in its folder that show its plan. */
  readonly documents: readonly string[];
  readonly items: readonly OpenItem[];
  /** Clauses that its papers cite and that nobody of the company has checked. */
  readonly unchecked: readonly string[];
  readonly orders: readonly JobOrder[];
  readonly exitStatus: ExitStatus;
}

/** A job on its way through the batch. */
interface Making {
  readonly job: JobList;
  readonly folder: string;
  readonly planFrom: Fingerprint;
  readonly photos: JobPhotos;
  readonly back: BroughtBack;
  readonly record: PackRecord | undefined;
}

/**
 * Makes the pack of one job, or finds that the one in its folder is what it would make.
 * @param job as read
 * @param batch what all jobs share
 * @returns what came of it; undefined where the batch was stopped meanwhile and the job was dropped. Never throws for
 *   what befalls one job, so that the others go on
 */
export async function makeJob(job: JobList, batch: BatchContext): Promise<MadeJob | undefined> {
  const folder = batch.folders.get(job.job) ?? '';
  let plan: Plan | undefined;
  try {
    const known = batch.records.get(folder);
    const photos = await batch.photos.ofJob(job.job, folder);
    const back = await broughtBack(batch.out, folder, job.job, batch.options.photos);
    const making: Making = {
      job,
      folder,
      planFrom:
        planFromOf(batch, known) ??
        fingerprint(batch.jobFingerprint(job), batch.planFrom, photos.from, batch.cutSheets?.from ?? ''),
      photos,
      back,
      record: known?.job === job.job ? known : undefined,
    };
    const { record } = making;
    if (record?.planFrom === making.planFrom && (await isCurrent(record, record.plan, making, batch))) {
      return fromRecord(record, 'unchanged', back.items);
    }
    if (batch.fatal.failure) throw batch.fatal.failure;
    plan = await batch.steps.planJob(job, { catalogue: batch.catalogue, settings: batch.settings });
    await pause();
    batch.signal.throwIfAborted();
    const shown = await photos.read(plan.site.equipments.map((equipment) => equipment.tag));
    const sheets = await batch.cutSheets?.read(partsOf(plan));
    // A photo that isn't printed is told with all that is open, in the pack too.
    const more = [...shown.items, ...(sheets?.items ?? [])];
    if (more.length > 0 && !batch.planAsKept)
      plan = { ...plan, openItems: inOrder([...plan.openItems, ...more]) };
    plan = withAccepted(plan, job);
    const shownAll = { photos: shown.photos, sheets: sheets?.sheets, record: {} };
    return await makePack(plan, shownAll, making, batch);
  } catch (error) {
    if (batch.signal.aborted) return undefined;
    return failed(error, job, folder, plan, batch);
  }
}

/** Papers alone leave it open what the plan was made from. */
function planFromOf(batch: BatchContext, known: PackRecord | undefined): Fingerprint | undefined {
  return batch.planAsKept ? known?.planFrom : undefined;
}

/** Tells whether the pack in the folder is the pack of that plan, with nothing edited, deleted or out of date. */
async function isCurrent(
  record: PackRecord,
  plan: Fingerprint,
  { folder, photos, back }: Making,
  batch: BatchContext,
): Promise<boolean> {
  const { options } = batch;
  if (options.force === true || record.plan !== plan) return false;
  if (options.make === 'pack') {
    if (record.printedPlan !== plan) return false;
    if (record.pagesFrom !== pagesFrom(plan, record.previousPlan, { photos, back }, batch)) return false;
    // A date of today is whatever day the pack was printed on.
    if (options.dateGiven && record.date !== options.date) return false;
  }
  const files = options.make === 'pack' ? record.files : record.files.filter((f) => isPlanFile(f.name));
  return areIntact(join(batch.out, folder), files);
}

const pagesFrom = (
  plan: Fingerprint,
  base: Fingerprint,
  { photos, back }: Pick<Making, 'photos' | 'back'>,
  batch: BatchContext,
): Fingerprint =>
  fingerprint(plan, base, photos.from, batch.pagesFrom, ...(back.from === '' ? [] : [back.from]));

/** The parts that a job's protectors take, each once. */
function partsOf(plan: Plan): string[] {
  return [...new Set(plan.protectors.flatMap(({ part }) => (part === null ? [] : [part])))];
}

async function makePack(plan: Plan, shown: Enclosed, making: Making, batch: BatchContext): Promise<MadeJob> {
  const { folder, record, planFrom, back } = making;
  const { options, previous, given, records } = batch;
  const text = batch.planAsKept?.(plan.job) ?? planJson(plan);
  await pause();
  const planned = fingerprint(text);
  const forms = siteForms(plan);
  const summary = {
    job: plan.job,
    name: plan.jobName,
    folder,
    planFrom,
    plan: planned,
    mark: forms.plan,
    basis: plan.basis,
    submittable: plan.submittable,
    protectors: plan.protectors.length,
    address: plan.address,
    revision: plan.revision,
    placed: placedIn(plan),
    unchecked: uncheckedClauses(plan, batch.settings),
    items: plan.openItems,
    orders: plan.orders,
  };
  if (record && (await isCurrent(record, planned, making, batch))) {
    // The lists changed, the plan didn't: rows moved about, or a part that nobody takes.
    const same = { ...record, ...summary };
    await records.put(same);
    return fromRecord(same, 'unchanged', back.items);
  }
  const planFiles: FileToWrite[] = [
    { name: 'plan.json', content: text },
    { name: 'schedule.csv', content: scheduleCsv(plan) },
  ];
  const base = previous.baseOf(record, planned);
  const submitted = await submittedSheets(planned, making, batch);
  const pages =
    options.make === 'pack'
      ? await printPages(
          plan,
          await batch.previous.read(folder, base),
          { ...shown, record: await recordOf(back, forms.plan, submitted.length > 0) },
          batch,
        )
      : undefined;
  batch.signal.throwIfAborted();
  if (record && record.plan !== planned) await previous.keep(record);
  await given.keep(record, forms.plan);
  const old = record?.files ?? [];
  const kept = pages ? [] : old.filter((file) => !isPlanFile(file.name));
  const written = await writePack(batch.out, {
    folder,
    files: [...planFiles, ...(pages ?? []).filter(({ name }) => !isFormFile(name))],
    forms: [
      ...siteTables(forms).map(tableForm),
      ...(pages ?? [])
        .filter(({ name }) => isFormFile(name))
        .map((form) => ({ ...form, asks: dataFingerprint(forms) })),
    ],
    before: old,
    removes: (name) =>
      isPlanFile(name) || (pages !== undefined && submitted.every((file) => file.name !== name)),
    leftOut: pages ? documentsLeftOut(plan).map((kind) => `${kind}.pdf`) : [],
  });
  const made: PackRecord = {
    ...summary,
    printedPlan: pages ? planned : (record?.printedPlan ?? ''),
    previousPlan: pages ? base : (record?.previousPlan ?? ''),
    pagesFrom: pages ? pagesFrom(planned, base, making, batch) : (record?.pagesFrom ?? ''),
    date: pages ? options.date : (record?.date ?? ''),
    files: [...written.files, ...kept, ...(pages ? submitted : [])],
  };
  await records.put(made);
  await previous.forget(record, made);
  return fromRecord(made, pages ? 'printed' : 'nothing', [...back.items, ...writtenTold(folder, written)]);
}

/**
 * What came of a job whose pack is as its record says.
 * @param more items of this run alone, which the next one needn't tell again
 */
function fromRecord(record: PackRecord, done: ReportLine['done'], more: readonly OpenItem[] = []): MadeJob {
  const items = [...record.items, ...more];
  const count = (severity: string): number => items.filter((item) => item.severity === severity).length;
  const line: ReportLine = {
    job: record.job,
    folder: record.folder,
    basis: record.basis,
    status: record.submittable ? 'complete' : 'draft',
    done,
    protectors: record.protectors,
    missing: count('missing'),
    conflict: count('conflict'),
    confirm: count('confirm'),
    jobName: record.name,
    address: record.address,
    revision: record.revision,
    record: 'planned',
  };
  const pages = record.printedPlan === record.plan ? record.files.filter((f) => f.name.endsWith('.pdf')) : [];
  return {
    line,
    placed: record.placed,
    documents: pages.map((file) => file.name),
    items,
    unchecked: record.unchecked,
    orders: record.orders.map((order) => ({ job: record.job, ...order, draft: !record.submittable })),
    exitStatus: record.submittable ? EXIT.complete : EXIT.drafts,
  };
}

/** A note in which no folder of this machine stands. */
function withoutMachine(told: Note, { options, out }: BatchContext): Note {
  const folders = [out, options.photos, options.templates, process.cwd()].filter((f) => f !== undefined);
  const clean = (value: unknown): unknown =>
    typeof value === 'string'
      ? withoutPaths(value, folders)
      : Array.isArray(value)
        ? value.map(clean)
        : value;
  const values = Object.fromEntries(Object.entries(told.values).map(([key, value]) => [key, clean(value)]));
  return { ...told, values };
}

function failed(
  error: unknown,
  job: JobList,
  folder: string,
  plan: Plan | undefined,
  batch: BatchContext,
): MadeJob {
  const ranOut = runOut(error);
  const known = error instanceof Failure && ranOut === undefined ? error : undefined;
  const isKnown = known?.note.code === PRINT_MESSAGES.noBrowser.code && batch.fatal.failure !== undefined;
  if (known?.note.code === PRINT_MESSAGES.noBrowser.code) batch.fatal.failure ??= known;
  const what = error instanceof Error ? error.message : String(error);
  const whole =
    known?.note ??
    (ranOut === undefined
      ? note(BATCH_MESSAGES.programFault, { what })
      : note(MACHINE_MESSAGES.ranOut, { because: ranOut }));
  const why = withoutMachine(whole, batch);
  // The report leaves this machine; whoever sits at it is told the places too.
  if (!isKnown && JSON.stringify(why.values) !== JSON.stringify(whole.values))
    batch.options.onNotice?.(whole);
  const place = { file: job.sheet.file, line: job.line, column: '' };
  const items = inOrder([
    ...(plan?.openItems ?? []),
    itemAt({ ...why, values: { ...why.values, packNotMade: true } }, place),
  ]);
  const count = (severity: string): number => items.filter((item) => item.severity === severity).length;
  return {
    line: {
      job: job.job,
      folder,
      basis: plan?.basis ?? '',
      status: 'failed',
      done: 'nothing',
      protectors: plan?.protectors.length ?? 0,
      missing: count('missing'),
      conflict: count('conflict'),
      confirm: count('confirm'),
      jobName: job.facts.job_name?.value ?? '',
      address: job.facts.address?.value ?? '',
      revision: job.facts.revision?.value ?? '',
      record: 'planned',
    },
    placed: plan ? placedIn(plan) : [],
    documents: [],
    items,
    unchecked: [],
    orders: [],
    // A job beyond the limits is one that can't be read; whatever else befalls it is a failure.
    exitStatus: known?.exitStatus === EXIT.unreadable ? EXIT.unreadable : EXIT.failed,
  };
}
