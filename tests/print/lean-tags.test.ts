import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { withLeanTags } from '../../src/print/lean-tags.js';
import { numberedAnew } from '../../src/print/numbered-anew.js';
import type { PdfObject } from '../../src/print/pdf-objects.js';

const plain = (number: number, text: string): PdfObject => ({ number, text, stream: undefined });
const tag = (
  number: number,
  role: string,
  parent: number,
  kids: string,
  { page = 0, more = '' } = {},
): PdfObject => {
  const where = page === 0 ? '' : `\n/Pg ${String(page)} 0 R`;
  return plain(
    number,
    `<</Type /StructElem\n/S /${role}\n/P ${String(parent)} 0 R${where}\n/K ${kids}${more}>>`,
  );
};
const byNumber = (objects: readonly PdfObject[]): Record<number, string> =>
  Object.fromEntries(withLeanTags(objects).map(({ number, text }) => [number, text.replace(/\n/g, ' ')]));

describe('tags that mean nothing', () => {
  it('go, and what they held is held by what held them, in its order', () => {
    const lean = byNumber([
      tag(10, 'P', 9, '[11 0 R 12 0 R 13 0 R]'),
      tag(11, 'NonStruct', 10, '4', { page: 2 }),
      tag(12, 'Strong', 10, '7', { page: 2 }),
      tag(13, 'NonStruct', 10, '[5 6]', { page: 2 }),
      plain(30, '[11 0 R 13 0 R 13 0 R 12 0 R]'),
    ]);
    expect(lean).toEqual({
      10: '<</Type /StructElem /S /P /P 9 0 R /Pg 2 0 R /K [4 12 0 R 5 6]>>',
      12: '<</Type /StructElem /S /Strong /P 10 0 R /Pg 2 0 R /K 7>>',
      30: '[10 0 R 10 0 R 10 0 R 12 0 R]',
    });
  });

  it('of another page are held with their page', () => {
    const lean = byNumber([
      tag(10, 'P', 9, '[3 11 0 R]', { page: 1 }),
      tag(11, 'NonStruct', 10, '4', { page: 2 }),
    ]);
    expect(lean[10]).toContain('/Pg 1 0 R /K [3 <</Type /MCR /Pg 2 0 R /MCID 4>>]');
  });

  it.each([
    ['that stands in a row', tag(10, 'TR', 9, '11 0 R'), tag(11, 'NonStruct', 10, '4', { page: 2 }), []],
    [
      'that has words',
      tag(10, 'P', 9, '11 0 R'),
      tag(11, 'NonStruct', 10, '4', { page: 2, more: '\n/Alt (x)' }),
      [],
    ],
    [
      'that holds another',
      tag(10, 'P', 9, '11 0 R'),
      tag(11, 'NonStruct', 10, '12 0 R'),
      [tag(12, 'Strong', 11, '1', { page: 2 })],
    ],
    [
      'that a bookmark leads to',
      tag(10, 'P', 9, '11 0 R'),
      tag(11, 'NonStruct', 10, '4', { page: 2 }),
      [plain(40, '<</SE 11 0 R>>')],
    ],
  ] as const)('stay: one %s', (_, holder, held, others) => {
    const objects = [holder, held, ...others];
    expect(withLeanTags(objects)).toEqual(objects);
  });

  it('cells say how many rows and columns they span where it is more than one', () => {
    const lean = byNumber([
      tag(10, 'TH', 9, '1', {
        page: 2,
        more: '\n/A [<</O /Table\n/Scope /Column>> <</O /Table\n/RowSpan 1>> <</O /Table\n/ColSpan 2>>]\n/ID (a)',
      }),
      tag(11, 'TD', 9, '2', { page: 2, more: '\n/A [<</O /Table\n/RowSpan 1>> <</O /Table\n/ColSpan 1>>]' }),
      tag(12, 'TD', 9, '3', { page: 2, more: '\n/A [<</O /Table\n/RowSpan 12>>]' }),
    ]);
    expect(lean[10]).toContain('/A [<</O /Table /Scope /Column>> <</O /Table /ColSpan 2>>] /ID (a)');
    expect(lean[11]).not.toContain('/A');
    expect(lean[12]).toContain('/RowSpan 12');
  });
});

describe('numbering objects anew', () => {
  it('leaves no gap, follows references, and leaves the words of a text string', () => {
    const { objects, anew } = numberedAnew([
      plain(9, '<</Title (see 4 0 R \\) and 9 0 R)\n/Dest [4 0 R /XYZ 1 2 0]\n/Next 7 0 R>>'),
      plain(4, '[9 0 R 4 0 R]'),
    ]);
    expect(objects.map(({ number }) => number)).toEqual([2, 1]);
    expect(objects.map(({ text }) => text)).toEqual([
      expect.stringMatching(
        /^<<\/Title \(see 4 0 R \\\) and 9 0 R\)\n\/Dest \[1 0 R \/XYZ 1 2 0\]\n\/Next 10000\d\d 0 R>>$/,
      ),
      '[2 0 R 1 0 R]',
    ]);
    expect([...anew]).toEqual([
      [4, 1],
      [9, 2],
    ]);
  });

  it('of any numbers keeps who refers to whom', () => {
    fc.assert(
      fc.property(fc.uniqueArray(fc.integer({ min: 1, max: 999 }), { minLength: 1 }), (numbers) => {
        const given = numbers.map((number, i) =>
          plain(number, `<</Of ${String(numbers[(i + 1) % numbers.length])} 0 R>>`),
        );
        const { objects, anew } = numberedAnew(given);
        expect([...objects.map((o) => o.number)].sort((a, b) => a - b)).toEqual(numbers.map((_, i) => i + 1));
        objects.forEach(({ text }, i) => {
          expect(text).toBe(`<</Of ${String(anew.get(numbers[(i + 1) % numbers.length] ?? 0))} 0 R>>`);
        });
      }),
    );
  });
});
