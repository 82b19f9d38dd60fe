import fc from 'fast-check';
import { utils, write } from '@e965/xlsx';
import { describe, expect, it, test } from 'vitest';
import { odsParts, odsTable, sheetData, xlsxParts, zipOf, type GridCell } from '../../bench/workbooks.mjs';
import { atOneGo } from '../../src/read/file/in-steps.js';
import { formatted, numberFormat } from '../../src/read/file/workbook/number-format.js';
import { dateText, numberText } from '../../src/read/file/workbook/number-text.js';
import type { SheetCells } from '../../src/read/file/workbook/sheet.js';
import { readingWorkbook } from '../../src/read/file/workbook/workbook.js';

/** The sheets of a workbook; a problem fails the test. */
function sheetsOf(bytes: Uint8Array, mark: '.' | ',' = '.'): readonly SheetCells[] {
  const reading = atOneGo(readingWorkbook(bytes, mark));
  if (!reading.ok) throw new Error(reading.problem);
  return reading.sheets;
}

const problemOf = (bytes: Uint8Array): string => {
  const reading = atOneGo(readingWorkbook(bytes, '.'));
  return reading.ok ? 'none' : reading.problem;
};

type More = NonNullable<Parameters<typeof xlsxParts>[1]>;
const xlsx = (content: string, more: More = {}): Buffer =>
  zipOf(xlsxParts([{ name: 'List', content }], more));
const cellsOf = (content: string, more: More = {}): string[][] | undefined =>
  sheetsOf(xlsx(content, more))[0]?.cells;
const one = (cell: string, more: More = {}): string | undefined =>
  cellsOf(sheetData([[cell]]), more)?.[0]?.[0];

const ods = (spreadsheet: string, styles = ''): Buffer => zipOf(odsParts(spreadsheet, styles));
const odsOne = (cell: string): string | undefined =>
  sheetsOf(ods(odsTable('List', [[cell]])))[0]?.cells[0]?.[0];

describe('a cell of an .xlsx', () => {
  test.each([
    ['a number', '<c><v>12.5</v></c>', '12.5'],
    ['a number with what binary fractions add', '<c><v>0.30000000000000004</v></c>', '0.3'],
    ['a small number', '<c><v>1.5E-7</v></c>', '0.00000015'],
    ['a negative number', '<c><v>-18</v></c>', '-18'],
    ['three decimals, which could be thousands elsewhere', '<c><v>1.234</v></c>', '1.2340'],
    ['a text', '<c t="str"><v>MP</v></c>', 'MP'],
    [
      'an inline text of several runs',
      '<c t="inlineStr"><is><r><t>IN</t></r><r><t>V</t></r></is></c>',
      'INV',
    ],
    ['a truth', '<c t="b"><v>1</v></c>', 'TRUE'],
    ['an untruth', '<c t="b"><v>0</v></c>', 'FALSE'],
    ['an error', '<c t="e"><v>#REF!</v></c>', '#REF!'],
    ['what a formula gave', '<c><f>A1*2</f><v>24</v></c>', '24'],
    ['a formula that nobody worked out', '<c><f>B1*2</f></c>', '#unsaved formula =B1*2'],
    ['a formula with a blank value', '<c><f>B1*2</f><v></v></c>', '#unsaved formula =B1*2'],
    ['a character that XML can’t hold', '<c t="str"><v>a_x0007_b</v></c>', 'a\u0007b'],
    ['a date as it is typed out', '<c t="d"><v>2026-03-11T00:00:00</v></c>', '2026-03-11 00:00:00'],
  ])('%s', (_, cell, text) => {
    expect(one(cell)).toBe(text);
  });

  it('is blank where a formula gave an empty text', () => {
    expect(cellsOf(sheetData([['<c t="str"><f>IF(B1,C1,"")</f><v></v></c>', 'x']]))).toEqual([['', 'x']]);
  });

  it('is one of the shared texts, without what tells how they are spoken', () => {
    const strings = ['<t>MP</t>', '<r><t>S</t></r><r><t xml:space="preserve">VC </t></r><rPh><t>x</t></rPh>'];
    expect(cellsOf(sheetData([['<c t="s"><v>1</v></c>', '<c t="s"><v>0</v></c>']]), { strings })).toEqual([
      ['SVC ', 'MP'],
    ]);
  });

  it('takes the next place where it states none', () => {
    expect(cellsOf('<sheetData><row><c><v>1</v></c><c><v>2</v></c></row></sheetData>')).toEqual([['1', '2']]);
  });

  test.each([
    ['a text that isn’t shared', '<c t="s"><v>7</v></c>'],
    ['a number that is none', '<c><v>12,5</v></c>'],
    ['a number without end', '<c><v>1e999</v></c>'],
  ])('%s: the workbook is damaged', (_, cell) => {
    expect(problemOf(xlsx(sheetData([[cell]])))).toBe('broken');
  });
});

