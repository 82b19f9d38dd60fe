// Every document of a job's folder, page by page.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { paperOf } from './budgets.mjs';
import { documentOf } from './documents.mjs';
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
  const documents = new Map();
  for (const { name, printed } of read) {
    const document = documentOf(name);
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
      ...documentFindings(document, plan.protectors.length, pages),
      ...pages.flatMap(({ findings }, at) => findings.map((finding) => ({ ...finding, page: at + 1 }))),
    ],
  }));
}
