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
