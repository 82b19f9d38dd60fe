import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { odsParts, odsTable, sheetData, xlsxParts, zipOf } from '../../bench/workbooks.mjs';
import { decoding, type Decoded, type Encoding } from '../../src/read/file/decode.js';
import { atOneGo, STEP, type InSteps } from '../../src/read/file/in-steps.js';
import { checkingQuotes } from '../../src/read/file/quotes.js';
import { seeingText, type SeenText } from '../../src/read/file/unseen.js';
import { readingWorkbook } from '../../src/read/file/workbook/workbook.js';
import { seeingCells } from '../../src/read/table/seen-cells.js';

// Signals are heard between the steps of reading: no step walks through more than twice so many characters, whatever they are.

const LENGTH = 3 * STEP;
const LEAST = Math.ceil(LENGTH / (2 * STEP));

function stepsOf(work: InSteps<unknown>): number {
  let steps = 1;
  while (work.next().done !== true) steps += 1;
  return steps;
}

/** As many of these as fill the length. */
const filled = (unit: string): string => unit.repeat(Math.ceil(LENGTH / unit.length));

function decoded(bytes: Uint8Array, forced?: Encoding): Decoded {
  const result = atOneGo(decoding(bytes, forced));
  if ('kind' in result) throw new Error(result.kind);
  return result;
}

describe('steps as short as they may be', () => {
  test.each<[Encoding, string, BufferEncoding]>([
    ['utf-8', '\u00e9\u00a0', 'utf8'],
    ['utf-8', '\r\n', 'utf8'],
    ['utf-16le', '\u4e00\u00e9', 'utf16le'],
    ['utf-16be', '\u4e00\u00e9', 'utf16le'],
    ['windows-1252', '\u00e9\r\n', 'latin1'],
  ])('decode %s of %j', (encoding, unit, written) => {
    const bytes = Buffer.from(filled(unit), written);
    expect(stepsOf(decoding(bytes, encoding))).toBeGreaterThanOrEqual(Math.ceil(bytes.length / (2 * STEP)));
  });

  it('search the line that isn’t UTF-8', () => {
    const bytes = Buffer.from(`${filled('a\n')}\u00e9\n`, 'latin1');
    // Once as UTF-8, once to count lines, once as windows-1252.
    expect(stepsOf(decoding(bytes))).toBeGreaterThanOrEqual(3 * LEAST);
  });

  test.each([
    ['accents and hard spaces', '\u00e9\u00a0'],
    ['accents behind their letters', 'e\u0301'],
    ['accents alone', '\u0301\u0316'],
    ['marks without width', '\u200b'],
    ['soft hyphens', '\u00ad'],
    ['pairs of surrogates', '\u{1f600}'],
  ])('take out of a text what can’t be seen: %s', (_, unit) => {
    expect(stepsOf(seeingText(filled(unit)))).toBeGreaterThanOrEqual(LEAST);
  });

  it('count the lines ahead of what can’t be seen', () => {
    // Once for accents, once for the rest, once for the lines.
    const steps = stepsOf(seeingText(`${filled('\n')}\u200b`));
    expect(steps).toBeGreaterThanOrEqual(3 * LEAST);
  });

  it('read a workbook, and look through its cells', () => {
    const rows = Array.from({ length: 30_000 }, () => ['\u00e9'.repeat(25), 1]);
    const sheet = sheetData(rows);
    expect(sheet.length).toBeGreaterThan(LENGTH);
    for (const bytes of [
      zipOf(xlsxParts([{ name: 'S', content: sheet }])),
      zipOf(odsParts(odsTable('S', rows))),
    ]) {
      const work = readingWorkbook(bytes, '.');
      let steps = 1;
      let step = work.next();
      for (; step.done !== true; step = work.next()) steps += 1;
      expect(steps).toBeGreaterThanOrEqual(LEAST);
      const cells = step.value.ok ? (step.value.sheets[0]?.cells ?? []) : [];
      expect(stepsOf(seeingCells(cells, []))).toBeGreaterThanOrEqual(30);
    }
  });

  test.each(['J,"A"\n', '3" \n'])('walk along quotes: %j', (unit) => {
    expect(stepsOf(checkingQuotes(filled(unit), ',', 3))).toBeGreaterThanOrEqual(LEAST);
  });
});

