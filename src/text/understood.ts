import { counted, printable, textTable } from './screen.js';

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
  readonly encoding: string;
  readonly delimiter: string;
  readonly decimal: string;
  readonly headingLine: number;
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

/**
 * What was decided about a file, in one paragraph.
 * @param told how the file was understood
 * @returns lines, each ended by a line feed
 */
export function dialectText(told: FileTold): string {
  const { file, encoding, delimiter, headingLine, unitsLine, rows, leftOut } = told;
  const units = unitsLine > 0 ? `, units in line ${String(unitsLine)}` : '';
  const lines = [
    `${file === '-' ? 'standard input' : printable(file)}: ${encoding}, ${DELIMITER_NAMES[delimiter] ?? delimiter} between cells, ` +
      `heading in line ${String(headingLine)}${units}, ${counted(rows, 'row')}`,
    ...leftOut.slice(0, 10).map((l) => `  left out, line ${String(l.line)}: ${printable(l.text, 80)}`),
  ];
  if (leftOut.length > 10) lines.push(`  and ${counted(leftOut.length - 10, 'more line')} left out`);
  return lines.map((line) => `${line}\n`).join('');
}

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
