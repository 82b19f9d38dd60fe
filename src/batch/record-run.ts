import { join } from 'node:path';
import { setImmediate as pause } from 'node:timers/promises';
import { EXIT, type ExitStatus } from '../model/exit-status.js';
import { itemAt, note } from '../model/message.js';
import { RECORD_MESSAGES } from '../model/messages/record.js';
import { byNaturalOrder } from '../model/natural-order.js';
import type { JobItem, OpenItem } from '../model/open-item.js';
import type { Plan } from '../model/plan.js';
import { RecordSchema, type SiteRecord } from '../model/record.js';
import { defaultSettings } from '../model/settings.js';
import { cellOf } from '../model/site-form-rows.js';
import { folderNames } from '../output/folder-name.js';
import { jsonText } from '../output/json.js';
import { lockOutput } from '../output/lock.js';
import { ownFolder } from '../output/make-folder.js';
import { readPlan } from '../output/plan-file.js';
import { readRegularFile } from '../output/regular-file.js';
import { openItemsCsv } from '../output/tables.js';
import { notWritten, sweepTemporaryFiles, writeWhole, writeWholeFile } from '../output/whole-file.js';
import { readCatalogue } from '../read/company/catalogue.js';
import { readSettings } from '../read/company/settings.js';
import { recordOfJob, type CameBack } from '../record/record-of-job.js';
import { companyKept } from './company-kept.js';
import { openGivenPlans } from './given-plans.js';
import { jobPlanner, type CompanyRead } from './job-planner.js';
import { OWN_FOLDER } from './own-folder.js';
import { openPackRecords, type PackRecords } from './pack-records.js';
import { briefRecords, readJobRecord, RECORD_FILE } from './record-file.js';
import { readFormFiles, type FormFile } from './record-files.js';
import type { FileTaken, RecordedJob, RecordOptions, RecordResult } from './record-options.js';
import { openRecordPhotos } from './record-photos.js';
import { printRecorded } from './record-print.js';
import { cameBack, type PlacedRow } from './record-rows.js';
import { addSerials, serialItems, withSerialItems, type SerialsThere } from './record-serials.js';
import { makeRegister } from './register.js';
import { stopping } from './stopping.js';

/** Bytes; no plan is nearly as large. */
const LARGEST = 400_000_000;

/** A job of this run. */
interface Job {
  readonly job: string;
  readonly folder: string;
  readonly plan: Plan;
  /** `plan.json` as it stands. */
  readonly text: string;
  readonly before: { readonly record: SiteRecord; readonly text: string } | undefined;
  readonly rows: PlacedRow[];
  readonly files: FormFile[];
}

/**
 * Takes in what crews filled in: holds it against each job's plan, which stays as it is, and writes `record.json` of each job,
 * `record-items.csv` and the register; then prints the as-built papers.
 * @param options what to do
 * @throws Failure where the output folder is held (75) or can't be written to (70)
 */
export async function runRecord(options: RecordOptions): Promise<RecordResult> {
  const stop = stopping(options.signal, options.stopOnSignals === true);
  const out = options.out ?? 'out';
  try {
    const own = await ownFolder(out, OWN_FOLDER).catch((error: unknown) => {
      throw notWritten(out, error);
    });
    const lock = await lockOutput(own, out);
    try {
      if (lock.tookOver) await sweepTemporaryFiles(out);
      return await takeRecords(options, { out, own, signal: stop.signal });
    } finally {
      await lock.release();
    }
  } finally {
    stop.dispose();
  }
}

interface Run {
  readonly out: string;
  readonly own: string;
  readonly signal: AbortSignal;
}

