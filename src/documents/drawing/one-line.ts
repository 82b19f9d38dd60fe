import type { Plan } from '../../model/plan.js';
import { withAlikeOnce, type Lengths } from './one-line/alike.js';
import { altText } from './one-line/alt-text.js';
import type { Room } from './one-line/figure.js';
import { legendOf, type LegendEntry } from './one-line/legend.js';
import { BLANK } from './one-line/measure.js';
import { Pen } from './one-line/pen.js';
import { layOnSheets, type LaidSheet } from './one-line/sheets.js';
import { siteTrees } from './one-line/site-trees.js';
import type { SymbolFamily } from './one-line/symbols.js';
import { BARE_BRANCH, type TreeNode } from './one-line/tree.js';
import { oneLineWords, type SheetNumbers } from './one-line/words.js';
import { drawingInMillimetres } from './svg.js';

/** What sheets leave for the drawing, mm. */
export interface OneLineRooms {
  readonly first: Room;
  readonly next: Room;
}

/** One sheet of the drawing at its natural size, mm. */
export interface OneLineSheet extends Room {
  readonly svg: string;
  readonly alt: string;
}

/** The one-line drawing of a plan, and the symbols that it uses. */
export interface OneLine {
  readonly sheets: readonly OneLineSheet[];
  readonly legend: readonly LegendEntry[];
}

/** A sheet as it is drawn, before it is markup. */
export interface PennedSheet extends Room {
  readonly pen: Pen;
  readonly alt: string;
}

/** Trees, and the sheets that they take. */
interface Drawn {
  readonly trees: readonly TreeNode[];
  readonly laid: readonly LaidSheet[];
}

/** Strokes at the edge need half their weight. */
const EDGE = 0.8;

function count(sheets: readonly LaidSheet[], numbers: SheetNumbers): void {
  for (const [index, { pieces }] of sheets.entries()) {
    const nodes: TreeNode[] = [...pieces];
    // It grows while it is walked.
    for (const node of nodes) {
      for (const { tag } of node.equipments) {
        const known = numbers.of.get(tag) ?? [];
        if (!known.includes(index + 1)) numbers.of.set(tag, [...known, index + 1]);
      }
      for (const { child } of node.branches) if (child) nodes.push(child);
    }
  }
}

/**
 * Draws the sheets of a plan.
 * @param rooms mm
 */
export function pennedSheets(
  plan: Plan,
  rooms: OneLineRooms,
  family: SymbolFamily,
): { readonly sheets: readonly PennedSheet[]; readonly trees: readonly TreeNode[] } {
  const numbers: SheetNumbers = { current: 1, of: new Map() };
  const words = oneLineWords(plan, numbers);
  const inner = ({ width, height }: Room): Room => ({ width: width - 2 * EDGE, height: height - 2 * EDGE });
  const inside = { first: inner(rooms.first), next: inner(rooms.next) };
  const bundle = bundled(siteTrees(plan));
  const drawn = (lengths: Lengths): Drawn => {
    const trees = withAlikeOnce(bundle, words, lengths).branches.flatMap(({ child }) => child ?? []);
    return { trees, laid: layOnSheets(trees, words, family, inside) };
  };
  const asStated = drawn('equal');
  // Where that saves a sheet, lines that differ in their lengths alone are drawn once as well.
  const fewer = asStated.laid.length > 1 ? drawn('stated') : asStated;
  const { trees, laid } = fewer.laid.length < asStated.laid.length ? fewer : asStated;
  count(laid, numbers);
  const sheets = laid.map((sheet, index) => {
    const pen = new Pen();
    numbers.current = index + 1;
    sheet.figure.draw(pen, EDGE, EDGE);
    const { width, height } = sheet.figure;
    const alt = altText(plan, sheet, index + 1, laid.length);
    return { pen, alt, width: width + 2 * EDGE, height: height + 2 * EDGE };
  });
  return { sheets, trees };
}

/** Trees under one node, so that alike ones are drawn once as well. */
function bundled(trees: readonly TreeNode[]): TreeNode {
  return {
    form: 'from',
    equipments: [],
    branches: trees.map((child) => ({ ...BARE_BRANCH, child })),
    part: 'whole',
  };
}

/**
 * The one-line drawing: a plan's equipment, lines and protectors, at its natural size with text of 10 pt, on as few sheets as hold it.
 * @param rooms what a sheet leaves for the drawing, mm: the first, and those that follow
 * @param family whose graphical symbols it uses
 */
export function oneLine(plan: Plan, rooms: OneLineRooms, family: SymbolFamily): Promise<OneLine> {
  const { sheets, trees } = pennedSheets(plan, rooms, family);
  const texts = sheets.flatMap(({ pen }) => pen.texts.flatMap(({ lines }) => lines.map(({ text }) => text)));
  const hasBlank = texts.some((text) => text.includes(BLANK));
  return Promise.resolve({
    sheets: sheets.map(({ pen, alt, width, height }) => ({
      svg: drawingInMillimetres(width, height, alt, 'one-line', pen.markup()),
      width,
      height,
      alt,
    })),
    legend: legendOf(trees, family, hasBlank),
  });
}
