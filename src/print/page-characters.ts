/** Characters that every page is taken to hold: figures that the browser counts, blanks, bullets. */
const ALWAYS = Array.from({ length: 0x7f - 0x20 }, (_, i) => 0x20 + i);

/**
 * The characters that a page of HTML may show: those that stand in it, and those that it writes by their number.
 * @param html the page; characters of its markup and styles count as well, which only makes the answer larger
 * @returns code points, each once
 */
export function charactersOf(html: string): readonly number[] {
  const found = new Set(ALWAYS);
  for (const [character] of html.matchAll(/[^\0-\x7f]/gu)) found.add(character.codePointAt(0) ?? 0);
  for (const [, hex, decimal] of html.matchAll(/&#(?:x([0-9a-f]{1,6})|(\d{1,7}));/gi))
    found.add(hex === undefined ? Number(decimal) : parseInt(hex, 16));
  // As styles write them, in what margins and lists say.
  for (const [, hex = '0'] of html.matchAll(/\\([0-9a-f]{1,6})/gi)) found.add(parseInt(hex, 16));
  return [...found];
}

/**
 * Whether a page names a font family: `DejaVu Sans` isn't named by `DejaVu Sans Condensed`.
 * @param place `first`: as the family that text is set in, not behind a comma for what another one lacks
 */
export function namesFamily(html: string, family: string, place: 'first' | 'any' = 'any'): boolean {
  const behind = place === 'first' ? `(?<!,\\s*["']?)` : '';
  return new RegExp(`${behind}${family}(?!\\w| Condensed)`).test(html);
}
