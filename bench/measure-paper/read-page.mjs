// What a printed page says and where, with its real sizes: read from the PDF, after every transform.
import { createRequire } from 'node:module';
import { pathToFileURL } from 'node:url';
import { getDocument } from '../pdf-readers.mjs';

const { OPS } = await import(
  pathToFileURL(createRequire(import.meta.url).resolve('pdfjs-dist/legacy/build/pdf.mjs')).href
);

/** Rise of capitals over the line and fall of descenders under it, in type sizes: about what sans serifs have (value from memory). */
const RISE = 0.72;
const FALL = 0.2;

/**
 * The box of the ink of a text, in points from the upper left corner of the page.
 * @param {number[]} transform of the text, its size included, y upwards
 * @param {number} along length of the text in points
 * @param {number} height of the page in points
 */
function boxOf([a, b, c, d, x, y], along, height) {
  const size = Math.hypot(c, d);
  const run = Math.hypot(a, b);
  const [ux, uy] = [a / run, b / run];
  const [vx, vy] = [c / size, d / size];
  const corners = [0, along].flatMap((s) =>
    [-FALL * size, RISE * size].map((t) => [x + s * ux + t * vx, height - (y + s * uy + t * vy)]),
  );
  const [xs, ys] = [corners.map(([at]) => at), corners.map(([, at]) => at)];
  return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
}

/** Where each marked content stands in the structure, by its id: roles from the document down, and which child each is. */
function placesById(tree) {
  const found = new Map();
  const visit = (node, roles, path) => {
    if (node.type === 'content') found.set(node.id, { roles, path });
    else
      for (const [at, child] of (node.children ?? []).entries())
        visit(child, [...roles, node.role], [...path, at]);
  };
  if (tree) visit(tree, [], []);
  return found;
}

const times = ([a, b, c, d, e, f], [g, h, i, j, k, l]) => [
  a * g + c * h,
  b * g + d * h,
  a * i + c * j,
  b * i + d * j,
  a * k + c * l + e,
  b * k + d * l + f,
];

/**
 * How large a unit of the page's own layout is in points, by what most of its letters are set in: 0.75 where a CSS pixel is 1/96 in.
 * The running heads in the margins aren't asked, since they keep their size on a page that the browser shrinks.
 */
function scaleOf({ fnArray, argsArray }) {
  const letters = new Map();
  let matrix = [1, 0, 0, 1, 0, 0];
  const saved = [];
  let marked = 0;
  for (const [at, fn] of fnArray.entries()) {
    const args = argsArray[at];
    if (fn === OPS.save) saved.push(matrix);
    else if (fn === OPS.restore) matrix = saved.pop() ?? matrix;
    else if (fn === OPS.transform) matrix = times(matrix, args);
    else if (fn === OPS.beginMarkedContentProps || fn === OPS.beginMarkedContent) marked += 1;
    else if (fn === OPS.endMarkedContent) marked -= 1;
    else if (fn === OPS.showText && marked > 0) {
      const scale = Math.hypot(matrix[2], matrix[3]).toFixed(4);
      letters.set(scale, (letters.get(scale) ?? 0) + args[0].length);
    }
  }
  const [most] = [...letters].sort(([, one], [, other]) => other - one);
  return most ? Number(most[0]) : null;
}

async function readPage(page) {
  const [left, bottom, right, top] = page.view;
  const { items } = await page.getTextContent({ includeMarkedContent: true });
  const places = placesById(await page.getStructTree());
  const operators = await page.getOperatorList();
  const texts = [];
  const open = [];
  let groups = 0;
  for (const item of items) {
    if (item.type === 'beginMarkedContent' || item.type === 'beginMarkedContentProps') {
      // What is marked within marked text (letters that are drawn as one) belongs to it.
      const outer = open.at(-1);
      const place = places.get(item.id);
      open.push(outer && !place ? outer : { group: (groups += 1), roles: [], path: [], ...place });
    } else if (item.type === 'endMarkedContent') open.pop();
    else if (item.str.trim() !== '') {
      const [a, b, c, d, x, y] = item.transform;
      const transform = [a, b, c, d, x - left, y - bottom];
      texts.push({
        text: item.str.normalize('NFKC'),
        size: Math.hypot(c, d),
        angle: Math.round((Math.atan2(b, a) * 180) / Math.PI),
        along: item.width,
        origin: { x: x - left, y: top - y },
        ...boxOf(transform, item.width, top - bottom),
        font: page.commonObjs.has(item.fontName) ? page.commonObjs.get(item.fontName).name : '',
        ...(open.at(-1) ?? { group: 0, roles: [], path: [] }),
      });
    }
  }
  return { width: right - left, height: top - bottom, scale: scaleOf(operators), texts };
}

/**
 * The pages of a PDF: their size, the scale that their text is printed in, and each piece of text with its place, size and structure.
 * @param {Uint8Array} bytes
 * @returns {Promise<import('./page.d.mts').Page[]>} lengths in points (1/72 in), from the upper left corner
 */
export async function readPrinted(bytes) {
  const task = getDocument({ data: Uint8Array.from(bytes), verbosity: 0, useSystemFonts: false });
  try {
    const pdf = await task.promise;
    const pages = [];
    for (let number = 1; number <= pdf.numPages; number += 1) {
      const page = await pdf.getPage(number);
      pages.push(await readPage(page));
      page.cleanup();
    }
    return pages;
  } finally {
    await task.destroy();
  }
}
