// Small workbooks in .xlsx and .ods, part by part, for tests and the fuzz run: no spreadsheet program writes the faulty ones.
import { crc32, deflateRawSync } from 'node:zlib';

const XML = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';
const OFFICE = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
const MAIN = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';

const escaped = (text) =>
  text
    // What XML can't hold.
    .replace(/(?![\t\n\r])[\u0000-\u001f\ufffe\uffff]|\p{Surrogate}/gu, '')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;')
    .replaceAll('\r', '&#13;');

/**
 * A zip archive.
 * @param {Readonly<Record<string, string | Uint8Array>>} parts by name
 * @param {{ encrypted?: boolean, declared?: number }} [forged] what its directory states otherwise: `declared` bytes of each part
 * @returns {Buffer}
 */
export function zipOf(parts, { encrypted = false, declared } = {}) {
  const bodies = [];
  const directory = [];
  let at = 0;
  for (const [name, content] of Object.entries(parts)) {
    const bytes = Buffer.from(content);
    const packed = deflateRawSync(bytes);
    const title = Buffer.from(name);
    const common = Buffer.alloc(26);
    common.writeUInt16LE(20, 0);
    common.writeUInt16LE(encrypted ? 1 : 0, 2);
    common.writeUInt16LE(8, 4);
    common.writeUInt32LE(crc32(bytes), 10);
    common.writeUInt32LE(packed.length, 14);
    common.writeUInt32LE(declared ?? bytes.length, 18);
    common.writeUInt16LE(title.length, 22);
    bodies.push(Buffer.from([0x50, 0x4b, 3, 4]), common, title, packed);
    const tail = Buffer.alloc(14);
    tail.writeUInt32LE(at, 10);
    directory.push(Buffer.from([0x50, 0x4b, 1, 2, 20, 0]), common, tail, title);
    at += 30 + title.length + packed.length;
  }
  const listed = Buffer.concat(directory);
  const end = Buffer.alloc(22);
  end.writeUInt32LE(0x06054b50, 0);
  end.writeUInt16LE(Object.keys(parts).length, 8);
  end.writeUInt16LE(Object.keys(parts).length, 10);
  end.writeUInt32LE(listed.length, 12);
  end.writeUInt32LE(at, 16);
  return Buffer.concat([...bodies, listed, end]);
}

/** Letters of a column. */
export function letters(index) {
  return index < 26
    ? String.fromCharCode(65 + index)
    : letters(Math.floor(index / 26) - 1) + letters(index % 26);
}

/** The cells of a grid as `<sheetData>`: texts inline, numbers as numbers, null: none; a string that begins with `<c` as it is. */
export function sheetData(grid) {
  const cell = (value, r, c) => {
    if (value === null || value === '') return '';
    const place = `${letters(c)}${String(r + 1)}`;
    if (typeof value === 'number') return `<c r="${place}"><v>${String(value)}</v></c>`;
    if (/^<c[ >]/.test(value)) return value.replace('<c', `<c r="${place}"`);
    return `<c r="${place}" t="inlineStr"><is><t xml:space="preserve">${escaped(value)}</t></is></c>`;
  };
  const rows = grid.map(
    (row, r) => `<row r="${String(r + 1)}">${row.map((v, c) => cell(v, r, c)).join('')}</row>`,
  );
  return `<sheetData>${rows.join('')}</sheetData>`;
}

/**
 * The parts of a workbook as ISO/IEC 29500 has them.
 * @param sheets each with its name, its content (what stands in `<worksheet>`) and its state
 * @param more formats of cells by index, codes of numbers; shared strings; days counted from 1904
 */
