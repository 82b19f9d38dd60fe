import type { Settings } from '../model/settings.js';
import { SHEETS } from './css.js';
import type { Sheet } from './css.js';

const POINTS_PER_MM = 72 / 25.4;

/** Size of one label in points, from the grid of the settings and the sheet. */
export function labelSize(grid: Settings['labels'], sheet: Sheet): { width: number; height: number } {
  const { width, height } = SHEETS[sheet];
  const across =
    width - 2 * grid.marginLeft * POINTS_PER_MM - (grid.columns - 1) * grid.gapColumns * POINTS_PER_MM;
  const down = height - 2 * grid.marginTop * POINTS_PER_MM - (grid.rows - 1) * grid.gapRows * POINTS_PER_MM;
  return { width: across / grid.columns, height: down / grid.rows };
}

/** Page and grid of the sheets of labels: the printer's own margins are none, the grid brings its own. */
export function labelGridRules(grid: Settings['labels'], sheet: Sheet): string {
  const { width, height } = SHEETS[sheet];
  const label = labelSize(grid, sheet);
  return `@page { size: ${width}pt ${height}pt; margin: 0; }
.label-sheet { width: ${width}pt; height: ${height}pt; padding: ${grid.marginTop}mm ${grid.marginLeft}mm;
  grid-template-columns: repeat(${grid.columns}, ${label.width}pt); grid-template-rows: repeat(${grid.rows}, ${label.height}pt);
  column-gap: ${grid.gapColumns}mm; row-gap: ${grid.gapRows}mm; }`;
}
