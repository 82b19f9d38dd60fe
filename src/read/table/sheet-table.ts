import type { InSteps } from '../file/in-steps.js';
import type { SheetCells } from '../file/workbook/sheet.js';
import { decimalMark } from './decimal-mark.js';
import { decider, statedDialect, statesPlace, type Dialect } from './dialect.js';
import { headingAmong, likelyAmong } from './find-heading.js';
import type { HeadingIndex } from './headings.js';
import { takeMergedCells } from './merged-cells.js';
import { seeingCells } from './seen-cells.js';
import { columnsBehind, datesInNames, hiddenIn } from './sheet-faults.js';
import { MOST_RECORDS, noHeading, tableOf, tooManyRows, type TableReading } from './table.js';
import { sayLines, sayText } from './table-faults.js';

/** No cell of a sheet is between quotation marks. */
const NO_QUOTES = { text: '', leftOut: [], stray: [] };

/**
 * Reads a sheet as a table, in steps: finds its heading, takes merged cells for each row that they span, leaves out what is no row.
 * @param file as messages name it: `list.xlsx!Sheet`
 * @param sheet its cells; they are changed
 * @param index what its headings may mean
 * @param map what the column map states about the source
 * @param flags what flags state about it; goes before the column map
 * @returns the table, or the one item that says why there is none; never throws
 */
export function* sheetTable<F extends string>(
  file: string,
  sheet: SheetCells,
  index: HeadingIndex<F>,
  map: Dialect,
  flags: Dialect,
): InSteps<TableReading<F>> {
  const { cells, lines } = sheet;
  const dialect = statedDialect(map, flags);
  const decidedBy = decider(map, flags);
  if (cells.length > MOST_RECORDS) return tooManyRows(file);
  const seen = yield* seeingCells(cells, lines);
  const place = headingAmong(cells, lines, index, dialect.headingLine) ?? likelyAmong(cells, lines);
  if ((place?.known ?? 0) === 0 && statesPlace(map)) {
    const other = yield* sheetTable(file, sheet, index, {}, flags);
    if (other.ok) return other;
  }
  const first = (cells[0] ?? []).filter((cell) => cell !== '').join(' ');
  // The path that a command takes is that of the workbook.
  const list = file.slice(0, -(sheet.name.length + 1));
  if (place === null) return { ok: false, item: noHeading(file, 1, first, index, list) };
  return yield* tableOf(index, {
    file,
    sheet: sheet.name,
    cells,
    lines,
    place,
    firstTitle: 0,
    written: {
      encoding: null,
      delimiter: null,
      decidedBy: {
        encoding: 'its cells',
        delimiter: 'its cells',
        decimal: decidedBy('decimal', 'its cells'),
        headingLine: decidedBy('headingLine', 'its cells'),
      },
    },
    // Figures come with a point; only a text can show commas.
    mark: (rows, columns) => dialect.decimal ?? decimalMark(rows, columns, ','),
    settle: ({ columns, unitsRow }) => {
      const below = Math.max(place.line, unitsRow < 0 ? 0 : (lines[unitsRow] ?? 0));
      return [
        ...hiddenIn(file, sheet),
        ...datesInNames(file, sheet, columns, place.line),
        ...takeMergedCells(file, { cells, lines }, sheet.merged, columns, below),
      ];
    },
    say: (faults, body) => {
      sayText(file, { guessedAt: 0 }, seen, faults);
      sayLines(file, NO_QUOTES, body, faults);
      faults.slight.push(...columnsBehind(file, sheet, place));
    },
    // A cell of a sheet stands under its heading, whatever stands beside it.
    shifted: () => new Map(),
    lostCells: [],
    noHeading: (stands) =>
      stands || dialect.headingLine !== undefined
        ? noHeading(file, place.line, place.cells.filter((cell) => cell !== '').join(' '), index, list)
        : noHeading(file, 1, first, index, list),
  });
}
