// What a document breaks as a whole: its number of pages, and what its sheets have in common.
import { budgetOf } from './budgets.mjs';
import { SHEETS } from './documents.mjs';

/**
 * What a whole document breaks.
 * @param {string} document its kind
 * @param {number} protectors of the job
 * @param {readonly import('./whole-document.d.mts').Sheet[]} pages
 * @param {number | null} notes pages of wiring notes that it may have beside the rest
 * @param {number} more pages that a record and its photos may add to a pack
 * @returns {import('./whole-document.d.mts').FindingOnPage[]}
 */
export function documentFindings(document, protectors, pages, notes = null, more = 0) {
  const papers = [...new Set(pages.map(({ paper }) => paper))];
  const budget = budgetOf(document, protectors, papers[0], notes, more);
  const found = [];
  if (budget && pages.length > budget.most)
    found.push({
      page: null,
      found: `${pages.length} pages for ${protectors} protectors on ${papers[0]}, at most ${budget.most}`,
      asks: budget.asks,
    });
  if (!SHEETS.has(document)) return found;
  if (papers.length > 1)
    found.push({
      page: null,
      found: `sheets of several sizes: ${papers.join(', ')}`,
      asks: 'paper.md 2: one size a file',
    });
  for (const [at, { least }] of pages.entries())
    // What runs over the foot of a sheet makes a page of its own.
    if (!least['title strip'])
      found.push({ page: at + 1, found: 'no title strip', asks: 'paper.md 2, Title strip' });
  return found;
}
