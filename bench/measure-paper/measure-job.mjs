// Every document of a job's folder, page by page.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { paperOf } from './budgets.mjs';
import { documentOf, isPhotoPage } from './documents.mjs';
import { jobsWords } from './known-words.mjs';
import { linesOf } from './lines.mjs';
import { measurePage } from './measure-page.mjs';
import { picturesOf } from './pictures.mjs';
import { readPrinted } from './read-page.mjs';
import { documentFindings } from './whole-document.mjs';

const planOf = (folder) => JSON.parse(readFileSync(join(folder, 'plan.json'), 'utf8'));

/**
 * The folders of jobs below a folder.
 * @param {string} folder
 * @param {string | undefined} job only this one
 * @returns {string[]} in order
 */
export function jobFolders(folder, job) {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => /(?:^|[/\\])plan\.json$/.test(name))
    .map((name) => join(folder, name, '..'))
    .filter((found) => job === undefined || planOf(found).job === job)
    .sort((one, other) => one.localeCompare(other, 'en', { numeric: true }));
}

/**
 * The pages of wiring notes that a job may have: one a kind of places, and one for each 8 tags of a kind beyond 4.
 * @param {object} plan as its file has it
 * @returns {Promise<number | null>} null for a job of the demo, whose packs have budgets of their own
 */
async function notePages(plan) {
  if (plan.job.startsWith('UF-')) return null;
  const { readPlan } = await import('../../dist/output/plan-file.js');
  const { noteKinds } = await import('../../dist/documents/closeout-pack/note-kinds.js');
  const read = readPlan(plan);
  if (read === undefined) throw new Error(`${plan.job}: no plan that can be read`);
  return noteKinds(read.plan)
    .map((kind) => 1 + Math.ceil(Math.max(0, kind.flat().length - 4) / 8))
    .reduce((sum, pages) => sum + pages, 0);
}

/** Pages that the record of a job may add to its pack, photos aside (record.md, issue 18). */
const RECORD = 2;

/** The pages that a record and photos may add to a pack; 0 where nobody recorded anything. */
const morePages = (folder, printed) =>
  existsSync(join(folder, 'record.json')) ? RECORD + printed.filter(isPhotoPage).length : 0;

/**
 * Measures the documents of a job.
 * @param {string} folder of the job, with its plan
 * @param {import('./broken-words.d.mts').Vocabulary} words that the program says
 * @param {ReadonlySet<string>} only the documents that are measured
 * @returns {Promise<import('./measure-job.d.mts').MeasuredDocument[]>}
 */
export async function measureJob(folder, words, only) {
  const plan = planOf(folder);
  const files = readdirSync(folder)
    .filter((name) => documentOf(name) !== null && existsSync(join(folder, name)))
    .sort((one, other) => one.localeCompare(other, 'en', { numeric: true }));
  const read = [];
  for (const name of files)
    if (only.has(documentOf(name)))
      read.push({ name, printed: await readPrinted(readFileSync(join(folder, name))) });
  const lines = read.flatMap(({ printed }) => printed.flatMap(({ texts }) => linesOf(texts).flat()));
  const vocabularies = [words, jobsWords(plan, lines)];
  const notes = await notePages(plan);
  const documents = new Map();
  const more = new Map();
  for (const { name, printed } of read) {
    const document = documentOf(name);
    more.set(document, morePages(folder, printed));
    const pictures = picturesOf(join(folder, name));
    const measured = printed.map((page, at) => ({
      paper: paperOf(page),
      ...measurePage(document, page, pictures[at] ?? null, vocabularies),
    }));
    documents.set(document, [...(documents.get(document) ?? []), ...measured]);
  }
  return [...documents].map(([document, pages]) => ({
    document,
    job: plan.job,
    pages: pages.map((page, at) => ({ page: at + 1, ...page })),
    findings: [
      ...documentFindings(document, plan.protectors.length, pages, notes, more.get(document)),
      ...pages.flatMap(({ findings }, at) => findings.map((finding) => ({ ...finding, page: at + 1 }))),
    ],
  }));
}
