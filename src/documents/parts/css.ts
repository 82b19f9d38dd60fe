import { lineWidth } from './text-width.js';

/**
 * A CSS string literal of any text. Everything but letters, digits and blanks is written as an escape, so that no
 * text can end the string or the style element.
 */
export function cssString(text: string): string {
  let out = '';
  for (const character of text) {
    out += /[A-Za-z0-9 ]/.test(character) ? character : `\\${(character.codePointAt(0) ?? 0).toString(16)} `;
  }
  return `"${out}"`;
}

/** Long names are cut in the margin only; the first page has them in full. */
export function shortened(text: string, length: number): string {
  const characters = Array.from(text);
  return characters.length <= length ? text : `${characters.slice(0, length - 1).join('')}…`;
}

/** Size of the text in the margins, as the styles have it; points. */
const MARGIN_TEXT = 8.5;
/** Points that one word may take in a margin: what is left beside the middle box on the narrowest sheet. */
const MARGIN_WORD = 200;

/**
 * A text of a margin: cut as {@link shortened}, and where one word alone is wider than its box, which would print over the next.
 * @param text one line
 * @param length characters
 */
export function marginText(text: string, length: number): string {
  const fitting: string[] = [];
  for (const word of shortened(text, length).split(' ')) {
    const fits = fittingPart(word);
    fitting.push(fits);
    if (fits !== word) break;
  }
  return fitting.join(' ');
}

function fittingPart(word: string): string {
  if (lineWidth(word, MARGIN_TEXT) <= MARGIN_WORD) return word;
  let part = '';
  for (const character of word) {
    if (lineWidth(`${part}${character}…`, MARGIN_TEXT) > MARGIN_WORD) break;
    part += character;
  }
  return `${part}…`;
}

/** Size of a sheet in points, portrait: ANSI A and B, ISO 216 A4 and A3. */
export const SHEETS = {
  letter: { width: 612, height: 792 },
  tabloid: { width: 792, height: 1224 },
  A4: { width: 595.28, height: 841.89 },
  A3: { width: 841.89, height: 1190.55 },
} as const;
export type Sheet = keyof typeof SHEETS;

/** A named page: its sheet and what its margin says. */
export interface PageRule {
  /** `` for the pages without a name. */
  readonly name: string;
  readonly sheet: Sheet;
  readonly landscape: boolean;
  /** Upper right: the section. */
  readonly section: string;
  /** Points; left out: as all pages have them. The left one stays: it is for holes. */
  readonly margin?: { readonly top: number; readonly right: number; readonly bottom: number };
}

/** What the margins of all pages of a document say. */
export interface MarginTexts {
  readonly document: string;
  /** `` where the pack isn't a draft. */
  readonly draft: string;
  readonly job: string;
  readonly date: string;
  /** `Page` and `of` in the language of the document. */
  readonly page: string;
  readonly of: string;
}

/** Margins of a page in points; the left one leaves 20 mm for holes. */
export const MARGIN = { top: 48, left: 57, right: 46, bottom: 46 } as const;

/** `@page` rules: size, margins, and the margin boxes that carry document, draft mark, section, job, date and page number. */
export function pageRules(pages: readonly PageRule[], texts: MarginTexts): string {
  return pages
    .map((page) => {
      const sheet = SHEETS[page.sheet];
      const [width, height] = page.landscape ? [sheet.height, sheet.width] : [sheet.width, sheet.height];
      const margin = page.margin ?? MARGIN;
      const draft = texts.draft === '' ? 'none' : cssString(texts.draft);
      return `@page ${page.name} {
  size: ${width}pt ${height}pt;
  margin: ${margin.top}pt ${margin.right}pt ${margin.bottom}pt ${MARGIN.left}pt;
  @top-left { content: ${cssString(texts.document)}; }
  @top-center { content: ${draft}; font-weight: 700; }
  @top-right { content: ${cssString(page.section)}; }
  @bottom-left { content: ${cssString(texts.job)}; }
  @bottom-center { content: ${cssString(texts.date)}; }
  @bottom-right { content: ${cssString(`${texts.page} `)} counter(page) ${cssString(` ${texts.of} `)} counter(pages); }
}`;
    })
    .join('\n');
}
