import type { InSteps } from '../in-steps.js';
import type { Archive } from './archive.js';
import { WorkbookFault } from './fault.js';
import { odsCell } from './ods-cell.js';
import {
  LAST_COLUMN,
  LAST_ROW,
  SheetInHand,
  wholeAllowance,
  type SheetCells,
  type StoredCell,
} from './sheet.js';
import { walkingXml, type Attributes, type XmlWalk } from './xml.js';

/** A cell while its elements are walked through. */
interface CellInHand {
  readonly attributes: Attributes;
  readonly repeated: number;
  /** Under another cell that spans it. */
  readonly covered: boolean;
  /** Depth of its element. */
  readonly depth: number;
  shown: string;
  paragraphs: number;
}

/** A row while its cells are walked through. */
interface RowInHand {
  readonly repeated: number;
  readonly hidden: boolean;
  readonly cells: Map<number, StoredCell>;
  column: number;
}

/**
 * Reads the sheets of a workbook as ISO/IEC 26300 (OpenDocument) stores them, in steps.
 * @param archive opened
 * @param mark of decimals in the text that numbers become
 * @returns sheets of cells in the workbook's order
 * @throws WorkbookFault where it can't be read
 */
export function* readingOds(archive: Archive, mark: '.' | ','): InSteps<SheetCells[]> {
  const manifest = 'META-INF/manifest.xml';
  if (archive.has(manifest)) yield* walkingXml(archive.part(manifest), REFUSING_ENCRYPTED);
  const sheets: SheetCells[] = [];
  if (archive.has('mimetype') && !new TextDecoder().decode(archive.part('mimetype')).includes('spreadsheet'))
    return sheets;
  yield* walkingXml(archive.part('content.xml'), contentWalk(sheets, mark));
  return sheets;
}

const REFUSING_ENCRYPTED: XmlWalk = {
  open: (element) => {
    if (element === 'encryption-data') throw new WorkbookFault('encrypted');
  },
  close: () => undefined,
  text: () => undefined,
};

function contentWalk(sheets: SheetCells[], mark: '.' | ','): XmlWalk {
  const left = wholeAllowance();
  const hiddenStyles = new Set<string>();
  let style = '';
  let depth = 0;
  /** Tables may stand in tables; only the outer ones are sheets. */
  let tables = 0;
  let sheet: SheetInHand | null = null;
  let line = 1;
  let columns = 0;
  /** Groups of rows or columns around this place, and whether each is folded away. */
  const groups: boolean[] = [];
  let row: RowInHand | null = null;
  let cell: CellInHand | null = null;
  let inParagraph = false;

  const openInCell = (of: CellInHand, element: string, attributes: Attributes): void => {
    // Only paragraphs of the cell itself: a comment or a drawing in it has some too.
    if (element === 'p' && depth === of.depth + 1) {
      if (of.paragraphs > 0) of.shown += '\n';
      of.paragraphs += 1;
      inParagraph = true;
    } else if (inParagraph) of.shown += blanks(element, attributes);
  };
  const openTable = (attributes: Attributes): void => {
    tables += 1;
    if (tables > 1) return;
    const hidden = hiddenStyles.has(attributes['style-name'] ?? '');
    sheet = new SheetInHand(attributes['name'] ?? '', hidden, left);
    line = 1;
    columns = 0;
  };
  const closeCell = ({ attributes, repeated, covered, shown }: CellInHand, of: RowInHand): void => {
    const { column } = of;
    of.column += repeated;
    if (of.column > LAST_COLUMN) throw new WorkbookFault('broken');
    if (covered) return;
    const stored = odsCell(attributes, shown, mark);
    if (stored.text !== '') for (let i = column; i < of.column; i += 1) of.cells.set(i, stored);
    const across = count(attributes['number-columns-spanned'], LAST_COLUMN);
    const down = count(attributes['number-rows-spanned'], LAST_ROW);
    if (across > 1 || down > 1)
      sheet?.merge({ line, lastLine: line + down - 1, column, lastColumn: column + across - 1 });
  };

  return {
    open: (element, attributes) => {
      depth += 1;
      if (cell !== null) openInCell(cell, element, attributes);
      else if (element === 'style') style = attributes['name'] ?? '';
      else if (element === 'table-properties') {
        if (attributes['display'] === 'false') hiddenStyles.add(style);
      } else if (element === 'table') openTable(attributes);
      else if (sheet === null || tables > 1) return;
      else if (isGroup(element)) groups.push(attributes['display'] === 'false');
      else if (element === 'table-column') {
        const repeated = count(attributes['number-columns-repeated'], LAST_COLUMN);
        if (isHidden(attributes) || groups.includes(true)) sheet.hideColumns(columns, columns + repeated - 1);
        columns += repeated;
      } else if (element === 'table-row') {
        const repeated = count(attributes['number-rows-repeated'], LAST_ROW);
        const hidden = isHidden(attributes) || groups.includes(true);
        row = { repeated, hidden, cells: new Map(), column: 0 };
      } else if (row !== null && /^(?:covered-)?table-cell$/.test(element)) {
        const repeated = count(attributes['number-columns-repeated'], LAST_COLUMN);
        const covered = element !== 'table-cell';
        cell = { attributes, repeated, covered, depth, shown: '', paragraphs: 0 };
      }
    },
    close: (element) => {
      depth -= 1;
      if (cell !== null && row !== null) {
        if (depth === cell.depth) inParagraph = false;
        if (depth >= cell.depth) return;
        closeCell(cell, row);
        cell = null;
      } else if (element === 'table-row' && row !== null && tables === 1) {
        sheet?.takeRow(line, row.repeated, row.cells, row.hidden);
        line += row.repeated;
        row = null;
      } else if (sheet !== null && tables === 1 && isGroup(element)) groups.pop();
      else if (element === 'table') {
        tables -= 1;
        if (tables > 0 || sheet === null) return;
        sheets.push(sheet.done());
        sheet = null;
      }
    },
    text: (piece) => {
      if (cell !== null && inParagraph) cell.shown += piece.replace(/\s+/g, ' ');
    },
  };
}

const isGroup = (element: string): boolean => /^table-(?:row|column)-group$/.test(element);

const isHidden = ({ visibility }: Attributes): boolean =>
  visibility === 'collapse' || visibility === 'filter';

/** Blanks and line ends that are written as elements. */
function blanks(element: string, { c }: Attributes): string {
  if (element === 's') return ' '.repeat(count(c, 1000));
  return element === 'tab' ? '\t' : element === 'line-break' ? '\n' : '';
}

/** A count that an attribute states; 1 where there is none. */
function count(text: string | undefined, most: number): number {
  if (text === undefined) return 1;
  const number = /^\d{1,9}$/.test(text) ? Number(text) : NaN;
  if (!(number >= 1 && number <= most)) throw new WorkbookFault('broken');
  return number;
}
