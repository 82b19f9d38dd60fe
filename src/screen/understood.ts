import { counted, printable, textTable } from './text-table.js';

/** How one heading of a file was understood. */
export interface HeadingTold {
  readonly heading: string;
  readonly field: string | null;
  readonly how: string;
  readonly unit: string | null;
  readonly nearest: string | null;
  readonly samples: readonly string[];
}

/** How a file was understood. */
export interface FileTold {
  readonly file: string;
  /** Null: a sheet of a workbook has none; nor a delimiter. */
  readonly encoding: string | null;
  readonly delimiter: string | null;
  readonly decimal: string;
  readonly headingLine: number;
  readonly decidedBy: {
    readonly encoding: string;
    readonly delimiter: string;
    readonly decimal: string;
    readonly headingLine: string;
  };
  readonly unitsLine: number;
  readonly columns: readonly HeadingTold[];
  readonly rows: number;
  readonly leftOut: readonly { readonly line: number; readonly text: string }[];
  readonly words: readonly WordTold[];
}

/** What became of a word of a file. */
export interface WordTold {
  readonly field: string;
  readonly heading: string;
  readonly text: string;
  readonly cells: number;
  readonly means: string | null;
  readonly taken: boolean;
  readonly nearest: string | null;
}

const DELIMITER_NAMES: Readonly<Record<string, string>> = {
  ',': 'comma',
  ';': 'semicolon',
  '\t': 'tab',
  '|': 'bar',
};

const DECIMAL_NAMES: Readonly<Record<string, string>> = {
  '.': 'point',
  ',': 'comma',
  auto: 'by each figure; one such as 1,234 is refused',
  'auto-comma': 'by each figure; one such as 1,234 or 1.234 is refused',
};

/**
 * What was decided about a file, and by what, a line each.
 * @param told how the file was understood
 * @returns lines, each ended by a line feed
 */
export function dialectText(told: FileTold): string {
  const { file, encoding, delimiter, decimal, headingLine, unitsLine, rows, leftOut, decidedBy } = told;
  const mark = `${DECIMAL_NAMES[decimal] ?? decimal} (by ${by(decidedBy.decimal)})`;
  const units = unitsLine > 0 ? `, units in line ${String(unitsLine)}` : '';
  const lines = [
    `${file === '-' ? 'standard input' : printable(file)}: ${counted(rows, 'row')}`,
    ...(encoding === null || delimiter === null
      ? ['  a sheet of a workbook: figures and dates as they are stored', `  decimal mark of texts: ${mark}`]
      : [
          `  encoding: ${encoding} (by ${by(decidedBy.encoding)})`,
          `  delimiter: ${DELIMITER_NAMES[delimiter] ?? delimiter} (by ${by(decidedBy.delimiter)})`,
          `  decimal mark: ${mark}`,
        ]),
    `  heading: line ${String(headingLine)}${units} (by ${by(decidedBy.headingLine)})`,
    ...leftOut.slice(0, 10).map((l) => `  left out, line ${String(l.line)}: ${printable(l.text, 80)}`),
  ];
  if (leftOut.length > 10) lines.push(`  and ${counted(leftOut.length - 10, 'more line')} left out`);
  return lines.map((line) => `${line}\n`).join('');
}

const by = (what: string): string =>
  what === 'flag' ? 'a flag' : what === 'column map' ? 'the column map' : what;

/**
 * How each heading of a file was understood, with its sample cells.
 * @param told how the file was understood
 */
export function headingsTable(told: FileTold): string {
  return textTable(
    [
      { heading: 'heading' },
      { heading: 'field' },
      { heading: 'by' },
      { heading: 'unit' },
      { heading: 'cells' },
    ],
    told.columns.map((c) => [
      c.heading,
      c.field ?? (c.nearest === null ? '?' : `? nearest: ${c.nearest}`),
      c.how,
      c.unit ?? '',
      c.samples.map((s) => printable(s, 16)).join(' | '),
    ]),
  );
}

/**
 * The words of a file that weren't understood, or are by the words of a column map or of the settings.
 * @param told how the file was understood
 * @returns lines, each ended by a line feed; `` where there are none
 */
export function wordsTable({ words }: FileTold): string {
  if (words.length === 0) return '';
  return textTable(
    [{ heading: 'word' }, { heading: 'of' }, { heading: 'cells', align: 'right' }, { heading: 'stands for' }],
    words.map(({ text, field, cells, means, taken, nearest }) => [
      printable(text, 40),
      field,
      String(cells),
      taken ? (means ?? '') : means === null ? unknown(nearest) : `${means}, which isn’t known: not read`,
    ]),
  );
}

/** As a draft of a column map asks it. */
const unknown = (nearest: string | null): string =>
  nearest === null ? '? not read' : `? not read; nearest: ${nearest}`;

/** What a column map says. */
export interface MapTold {
  readonly columns?: Readonly<Record<string, unknown>> | undefined;
  readonly words?: Readonly<Record<string, Readonly<Record<string, string>> | undefined>> | undefined;
}

/**
 * What became of each heading and word of a column map in a file.
 * @param told how the file was understood
 * @param map as it was read
 * @param path of the map
 * @returns lines, each ended by a line feed
 */
export function mapText(told: FileTold, map: MapTold, path: string): string {
  const key = (text: string): string => text.trim().replace(/\s+/g, ' ').toLowerCase();
  const headings = new Map(Object.keys(map.columns ?? {}).map((heading) => [key(heading), heading]));
  const seen = new Map<string, number>();
  const lines: string[][] = [];
  for (const { heading, how, field, unit } of told.columns) {
    const occurrence = (seen.get(key(heading)) ?? 0) + 1;
    seen.set(key(heading), occurrence);
    const numbered = `${key(heading)} #${String(occurrence)}`;
    const named = headings.has(numbered) ? numbered : key(heading);
    const meant = headings.get(named);
    headings.delete(named);
    const became = BECAME[how] ?? `${field ?? ''}${unit === null ? '' : ` (${unit})`}, by the ${how}`;
    lines.push([
      printable(heading, 40),
      meant === undefined && how !== 'map' ? `${became}; not in the map` : became,
    ]);
  }
  const words = new Set(told.words.map(({ field, text }) => `${field} ${key(text)}`));
  const unused = Object.entries(map.words ?? {}).flatMap(([field, of]) =>
    Object.keys(of ?? {})
      .filter((word) => !words.has(`${field} ${key(word)}`))
      .map((word) => `${word} (${field})`),
  );
  const absent = (what: string, names: readonly string[]): string =>
    names.length === 0
      ? ''
      : `  ${what} of the map that this list hasn’t: ${printable(names.join('; '), 300)}\n`;
  return [
    `  by the column map ${printable(path)}:\n`,
    textTable([{ heading: 'heading' }, { heading: 'became' }], lines),
    wordsTable(told),
    absent('headings', [...headings.values()]),
    absent('words', unused),
  ].join('');
}

const BECAME: Readonly<Record<string, string>> = {
  'left-out': 'left out, as the map says',
  unknown: 'not read: nothing says what it means',
  refused: 'not read: see the item about it',
};
