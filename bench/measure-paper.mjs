// npm run paper: measures every page of every document as it is printed, and fails where one breaks what the design asks.
// Options: --only DOCUMENT, --job JOB, --paper PAPER (of permit sheets), --from FOLDER (packs that are there already), --json.
// Ends with 0 where nothing is broken, with 1 where something is, with 2 where nothing could be measured.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { DOCUMENTS, HELD } from './measure-paper/documents.mjs';
import { programsWords } from './measure-paper/known-words.mjs';
import { jobFolders, measureJob } from './measure-paper/measure-job.mjs';
import { IN_LANGUAGES, hasPermitPaper, makePacks, OTHER_PAPERS } from './measure-paper/packs.mjs';
import { failuresOf, heldOf, tableOf } from './measure-paper/table.mjs';

const { values } = parseArgs({
  options: {
    only: { type: 'string' },
    job: { type: 'string' },
    paper: { type: 'string' },
    from: { type: 'string' },
    json: { type: 'boolean', default: false },
  },
});

/** Folders of packs, and what is measured in each: on another paper than the usual one only the permit sheets differ. */
async function* packs(work, only) {
  if (values.from !== undefined) {
    yield { folder: values.from, only };
    return;
  }
  const papers =
    values.paper !== undefined ? [values.paper] : [null, ...((await hasPermitPaper()) ? OTHER_PAPERS : [])];
  for (const paper of papers) {
    const ofPaper = paper === null ? only : only.filter((document) => document.startsWith('permit-'));
    const changed = paper === null ? {} : { permitPaper: paper };
    if (ofPaper.length > 0)
      yield { folder: makePacks(work, paper ?? 'by-basis', changed, values.job), only: ofPaper };
  }
  const inLanguages = only.filter((document) => IN_LANGUAGES.documents.includes(document));
  if (values.paper !== undefined || inLanguages.length === 0) return;
  for (const { paper, language } of IN_LANGUAGES.variants) {
    const more = ['--owner-language', language, '--crew-language', language];
    const folder = makePacks(work, `${language}-${paper}`, { paper, plates: true }, values.job, more);
    yield { folder, only: inLanguages };
  }
}

async function measureAll(work, only) {
  const words = programsWords();
  const documents = [];
  for await (const { folder, only: measured } of packs(work, only))
    for (const job of jobFolders(folder, values.job))
      documents.push(...(await measureJob(job, words, new Set(measured))));
  return documents;
}

if (values.only !== undefined && !DOCUMENTS.includes(values.only)) {
  console.error(`--only ${values.only}: give one of ${DOCUMENTS.join(', ')}`);
  process.exit(2);
}
const work = mkdtempSync(join(tmpdir(), 'shuntbook-measure-'));
try {
  const documents = await measureAll(work, values.only === undefined ? DOCUMENTS : [values.only]);
  const failures = failuresOf(documents);
  if (values.json) console.log(JSON.stringify({ documents, failures, held: [...HELD.keys()] }));
  else {
    for (const line of tableOf(documents)) console.log(line);
    const held = heldOf(documents);
    if (held.length > 0) console.log(`\nHeld, listed and not failed:\n${held.join('\n')}`);
    if (failures.length > 0) console.log(`\nBroken:\n${failures.join('\n')}`);
    const pages = documents.reduce((sum, document) => sum + document.pages.length, 0);
    console.log(`\n${documents.length} documents, ${pages} pages measured; ${failures.length} failures`);
  }
  if (documents.length === 0) console.error('There is nothing to measure.');
  process.exitCode = documents.length === 0 ? 2 : failures.length > 0 ? 1 : 0;
} finally {
  rmSync(work, { recursive: true, force: true });
}
