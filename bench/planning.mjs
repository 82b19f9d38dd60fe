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
import { parserOptions } from '../dist/read/records.js';
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
let plans = [];
for (let round = 0; round < 3; round += 1) {
  plans = [];
  const [parsed, records] = clock(() => parse(text, parserOptions(',')));
  if (records.length !== ROWS + 1) throw new Error(`csv-parse gave ${records.length} records`);
  const [planned, made] = clock(() => {
    const { jobs } = readListText('big.csv', text, { settings });
    return jobs.map((job) => planJob(job, { catalogue, settings }));
  });
  if (made.length !== JOBS) throw new Error(`${made.length} jobs were planned`);
  parsing.push(parsed);
  planning.push(planned);
  plans = made;
}
const out = mkdtempSync(join(tmpdir(), 'shuntbook-plans-'));
const begun = performance.now();
for (const plan of plans) {
  const files = [
    { name: 'plan.json', content: planJson(plan) },
    { name: 'schedule.csv', content: scheduleCsv(plan) },
  ];
  await writeWhole(join(out, plan.job), files);
}
const writing = (performance.now() - begun) / 1000;
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
