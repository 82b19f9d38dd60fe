import { rm } from 'node:fs/promises';
import { join } from 'node:path';
import { z } from 'zod';
import { itemAt, note } from '../model/message.js';
import { BATCH_MESSAGES } from '../model/messages/batch.js';
import type { JobList } from '../model/list.js';
import type { JobItem, OpenItem } from '../model/open-item.js';
import { QUESTION_COLUMNS } from '../model/questions.js';
import { WHOS } from '../model/words.js';
import { csvText, type Cell } from '../output/csv.js';
import { readRegularFile } from '../output/regular-file.js';
import { writeWhole, writeWholeFile, type FileToWrite } from '../output/whole-file.js';
import { fingerprint } from './fingerprint.js';
import { alikeTogether, questionsOf, type Question } from './questions.js';

/** Where it is kept what the files of questions were when they were written. */
const RECORD = 'questions.json';
const recordSchema = z.record(z.string(), z.string());
/** Fingerprints by name. */
type Written = z.infer<typeof recordSchema>;

/** Behind the name of a file that may stand there by now. */
const NEXT = ' next';

/** Bytes; the questions of 10,000 jobs are a tenth of it. */
const LARGEST = 400_000_000;
/** So many files that someone filled in may stand beside each other. */
const MOST_KEPT = 100;

/**
 * The questions of a batch, those alike together.
 * @param items of all jobs; those of no job as far as they hold something back
 * @param jobs as they were read
 */
export function questionsOfBatch(items: readonly JobItem[], jobs: readonly JobList[]): readonly Question[] {
  const lists = new Map(jobs.map((list) => [list.job, list]));
  const byJob = new Map<string, OpenItem[]>();
  for (const { job, item } of items) {
    if (job === '' && item.severity === 'confirm') continue;
    const mine = byJob.get(job);
    if (mine) mine.push(item);
    else byJob.set(job, [item]);
  }
  return [...byJob].flatMap(([job, mine]) => questionsOf(job, lists.get(job), mine)).sort(alikeTogether);
}

/** `questions.csv`, and a file of its lines for each who. */
export function questionFiles(questions: readonly Question[]): FileToWrite[] {
  const of = (name: string, some: readonly Question[]): FileToWrite => ({
    name,
    content: csvText(QUESTION_COLUMNS, some.map(cells)),
  });
  return [
    of('questions.csv', questions),
    ...WHOS.map((who) =>
      of(
        `questions-${who}.csv`,
        questions.filter(({ items }) => items[0]?.who === who),
      ),
    ),
  ];
}

function cells(question: Question): Cell[] {
  const { tags, line } = question;
  const { job, field, code, question: asked, found, expected, example, file } = question;
  return [job, tags.join('; '), field, code, asked, found, expected, example, file, line, '', '', ''];
}

/**
 * Writes the files of questions. One that isn't as an earlier run wrote it, since someone filled in answers, is left as it is:
 * the new one stands beside it.
 * @param out the output folder
 * @param own the folder of our own files in it
 * @returns an item for each file that was left
 * @throws Failure where the disk refuses
 */
export async function writeQuestions(
  out: string,
  own: string,
  questions: readonly Question[],
): Promise<OpenItem[]> {
  const record = await readRecord(own);
  const files: FileToWrite[] = [];
  const kept: OpenItem[] = [];
  for (const file of questionFiles(questions)) {
    const name = await freeName(out, file.name, record);
    files.push({ ...file, name });
    if (name === file.name) continue;
    const p = { file: file.name, fresh: name };
    kept.push(itemAt(note(BATCH_MESSAGES.questionsKept, p), { file: file.name, line: 0, column: '' }));
  }
  // Known before they stand there: a run that is killed between leaves files of ours, never ones that seem to be someone's.
  const prints = files.map(({ name, content }) => [name, fingerprint(Buffer.from(content))] as const);
  const next = Object.fromEntries(prints.map(([name, print]) => [`${name}${NEXT}`, print]));
  await writeRecord(own, { ...record, ...next });
  await writeWhole(out, files);
  const now = new Set(files.map(({ name }) => name));
  const before = Object.entries(record).filter(([name]) => !name.endsWith(NEXT) && !now.has(name));
  for (const [name] of before) await removeOurs(out, name, record);
  await writeRecord(own, Object.fromEntries([...before, ...prints]));
  return kept;
}

const writeRecord = (own: string, record: Written): Promise<void> =>
  writeWholeFile(join(own, RECORD), `${JSON.stringify(record)}\n`);

async function readRecord(own: string): Promise<Written> {
  try {
    const bytes = await readRegularFile(join(own, RECORD), { most: LARGEST, followLinks: false });
    return recordSchema.parse(JSON.parse(bytes.toString('utf8')));
  } catch {
    return {};
  }
}

/** The first name of a file that isn't taken by one that someone filled in. */
async function freeName(out: string, name: string, record: Written): Promise<string> {
  const stem = name.replace(/\.csv$/, '');
  for (let n = 1; n < MOST_KEPT; n += 1) {
    const tried = n === 1 ? name : n === 2 ? `${stem}.new.csv` : `${stem}.new-${n - 1}.csv`;
    if (await isOurs(join(out, tried), tried, record)) return tried;
  }
  return `${stem}.new-${MOST_KEPT}.csv`;
}

/** Takes away questions of an earlier run that stood beside a file which isn't there any more; never what someone filled in. */
async function removeOurs(out: string, name: string, record: Written): Promise<void> {
  const isQuestions = /^questions(?:-[a-z]+)?\.new(?:-\d+)?\.csv$/.test(name);
  if (isQuestions && (await isOurs(join(out, name), name, record)))
    await rm(join(out, name), { force: true });
}

/** True where nothing stands there, or what we wrote. */
async function isOurs(path: string, name: string, record: Written): Promise<boolean> {
  try {
    const bytes = await readRegularFile(path, { most: LARGEST, followLinks: false });
    const print = fingerprint(bytes);
    return print === record[name] || print === record[`${name}${NEXT}`];
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code === 'ENOENT';
  }
}
