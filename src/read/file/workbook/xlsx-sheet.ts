import type { InSteps } from '../in-steps.js';
import { WorkbookFault } from './fault.js';
import { formatted, numberFormat } from './number-format.js';
import { unsavedFormula } from './unsaved-formula.js';
import {
  LAST_COLUMN,
  LAST_ROW,
  SheetInHand,
  type Allowance,
  type Merge,
  type SheetCells,
  type StoredCell,
} from './sheet.js';
import { isTrue, unescaped, type Shared } from './xlsx-values.js';
import { walkingXml, type Attributes } from './xml.js';

const GENERAL = numberFormat(0, undefined);

/** A cell while its elements are walked through. */
interface CellInHand {
  readonly column: number;
  readonly type: string;
  readonly style: number;
  value: string | null;
  inline: string;
  formula: string | null;
}

/**
 * Reads one worksheet in steps.
 * @param part its XML
 * @param of its name, and whether it is shown
 * @param shared what its cells refer to
 * @param left what all sheets may still hold
 * @throws WorkbookFault where it is damaged or holds too much
 */
export function* readingSheet(
  part: Uint8Array,
  of: { readonly name: string; readonly hidden: boolean },
  shared: Shared,
  left: Allowance,
): InSteps<SheetCells> {
  const sheet = new SheetInHand(of.name, of.hidden, left);
  let row = 0;
  let rowHidden = false;
  let cells = new Map<number, StoredCell>();
  let nextColumn = 0;
  let cell: CellInHand | null = null;
  let into: 'value' | 'inline' | 'formula' | null = null;
  let spoken = false;
  const openCell = ({ r, t = 'n', s = '0' }: Attributes): CellInHand => {
    const column = r === undefined ? nextColumn : placeOf(r).column;
    if (column >= LAST_COLUMN) throw new WorkbookFault('broken');
    nextColumn = column + 1;
    return { column, type: t, style: Number(s), value: null, inline: '', formula: null };
  };
  yield* walkingXml(part, {
    open: (element, attributes) => {
      if (element === 'row') {
        row = attributes['r'] === undefined ? row + 1 : wholeNumber(attributes['r'], LAST_ROW);
        rowHidden = isTrue(attributes['hidden']) || Number(attributes['ht'] ?? 1) === 0;
        cells = new Map();
        nextColumn = 0;
      } else if (element === 'c') cell = openCell(attributes);
      else if (element === 'rPh') spoken = true;
      else if (cell !== null && element === 'v') {
        cell.value = '';
        into = 'value';
      } else if (cell !== null && element === 'f') {
        cell.formula = '';
        into = 'formula';
      } else if (cell !== null && element === 't' && !spoken) into = 'inline';
      else if (element === 'col') hide(sheet, attributes);
      else if (element === 'mergeCell') sheet.merge(mergeOf(attributes['ref'] ?? ''));
    },
    close: (element) => {
      if (element === 'row') {
        sheet.takeRow(row, 1, cells, rowHidden);
        cells = new Map();
      } else if (element === 'c' && cell !== null) {
        const stored = storedCell(cell, shared);
        if (stored.text !== '') cells.set(cell.column, stored);
        cell = null;
      } else if (element === 'rPh') spoken = false;
      if (element === 'v' || element === 'f' || element === 't') into = null;
    },
    text: (piece) => {
      if (cell === null) return;
      if (into === 'value') cell.value = `${cell.value ?? ''}${piece}`;
      else if (into === 'formula') cell.formula = `${cell.formula ?? ''}${piece}`.slice(0, 200);
      else if (into === 'inline') cell.inline += piece;
    },
  });
  return sheet.done();
}

function hide(sheet: SheetInHand, { min = '', max = '', hidden, width }: Attributes): void {
  if (!isTrue(hidden) && (width === undefined || Number(width) > 0)) return;
  const first = wholeNumber(min, LAST_COLUMN);
  sheet.hideColumns(first - 1, wholeNumber(max, LAST_COLUMN) - 1);
}

/** What a cell holds as text (ECMA-376 part 1, clause 18.18.11). */
function storedCell({ type, style, value, inline, formula }: CellInHand, shared: Shared): StoredCell {
  const text = (of: string): StoredCell => ({ text: of, isDate: false });
  if (type === 'inlineStr') return text(unescaped(inline));
  // A formula that gave an empty text stores it as one.
  if (formula !== null && (value === null || value === '') && type !== 'str')
    return text(unsavedFormula(formula));
  if (value === null || value === '') return text('');
  if (type === 's') {
    const string = shared.strings[wholeNumber(value.trim(), Infinity, 0)];
    if (string === undefined) throw new WorkbookFault('broken');
    return text(string);
  }
  if (type === 'str') return text(unescaped(value));
  if (type === 'b') return text(isTrue(value.trim()) ? 'TRUE' : 'FALSE');
  if (type === 'e') return text(value);
  if (type === 'd') return { text: value.replace('T', ' '), isDate: true };
  const number = value.trim() === '' ? NaN : Number(value);
  if (!Number.isFinite(number)) throw new WorkbookFault('broken');
  return formatted(number, shared.formats[style] ?? GENERAL, shared.from1904, shared.mark);
}

function wholeNumber(text: string, most: number, least = 1): number {
  const number = /^\d{1,9}$/.test(text) ? Number(text) : NaN;
  if (!(number >= least && number <= most)) throw new WorkbookFault('broken');
  return number;
}

const PLACE = /^\$?([A-Z]{1,3})\$?(\d{1,7})$/;

/** Row from 1 and index of the column of a reference such as `C7`. */
function placeOf(reference: string): { line: number; column: number } {
  const match = PLACE.exec(reference);
  if (match === null) throw new WorkbookFault('broken');
  let column = 0;
  for (const letter of match[1] ?? '') column = column * 26 + letter.charCodeAt(0) - 64;
  if (column > LAST_COLUMN) throw new WorkbookFault('broken');
  return { line: wholeNumber(match[2] ?? '', LAST_ROW), column: column - 1 };
}

function mergeOf(reference: string): Merge {
  const [from = '', to = from] = reference.split(':');
  const first = placeOf(from);
  const last = placeOf(to);
  if (last.line < first.line || last.column < first.column) throw new WorkbookFault('broken');
  return { line: first.line, lastLine: last.line, column: first.column, lastColumn: last.column };
}
