import { deflateSync, inflateSync } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { withGlyphRuns } from '../../src/print/glyph-runs.js';
import type { PdfObject } from '../../src/print/pdf-objects.js';

const plain = (number: number, text: string): PdfObject => ({ number, text, stream: undefined });
const streamOf = (number: number, content: string, more = ''): PdfObject => {
  const stream = deflateSync(Buffer.from(content, 'latin1'));
  return { number, text: `<<${more}/Filter /FlateDecode\n/Length ${stream.length}>>`, stream };
};

/** A font whose glyph 3 is 212 wide, 5 to 7 are 500, 9 is 300.5, all others 540. */
const FONT: readonly PdfObject[] = [
  plain(1, '<</Type /Page\n/Resources <</Font <</F4 4 0 R>>>>>>'),
  plain(4, '<</Type /Font\n/Subtype /Type0\n/DescendantFonts [5 0 R]\n/ToUnicode 9 0 R>>'),
  plain(5, '<</Type /Font\n/W [3 [212] 5 7 500 9 [300.5]]\n/DW 540\n/FontDescriptor 7 0 R>>'),
];
const widthOf = (glyph: number): number =>
  glyph === 3 ? 212 : glyph >= 5 && glyph <= 7 ? 500 : glyph === 9 ? 300.5 : 540;

function joined(content: string, others: readonly PdfObject[] = FONT): string {
  const object = withGlyphRuns([...others, streamOf(20, content)]).at(-1);
  expect(object?.text).toContain(`/Length ${String(object?.stream?.length)}>>`);
  return inflateSync(object?.stream ?? new Uint8Array()).toString('latin1');
}

/** Where each glyph of the content stands along its line of text, read as ISO 32000-1, 9.4 says. */
function placesOf(content: string): readonly { readonly glyph: number; readonly at: number }[] {
  const places: { glyph: number; at: number }[] = [];
  let [size, line, at] = [0, 0, 0];
  for (const token of content.split('\n').flatMap((l) => l.split(/(?<= Td) /))) {
    const font = /^\/F4 ([\d.]+) Tf$/.exec(token);
    const move = /^(-?[\d.]+) 0 Td$/.exec(token);
    if (font) size = Number(font[1]);
    else if (token === 'BT') [line, at] = [0, 0];
    else if (move) at = line += Number(move[1]);
    else
      for (const [, glyphs, off] of token.matchAll(/<([0-9A-F]+)>|(?<=>)(-?\d+)(?=<)/g)) {
        at -= (Number(off ?? 0) * size) / 1000;
        for (const [hex] of (glyphs ?? '').matchAll(/.{4}/g)) {
          const glyph = Number.parseInt(hex, 16);
          places.push({ glyph, at });
          at += (widthOf(glyph) * size) / 1000;
        }
      }
  }
  return places;
}

const text = (size: number, glyphs: readonly { readonly glyph: number; readonly on: number }[]): string => {
  const shown = glyphs.map(({ glyph, on }, i) => {
    const hex = `<${glyph.toString(16).toUpperCase().padStart(4, '0')}> Tj`;
    return i === 0 ? hex : `${on.toFixed(6)} 0 Td ${hex}`;
  });
  return `q\nBT\n/F4 ${String(size)} Tf\n1 0 0 -1 10 20 Tm\n${shown.join('\n')}\nET\nQ\n`;
};

describe('joining the glyphs of a PDF', () => {
  it.each([
    [
      'by their own widths',
      '<0005> Tj\n5 0 Td <0006> Tj\n5 0 Td <0003> Tj\n2.12 0 Td <0008> Tj',
      '<0005000600030008> Tj',
    ],
    ['with a kerned pair', '<0005> Tj\n4.6 0 Td <0006> Tj\n5 0 Td <0007> Tj', '[<0005>40<00060007>] TJ'],
    ['with letters set wide', '<0005> Tj\n6 0 Td <0006> Tj', '[<0005>-100<0006>] TJ'],
    [
      'not over another line',
      '<0005> Tj\n5 0 Td <0006> Tj\n-5 12 Td <0007> Tj',
      '<00050006> Tj\n5.0000 0 Td\n-5 12 Td <0007> Tj',
    ],
    ['of one alone', '<0005> Tj', '<0005> Tj'],
  ])('%s', (_, given, wanted) => {
    const begin = 'BT\n/F4 10 Tf\n1 0 0 -1 0 0 Tm\n';
    expect(joined(`${begin}${given}\nET\n`)).toBe(`${begin}${wanted}\nET\n`);
  });

  it('leaves a font alone that two objects bear the name of, and one without widths', () => {
    const content = text(10, [
      { glyph: 5, on: 0 },
      { glyph: 6, on: 5 },
    ]);
    expect(joined(content)).not.toBe(content);
    expect(joined(content, [...FONT, plain(8, '<</Font <</F4 5 0 R>>>>')])).toBe(content);
    expect(joined(content, FONT.slice(0, 2))).toBe(content);
  });

  it('leaves fonts, pictures and what holds no text as they are', () => {
    const objects = [
      streamOf(20, '<0005> Tj\n', '/Length1 10\n'),
      streamOf(21, '<0005> Tj\n', '/Subtype /Image\n'),
      streamOf(22, '0 0 m\n1 1 l\nS\n'),
      { number: 23, text: '<</Length 3>>', stream: Buffer.from('abc') },
    ];
    expect(withGlyphRuns([...FONT, ...objects]).slice(FONT.length)).toEqual(objects);
  });

  it('keeps every glyph, and where it stands to 0.003 of its size', () => {
    const glyph = fc.record({
      glyph: fc.integer({ min: 1, max: 12 }),
      on: fc.double({ min: 0.5, max: 30, noNaN: true }),
    });
    const own = fc.array(glyph, { minLength: 1, maxLength: 30 }).map((glyphs) =>
      glyphs.map((g, i) => ({
        ...g,
        // Most stand as wide as they are, as text does.
        on: i % 4 === 3 ? g.on : (widthOf(glyphs[i - 1]?.glyph ?? 1) * 11) / 1000,
      })),
    );
    fc.assert(
      fc.property(own, own, (one, two) => {
        const content = text(11, one) + text(11, two);
        const before = placesOf(content);
        const after = placesOf(joined(content));
        expect(after.map((p) => p.glyph)).toEqual(before.map((p) => p.glyph));
        for (const [i, { at }] of after.entries())
          expect(Math.abs(at - (before[i]?.at ?? Number.NaN))).toBeLessThan((3.6 * 11) / 1000);
      }),
    );
  });
});
