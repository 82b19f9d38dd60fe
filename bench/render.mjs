// Writes the HTML of every document of a batch: node bench/render.mjs LISTS FOLDER
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { embeddedFonts, planJob, readInputs, renderDocuments, withPrinter } from '../dist/index.js';

const [lists, folder] = process.argv.slice(2);
mkdirSync(folder, { recursive: true });
const date = '2026-05-06';
const inputs = await readInputs({ make: 'pack', lists: [lists], date, dateGiven: true });
const { kit } = await embeddedFonts();
let n = 0;
// Permit sheets are measured in the browser before they are rendered.
await withPrinter({}, async ({ measure }) => {
  for (const job of inputs.jobs) {
    const plan = planJob(job, inputs);
    const context = { settings: inputs.settings, date, fonts: kit, measure, photos: [], separate: false };
    for (const { html } of await renderDocuments(plan, context)) {
      writeFileSync(join(folder, `${String((n += 1)).padStart(6, '0')}.html`), html);
    }
  }
});
