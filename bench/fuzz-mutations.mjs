// Mutated lists: each is made from a list of the fixtures by its number and the seed of the run alone, so that any of
// them can be made again.
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parse } from 'csv-parse/sync';
import { stringify } from 'csv-stringify/sync';

const fixtures = fileURLToPath(new URL('../fixtures/', import.meta.url));
const named = (folder) =>
  readdirSync(`${fixtures}${folder}`)
    .filter((name) => /\.(csv|tsv|txt)$/.test(name) && !/catalogue|library/.test(name))
    .sort()
    .map((name) => readFileSync(`${fixtures}${folder}/${name}`));

/** A demo list cut into its jobs: most cases stay small, so that many can be tried. */
function jobsOf(bytes) {
  const [heading, ...rows] = parse(bytes, { bom: true });
  const at = heading.indexOf('job');
  return [...new Set(rows.map((row) => row[at]))].map((id) =>
    Buffer.from(stringify([heading, ...rows.filter((row) => row[at] === id)])),
  );
}

const DEMO = named('demo');
const BASES = [
  ...named('lists'),
  ...named('lists/tidy'),
  ...named('bad').filter((bytes) => bytes.length > 0),
  ...DEMO.flatMap(jobsOf),
];
const COMPANY = {
  library: readFileSync(`${fixtures}demo/library.csv`),
  catalogue: readFileSync(`${fixtures}demo/catalogue.csv`),
};
const ALL_HEADINGS = [
  ...new Set(DEMO.flatMap((bytes) => parse(bytes, { bom: true, to: 1 })[0] ?? [])),
  ...[
    'Type',
    'Qty',
    'Connected to',
    'Cable length',
    'Voc',
    'Temp coeff Voc',
    'Min temp',
    'quantity',
    'serial',
  ],
  ...[
    'string',
    'String #',
    'modules',
    'isolated',
    'kva',
    'impedance_percent',
    'rating_a',
    'backfeed_a',
    'parallel',
  ],
  ...[
    'rapid_shutdown',
    'neutral_switched',
    'system_grounding',
    'dc_grounding',
    'From',
    'To',
    'Length (ft)',
    'Item #',
    'jobtag',
  ],
  ...['__proto__', 'constructor', 'toString', 'job', 'JOB', 'tag', 'run length (furlong)', 'tga', ''],
];

/** Characters of one cell, and bytes of one case: a watch of two seconds is for lists, not for hundreds of megabytes. */
const LARGEST_CELL = 1_000_000;
export const LARGEST_CASE = 4_000_000;