describe('the format of a number', () => {
  test.each([
    ['General', 13.8, '13.8'],
    ['0.0', 13.84, '13.84'],
    ['#,##0.00', 13800, '13800'],
    // A figure that is shown as percent is stored as its hundredth.
    ['0.00%', 0.0575, '5.75%'],
    ['0.00%', -0.0027, '-0.27%'],
    ['0.0" kV"', 13.8, '13.8 kV'],
    ['0.0\\ \\k\\V', 13.8, '13.8 kV'],
    ['0.0," kV"', 13800, '13.8 kV'],
    ['0.0,', 13800, '13800'],
    ['[>=1000]0.0,"k";0" A"', 10000, '10k'],
    ['[>=1000]0.0,"k";0" A"', 400, '400 A'],
    ['0"°C";-0"°C"', -18, '-18°C'],
    ['[$€-407] #,##0.00', 84, '84'],
    ['#,##0.00\\ "€"', 84, '84'],
    ['0.00E+00', 120000, '1.2E+05'],
    ['00000', 123, '00123'],
    ['yyyy-mm-dd', 46092, '2026-03-11'],
    ['d-mmm', 46092, '2026-03-11'],
    ['m/d/yy h:mm', 46092.5, '2026-03-11 12:00:00'],
    ['h:mm', 0.0625, '01:30:00'],
    ['"day" 0', 3, '3'],
  ])('%s of %d is %s', (code, value, text) => {
    expect(formatted(value, numberFormat(164, code), false, '.').text).toBe(text);
  });

  test.each([
    [14, true],
    [22, true],
    [45, true],
    [57, true],
    [0, false],
    [1, false],
    [4, false],
    [49, false],
  ])('%d that no workbook states is a date: %s', (id, isDate) => {
    expect(formatted(46092, numberFormat(id, undefined), false, '.').isDate).toBe(isDate);
  });

  it('is that of the cell’s style, and days count from 1904 on where the workbook says so', () => {
    const cell = '<c s="1"><v>44630</v></c>';
    expect(one(cell, { formats: ['d-mmm'], from1904: true })).toBe('2026-03-11');
    expect(one(cell, { formats: ['0" A"'] })).toBe('44630 A');
  });
});

describe('a number', () => {
  it('has the decimal mark that is stated for the list', () => {
    expect(numberText(12.5, ',')).toBe('12,5');
    expect(numberText(1.234, ',')).toBe('1,234');
    expect(sheetsOf(xlsx(sheetData([[12.5]])), ',')[0]?.cells).toEqual([['12,5']]);
  });

  it('of sixteen digits has lost the last, and shows it', () => {
    expect(numberText(1234567890123456, '.')).toBe('1.23456789012346E+15');
    expect(numberText(123456789012345, '.')).toBe('123456789012345');
  });

  it('reads back as what is stored, to fifteen digits', () => {
    fc.assert(
      fc.property(fc.double({ min: -1e14, max: 1e14, noNaN: true }), (value) => {
        expect(Number(numberText(value, '.'))).toBe(Number(value.toPrecision(15)));
      }),
    );
  });
});

// ECMA-376 part 1, clause 18.17.4.1: day 1 is 1 January 1900, day 60 the 29 February that 1900 had not, day 61 the day behind it.
test.each([
  [1, '1900-01-01'],
  [59, '1900-02-28'],
  [61, '1900-03-01'],
  [0.0625, '01:30:00'],
  [2_958_466, null],
  [-1, null],
])('day %d is %s', (days, text) => {
  expect(dateText(days, false)).toBe(text);
});