export function xlsxParts(sheets, { formats = [], strings = [], from1904 = false } = {}) {
  const relation = (id, type, target) =>
    `<Relationship Id="${id}" Type="${OFFICE}/${type}" Target="${target}"/>`;
  const relations = (inside) =>
    `${XML}<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">${inside}</Relationships>`;
  const listed = sheets.map(
    ({ name, state }, i) =>
      `<sheet name="${escaped(name)}" sheetId="${String(i + 1)}"${state === undefined ? '' : ` state="${state}"`} r:id="rId${String(i + 1)}"/>`,
  );
  const type = (part, kind) =>
    `<Override PartName="/xl/${part}.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.${kind}+xml"/>`;
  const types = [
    '<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>',
    '<Default Extension="xml" ContentType="application/xml"/>',
    type('workbook', 'sheet.main'),
    type('styles', 'styles'),
    type('sharedStrings', 'sharedStrings'),
    ...sheets.map((_, i) => type(`worksheets/sheet${String(i + 1)}`, 'worksheet')),
  ];
  const codes = formats.map(
    (code, i) => `<numFmt numFmtId="${String(164 + i)}" formatCode="${escaped(code)}"/>`,
  );
  const styles = formats.map((_, i) => `<xf numFmtId="${String(164 + i)}"/>`);
  return {
    '[Content_Types].xml': `${XML}<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types">${types.join('')}</Types>`,
    '_rels/.rels': relations(relation('rId1', 'officeDocument', 'xl/workbook.xml')),
    'xl/workbook.xml': `${XML}<workbook xmlns="${MAIN}" xmlns:r="${OFFICE}"><workbookPr${from1904 ? ' date1904="1"' : ''}/><sheets>${listed.join('')}</sheets></workbook>`,
    'xl/_rels/workbook.xml.rels': relations(
      [
        ...sheets.map((_, i) =>
          relation(`rId${String(i + 1)}`, 'worksheet', `worksheets/sheet${String(i + 1)}.xml`),
        ),
        relation('rIdS', 'styles', 'styles.xml'),
        relation('rIdT', 'sharedStrings', '/xl/sharedStrings.xml'),
      ].join(''),
    ),
    'xl/styles.xml': `${XML}<styleSheet xmlns="${MAIN}"><numFmts>${codes.join('')}</numFmts><cellStyleXfs><xf numFmtId="14"/></cellStyleXfs><cellXfs><xf numFmtId="0"/>${styles.join('')}</cellXfs></styleSheet>`,
    'xl/sharedStrings.xml': `${XML}<sst xmlns="${MAIN}">${strings.map((one) => `<si>${one}</si>`).join('')}</sst>`,
    ...Object.fromEntries(
      sheets.map(({ content }, i) => [
        `xl/worksheets/sheet${String(i + 1)}.xml`,
        `${XML}<worksheet xmlns="${MAIN}">${content}</worksheet>`,
      ]),
    ),
  };
}

/** The parts of a workbook as ISO/IEC 26300 has them: what stands among its styles, and what in its spreadsheet. */
export function odsParts(spreadsheet, styles = '') {
  const names = ['office', 'table', 'text', 'style', 'calcext'].map(
    (name) => `xmlns:${name}="urn:invented:${name}"`,
  );
  return {
    mimetype: 'application/vnd.oasis.opendocument.spreadsheet',
    'content.xml': `${XML}<office:document-content ${names.join(' ')}><office:automatic-styles>${styles}</office:automatic-styles><office:body><office:spreadsheet>${spreadsheet}</office:spreadsheet></office:body></office:document-content>`,
    'META-INF/manifest.xml': `${XML}<manifest/>`,
  };
}

/** A grid as a table of an OpenDocument spreadsheet. */
export function odsTable(name, grid) {
  const cell = (value) => {
    if (value === null || value === '') return '<table:table-cell/>';
    if (typeof value === 'number')
      return `<table:table-cell office:value-type="float" office:value="${String(value)}"><text:p>${String(value)}</text:p></table:table-cell>`;
    if (value.startsWith('<table:')) return value;
    const lines = value.split('\n').map((line) => `<text:p>${escaped(line)}</text:p>`);
    return `<table:table-cell office:value-type="string">${lines.join('')}</table:table-cell>`;
  };
  const rows = grid.map((row) => `<table:table-row>${row.map(cell).join('')}</table:table-row>`);
  return `<table:table table:name="${escaped(name)}">${rows.join('')}</table:table>`;
}
