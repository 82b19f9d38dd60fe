// Mutated workbooks: each is made of a list of the fixtures by its number and the seed of the run alone. Cells are mutated as
// those of lists are, then parts, then the archive.
import { parse } from 'csv-parse/sync';
import { chooser, LARGEST_CASE, NASTY, randomOf, fuzzCase } from './fuzz-mutations.mjs';
import { odsParts, odsTable, sheetData, xlsxParts, zipOf } from './workbooks.mjs';

const FORMATS = [
  'd-mmm',
  '0.00%',
  '0.0" kV"',
  '[>=1000]0.0,"k";0',
  '0.00E+00',
  ';;;',
  '"',
  '[h]:mm',
  '\\',
  '0000',
];

/** Elements and attributes that readers of workbooks know. */
const PIECES = [
  ...[
    '<c>',
    '</c>',
    '<c r="A1">',
    '<c r="XFD1048576"><v>1</v></c>',
    '<v>',
    '</v>',
    '<v/>',
    '<f>A1</f>',
    '<row>',
    '</row>',
  ],
  ...[
    '<row r="0">',
    '<row r="1048576"/>',
    '<row hidden="1">',
    '<is><t>',
    '</t></is>',
    '<t>',
    '<si><t>x</t></si>',
    '<rPh>',
  ],
  ...[
    '<mergeCell ref="A1:XFD1048576"/>',
    '<mergeCell ref="B2"/>',
    '<mergeCell/>',
    '<cols><col min="1" max="16384" hidden="1"/></cols>',
  ],
  ...[
    ' t="s"',
    ' t="b"',
    ' t="e"',
    ' t="d"',
    ' t="zz"',
    ' s="99"',
    ' s="-1"',
    ' r="A0"',
    ' hidden="1"',
    ' state="hidden"',
  ],
  ...[
    ' table:number-rows-repeated="1048576"',
    ' table:number-columns-repeated="16384"',
    ' table:number-columns-repeated="-1"',
  ],
  ...[
    ' table:number-rows-spanned="9"',
    ' table:visibility="collapse"',
    ' office:value-type="date"',
    ' office:value-type="float"',
  ],
  ...[
    '<table:table-row>',
    '</table:table-row>',
    '<table:table-cell/>',
    '<table:covered-table-cell/>',
    '<table:table table:name="T">',
  ],
  ...[
    '<text:p>',
    '</text:p>',
    '<text:s text:c="1000000"/>',
    '<office:annotation><text:p>x</text:p></office:annotation>',
  ],
  ...[
    '&amp;',
    '&#0;',
    '&#x10FFFF;',
    '&x;',
    '<!--',
    '-->',
    '<![CDATA[',
    ']]>',
    '<?x?>',
    '<!DOCTYPE a [<!ENTITY b "c">]>',
    '\u0000',
    '<',
    '>',
    '"',
  ],
];

const splice = (text, at, count, put) => text.slice(0, at) + put + text.slice(at + count);

/** Elements that leave a part well-formed wherever elements stand. */
const WHOLE_PIECES = PIECES.filter((piece) => /^<[a-z].*(?:\/>|<\/[\w:]+>)$/i.test(piece));

/** Between two elements, where one more does no harm to the others. */
const putBetween = (text, { below, one }) => {
  const at = text.indexOf('><', below(text.length));
  return at < 0 ? text : splice(text, at + 1, 0, one(WHOLE_PIECES));
};

/** Another value of an attribute. */
const putValue = (text, { below, one }) => {
  const at = text.indexOf('="', below(text.length));
  const end = at < 0 ? -1 : text.indexOf('"', at + 2);
  const value = one(['', '0', '1', '-1', '2', '16384', '1048577', '9'.repeat(30), 'A1', 'B3', 'x', 'NaN']);
  return end < 0 ? text : splice(text, at + 2, end - at - 2, value);
};

/** Another text between two tags. */
const putText = (text, { below, one }) => {
  const at = text.indexOf('>', below(text.length)) + 1;
  const put = one(['1e999', '-0', '12,5', '=1+1', '7', ' ', '_x0000_', 'x'.repeat(70_000)]);
  return at <= 0 ? text : splice(text, at, 0, put);
};

/** Changes of a part; the most leave it well-formed, or all would end at the same message. */
const PART = [
  ...[putBetween, putBetween, putBetween, putValue, putValue, putValue, putText, putText],
  (text, { below, one }) => splice(text, below(text.length + 1), 0, one(PIECES)),
  (text, { below, one }) => splice(text, below(text.length + 1), below(20), one([...PIECES, ...NASTY])),
  (text, { below }) => splice(text, below(text.length + 1), below(200), ''),
  (text, { below }) => text.slice(0, below(text.length + 1)),
];

