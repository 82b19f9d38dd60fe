// Text too near to the left edge of its sheet, beyond an edge, or on a page that the browser has shrunk.

const MM = 72 / 25.4;
/** A CSS pixel in points: 1/96 in. */
const PIXEL = 0.75;
/** Rounding of the printer: 0.1 mm. */
const ROUNDING = 0.1;

/**
 * How far from the left edge the nearest text stands.
 * @param {import('./page.d.mts').Page} page
 * @returns {{ millimetres: number, text: string } | null} null where the page has no text
 */
export function nearestToLeft({ texts }) {
  const [first] = [...texts].sort((one, other) => one.left - other.left);
  return first ? { millimetres: first.left / MM, text: first.text } : null;
}

/**
 * Texts that lie beyond an edge of their sheet.
 * @param {import('./page.d.mts').Page} page
 * @returns {string[]}
 */
export function beyondSheet({ width, height, texts }) {
  const over = ROUNDING * MM;
  return texts
    .filter((t) => t.left < -over || t.top < -over || t.right > width + over || t.bottom > height + over)
    .map(({ text }) => text);
}

/**
 * What the browser has shrunk a page to, since something in it is wider than its sheet.
 * @param {import('./page.d.mts').Page} page
 * @returns {number | null} a share such as 0.8; null where it is as the styles say
 */
export function shrunkTo({ scale }) {
  if (scale === null || Math.abs(scale / PIXEL - 1) < 0.005) return null;
  return scale / PIXEL;
}
