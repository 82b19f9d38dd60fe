// Letters that are set in another font than the house's: a font that failed to load prints with another one, and says nothing.

/** How the fonts of a document are named in it. */
const PLEX = { is: /IBMPlexSansCond/, asks: 'paper.md 1, Type: IBM Plex Sans Condensed' };
const ATKINSON = {
  is: /AtkinsonHyperlegibleNext/,
  asks: 'paper.md 1, Type: Atkinson Hyperlegible Next for owners and labels',
};
const FONTS = {
  'permit-sheet': PLEX,
  'permit-appendix': PLEX,
  'closeout-pack': PLEX,
  'owner-sheet': ATKINSON,
  labels: ATKINSON,
  'site-record': PLEX,
};

/**
 * The fonts of letters that the house's font has and that are set in another one. Signs and other scripts aren't asked.
 * @param {string} document its kind
 * @param {readonly import('./page.d.mts').Text[]} texts
 * @returns {import('./page.d.mts').Finding[]} a line a font, with the first text in it
 */
export function otherFonts(document, texts) {
  const asked = FONTS[document];
  if (!asked) return [];
  const first = new Map();
  for (const { text, font } of texts)
    if (/[A-Za-z]{2}/.test(text) && !asked.is.test(font) && !first.has(font)) first.set(font, text);
  return [...first].map(([font, text]) => ({
    found: `letters in ${font.replace(/^[A-Z]{6}\+/, '')}: “${text}”`,
    asks: asked.asks,
  }));
}
