import type { Settings } from '../../model/settings.js';
import { SHEETS } from '../parts/css.js';
import type { Sheet } from '../parts/css.js';

const POINTS_PER_MM = 72 / 25.4;

/** mm above the grid that a heading needs. */
export const HEADER_ROOM = 10;

/** Size of one label in points, from the grid of the settings and the sheet. */
export function labelSize(grid: Settings['labels'], sheet: Sheet): { width: number; height: number } {
  const { width, height } = SHEETS[sheet];
  const across =
    width - 2 * grid.marginLeft * POINTS_PER_MM - (grid.columns - 1) * grid.gapColumns * POINTS_PER_MM;
  const down = height - 2 * grid.marginTop * POINTS_PER_MM - (grid.rows - 1) * grid.gapRows * POINTS_PER_MM;
  return { width: Math.max(across / grid.columns, 1), height: Math.max(down / grid.rows, 1) };
}

/** Page and grid of the sheets of labels: the page has no margin, the grid brings its own. */
export function labelGridRules(grid: Settings['labels'], sheet: Sheet): string {
  const { width, height } = SHEETS[sheet];
  const label = labelSize(grid, sheet);
  const pt = (value: number): string => `${value.toFixed(2)}pt`;
  return `@page { size: ${pt(width)} ${pt(height)}; margin: 0; }
.label-sheet { width: ${pt(width)}; height: ${pt(height - 0.5)}; }
.label-header { top: ${((grid.marginTop - 6) / 2).toFixed(2)}mm; left: ${Math.max(grid.marginLeft, 6)}mm; right: 6mm; }
.label-grid { top: ${grid.marginTop}mm; left: ${grid.marginLeft}mm;
  grid-template-columns: repeat(${grid.columns}, ${pt(label.width)}); grid-auto-rows: ${pt(label.height)};
  column-gap: ${grid.gapColumns}mm; row-gap: ${grid.gapRows}mm; }`;
}
