import fc from 'fast-check';
import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { checkQuotes } from '../../src/read/file/quotes.js';
import { parserOptions, readingRecords, readRecords } from '../../src/read/file/records.js';

const quoted = (cell: string): string => `"${cell.replaceAll('"', '""')}"`;

describe('quotes are checked before the parser sees them', () => {
  it('leaves a sound text alone', () => {
    const text = 'a,b,c\n"x, y","2"" pipe","line one\nline two"\n';
    expect(checkQuotes(text, ',', 3)).toEqual({ text, leftOut: [], stray: [] });
  });

  it('empties the line of a quote that is never closed, and keeps the numbers of the others', () => {
    const checked = checkQuotes('a,b,c\n1,"open,3\n4,5,6\n', ',', 3);
    expect(checked.text).toBe('a,b,c\n\n4,5,6\n');
    expect(checked.leftOut).toEqual([{ line: 2, shown: '1,"open,3\n4,5,6\n', lines: 1 }]);
  });

  it('finds the line where the quote was left open, not where the next one stands', () => {
    const rows = Array.from({ length: 20 }, (_, i) => `${i},b,"c, d"`).join('\n');
    const checked = checkQuotes(`a,b,c\nx,"open,z\n${rows}\n`, ',', 3);
    expect(checked.leftOut.map((l) => l.line)).toEqual([2]);
    expect(readRecords(checked.text, ',').cells).toHaveLength(22);
  });

  it('finds it in a list of two columns too', () => {
    const checked = checkQuotes('tag,kind\n"A,array\nB,"battery"\nC,load\n', ',', 2);
    expect(checked.leftOut.map((l) => l.line)).toEqual([2]);
    expect(readRecords(checked.text, ',').cells.map((r) => r[0])).toEqual(['tag', '', 'B', 'C']);
  });

  it('keeps a cell of several lines that happens to hold delimiters', () => {
    const text = 'a,b,c,d\n1,"first, with a comma\nsecond, with one",3,4\n';
    expect(checkQuotes(text, ',', 4).leftOut).toEqual([]);
  });

  it('names the lines with quotes inside cells', () => {
    expect(checkQuotes('a,b\n3" conduit,x\ny,5\' 6"\nz,"w" v\n', ',', 2).stray).toEqual([2, 3, 4]);
  });

  it('takes blanks between quotes and delimiters for no part of the cell', () => {
    const checked = checkQuotes('a, b\n"x, y" , "z" \n  "one\ntwo"\t,"v"\n', ',', 2);
    expect(readRecords(checked.text, ',').cells).toEqual([
      ['a', ' b'],
      ['x, y', 'z'],
      ['one\ntwo', 'v'],
    ]);
    expect([checked.leftOut, checked.stray]).toEqual([[], []]);
  });

  it('leaves out the whole of a record of several lines, and keeps the numbers of the others', () => {
    const checked = checkQuotes('a,b,c\n "one\ntwo" ,"open,3\n4,5,6\n7,"8",9\n', ',', 3);
    expect(checked.leftOut).toMatchObject([{ line: 2, lines: 2 }]);
    const { cells, lines } = readRecords(checked.text, ',');
    expect(cells).toEqual([['a', 'b', 'c'], [''], [''], ['4', '5', '6'], ['7', '8', '9']]);
    expect(lines).toEqual([1, 2, 3, 4, 5]);
  });

  it('walks along a million quotes in one line once', () => {
    const cells = '"x" y,'.repeat(500_000);
    expect(checkQuotes(`a,b,c\n${cells}\n`, ',', 3).stray).toEqual([2]);
    const lines = '"a\nb"\n'.repeat(200_000);
    expect(checkQuotes(`a,b,c\n${lines}`, ',', 3).leftOut).toEqual([]);
  });

  it('gives up after many damaged lines, in one item for the rest', () => {
    const text = `a,b,c\n${Array.from({ length: 5000 }, (_, i) => `${i},"open,3`).join('\n')}\n`;
    const { leftOut } = checkQuotes(text, ',', 3);
    expect(leftOut.length).toBeLessThanOrEqual(201);
    expect(leftOut.reduce((n, l) => n + l.lines, 0)).toBeGreaterThanOrEqual(4999);
  });
});

describe('records', () => {
  it("are what the parser gives with the reader's own options", () => {
    const text = 'a;b\n"x;y";3" z\n\nshort\n1;2;3\n';
    expect(readRecords(text, ';').cells).toEqual(parse(text, parserOptions(';')));
    expect(readRecords(text, ';').lines).toEqual([1, 2, 3, 4, 5]);
  });

  it('are read in steps, and without blank ones where those aren’t wanted', () => {
    const text = `a,b\n${' , \n\n'.repeat(50_000)}"1\n",2\n`;
    const steps = readingRecords(text, ',', 0, true);
    let pauses = 0;
    let step = steps.next();
    for (; step.done !== true; step = steps.next()) pauses += 1;
    expect(step.value).toEqual({
      cells: [
        ['a', 'b'],
        ['1\n', '2'],
      ],
      lines: [1, 100_002],
    });
    expect(pauses).toBeGreaterThanOrEqual(4);
  });

  it('are as many as are asked for', () => {
    const text = 'a,b\n"1\n",2\n3,4\n';
    expect(readRecords(text, ',', 2)).toEqual({
      cells: [
        ['a', 'b'],
        ['1\n', '2'],
      ],
      lines: [1, 2],
    });
    expect(readRecords(text, ',', 9).lines).toEqual([1, 2, 4]);
  });

  it('come back as they were written, each with its line', () => {
    const cell = fc.stringMatching(/^[a-z",\n; ]{0,8}$/);
    fc.assert(
      fc.property(
        fc.array(fc.array(cell, { minLength: 2, maxLength: 4 }), { minLength: 1, maxLength: 8 }),
        (rows) => {
          const text = `${rows.map((row) => row.map(quoted).join(',')).join('\n')}\n`;
          const { cells, lines } = readRecords(text, ',');
          expect(cells).toEqual(rows);
          let line = 1;
          for (const [i, row] of rows.entries()) {
            expect(lines[i]).toBe(line);
            line += 1 + row.join('').split('\n').length - 1;
          }
        },
      ),
    );
  });

  it('of any text are what the parser gives, once its quotes are checked', () => {
    fc.assert(
      fc.property(fc.stringMatching(/^[a"', ;\n]{0,60}$/), fc.nat(5), (text, columns) => {
        const checked = checkQuotes(text, ',', columns);
        expect(checked.text.split('\n').length).toBeLessThanOrEqual(text.split('\n').length);
        expect(readRecords(checked.text, ',').cells).toEqual(parse(checked.text, parserOptions(',')));
      }),
      { numRuns: 2000 },
    );
  });
});
