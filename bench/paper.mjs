// What the PDFs of two folders of packs say, held against each other.
import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { PDFParse } from './pdf-readers.mjs';

/**
 * The PDFs below a folder.
 * @param {string} folder
 * @returns {string[]} paths from the folder, in order
 */
export function pdfsBelow(folder) {
  return readdirSync(folder, { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith('.pdf'))
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)))
    .sort();
}

/**
 * The text of a PDF. What its metadata say, its dates too, isn't looked at.
 * @param {Uint8Array} bytes
 * @returns {Promise<string[][]>} a page its lines, NFKC, blanks as one, empty lines left out
 */
export async function readPages(bytes) {
  // The parser takes the memory of its bytes with it, and a Buffer may share its memory with others.
  const parser = new PDFParse({ data: Uint8Array.from(bytes) });
  try {
    const { pages } = await parser.getText({ pageJoiner: '' });
    return pages.map(({ text }) =>
      text
        .normalize('NFKC')
        .split('\n')
        .map((line) => line.replace(/\s+/gu, ' ').trim())
        .filter((line) => line !== ''),
    );
  } finally {
    await parser.destroy();
  }
}

/**
 * The lines that only one of two texts has: longest common subsequence, what is alike at both ends taken off first.
 * @param {string[]} before
 * @param {string[]} after
 * @returns {string[]} in order, `- ` before what is gone and `+ ` before what is new
 */
export function differingLines(before, after) {
  let begin = 0;
  while (begin < Math.min(before.length, after.length) && before[begin] === after[begin]) begin += 1;
  let end = 0;
  while (end < Math.min(before.length, after.length) - begin && before.at(-1 - end) === after.at(-1 - end))
    end += 1;
  const a = before.slice(begin, before.length - end);
  const b = after.slice(begin, after.length - end);
  // common[i][j]: how many lines a from i and b from j have in common.
  const common = Array.from({ length: a.length + 1 }, () => new Uint32Array(b.length + 1));
  for (let i = a.length - 1; i >= 0; i -= 1)
    for (let j = b.length - 1; j >= 0; j -= 1)
      common[i][j] = a[i] === b[j] ? common[i + 1][j + 1] + 1 : Math.max(common[i + 1][j], common[i][j + 1]);
  const found = [];
  let [i, j] = [0, 0];
  while (i < a.length || j < b.length) {
    if (i < a.length && j < b.length && a[i] === b[j]) [i, j] = [i + 1, j + 1];
    else if (j === b.length || (i < a.length && common[i + 1][j] >= common[i][j + 1]))
      found.push(`- ${a[i++]}`);
    else found.push(`+ ${b[j++]}`);
  }
  return found;
}

/**
 * What differs between two printed documents: number of pages, text, and on which page it stands.
 * @param {string[][]} before lines by page
 * @param {string[][]} after lines by page
 * @returns {string[]} empty where both say the same on the same pages; lines may break elsewhere
 */
export function pageDifferences(before, after) {
  const found = [];
  if (before.length !== after.length) found.push(`${before.length} pages before, ${after.length} after`);
  const words = (pages) => pages.flat().join(' ');
  if (words(before) !== words(after)) return [...found, ...differingLines(before.flat(), after.flat())];
  const moved = before.flatMap((page, at) =>
    page.join(' ') === (after[at] ?? []).join(' ') ? [] : [at + 1],
  );
  if (moved.length > 0) found.push(`the same text stands on other pages: ${moved.join(', ')}`);
  return found;
}

/**
 * Reads every PDF of two folders and holds those of one name against each other.
 * @param {string} before
 * @param {string} after
 * @returns {Promise<{ documents: number, pages: number, differing: { name: string, differences: string[] }[] }>}
 *   documents of both folders together, pages of the first
 */
export async function comparePaper(before, after) {
  const [left, right] = [pdfsBelow(before), pdfsBelow(after)];
  const names = [...new Set([...left, ...right])].sort();
  const differing = [];
  let pages = 0;
  for (const name of names) {
    if (!left.includes(name)) differing.push({ name, differences: ['is only in the second folder'] });
    else if (!right.includes(name)) differing.push({ name, differences: ['is only in the first folder'] });
    else {
      const read = (folder) => readPages(readFileSync(join(folder, name)));
      try {
        const [a, b] = [await read(before), await read(after)];
        pages += a.length;
        const differences = pageDifferences(a, b);
        if (differences.length > 0) differing.push({ name, differences });
      } catch (error) {
        differing.push({ name, differences: [`can't be read: ${error.message}`] });
      }
    }
  }
  return { documents: names.length, pages, differing };
}