describe('a cell of an .ods', () => {
  const value = (type: string, attributes: string, shown: string): string =>
    `<table:table-cell office:value-type="${type}" ${attributes}><text:p>${shown}</text:p></table:table-cell>`;
  test.each([
    ['a number, not as it is rounded', value('float', 'office:value="13.84"', '13.8'), '13.84'],
    ['a number of a place with decimal commas', value('float', 'office:value="13.84"', '13,84'), '13.84'],
    ['a number with the unit that is shown', value('float', 'office:value="13.84"', '13,8 kV'), '13.84 kV'],
    ['a number shown in thousands', value('float', 'office:value="13800"', '13.8 kV'), '13.8 kV'],
    ['a number with groups and a unit', value('float', 'office:value="13800"', '13,800 V'), '13800 V'],
    ['noughts ahead of a number', value('float', 'office:value="123"', '00123'), '00123'],
    ['powers of ten', value('float', 'office:value="120000"', '1.20E+05'), '1.2E+05'],
    ['percent', value('percentage', 'office:value="0.0575"', '6%'), '5.75%'],
    ['money', value('currency', 'office:value="84"', '84,00 \u20ac'), '84'],
    ['a truth', value('boolean', 'office:boolean-value="true"', 'WAHR'), 'TRUE'],
    ['a date', value('date', 'office:date-value="2026-03-11"', '11. Mrz'), '2026-03-11'],
    ['a time', value('time', 'office:time-value="PT01H30M00S"', '1:30'), '01:30:00'],
    ['a failed formula', value('string', 'table:formula="of:=1/0"', 'Err:503'), '#VALUE!'],
    ['an error', value('float', 'table:formula="of:=NA()" office:value="0"', '#N/A'), '#N/A'],
    [
      'a formula that nobody worked out',
      '<table:table-cell table:formula="of:=[.B1]*2"/>',
      '#unsaved formula =[.B1]*2',
    ],
    [
      'blanks and line ends that are elements',
      value('string', '', 'a<text:s text:c="2"/>b<text:line-break/>c'),
      'a  b\nc',
    ],
    ['a link and several runs', value('string', '', '<text:span>IN</text:span><text:a>V</text:a>'), 'INV'],
    [
      'no comment',
      '<table:table-cell office:value-type="string"><office:annotation><text:p>note</text:p></office:annotation><text:p>MP</text:p></table:table-cell>',
      'MP',
    ],
  ])('%s', (_, cell, text) => {
    expect(odsOne(cell)).toBe(text);
  });

  it('is repeated as often as it says, and so are rows', () => {
    const cell = '<table:table-cell table:number-columns-repeated="2"><text:p>x</text:p></table:table-cell>';
    const rows = `<table:table-row table:number-rows-repeated="2">${cell}</table:table-row><table:table-row table:number-rows-repeated="5"><table:table-cell/></table:table-row><table:table-row>${cell}</table:table-row>`;
    const [sheet] = sheetsOf(ods(`<table:table table:name="T">${rows}</table:table>`));
    expect(sheet?.cells).toEqual([
      ['x', 'x'],
      ['x', 'x'],
      ['x', 'x'],
    ]);
    expect(sheet?.lines).toEqual([1, 2, 8]);
  });
});

