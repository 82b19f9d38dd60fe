// Reading and planning in memory against csv-parse alone, on one text: prints JSON. node --expose-gc bench/planning.mjs
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import {
  planJob,
  planJson,
  readCatalogue,
  readListText,
  scheduleCsv,
  defaultSettings,
} from '../dist/index.js';
import { parserOptions } from '../dist/read/file/records.js';
import { siteTables } from '../dist/output/site-tables.js';
import { siteForms } from '../dist/site-forms/rows.js';
import { writeWhole } from '../dist/output/whole-file.js';
import { bigList } from './generate.mjs';
import { median } from './processes.mjs';

const ROWS = 100_000;
const JOBS = 2_000;
const text = bigList(ROWS, JOBS);
const settings = defaultSettings();
const { catalogue } = await readCatalogue(
  new URL('../fixtures/demo/catalogue.csv', import.meta.url).pathname,
);
const clock = (work) => {
  globalThis.gc?.();
  const begun = performance.now();
  const result = work();
  return [(performance.now() - begun) / 1000, result];
};
const parsing = [];
const planning = [];
const read = () => readListText('big.csv', text, { settings }).jobs;
for (let round = 0; round < 3; round += 1) {
  const [parsed, records] = clock(() => parse(text, parserOptions(',')));
  if (records.length !== ROWS + 1) throw new Error(`csv-parse gave ${records.length} records`);
  // As a batch does it: a plan is let go once its job is done.
  const [planned, protectors] = clock(() =>
    read().reduce((sum, job) => sum + planJob(job, { catalogue, settings }).protectors.length, 0),
  );
  if (protectors < JOBS) throw new Error(`only ${protectors} protectors were planned`);
  parsing.push(parsed);
  planning.push(planned);
}
const out = mkdtempSync(join(tmpdir(), 'shuntbook-plans-'));
let writing = 0;
for (const job of read()) {
  const plan = planJob(job, { catalogue, settings });
  const begun = performance.now();
  const files = [
    { name: 'plan.json', content: planJson(plan) },
    { name: 'schedule.csv', content: scheduleCsv(plan) },
    ...siteTables(siteForms(plan)),
  ];
  await writeWhole(join(out, plan.job), files);
  writing += (performance.now() - begun) / 1000;
}
rmSync(out, { recursive: true });
const ratio = median(planning.map((seconds, i) => seconds / parsing[i]));
const memory = process.resourceUsage().maxRSS * 1024;
console.log(
  JSON.stringify({
    rows: ROWS,
    jobs: JOBS,
    parsing: median(parsing),
    planning: median(planning),
    ratio,
    writing,
    memory,
  }),
);
