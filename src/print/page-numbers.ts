import { deflateSync, inflateSync } from 'node:zlib';
import { MARK_DIGITS as DIGITS } from '../model/page-mark.js';
import type { PdfObject } from './pdf-objects.js';

/** A dictionary or array of one level: what stands behind a key. */
function valueOf(text: string, key: string): string {
  return new RegExp(`/${key} ([^/<>\\n]+|<<[\\s\\S]*?>>|\\[[\\s\\S]*?\\])`).exec(text)?.[1]?.trim() ?? '';
}

const references = (text: string): number[] =>
  [...text.matchAll(/(\d+) 0 R/g)].map((found) => Number(found[1]));

/** Objects of pages in their order. */
function pagesInOrder(byNumber: ReadonlyMap<number, PdfObject>, root: number): number[] {
  const found: number[] = [];
  const waiting = references(valueOf(byNumber.get(root)?.text ?? '', 'Pages'));
  for (let next = waiting.shift(); next !== undefined; next = waiting.shift()) {
    const text = byNumber.get(next)?.text ?? '';
    if (/\/Type \/Pages\b/.test(text)) waiting.unshift(...references(valueOf(text, 'Kids')));
    else found.push(next);
  }
  return found;
}

/** Page number of each named place. */
function placesOf(byNumber: ReadonlyMap<number, PdfObject>, root: number): ReadonlyMap<string, number> {
  const pages = new Map(pagesInOrder(byNumber, root).map((page, index) => [page, index + 1]));
  const [names = 0] = references(valueOf(byNumber.get(root)?.text ?? '', 'Dests'));
  const places = byNumber.get(names)?.text ?? '';
  return new Map(
    [...places.matchAll(/\/([\w-]+) \[(\d+) 0 R/g)].flatMap(([, name = '', page = '']) => {
      const number = pages.get(Number(page));
      return number === undefined ? [] : [[name, number] as const];
    }),
  );
}

const inflated = (object: PdfObject | undefined): string =>
  object?.stream === undefined ? '' : inflateSync(object.stream).toString('latin1');

/** Digits by their glyph in one font, as four digits of the base 16. */
function digitsOf(toUnicode: string): ReadonlyMap<string, string> {
  const digits = new Map<string, string>();
  const add = (glyph: number, code: number): void => {
    const character = String.fromCodePoint(code);
    if (DIGITS.includes(character)) digits.set(glyph.toString(16).toUpperCase().padStart(4, '0'), character);
  };
  const hex = (text: string | undefined): number => Number.parseInt(text ?? '', 16);
  for (const [, block = ''] of toUnicode.matchAll(/beginbfchar([\s\S]*?)endbfchar/g))
    for (const one of block.matchAll(/<([0-9A-F]{4})> <([0-9A-F]{4})>/gi)) add(hex(one[1]), hex(one[2]));
  for (const [, block = ''] of toUnicode.matchAll(/beginbfrange([\s\S]*?)endbfrange/g))
    for (const one of block.matchAll(/<([0-9A-F]{4})> <([0-9A-F]{4})> <([0-9A-F]{4})>/gi))
      for (let glyph = hex(one[1]); glyph <= hex(one[2]); glyph += 1)
        add(glyph, hex(one[3]) + glyph - hex(one[1]));
  return digits;
}

/**
 * One piece of text of a page in the colour of marks (`#000001`, which no cell of a list can give its text): the font, where it begins,
 * and its glyphs.
 */
const PIECE =
  /(0 0 \.0039 rg\n(?:(?!BT\n)[^\n]*\n){0,4}BT\n\/(F\d+) [\d.]+ Tf\n1 0 0 -1 [-\d.]+ [-\d.]+ Tm\n)((?:(?:[-\d.]+ [-\d.]+ Td )?<[0-9A-F]+> Tj\n)+)(?=ET\n)/g;

/** The glyphs of a page number in the place of those of a mark: one after the other as those were. */
function shownGlyphs(glyphs: string, all: readonly string[], page: number | undefined): string {
  const wanted = Array.from(page === undefined ? '' : String(page), (digit) => all[Number(digit)] ?? '');
  if (wanted.length === 0) return '';
  // The advance after the first glyph; where the font's own is meant, glyphs stand in one string.
  const step = /Tj\n([-\d.]+ [-\d.]+ Td) /.exec(glyphs)?.[1];
  if (/^<[0-9A-F]{5,}>/.test(glyphs) || step === undefined) return `<${wanted.join('')}> Tj\n`;
  return `${wanted.map((glyph) => `<${glyph}> Tj`).join(`\n${step} `)}\n`;
}

/**
 * Puts page numbers in the place of the marks of a table of contents.
 * @param objects of a PDF as the browser wrote it
 * @param root number of its catalogue
 * @param contents named places, in the order of the marks; a mark whose place isn't there is taken away
 * @param marks how many stand in the document
 * @throws Error where a mark has a form that isn't known: no page with a wrong number is printed
 */
export function withPageNumbers(
  objects: readonly PdfObject[],
  root: number,
  contents: readonly string[],
  marks: number,
): PdfObject[] {
  const byNumber = new Map(objects.map((object) => [object.number, object]));
  const places = placesOf(byNumber, root);
  const digits = new Map<number, ReadonlyMap<string, string>>();
  const digitsOfFont = (font: number): ReadonlyMap<string, string> => {
    const [cmap = 0] = references(valueOf(byNumber.get(font)?.text ?? '', 'ToUnicode'));
    const known = digits.get(font) ?? digitsOf(inflated(byNumber.get(cmap)));
    digits.set(font, known);
    return known;
  };
  const changed = new Map<number, PdfObject>();
  let left = marks;
  for (const number of pagesInOrder(byNumber, root)) {
    if (left === 0) break;
    const page = byNumber.get(number)?.text ?? '';
    const fonts = new Map(
      [...page.matchAll(/\/(F\d+) (\d+) 0 R/g)].map(([, name = '', font = '']) => [name, Number(font)]),
    );
    for (const at of references(valueOf(page, 'Contents'))) {
      const object = byNumber.get(at);
      const text = inflated(object);
      const numbered = text.replace(PIECE, (piece, begin: string, font: string, glyphs: string) => {
        const known = digitsOfFont(fonts.get(font) ?? 0);
        const all = [...glyphs.matchAll(/<([0-9A-F]+)>/g)].flatMap(
          ([, one = '']) => one.match(/.{4}/g) ?? [],
        );
        const word = all.map((glyph) => known.get(glyph) ?? ' ').join('');
        if (!word.startsWith(DIGITS)) return piece;
        left -= 1;
        const page = places.get(contents[Number(word.slice(DIGITS.length))] ?? '');
        return `${begin}${shownGlyphs(glyphs, all, page)}`;
      });
      if (numbered === text || object === undefined) continue;
      const stream = deflateSync(Buffer.from(numbered, 'latin1'));
      const told = object.text.replace(/\/Length \d+/, `/Length ${stream.length}`);
      changed.set(at, { ...object, text: told, stream });
    }
  }
  if (left > 0) throw new Error(`${left} page numbers of the contents found no place`);
  return objects.map((object) => changed.get(object.number) ?? object);
}
