// What a pack costs, part by part, one job after another on one page: prints JSON. node bench/parts.mjs LISTS
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { embeddedFonts, planJob, planJson, readInputs, renderDocuments, scheduleCsv } from '../dist/index.js';
import { jobFingerprints } from '../dist/batch/fingerprint.js';
import { siteTables } from '../dist/output/site-tables.js';
import { siteForms } from '../dist/site-forms/rows.js';
import { writeWhole } from '../dist/output/whole-file.js';
import { startBrowser } from '../dist/print/browser.js';
import { openPage } from '../dist/print/page.js';
import { finishPdf } from '../dist/print/pdf.js';

const [lists] = process.argv.slice(2);
const date = '2026-05-06';
const parts = {};
// ms of printing and finishing the forms that crews fill in, which stand among the other documents above.
let forForms = 0;
const clock = async (name, work) => {
  const begun = performance.now();
  const result = await work();
  parts[name] = (parts[name] ?? 0) + performance.now() - begun;
  return result;
};
const inputs = await clock('read', () => readInputs({ make: 'pack', lists: [lists], date, dateGiven: true }));
const fonts = await embeddedFonts();
const { browser, end } = await clock('start the browser', () => startBrowser());
const page = await clock('open a page', () => openPage(browser, fonts));
const ofJob = jobFingerprints();
const out = mkdtempSync(join(tmpdir(), 'shuntbook-parts-'));
const created = new Date(`${date}T00:00:00Z`);
for (const job of inputs.jobs) {
  await clock('fingerprint', () => ofJob(job));
  const plan = await clock('plan', () => planJob(job, inputs));
  const context = {
    settings: inputs.settings,
    date,
    fonts: fonts.kit,
    photos: [],
    separate: false,
    measure: (html) => page.measure(html),
  };
  const documents = await clock('render', () => renderDocuments(plan, context));
  const files = [];
  for (const { fileName, html, metadata, form } of documents) {
    const begun = performance.now();
    const printed = await clock('print', () => page.print(html));
    const { bytes } = await clock('finish the PDF', () =>
      finishPdf(printed, { ...metadata, created }, 0, form),
    );
    if (form !== undefined) forForms += performance.now() - begun;
    files.push({ name: fileName, content: bytes });
  }
  await clock('write', () => {
    files.push(
      { name: 'plan.json', content: planJson(plan) },
      { name: 'schedule.csv', content: scheduleCsv(plan) },
      ...siteTables(siteForms(plan)),
    );
    return writeWhole(join(out, job.job), files);
  });
}
await end();
rmSync(out, { recursive: true });
console.log(JSON.stringify({ jobs: inputs.jobs.length, parts, forForms }));