async function takeRecords(options: RecordOptions, run: Run): Promise<RecordResult> {
  const { out, own, signal } = run;
  const read = await readFormFiles(options.files, signal);
  const standing = await standingDeviations(out);
  const records = await openPackRecords(own);
  const company = await companyOf(options, own);
  const unreadable = [...read.unreadable, ...company.unreadable];
  const items: JobItem[] = [...read.items, ...company.items].map((item) => ({ job: '', item }));
  const found = await jobsOf([...standing, ...read.files], records, out, items);
  const given = openGivenPlans(own, out);
  const made: { job: Job; record: SiteRecord }[] = [];
  for (const job of found) {
    await pause();
    if (signal.aborted) break;
    const { plan, folder, before } = job;
    const photos = options.photos === undefined ? undefined : join(options.photos, job.job);
    const files: CameBack['files'] = job.files.map(({ file, sha256 }) => ({
      file,
      sha256,
      taken: options.date,
    }));
    const back = await cameBack(job.rows, files, {
      plan,
      settings: company.company?.settings ?? defaultSettings(),
      given: (mark) => given.read(folder, mark),
      photo: openRecordPhotos(out, folder, photos),
    });
    made.push({
      job,
      record: recordOfJob({ plan, before: before?.record, back, planner: jobPlanner(plan, company.company) }),
    });
  }
  const serials = await serialsOf(
    out,
    made.map(({ record }) => record),
  );
  const jobs: RecordedJob[] = [];
  for (const { job, record: own } of made) {
    // In the order of the schema, whether a part of it was read back or is new.
    const record = RecordSchema.parse(withSerialItems(own, serialItems(own, serials)));
    const text = jsonText(record);
    const changed = job.before?.text !== text;
    if (changed) await writeWholeFile(join(out, job.folder, RECORD_FILE), text);
    const count = (severity: string): number =>
      record.items.filter((item) => item.severity === severity).length;
    jobs.push({
      job: job.job,
      folder: job.folder,
      record: record.state,
      protectors: record.housings.length,
      missing: count('missing'),
      conflict: count('conflict'),
      confirm: count('confirm'),
      changed,
      printed: false,
    });
    items.push(...record.items.map((item) => ({ job: job.job, item })));
  }
  await writeItems(out, items);
  const register = await makeRegister(out, options.date);
  items.unshift(...register.items.map((item) => ({ job: '', item })));
  const printed =
    options.pack && !signal.aborted && jobs.length > 0
      ? await printRecorded(
          made.map(({ job: { folder, plan, text } }) => ({ folder, plan, text })),
          { options, ...run, records, company: company.company, logo: company.logo },
        )
      : { folders: new Set<string>(), items: [], exitStatus: EXIT.complete };
  items.push(...printed.items);
  const done = jobs.map((job) => ({ ...job, printed: printed.folders.has(job.folder) }));
  const files: FileTaken[] = read.files.map(({ file, rows }) => ({
    file,
    rows: rows.length,
    jobs: [...new Set(rows.map((row) => cellOf(row, 'job')))].sort(byNaturalOrder),
  }));
  const statuses: ExitStatus[] = [
    printed.exitStatus,
    unreadable.length > 0 ? EXIT.unreadable : EXIT.complete,
    done.some(({ record }) => record !== 'as built') ||
    items.some(({ job, item }) => job === '' && item.severity !== 'confirm')
      ? EXIT.drafts
      : EXIT.complete,
    signal.aborted ? EXIT.interrupted : EXIT.complete,
  ];
  const exitStatus = statuses.reduce((a, b) => (b > a ? b : a), EXIT.complete);
  return { exitStatus, out, files, jobs: done, items, unreadable, interrupted: signal.aborted };
}

/** What is accepted for all jobs may stand in the output folder itself. */
async function standingDeviations(out: string): Promise<readonly FormFile[]> {
  const path = join(out, 'deviations.csv');
  const isThere = await readRegularFile(path, { most: LARGEST, followLinks: false }).then(
    () => true,
    () => false,
  );
  return isThere ? (await readFormFiles([path], undefined)).files : [];
}

/** Catalogue and settings: those given, else those of the last pack. */
async function companyOf(
  { catalogue, settings }: RecordOptions,
  own: string,
): Promise<{
  readonly company: CompanyRead | undefined;
  readonly logo: string | undefined;
  readonly items: readonly OpenItem[];
  readonly unreadable: readonly OpenItem[];
}> {
  const kept = await companyKept(own);
  const logo = kept?.logo;
  // Of two that go together one given isn't enough, where the other is lost.
  if (kept === undefined && (catalogue === undefined || settings === undefined))
    return { company: undefined, logo, items: [], unreadable: [] };
  const path = { catalogue: catalogue ?? kept?.catalogue, settings: settings ?? kept?.settings };
  const readSet = await readSettings(path.settings);
  const readCat = path.catalogue === undefined ? undefined : await readCatalogue(path.catalogue);
  const unreadable = [...readSet.unreadable, ...(readCat?.unreadable ?? [])];
  const company =
    unreadable.length > 0 ? undefined : { catalogue: readCat?.catalogue, settings: readSet.settings };
  return { company, logo, items: [], unreadable };
}