describe('what isn’t shown', () => {
  it('is known of .xlsx sheets, rows and columns', () => {
    const content = `<cols><col min="2" max="2" hidden="1"/><col min="4" max="4" width="0"/></cols><sheetData><row r="1"><c t="str"><v>a</v></c><c t="str"><v>b</v></c><c t="str"><v>c</v></c><c t="str"><v>d</v></c></row><row r="3" hidden="1"><c><v>1</v></c></row><row r="4" ht="0"><c><v>2</v></c></row><row r="5"><c><v>3</v></c><c><v>4</v></c></row></sheetData>`;
    const [shown, hidden] = sheetsOf(
      zipOf(
        xlsxParts([
          { name: 'A', content },
          { name: 'B', content, state: 'veryHidden' },
        ]),
      ),
    );
    expect(shown).toMatchObject({
      hidden: false,
      cells: [['a', '', 'c'], ['3']],
      lines: [1, 5],
      hiddenRows: [3, 4],
      hiddenColumns: [
        { letters: 'B', text: 'b' },
        { letters: 'D', text: 'd' },
      ],
    });
    expect(hidden).toMatchObject({ name: 'B', hidden: true });
  });

  it('is known of .ods sheets, rows and columns', () => {
    const row = (attributes: string, ...cells: string[]): string =>
      `<table:table-row ${attributes}>${cells.map((c) => `<table:table-cell><text:p>${c}</text:p></table:table-cell>`).join('')}</table:table-row>`;
    const table = (style: string): string =>
      `<table:table table:name="T" table:style-name="${style}"><table:table-column/><table:table-column table:visibility="collapse"/>${row('', 'a', 'b', 'c')}${row('table:visibility="filter"', '1')}${row('', '2', '3')}</table:table>`;
    const styles =
      '<style:style style:name="ta2" style:family="table"><style:table-properties table:display="false"/></style:style>';
    const [shown, hidden] = sheetsOf(ods(table('ta1') + table('ta2'), styles));
    expect(shown).toMatchObject({
      hidden: false,
      cells: [['a', '', 'c'], ['2']],
      hiddenRows: [2],
      hiddenColumns: [{ letters: 'B', text: 'b' }],
    });
    expect(hidden?.hidden).toBe(true);
  });

  it('is known of folded groups of .ods', () => {
    const row = (text: string): string =>
      `<table:table-row><table:table-cell><text:p>${text}</text:p></table:table-cell></table:table-row>`;
    const folded = `<table:table-row-group table:display="false">${row('b')}<table:table-row-group>${row('c')}</table:table-row-group></table:table-row-group>`;
    const [sheet] = sheetsOf(
      ods(`<table:table table:name="T">${row('a')}${folded}${row('d')}</table:table>`),
    );
    expect(sheet).toMatchObject({ cells: [['a'], ['d']], lines: [1, 4], hiddenRows: [2, 3] });
  });

  it('under a merged cell isn’t read', () => {
    const content = `${sheetData([
      ['a', 'b'],
      ['c', 'd'],
      ['e', 'f'],
    ])}<mergeCells><mergeCell ref="A1:B2"/></mergeCells>`;
    const [sheet] = sheetsOf(xlsx(content));
    expect(sheet?.cells).toEqual([
      ['a', ''],
      ['', ''],
      ['e', 'f'],
    ]);
    expect(sheet?.merged).toEqual([{ line: 1, lastLine: 2, column: 0, text: 'a' }]);
  });
});