/** Cells that have broken readers of tables before. */
export const NASTY = [
  ...['"', '""', '"""', 'a"b', '"a" b', "'", '\\', '\\"', '""\n"', '"unclosed'],
  ...['=1+1', '+1', '-1', '@SUM(A1)', '=HYPERLINK("x","y")', '\t=1', '\u0000=1', '|cmd', '%00', '＝1'],
  ...[
    '\u0000',
    '\u0007',
    '\u001b[2J',
    '\ufeff',
    '\u200b',
    '\u202e',
    '\u2066',
    '\u2028',
    '\u0085',
    '\u00a0',
    '\v',
  ],
  ...['😀', '\ud800', 'ﬀ', 'İ', 'ẞ', 'e\u0301', '漢字', '١٢٣', '½', '²', '−5', '‐', '’', '″'],
  ...['<script>alert(1)</script>', '{{x}}', '{{{x}}}', '${x}', '%s', '&lt;', ']]>', '</style>'],
  ...[
    '../../x',
    '..',
    '.',
    '/etc/passwd',
    'C:\\x',
    'con',
    'NUL.csv',
    'a/b',
    'x'.repeat(255),
    'a:b',
    '-',
    '--out',
  ],
  ...[
    '__proto__',
    'constructor',
    'prototype',
    'hasOwnProperty',
    'toString',
    'null',
    'undefined',
    'NaN',
    'true',
  ],
  ...[
    '0',
    '-0',
    '1e309',
    '1e-400',
    '9007199254740993',
    '1,234',
    '1.234,5',
    "1'234",
    '1 234',
    '0x10',
    '1_000',
    '٣',
  ],
  ...[
    '1E+03',
    '#REF!',
    '#N/A',
    '1-Feb',
    '2026-02-01',
    'TBD',
    '?',
    'n/a',
    'none',
    '-',
    '–',
    'yes',
    'no',
    '9'.repeat(400),
  ],
  ...[
    '100 ft',
    "3'",
    '3"',
    '3\' 6"',
    '-3 m',
    '1e3 ft',
    '600 kV',
    '10 furlong',
    '-40 C',
    '-500 C',
    '1e9 V',
    '24 V dc',
  ],
  ...[
    'INV/1+2',
    'INV/0',
    'INV/999999999',
    'INV/',
    '/1',
    'INV/1+',
    'SVC',
    'SELF',
    '120/240',
    '480Y/277',
    'unused',
  ],
  ...[
    'service',
    'panel',
    'array',
    'combiner',
    'inverter-charger',
    'battery',
    'wind-turbine',
    'generator',
    'load',
  ],
  ...[
    'disconnect',
    'transformer',
    'dc-load',
    'dc-panel',
    'diversion-load',
    'ac-battery',
    'pump-drive',
    'transfer-switch',
  ],
  // Words of the trade for a kind, of one kind, of several, of none.
  ...[
    'Utility',
    'sub-panels',
    'PV modules',
    'ATS',
    'rapid shutdown box',
    'autotransformer',
    'MPPT',
    'dump load',
    'VFD',
  ],
  ...[
    'inverter',
    'meter',
    'controller',
    'turbine',
    'battery inverter',
    'main disconnect',
    'gubbins',
    'nec-2026',
    'pump panel thing',
  ],
  ...['A; B', 'INV-1; INV-2/2; INV-3', 'A;', ';', '; ;', '5 ft; 20 ft', '5; 20; 30', '5 ft; far', '5 m;'],
  ...[
    '600Y/347',
    '240/120 high-leg',
    '120/208',
    '277',
    '480 delta',
    '45 kVA',
    '4 %',
    '0 %',
    'corner',
    'impedance',
  ],
  ...[
    'nec-2017',
    'iec',
    'TT',
    'IT',
    'sleeping',
    'attached',
    'isolated',
    'floating',
    'positive',
    '100000',
    '99999999',
  ],
];

/** Kinds, words for them, words for several and for none. */
const KIND_WORDS = [
  ...[
    'service',
    'panel',
    'array',
    'charge-controller',
    'grid-tie-inverter',
    'inverter-charger',
    'battery',
    'generator',
    'load',
  ],
  ...[
    'disconnect',
    'transformer',
    'dc-load',
    'dc-panel',
    'diversion-load',
    'ac-battery',
    'pump-drive',
    'transfer-switch',
    'other',
  ],
  ...[
    'Grid',
    'load center',
    'solar panels',
    'string inverter',
    'interlock',
    'junction box',
    'UPS',
    'radio',
    'xfmr',
    'pump',
  ],
  ...['inverter', 'meter', 'charger', 'switch', 'rapid shutdown', 'isolation transformer', 'thing', ''],
];

/** Headings of fields that few lists have, with cells for them. */
const NEW_FIELDS = [
  ['string', ['1', '2', '3', 'A', '']],
  ['modules', ['8', '16', '17', '0', '-', '']],
  ['isolated', ['yes', 'no', '']],
  ['kva', ['45', '45 kVA', '0', '']],
  ['impedance_percent', ['4', '4 %', '0', '']],
  ['rating_a', ['200', '200 A', '']],
  ['backfeed_a', ['0', '20 A', '']],
  ['parallel', ['yes', 'no', '']],
  ['rapid_shutdown', ['yes', 'no', '']],
  ['neutral_switched', ['yes', 'no', '']],
  ['ac_in', ['120/240', '480Y/277', '277', '240/120 high-leg', '120/208', '600Y/347', 'unused', '']],
  ['ac_out', ['120', '208Y/120', '480 delta', '230', '400Y/230', '']],
  ['system_grounding', ['solid', 'none', 'corner', 'impedance', '']],
  ['run_length (ft)', ['5; 20', '5', '5; 20; 40', '']],
];