/** The jobs that rows are of; rows of none are items. */
async function jobsOf(
  files: readonly FormFile[],
  records: PackRecords,
  out: string,
  items: JobItem[],
): Promise<Job[]> {
  const jobs = new Map<string, Job | null>();
  const told = new Set<string>();
  for (const file of files) {
    for (const row of file.rows) {
      const id = cellOf(row, 'job');
      if (id === '' && Object.keys(row.cells).length === 0) continue;
      if (!jobs.has(id)) jobs.set(id, await openJob(id, records, out, items));
      const job = jobs.get(id);
      if (job) {
        job.rows.push({ row, folder: file.folder });
        if (!job.files.includes(file)) job.files.push(file);
      } else if (job === null && !told.has(JSON.stringify([file.file, id]))) {
        told.add(JSON.stringify([file.file, id]));
        const place = { file: row.file, line: row.line, column: row.columns.job ?? 'job' };
        if (!items.some(({ job: of, item }) => of === id && item.code !== RECORD_MESSAGES.noSuchJob.code))
          items.push({ job: '', item: itemAt(note(RECORD_MESSAGES.noSuchJob, { job: id }), place) });
      }
    }
  }
  return [...jobs.values()].flatMap((job) => job ?? []).sort((a, b) => byNaturalOrder(a.job, b.job));
}

/** The job in the output folder; null: there is none, or what is there can't be read, which is an item. */
async function openJob(id: string, records: PackRecords, out: string, items: JobItem[]): Promise<Job | null> {
  if (id === '') return null;
  const folder = records.folderOf(id) ?? folderNames([id]).get(id) ?? '';
  const path = join(out, folder, 'plan.json');
  const bytes = await readRegularFile(path, { most: LARGEST, followLinks: false }).catch(() => undefined);
  if (!bytes) return null;
  const plan = planOf(bytes);
  const tell = (item: OpenItem): null => {
    items.push({ job: id, item });
    return null;
  };
  const file = `${folder}/plan.json`;
  if (plan?.job !== id && plan !== undefined) return null;
  if (plan === undefined)
    return tell(itemAt(note(RECORD_MESSAGES.noPlan, { job: id, plan: file }), { file, line: 0, column: '' }));
  const before = await readJobRecord(out, folder);
  if (before === 'unread') {
    const record = `${folder}/${RECORD_FILE}`;
    return tell(
      itemAt(note(RECORD_MESSAGES.notRead, { job: id, record }), { file: record, line: 0, column: '' }),
    );
  }
  return {
    job: id,
    folder,
    plan,
    text: bytes.toString('utf8'),
    before: before === 'none' ? undefined : before,
    rows: [],
    files: [],
  };
}

function planOf(bytes: Buffer): Plan | undefined {
  try {
    return readPlan(JSON.parse(bytes.toString('utf8')))?.plan;
  } catch {
    return undefined;
  }
}

/** What hangs at all jobs: those of this run as they are now. */
async function serialsOf(out: string, now: readonly SiteRecord[]): Promise<SerialsThere> {
  const serials: SerialsThere = new Map();
  const mine = new Set(now.map(({ job }) => job));
  for await (const record of briefRecords(out)) if (!mine.has(record.job)) addSerials(serials, record);
  for (const record of now) addSerials(serials, record);
  return serials;
}

const UNREAD: ReadonlySet<string> = new Set([RECORD_MESSAGES.noPlan.code, RECORD_MESSAGES.notRead.code]);

/** `record-items.csv`: the items of all jobs with a record, those of no job first. */
async function writeItems(out: string, ofRun: readonly JobItem[]): Promise<void> {
  const all: JobItem[] = ofRun.filter(({ job }) => job === '');
  const unread = ofRun.filter(({ job, item }) => job !== '' && UNREAD.has(item.code));
  all.push(...unread);
  for await (const { job, items } of briefRecords(out)) for (const item of items) all.push({ job, item });
  await writeWhole(out, [{ name: 'record-items.csv', content: openItemsCsv(all) }]);
}
