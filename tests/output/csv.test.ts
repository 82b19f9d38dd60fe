import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { csvText, safeCell } from '../../src/output/csv.js';

/** What a spreadsheet looks at: the cell less leading blanks, control and format characters. */
const seen = (cell: string): string => cell.replace(/^[\s\p{Cc}\p{Cf}\p{Z}]+/u, '');
/** A number, also behind the blank that follows a separator, or the dash that stands for standard input. */
const isHarmless = (cell: string): boolean => /^(?: ?-?\d+(?:\.\d+)?|-)?$/.test(cell);
const runs = (cell: string): boolean =>
  /^[=+\-@|%\uff1d\uff0b\uff0d\uff20]/.test(seen(cell)) && !isHarmless(cell);

/**
 * The fields of one line as a lenient reader of another dialect sees them: a quote opens a field only at its start, two
 * within are one, and what follows the closing one belongs to the field.
 */
function fieldsOf(line: string, delimiter: string): string[] {
  const fields: string[] = [];
  let field = '';
  let quoted = false;
  for (let at = 0; at < line.length; at += 1) {
    const sign = line[at] ?? '';
    if (quoted && sign === '"' && line[at + 1] === '"') field += line[(at += 1)] ?? '';
    else if (quoted && sign === '"') quoted = false;
    else if (quoted) field += sign;
    else if (sign === delimiter) {
      fields.push(field);
      field = '';
    } else if (sign === '"' && field === '' && line[at - 1] !== '"') quoted = true;
    else field += sign;
  }
  return [...fields, field];
}

describe('cells', () => {
  it.each([
    ['=1+1', "'=1+1"],
    [' =1+1', "' =1+1"],
    ['\t=1+1', "' =1+1"],
    ['\0=1+1', "'[U+0000]=1+1"],
    ['\r=1+1', "' =1+1"],
    ['\u00a0@sum', "'\u00a0@sum"],
    ['\ufeff+1', "'[U+FEFF]+1"],
    ['\uff1d1+1', "'\uff1d1+1"],
    ['-5', '-5'],
    ['-5+2', "'-5+2"],
    ['-', '-'],
    ['--', "'--"],
    ['a=b', 'a=b'],
    ["'=1", "'=1"],
    // A spreadsheet that separates cells by semicolons begins a new one behind each.
    ['x;=1+1', "x;'=1+1"],
    ['A; =1+1;@x', "A;' =1+1;'@x"],
    ['A;\u202e=1', "A;'[U+202E]=1"],
    ['=1;-2+3', "'=1;'-2+3"],
    ['L1; -5; L2', 'L1; -5; L2'],
    ['| -5|', "'| -5|"],
    ['L1| -5|', 'L1| -5|'],
    // What stands last goes on into the next cell there: -5,5+2 is a formula where the comma is the decimal mark.
    ['L1; L2; -5', "L1; L2;' -5"],
    // The quotes of a cell are doubled in the file: where a new cell begins they open and close, and what follows is text of it.
    ['x;"=1+1";y', `x;'"=1+1";y`],
    ['x; " @sum"', `x;' " @sum"`],
    ['x;"";""=1', `x;"";'""=1`],
    ['"=1+1"', `'"=1+1"`],
    ['x|=1+1|"+2"', `x|'=1+1|'"+2"`],
    ['a "quoted" word; "another"', 'a "quoted" word; "another"'],
    ['-5; -18.5', "'-5;' -18.5"],
    ['one\r\ntwo', 'one two'],
    ['12\u202e34', '12[U+202E]34'],
    ['\u001b[31mred', '[U+001B][31mred'],
  ])('%j is written %j', (cell, written) => {
    expect(safeCell(cell)).toBe(written);
  });

  it('writes numbers as numbers, rounded to 0.01', () => {
    expect([-5, 1.005, 0.1 + 0.2, -0.001, 1e21, NaN].map((n) => safeCell(n))).toEqual([
      '-5',
      '1.01',
      '0.3',
      '0',
      '1e+21',
      '',
    ]); // and -0 is 0
    expect([-1.005, -0, 170.4999, 1e-9].map(safeCell)).toEqual(['-1.01', '0', '170.5', '0']);
  });

  it('cuts a cell of megabytes', () => {
    expect(safeCell('x'.repeat(2_000_000)).length).toBeLessThan(32_100);
  });

  it('lets nothing run at the start of a line, where another dialect has one cell to its next separator', () => {
    expect(csvText(['job', 'b'], [['-5', '5+2']])).toBe("job,b\r\n'-5,5+2\r\n");
    expect(csvText(['job', 'b'], [['-', '-']])).toBe("job,b\r\n'-,-\r\n");
    expect(csvText(['job', 'b'], [['12', '-5']])).toBe('job,b\r\n12,-5\r\n');
  });

  it.each([';', '\t', '|'])('never lets a cell run where %j separates', (delimiter) => {
    const piece = fc.constantFrom(
      '=1+1',
      '"',
      '""',
      ';',
      '|',
      '\t',
      ' ',
      '-5',
      '+',
      '@',
      'x',
      ',',
      "'",
      '5+2',
    );
    const cell = fc.oneof(
      fc.array(piece, { maxLength: 8 }).map((pieces) => pieces.join('')),
      fc.constant(null),
    );
    fc.assert(
      fc.property(fc.array(fc.tuple(cell, cell, cell), { minLength: 1, maxLength: 4 }), (rows) => {
        const text = csvText(['a', 'b', 'c'], rows);
        for (const [line] of [...text.matchAll(/[^\r\n]+/g)]) {
          for (const field of fieldsOf(line, delimiter)) expect(runs(field), line).toBe(false);
        }
      }),
      { numRuns: 2000 },
    );
  });

  it('never lets a cell run, and keeps every record on one line that reads back', () => {
    const cell = fc.oneof(
      fc.string({ unit: 'binary' }),
      fc.string({
        unit: fc.constantFrom(
          '=',
          '+',
          '-',
          '@',
          ' ',
          '\t',
          '\0',
          '\r',
          '\n',
          '"',
          ',',
          ';',
          '1',
          '\ufeff',
          '\u2028',
        ),
      }),
      fc.double(),
      fc.constant(null),
    );
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.constant('row'), cell, cell), { minLength: 1 }), (rows) => {
        const text = csvText(['a', 'b', 'c'], rows);
        const lines = text.split('\r\n');
        expect(lines.length).toBe(rows.length + 2);
        expect(text.replaceAll('\r\n', '')).not.toMatch(/[\p{Cc}\u2028\u2029]/u);
        const back = parse(text, {});
        expect(back.slice(1)).toEqual(rows.map((row) => row.map(safeCell)));
        for (const [r, row] of back.slice(1).entries()) {
          for (const [c, value] of row.entries()) {
            if (typeof rows[r]?.[c] !== 'string') continue;
            expect(runs(value)).toBe(false);
            for (const part of value.split(';').slice(1)) expect(runs(part.replace(/^ /, ''))).toBe(false);
            expect(text).not.toMatch(/;[ "]*[=+@]/);
          }
        }
      }),
      { numRuns: 400 },
    );
  });
});