/** Random numbers that depend on the seed and the case alone (mulberry32, public domain). */
export function randomOf(seed, number) {
  let state = (Math.imul(seed, 0x9e3779b1) ^ Math.imul(number + 1, 0x85ebca6b)) >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

/** Choices from random numbers. */
export function chooser(random) {
  const below = (n) => Math.floor(random() * n);
  return { below, one: (list) => list[below(list.length)], chance: (p) => random() < p };
}

/** Changes of the table: cells, columns, rows. Each takes the grid and changes it. */
const GRID = [
  (grid, { one, below }) => (cellOf(grid, below)[0][cellOf.at] = one(NASTY)),
  (grid, { one, below }) => {
    const [row] = cellOf(grid, below);
    row[cellOf.at] = `${row[cellOf.at] ?? ''}${one(NASTY)}`;
  },
  (grid, { one, below }) => {
    const [row] = cellOf(grid, below);
    const text = row[cellOf.at] ?? '';
    const cut = below(text.length + 1);
    row[cellOf.at] = text.slice(0, cut) + one(NASTY) + text.slice(cut);
  },
  (grid, { below }) => {
    const [a] = cellOf(grid, below);
    const at = cellOf.at;
    const [b] = cellOf(grid, below);
    [a[at], b[cellOf.at]] = [b[cellOf.at] ?? '', a[at] ?? ''];
  },
  (grid, { one, below }) => (cellOf([grid[0]], below)[0][cellOf.at] = one(ALL_HEADINGS)),
  (grid, { below }) => {
    const [heading] = grid;
    const at = below(heading.length);
    const name = heading[at] ?? '';
    const slip = below(name.length);
    heading[at] = name.slice(0, slip) + name.slice(slip + 1);
  },
  (grid, { below, chance }) => {
    const row = below(grid.length);
    const size = (grid[row] ?? []).reduce((sum, cell) => sum + cell.length, 1);
    const times = chance(0.02) ? Math.min(500, Math.ceil(LARGEST_CELL / size)) : 1;
    for (let i = 0; i < times; i += 1) grid.splice(below(grid.length + 1), 0, [...(grid[row] ?? [])]);
  },
  (grid, { below }) => grid.splice(below(grid.length), 1),
  (grid, { below }) => {
    const at = below(grid[0].length);
    for (const row of grid) row.splice(at, 1);
  },
  (grid, { below, one }) => {
    const at = below(grid[0].length + 1);
    for (const [r, row] of grid.entries()) row.splice(at, 0, one(r === 0 ? ALL_HEADINGS : NASTY));
  },
  (grid, { below }) => {
    const [from, to] = [below(grid[0].length), below(grid[0].length)];
    for (const row of grid) row.splice(to, 0, ...row.splice(from, 1));
  },
  (grid, { below }) => cellOf(grid, below)[0].splice(cellOf.at, 1),
  (grid, { below, one }) => cellOf(grid, below)[0].push(one(NASTY)),
  (grid, { one }) => grid.splice(0, 0, [one(NASTY)], [one(NASTY), one(NASTY)]),
  (grid, { one, below }) => {
    const at = below(grid[0].length);
    const cell = one(NASTY);
    for (const row of grid.slice(1)) row[at] = cell;
  },
  // Every kind another word.
  (grid, { one, chance }) => {
    const at = grid[0].findIndex((heading) => /^(?:kind|type)$/i.test(heading.trim()));
    for (const row of at < 0 ? [] : grid.slice(1)) if (chance(0.3)) row[at] = one(KIND_WORDS);
  },
  // Facts of the new fields, under headings of their own.
  (grid, { one, below }) => {
    const field = below(NEW_FIELDS.length);
    const [heading, cells] = NEW_FIELDS[field];
    for (const [r, row] of grid.entries()) row.push(r === 0 ? heading : one(cells));
  },
  (grid, { one, below, chance }) => {
    const [row] = cellOf(grid, below);
    const piece = one(NASTY);
    row[cellOf.at] = piece.repeat(
      Math.min(chance(0.1) ? 100_000 : 2_000, Math.floor(LARGEST_CELL / piece.length)),
    );
  },
];

/** A random cell: its row, with its index in `cellOf.at`. */
function cellOf(grid, below) {
  const row = grid[below(grid.length)] ?? [];
  cellOf.at = below(Math.max(row.length, 1));
  return [row];
}

/** Changes of the text. */
const TEXT = [
  (text, { below, one }) => splice(text, below(text.length + 1), 0, one(NASTY)),
  (text, { below }) => splice(text, below(text.length + 1), below(40), ''),
  (text, { below }) => text.slice(0, below(text.length + 1)),
  (text, { one }) => text.replaceAll(',', one([';', '\t', '|', ':', ' ', ', ', ',,'])),
  (text, { one }) => text.replaceAll('\n', one(['\r\n', '\r', '\n\r', '\n\n', '\u2028', ''])),
  (text, { one }) => `sep=${one([',', ';', '|', '', ',,', '"'])}\n${text}`,
  (text, { below, one }) => {
    const lines = text.split('\n');
    lines[below(lines.length)] = one(['', '"', 'total,,,', '-----', ',,,,,,', '# note', '\u0000']);
    return lines.join('\n');
  },
  (text) => text.replaceAll('"', ''),
  (text, { below }) => {
    const lines = text.split('\n');
    lines.splice(below(lines.length), 0, lines[0] ?? '');
    return lines.join('\n');
  },
];

/** Changes of the bytes. */
const BYTES = [
  (bytes, { below }) => {
    for (let i = 0; i < 1 + below(8); i += 1) bytes[below(bytes.length)] ^= 1 << below(8);
    return bytes;
  },
  (bytes, { below }) => {
    bytes[below(bytes.length)] = below(256);
    return bytes;
  },
  (bytes, { one }) =>
    Buffer.concat([
      Buffer.from(
        one([[0xef, 0xbb, 0xbf], [0xff, 0xfe], [0xfe, 0xff], [0x50, 0x4b, 3, 4], [0x1f, 0x8b], [0]]),
      ),
      bytes,
    ]),
  (bytes) => Buffer.from(bytes.toString('utf8'), 'utf16le'),
  (bytes) => Buffer.from(bytes.toString('utf8'), 'utf16le').swap16(),
  (bytes) => Buffer.from(bytes.toString('utf8'), 'latin1'),
  (bytes, { below }) => bytes.subarray(0, below(bytes.length + 1)),
];

const splice = (text, at, count, put) => text.slice(0, at) + put + text.slice(at + count);

function mutated(base, choose) {
  const { below, one, chance } = choose;
  let bytes = Buffer.from(base);
  if (chance(0.8)) {
    const delimiter = one([',', ',', ',', ';', '\t', '|']);
    const grid = parse(base, {
      bom: true,
      relax_quotes: true,
      relax_column_count: true,
      skip_empty_lines: true,
    });
    for (let i = 1 + below(4); i > 0 && grid.length > 0 && grid[0].length > 0; i -= 1)
      one(GRID)(grid, choose);
    bytes = Buffer.from(stringify(grid, { delimiter, record_delimiter: one(['\n', '\r\n', '\r']) }));
  }
  if (chance(0.4)) {
    let text = bytes.toString('utf8');
    for (let i = 1 + below(2); i > 0; i -= 1) text = one(TEXT)(text, choose);
    bytes = Buffer.from(text);
  }
  if (chance(0.3) && bytes.length > 0) bytes = one(BYTES)(bytes, choose);
  return bytes.subarray(0, LARGEST_CASE);
}

/**
 * The case of a run: a mutated list, in one case of four with a mutated library or catalogue beside it.
 * @param {number} seed of the run
 * @param {number} number of the case
 * @returns {{ name: string, list: Buffer, library: Buffer, catalogue: Buffer, jobFacts: Buffer | null }}
 */
export function fuzzCase(seed, number) {
  const choose = chooser(randomOf(seed, number));
  const list = mutated(choose.one(BASES), choose);
  const beside = (bytes) => (choose.chance(0.12) ? mutated(bytes, choose) : bytes);
  return {
    name: `case-${number}.csv`,
    list,
    library: beside(COMPANY.library),
    catalogue: beside(COMPANY.catalogue),
    jobFacts: choose.chance(0.1)
      ? mutated(Buffer.from('job,basis,lowest_temp\nUF-101,iec,-12\n'), choose)
      : null,
  };
}
