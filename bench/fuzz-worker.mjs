// Reads and plans mutated lists, one a message; the main thread holds the watch.
import { parentPort, workerData } from 'node:worker_threads';
import { parse } from 'csv-parse/sync';
import {
  Failure,
  defaultSettings,
  openItemsCsv,
  planJob,
  planJson,
  readCatalogueText,
  readLibraryText,
  readListContents,
  readPlan,
  scheduleCsv,
} from '../dist/index.js';
import { fuzzCase } from './fuzz-mutations.mjs';
import { workbookCase } from './fuzz-workbooks.mjs';

const settings = defaultSettings();
const CODE = /^[a-z][a-z0-9-]*\/[a-z0-9][a-z0-9-]*$/;
// What a spreadsheet could run; a plain number can't.
const RUNS = /^[\s\p{Cc}\p{Cf}\p{Z}]*[=+\-@|%]/u;
const NUMBER = /^-?(\d+(\.\d+)?)?$/;

/** What an item lacks, `` where nothing. */
function lacks(item) {
  if (!CODE.test(item.code)) return `a code: ${JSON.stringify(item)}`;
  if (!(item.line >= 1) && item.severity !== 'confirm') return `a line: ${JSON.stringify(item)}`;
  if (item.message === '' || item.hint === '') return `a message or a hint: ${item.code}`;
  return '';
}

function mustNotRun(csv) {
  for (const record of parse(csv)) {
    const cell = record.find((one) => RUNS.test(one) && !NUMBER.test(one));
    if (cell !== undefined)
      throw new Error(`a cell that we write could run: ${JSON.stringify(cell.slice(0, 80))}`);
  }
}

/** A plan.json that a later run or `why` can't read is lost, and one that reads otherwise tells of changes that nobody made. */
function mustReadBack(text) {
  const read = readPlan(JSON.parse(text));
  if (read === undefined) throw new Error('a plan.json that can’t be read back');
  if (planJson(read.plan) !== text) throw new Error('a plan.json that reads back as another');
}

/** The plan of a job; null: the job is beyond the limits, which is told in one sentence and is no crash. */
function withinLimits(planned) {
  try {
    return planned();
  } catch (error) {
    if (error instanceof Failure && error.message.startsWith('job/too-many-')) return null;
    throw error;
  }
}

/** Reads and plans one case. Throws what a crash would throw. */
function tryCase(number) {
  const caseOf = number >= workerData.firstWorkbook ? workbookCase : fuzzCase;
  const { name, list, library, catalogue, jobFacts } = caseOf(workerData.seed, number);
  const lib = readLibraryText('library.csv', library, settings);
  const parts = readCatalogueText('catalogue.csv', catalogue);
  const read = readListContents(
    [{ name, content: list }],
    { settings, library: lib.library },
    jobFacts === null ? undefined : { name: 'facts.csv', content: jobFacts },
  );
  const failures = [...read.unreadable, ...lib.unreadable, ...parts.unreadable];
  const items = [...failures, ...read.items, ...lib.items].map((item) => ({ job: '', item }));
  for (const job of read.jobs) {
    const plan = withinLimits(() => planJob(job, { catalogue: parts.catalogue, settings }));
    if (plan === null) continue;
    mustReadBack(planJson(plan));
    mustNotRun(scheduleCsv(plan));
    items.push(...plan.openItems.map((item) => ({ job: job.job, item })));
  }
  mustNotRun(openItemsCsv(items));
  const faults = items.map(({ item }) => lacks(item)).filter((fault) => fault !== '');
  if (faults.length > 0) throw new Error(`an item lacks ${faults[0]}`);
  return { jobs: read.jobs.length, unreadable: read.unreadable.length > 0, items: items.length };
}

parentPort.on('message', (number) => {
  try {
    parentPort.postMessage({ number, ...tryCase(number) });
  } catch (error) {
    parentPort.postMessage({ number, crash: error.stack ?? String(error) });
  }
});
parentPort.postMessage('ready');
