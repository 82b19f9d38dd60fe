// What was measured, for people.
import { HELD } from './documents.mjs';

const COLUMNS = [
  'document',
  'job',
  'paper',
  'page',
  'body',
  'heading',
  'table',
  'drawing',
  'strip',
  'margin',
  'left',
  'blank',
  'breaks',
];
const points = (least, ...roles) => {
  const found = roles.flatMap((role) => least[role]?.points ?? []);
  return found.length === 0 ? '-' : Math.min(...found).toFixed(1);
};

function rowOf({ document, job }, { page, paper, least, left, blank, findings }) {
  return [
    document,
    job,
    paper,
    String(page),
    points(least, 'body', 'box text'),
    points(least, 'heading'),
    points(least, 'table', 'box table'),
    points(least, 'drawing', 'box figure'),
    points(least, 'title strip'),
    points(least, 'margin'),
    left === null ? '-' : left.toFixed(0),
    blank === null ? '-' : `${(blank * 100).toFixed(0)} %`,
    findings.length === 0 ? '' : `${findings.length}${HELD.has(document) ? ' held' : ''}`,
  ];
}

/**
 * A line a page: least type by role in points, mm to the left edge, blank share, how many lines of the design it breaks.
 * @param {readonly import('./measure-job.d.mts').MeasuredDocument[]} documents
 * @returns {string[]}
 */
export function tableOf(documents) {
  const rows = documents.flatMap((document) => document.pages.map((page) => rowOf(document, page)));
  const widths = COLUMNS.map((name, at) => Math.max(name.length, ...rows.map((row) => row[at].length)));
  return [COLUMNS, widths.map((width) => '-'.repeat(width)), ...rows].map((row) =>
    row
      .map((cell, at) => cell.padEnd(widths[at]))
      .join('  ')
      .trimEnd(),
  );
}

/**
 * A line a failure: document, job, paper, page, what was found, which line of the design asks.
 * @param {readonly import('./measure-job.d.mts').MeasuredDocument[]} documents
 * @returns {string[]} of what isn't held
 */
export function failuresOf(documents) {
  return documents
    .filter(({ document }) => !HELD.has(document))
    .flatMap(({ document, job, pages, findings }) =>
      findings.map(
        ({ page, found, asks }) =>
          `${document}, ${job}, ${pages[(page ?? 1) - 1]?.paper}${page === null ? '' : `, page ${page}`}: ${found} (${asks})`,
      ),
    );
}

/**
 * What is held: a line a document and line of the design, with how often it is broken.
 * @param {readonly import('./measure-job.d.mts').MeasuredDocument[]} documents
 * @returns {string[]}
 */
export function heldOf(documents) {
  const counts = new Map();
  for (const { document, job, findings } of documents)
    if (HELD.has(document))
      for (const { page, found, asks } of findings) {
        const key = `${document}: ${asks}`;
        const first = `${job}${page === null ? '' : `, page ${page}`}: ${found}`;
        counts.set(key, { times: (counts.get(key)?.times ?? 0) + 1, first: counts.get(key)?.first ?? first });
      }
  return [...counts].map(([key, { times, first }]) => `${key}: ${times} times, such as ${first}`);
}
