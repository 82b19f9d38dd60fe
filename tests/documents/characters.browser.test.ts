import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { getDocument } from '../../bench/pdf-readers.mjs';
import { fontFaces } from '../../src/fonts/faces.js';
import { glyphsOf } from '../../src/fonts/glyphs.js';
import { withPrinter } from '../../src/print/printer.js';

const FAMILIES = ['Plex', 'Atkinson'] as const;
const WEIGHTS = [400, 700] as const;
/** What a PDF calls the fonts. */
const IN_PDF = {
  Plex: 'IBMPlexSansCond',
  Atkinson: 'AtkinsonHyperlegibleNext',
  'DejaVu Sans Condensed': 'DejaVuSansCondensed',
};
/** What a screen shows for control characters; no paper does. */
const NOT_ON_PAPER = 'src/words/visible.ts';

/** All printing characters beyond Basic Latin in templates and words, with the first file of each. */
function charactersUsed(): Map<string, string> {
  const files = ['templates', 'src/words', 'src/documents'].flatMap((folder) =>
    readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .map((name) => join(folder, name))
      .filter((name) => /\.(?:hbs|css|ts)$/.test(name) && name !== NOT_ON_PAPER),
  );
  const found = new Map<string, string>();
  for (const file of files) {
    const text = readFileSync(file, 'utf8').replace(/\\u\{?([0-9a-fA-F]{4,6})\}?/g, (_, code: string) =>
      String.fromCodePoint(parseInt(code, 16)),
    );
    for (const [character] of text.matchAll(/[^\0-~\p{Cc}\p{Z}]/gu))
      if (!found.has(character)) found.set(character, file);
  }
  return found;
}

const used = charactersUsed();
const characters = [
  ...Array.from({ length: 0x7e - 0x20 }, (_, i) => String.fromCharCode(0x21 + i)),
  ...used.keys(),
  // What the trade writes, whether or not a word uses it today; and other scripts in names.
  ...'≥≤Ω√→☐✓½×±ŁłőЖλ',
];

/** The family that draws a character: the first that has it. */
const drawnBy = new Map<string, string>();
const printed = new Map<string, { font: string; embedded: boolean; type3: boolean }>();

beforeAll(async () => {
  for (const family of FAMILIES)
    for (const weight of WEIGHTS)
      for (const face of fontFaces().toReversed())
        if (face.weight === weight && (face.family === family || face.family === 'DejaVu Sans Condensed'))
          for (const code of glyphsOf(readFileSync(face.path)).keys())
            drawnBy.set(`${family} ${weight} ${String.fromCodePoint(code)}`, face.family);
  const html = (c: string): string => `&#${c.codePointAt(0) ?? 0};`;
  const lines = FAMILIES.flatMap((family) =>
    WEIGHTS.map(
      (weight) =>
        `<h2 style="font: ${weight} 12pt ${family}, 'DejaVu Sans Condensed'; break-before: page">` +
        `${characters.map((c) => `<div>${html(c)}</div>`).join('')}</h2>`,
    ),
  );
  const order = {
    html: `<!doctype html><html lang="en"><head><title>x</title><style>@page{size:100pt 4000pt;margin:0}</style></head><body>${lines.join('')}</body></html>`,
    metadata: {
      title: 'x',
      author: 'x',
      subject: 'x',
      keywords: [],
      language: 'en',
      created: new Date('2026-03-04T00:00:00Z'),
    },
  };
  const bytes = await withPrinter({ pages: 1 }, (printer) => printer.print(order));
  const pdf = await getDocument({ data: Uint8Array.from(bytes), verbosity: 0 }).promise;
  let at = -1;
  for (let number = 1; number <= pdf.numPages; number += 1) {
    const page = await pdf.getPage(number);
    await page.getOperatorList();
    const { items } = await page.getTextContent();
    for (const item of items) {
      if (!('str' in item) || item.str.trim() === '') continue;
      const font = page.commonObjs.get(item.fontName) as {
        readonly name: string;
        readonly missingFile: boolean;
        readonly isType3Font: boolean;
      };
      for (const character of item.str) {
        at += 1;
        const set = Math.floor(at / characters.length);
        const key = `${FAMILIES[set >> 1] ?? ''} ${WEIGHTS[set & 1] ?? 0} ${character}`;
        printed.set(key, {
          font: font.name.replace(/^[A-Z]{6}\+/, ''),
          embedded: !font.missingFile,
          type3: font.isType3Font,
        });
      }
    }
  }
}, 60_000);

describe('every character that templates and words use', () => {
  it('is found: signs, letters of both languages', () => {
    for (const character of 'ñ¿°’×') expect(used.has(character), character).toBe(true);
  });

  it.each(FAMILIES.flatMap((family) => WEIGHTS.map((weight) => [family, weight] as const)))(
    'is printed in %s %d by the font that has it, or by DejaVu, embedded and as no blank box',
    (family, weight) => {
      for (const character of characters) {
        const key = `${family} ${weight} ${character}`;
        const by = drawnBy.get(key) as keyof typeof IN_PDF | undefined;
        const where = `${key} (${used.get(character) ?? 'basic'})`;
        // What pdf readers give for two signs of the same look.
        const read = printed.get(key) ?? printed.get(`${family} ${weight} ${character.normalize('NFKC')}`);
        if (by === undefined) throw new Error(`${where}: no font has it`);
        expect(read, where).toEqual({
          font: `${IN_PDF[by]}-${weight === 700 ? 'Bold' : 'Regular'}`.replace(/^(DejaVu.*)-Regular$/, '$1'),
          embedded: true,
          type3: false,
        });
      }
    },
  );
});