/** Changes of the archive. */
const ARCHIVE = [
  (bytes, { below }) => {
    for (let i = 0; i < 1 + below(8); i += 1) bytes[below(bytes.length)] ^= 1 << below(8);
    return bytes;
  },
  (bytes, { below }) => bytes.subarray(0, below(bytes.length + 1)),
  // The directory stands at the end.
  (bytes, { below }) => {
    bytes[bytes.length - 1 - below(Math.min(400, bytes.length))] = below(256);
    return bytes;
  },
  (bytes, { below }) =>
    Buffer.concat([bytes.subarray(0, below(bytes.length)), bytes.subarray(below(bytes.length))]),
];

/** A list as a grid, its figures as numbers where a spreadsheet would take them for such. */
function gridOf(bytes, { chance, one, below }) {
  const head = bytes.subarray(0, 500).toString('latin1');
  const [delimiter] = [',', ';', '\t', '|'].sort((a, b) => head.split(b).length - head.split(a).length);
  const grid = parse(bytes, {
    delimiter,
    bom: true,
    relax_quotes: true,
    relax_column_count: true,
    to: 300,
  });
  const figures = chance(0.8);
  return grid
    .slice(0, 300)
    .map((row) =>
      row.slice(0, 300).map((text) => {
        const cell = text.slice(0, 30_000);
        if (chance(0.004)) return one(['#N/A', `=${cell}`, '\u200b', '2026-03-11']);
        return figures && /^-?\d{1,12}(?:\.\d{1,6})?$/.test(cell) ? Number(cell) : cell;
      }),
    )
    .map((row) => (chance(0.01) ? [...row, ...Array.from({ length: below(40) }, () => '')] : row));
}

/** Now and then a cell of another sort: a date, an error, a formula that nobody worked out. */
const ODD_CELLS = [
  '<c s="1"><v>46092</v></c>',
  '<c><f>A1</f></c>',
  '<c t="e"><v>#REF!</v></c>',
  '<c s="3"><v>13.8</v></c>',
  '<c t="b"><v>1</v></c>',
];

function partsOf(grid, { chance, one, below }) {
  if (chance(0.5))
    return odsParts(
      odsTable(one(['Sheet1', 'UF-1', '\u202e', '']), grid) + (chance(0.3) ? odsTable('B', grid) : ''),
    );
  const odd = grid.map((row) => row.map((cell) => (chance(0.01) ? one(ODD_CELLS) : cell)));
  const merges = chance(0.3)
    ? `<mergeCells><mergeCell ref="A${String(1 + below(9))}:B${String(10 + below(9))}"/></mergeCells>`
    : '';
  const sheet = { name: one(['Sheet1', 'UF-1', '../x', '=1', '']), content: `${sheetData(odd)}${merges}` };
  const more = chance(0.3)
    ? [{ name: 'B', content: sheetData(grid), ...(chance(0.5) ? { state: 'hidden' } : {}) }]
    : [];
  return xlsxParts([sheet, ...more], { formats: FORMATS });
}

/**
 * A mutated workbook, with the library and the catalogue of the lists beside it.
 * @param {number} seed of the run
 * @param {number} number of the case
 */
export function workbookCase(seed, number) {
  const listed = fuzzCase(seed, number);
  const choose = chooser(randomOf(seed, -2 - number));
  const { below, one, chance } = choose;
  let grid = [];
  try {
    grid = gridOf(listed.list, choose);
  } catch {
    // Some lists are none that a parser takes: the workbook is empty then.
  }
  const parts = partsOf(grid, choose);
  if (chance(0.5)) {
    const names = Object.keys(parts);
    for (let i = 1 + below(2); i > 0; i -= 1) {
      const name = chance(0.7) ? (names.find((n) => /sheet1|content/.test(n)) ?? '') : one(names);
      if (name in parts) parts[name] = one(PART)(parts[name] ?? '', choose);
      if (chance(0.03)) delete parts[name];
    }
  }
  let bytes = zipOf(parts, chance(0.03) ? { declared: one([0, 1, 5e8, 4294967295]) } : {});
  if (chance(0.1)) bytes = one(ARCHIVE)(bytes, choose);
  const name = `case-${number}.${one(['xlsx', 'xlsm', 'ods', 'csv'])}`;
  return { ...listed, name, list: bytes.subarray(0, LARGEST_CASE) };
}
