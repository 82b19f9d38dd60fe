import { lstat, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { EXIT, type ExitStatus } from '../model/exit-status.js';
import { Failure } from '../model/failure.js';
import { itemAt, note } from '../model/message.js';
import { placeOfRecord, REGISTER_MESSAGES } from '../model/messages/register.js';
import type { OpenItem } from '../model/open-item.js';
import type { DueCheck, RegisteredJob, RegisterLine } from '../model/register.js';
import { checksCalendar } from '../output/calendar.js';
import { checksCsv, registerHeading, registerRecords } from '../output/register-tables.js';
import { lockOutput } from '../output/lock.js';
import { ownFolder } from '../output/make-folder.js';
import { notWritten, sweepTemporaryFiles, writeWhole } from '../output/whole-file.js';
import { soonestFirst } from '../register/due-order.js';
import { registerOf } from '../register/of-record.js';
import { checkFits, lineFit, type RegisterQuestion } from '../register/search.js';
import { OWN_FOLDER } from './own-folder.js';
import { recordsOf } from './register-jobs.js';

/** What came of making the register. */
export interface RegisterResult {
  readonly exitStatus: ExitStatus;
  readonly jobs: readonly RegisteredJob[];
  /** Soonest first. */
  readonly checks: readonly DueCheck[];
  readonly overdue: number;
  /** Records that couldn't be read, and serials that hang at two places. */
  readonly items: readonly OpenItem[];
}

/**
 * Makes `register.csv`, `checks-due.csv` and `checks-due.ics` of an output folder from the records in its jobs' folders, and from
 * nothing else: what stood in these files before isn't looked at. The caller holds the lock of the folder.
 * @param out the output folder
 * @param date `YYYY-MM-DD` of the run: stamps the calendar, and says what is overdue
 * @throws Failure `output/not-written` (70); the system's error where the output folder can't be read
 */
export async function makeRegister(out: string, date: string): Promise<RegisterResult> {
  const tables = [registerHeading()];
  const jobs: RegisteredJob[] = [];
  const items: OpenItem[] = [];
  const serials = new Map<string, Hanging>();
  const twice = new Map<string, Hanging>();
  for await (const { folder, record, item } of recordsOf(out)) {
    if (record === undefined) {
      items.push(item);
      continue;
    }
    const { lines, checks } = registerOf(record, date);
    tables.push(registerRecords(lines));
    const hanging = lines.filter(({ replacedOn }) => replacedOn === '');
    for (const line of hanging) noteSerial(line, folder, serials, twice);
    jobs.push({
      job: record.job,
      folder,
      state: record.state,
      hanging: new Set(hanging.map(({ protector }) => protector)).size,
      replaced: lines.filter(({ replacedOn }) => replacedOn !== ''),
      checks,
    });
  }
  const checks = jobs.flatMap((job) => job.checks).sort(soonestFirst);
  // Where no job has a record, and none had one, nobody needs empty tables.
  if (jobs.length > 0 || items.length > 0 || (await isThere(join(out, 'register.csv'))))
    await writeWhole(out, [
      { name: 'register.csv', pieces: tables },
      { name: 'checks-due.csv', pieces: checksCsv(checks, date) },
      { name: 'checks-due.ics', pieces: checksCalendar(checks, date) },
    ]);
  const conflicts = [...twice.values()].map(({ line, folder, places }) =>
    itemAt(
      note(REGISTER_MESSAGES.serialTwice, {
        serial: line.serial,
        part: line.part,
        maker: line.maker,
        places,
      }),
      placeOfRecord(folder),
    ),
  );
  return {
    exitStatus: statusOf(items, conflicts),
    jobs,
    checks,
    overdue: checks.filter(({ due }) => due < date).length,
    items: [...items, ...conflicts],
  };
}

/** A serial with where it hangs. */
interface Hanging {
  readonly line: RegisterLine;
  readonly folder: string;
  readonly places: { readonly job: string; readonly protector: string }[];
}

function noteSerial(
  line: RegisterLine,
  folder: string,
  serials: Map<string, Hanging>,
  twice: Map<string, Hanging>,
): void {
  if (line.serial === '' || line.serial === 'none') return;
  const key = JSON.stringify([line.maker, line.part, line.serial]).toLowerCase();
  const place = { job: line.job, protector: line.protector };
  const known = serials.get(key);
  if (known === undefined) {
    serials.set(key, { line, folder, places: [place] });
    return;
  }
  known.places.push(place);
  twice.set(key, known);
}

function statusOf(unread: readonly OpenItem[], conflicts: readonly OpenItem[]): ExitStatus {
  if (unread.length > 0) return EXIT.unreadable;
  return conflicts.length > 0 ? EXIT.drafts : EXIT.complete;
}

/** What the register answers. */
export interface RegisterAnswer {
  readonly exitStatus: ExitStatus;
  /** Those that are meant, in the order of the register. */
  readonly lines: readonly RegisterLine[];
  /** Those of the part whose serial doesn't say whether they are meant. */
  readonly untold: readonly RegisterLine[];
  /** Soonest first. */
  readonly checks: readonly DueCheck[];
  /** Records that couldn't be read. */
  readonly items: readonly OpenItem[];
}

/**
 * Asks the records of an output folder; writes nothing.
 * @param out the output folder
 * @param question what is meant
 * @param date `YYYY-MM-DD` of the run
 * @throws Failure `register/no-folder` (2)
 */
export async function askRegister(
  out: string,
  question: RegisterQuestion,
  date: string,
): Promise<RegisterAnswer> {
  await folderThere(out);
  const meant: RegisterLine[] = [];
  const untold: RegisterLine[] = [];
  const due: DueCheck[] = [];
  const items: OpenItem[] = [];
  for await (const { record, item } of recordsOf(out)) {
    if (record === undefined) {
      items.push(item);
      continue;
    }
    const { lines, checks } = registerOf(record, date);
    for (const line of lines) {
      const fit = lineFit(line, question);
      if (fit !== 'other') (fit === 'meant' ? meant : untold).push(line);
    }
    due.push(...checks.filter((check) => checkFits(check, question)));
  }
  const { part } = question;
  const untoldItem =
    part === undefined || untold.length === 0
      ? []
      : [
          itemAt(note(REGISTER_MESSAGES.serialsUntold, { part, protectors: untold.length }), {
            file: '',
            line: 0,
            column: '',
          }),
        ];
  return {
    exitStatus: items.length > 0 ? EXIT.unreadable : EXIT.complete,
    lines: meant,
    untold,
    checks: due.sort(soonestFirst),
    items: [...items, ...untoldItem],
  };
}

/**
 * Makes the register as {@link makeRegister} does, and holds the output folder meanwhile.
 * @throws Failure `register/no-folder` (2); `output/held` (75); `output/not-written` (70)
 */
export async function rebuildRegister(out: string, date: string): Promise<RegisterResult> {
  await folderThere(out);
  const own = await ownFolder(out, OWN_FOLDER).catch((error: unknown) => {
    throw notWritten(out, error);
  });
  const lock = await lockOutput(own, out);
  try {
    if (lock.tookOver) await sweepTemporaryFiles(out);
    return await makeRegister(out, date);
  } finally {
    await lock.release();
  }
}

const isThere = (path: string): Promise<boolean> =>
  lstat(path).then(
    () => true,
    () => false,
  );

async function folderThere(out: string): Promise<void> {
  const isFolder = await stat(out).then(
    (state) => state.isDirectory(),
    () => false,
  );
  if (!isFolder) throw new Failure(note(REGISTER_MESSAGES.noFolder, { out }), EXIT.unreadable);
}