describe('a file that is no workbook to read', () => {
  const sheet = sheetData([['tag'], ['A']]);
  const good = xlsx(sheet);
  const inPart = good.indexOf('xl/worksheets/sheet1.xml') + 40;
  const compound = Buffer.concat([Buffer.from([0xd0, 0xcf, 0x11, 0xe0]), Buffer.alloc(100)]);
  const giant = (count: number): string => `<row r="1">${'<c><v>1</v></c>'.repeat(count)}</row>`;
  test.each<[string, Uint8Array, string]>([
    ['cut short', good.subarray(0, good.length / 2), 'broken'],
    ['the end of it alone', good.subarray(good.length / 2), 'broken'],
    ['with a changed byte in a part', good.map((byte, i) => (i === inPart ? byte ^ 0x55 : byte)), 'broken'],
    ['a text', Buffer.from('job,tag\n'), 'broken'],
    [
      'with a password, .xlsx',
      Buffer.concat([compound, Buffer.from('EncryptedPackage', 'utf16le')]),
      'encrypted',
    ],
    [
      'with a password, .ods',
      zipOf({
        ...odsParts(odsTable('T', [['a']])),
        'META-INF/manifest.xml': '<m:manifest xmlns:m="m"><m:encryption-data/></m:manifest>',
      }),
      'encrypted',
    ],
    ['with a password, the whole package', zipOf({ mimetype: 'x', 'encrypted-package': 'x' }), 'encrypted'],
    [
      'with a password, zip',
      zipOf(xlsxParts([{ name: 'A', content: sheet }]), { encrypted: true }),
      'encrypted',
    ],
    ['an old one', compound, 'binary'],
    [
      'binary parts',
      zipOf({ '_rels/.rels': xlsxParts([])['_rels/.rels']?.replace('workbook.xml', 'workbook.bin') ?? '' }),
      'binary',
    ],
    ['an archive', zipOf({ 'list.csv': 'job,tag\n' }), 'no-workbook'],
    [
      'a text document',
      zipOf({ ...odsParts(''), mimetype: 'application/vnd.oasis.opendocument.text' }),
      'no-workbook',
    ],
    ['no XML', xlsx('<sheetData><row>'), 'broken'],
    [
      'an entity of its own',
      zipOf({
        ...xlsxParts([{ name: 'A', content: sheet }]),
        'xl/worksheets/sheet1.xml':
          '<!DOCTYPE w [<!ENTITY a "aaaa">]><worksheet><sheetData><row><c t="str"><v>&a;</v></c></row></sheetData></worksheet>',
      }),
      'broken',
    ],
    ['elements without end', xlsx('<a>'.repeat(5000) + '</a>'.repeat(5000)), 'broken'],
    [
      'rows that go backwards',
      xlsx('<sheetData><row r="2"><c><v>1</v></c></row><row r="1"><c><v>1</v></c></row></sheetData>'),
      'broken',
    ],
    [
      'a row beyond the last',
      xlsx('<sheetData><row r="1048577"><c><v>1</v></c></row></sheetData>'),
      'broken',
    ],
    [
      'a column beyond the last',
      xlsx('<sheetData><row r="1"><c r="XFE1"><v>1</v></c></row></sheetData>'),
      'broken',
    ],
    ['cells beyond the last column', xlsx(`<sheetData>${giant(16_385)}</sheetData>`), 'broken'],
    [
      'more bytes than are read',
      Buffer.concat([Buffer.from([0x50, 0x4b, 3, 4]), Buffer.alloc(51e6)]),
      'bytes',
    ],
    ['a bomb that says so', zipOf(xlsxParts([{ name: 'A', content: sheet }]), { declared: 4e9 }), 'unpacked'],
    ['a bomb that lies', zipOf(xlsxParts([{ name: 'A', content: sheet }]), { declared: 10 }), 'broken'],
  ])('%s', (_, bytes, problem) => {
    expect(problemOf(bytes)).toBe(problem);
  });

  it('a million rows of 16,384 columns that one element repeats', () => {
    const cell =
      '<table:table-cell table:number-columns-repeated="16384"><text:p>x</text:p></table:table-cell>';
    const rows = `<table:table-row table:number-rows-repeated="1048576">${cell}</table:table-row>`;
    expect(problemOf(ods(`<table:table table:name="T">${rows}</table:table>`))).toBe('cells');
  });

  it('cells that are merged a million times over', () => {
    const merges = '<mergeCell ref="A1:XFD1048576"/>'.repeat(20_000);
    const grid = Array.from({ length: 1000 }, () => ['a']);
    expect(problemOf(xlsx(`${sheetData(grid)}<mergeCells>${merges}</mergeCells>`))).toBe('cells');
  });

  it('one long text that many cells share', () => {
    const strings = [`<t>${'x'.repeat(1_000_000)}</t>`];
    const grid = Array.from({ length: 201 }, () => ['<c t="s"><v>0</v></c>']);
    expect(problemOf(xlsx(sheetData(grid), { strings }))).toBe('characters');
  });
});

describe('held against an independent writer', () => {
  // What a sheet can hold: no control characters, no texts that only look like escapes.
  const cell = fc.oneof(
    fc.string({
      unit: fc.constantFrom('a', 'B', '7', ' ', '-', '\u00e9', '<', '&', '"', '\u20ac', ',', ';'),
    }),
    fc.integer({ min: -1e9, max: 1e9 }),
    fc.integer({ min: -1e6, max: 1e6 }).map((n) => n / 100),
  );
  const told = (value: GridCell): string =>
    typeof value === 'number' ? numberText(value, '.') : (value ?? '');
  /** Without blanks at the ends of rows, and without blank rows: a sheet doesn't keep them. */
  const trimmed = (rows: readonly (readonly string[])[]): string[][] =>
    rows
      .map((row) => row.slice(0, row.findLastIndex((text) => text.trim() !== '') + 1))
      .filter((row) => row.length > 0);

  test.each(['xlsx', 'xlsm', 'ods'] as const)('a grid in .%s', (bookType) => {
    fc.assert(
      fc.property(
        fc.array(fc.array(cell, { minLength: 1, maxLength: 5 }), { minLength: 1, maxLength: 6 }),
        (grid) => {
          const book = utils.book_new();
          utils.book_append_sheet(book, utils.aoa_to_sheet(grid), 'Grid');
          const bytes = Uint8Array.from(
            write(book, { type: 'buffer', bookType, compression: true }) as Buffer,
          );
          const blank = (row: readonly string[]): string[] =>
            row.map((text) => (text.trim() === '' ? '' : text));
          const [sheet] = sheetsOf(bytes);
          expect(trimmed((sheet?.cells ?? []).map(blank))).toEqual(
            trimmed(grid.map((row) => blank(row.map(told)))),
          );
        },
      ),
      { numRuns: 60 },
    );
  });
});