/** A text of which something stands across the end of its first step, one unit of so many bytes a character. */
const across = (unit: string, shift: number, bytes = 1): string =>
  `${'x'.repeat(STEP / bytes - 12 + shift)}${unit.repeat(8)}`;

describe('what stands where two steps meet', () => {
  const units = ['\u20ac\u00e9x', '\u{1f600}\u00e9', 'a\r\n\rb', '\r\r\n'];
  const shifts = [0, 1, 2, 3, 4, 5];
  test.each(units.flatMap((unit) => shifts.map((shift) => [unit, shift] as const)))(
    'is decoded as at one go: %j behind %i',
    (unit, shift) => {
      const text = (typed: string): string => typed.replace(/\r\n?/g, '\n');
      const utf8 = across(unit, shift);
      expect(decoded(Buffer.from(utf8)).text === text(utf8)).toBe(true);
      const typed = across(unit, shift, 2);
      const utf16 = Buffer.from(`\ufeff${typed}`, 'utf16le');
      expect(decoded(utf16).text === text(typed)).toBe(true);
      expect(decoded(utf16.swap16()).text === text(typed)).toBe(true);
    },
  );

  it('is decoded as at one go where half a pair of surrogates stands alone', () => {
    const count = 1_050_000;
    const bytes = Buffer.from(`\ufeff${'\ud83d'.repeat(count)}`, 'utf16le');
    expect(decoded(bytes).text === '\ufffd'.repeat(count)).toBe(true);
  });

  it('names the first line that isn’t UTF-8, however far behind and whatever ends its lines', () => {
    for (const end of ['\n', '\r\n', '\r']) {
      const rows = `${`${'x'.repeat(997)}\u20ac${end}`.repeat(2500)}${`a${end}`.repeat(100)}caf`;
      const bytes = Buffer.concat([Buffer.from(rows), Buffer.from([0xe9]), Buffer.from(`${end}\ufffd`)]);
      expect(decoded(bytes)).toMatchObject({ encoding: 'windows-1252', guessedAt: 2601 });
    }
  });

  it('keeps an accent with its letter', () => {
    for (const shift of shifts) {
      const seen = atOneGo(seeingText(across('e\u0301\u00ad\u00a0o\u00ad\u0302', shift)));
      expect(seen.text === across('\u00e9 \u00f4', shift)).toBe(true);
      expect(seen.turning).toMatchObject({ count: 16, line: 1 });
    }
  });

  it('names the line of what can’t be seen', () => {
    const seen = atOneGo(seeingText(`${'a,b\n'.repeat(1_000_000)}c\u200bd\u0001\n`));
    expect(seen.turning).toMatchObject({ count: 1, line: 1_000_001, shown: 'c\u200bd\u0001' });
    expect(seen.control).toMatchObject({ count: 1, line: 1_000_001 });
  });
});

describe('accents', () => {
  const seen = (text: string): SeenText => atOneGo(seeingText(text));

  it('are put to their letters as Unicode composes them', () => {
    const marks = fc.string({
      unit: fc.constantFrom('e', 'o', '\u0301', '\u0316', '\u0302', '\u1100', '\u1161'),
    });
    fc.assert(
      fc.property(marks, (text) => {
        fc.pre(/[\u0300-\u036f]/.test(text) && !/\p{M}{31}/u.test(text));
        expect(seen(text).text).toBe(text.normalize('NFC'));
      }),
    );
  });

  it('stay as they are where hundreds of thousands follow each other, which to order costs their square', () => {
    const heap = `a${'\u0301\u0316'.repeat(31 * 10_000)}`;
    expect(seen(`e\u0301,${heap},o\u0302`).text === `\u00e9,${heap},\u00f4`).toBe(true);
  });
});

it('no character below U+0300 is taken in by one before it', () => {
  for (let code = 1; code < 0x300; code += 1) {
    for (const before of ['e', '\u0301', '\u1100', '\u212b', 'a\u0316']) {
      const behind = `${String.fromCodePoint(code)}\u0301`;
      expect((before + behind).normalize('NFC')).toBe(before.normalize('NFC') + behind.normalize('NFC'));
    }
  }
});
