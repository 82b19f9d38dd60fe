import { heightOf, widthOf } from './measure.js';
import type { Area, Pen, SymbolPart } from './pen.js';
import type { TreeNode } from './tree.js';
import type { OneLineWords } from './words.js';

/** Inside a box, around its text. */
const PAD = 1.5;

/** The end of the utility's line. */
const SOURCE: readonly SymbolPart[] = [
  {
    filled: true,
    commands: [['M', -0.7, 0], ['a', 0.7, 0.7, 0, 1, 0, 1.4, 0], ['a', 0.7, 0.7, 0, 1, 0, -1.4, 0], ['Z']],
  },
];

/** What is drawn for the node itself. */
export interface Core {
  readonly width: number;
  readonly height: number;
  /** Drawn over the extent that its lines ask for. */
  draw(pen: Pen, extent: Area, direction: 'right' | 'down'): void;
}

/** The box, bus or end of line that a node is drawn as. */
export function coreOf(node: TreeNode, words: OneLineWords): Core {
  if (node.form === 'box') {
    const lines = words.box(node);
    return {
      width: Math.max(14, widthOf(lines) + 2 * PAD),
      height: heightOf(lines) + 2 * PAD,
      draw(pen, extent) {
        pen.box(extent);
        pen.text(lines, extent.x + PAD, extent.y + PAD);
      },
    };
  }
  if (node.form === 'bus') {
    return {
      width: 0,
      height: 0,
      draw(pen, { x, y, width, height }, direction) {
        if (direction === 'right') pen.bus(x, y, x, y + height);
        else pen.bus(x, y, x + width, y);
      },
    };
  }
  if (node.form === 'utility')
    return {
      width: 0,
      height: 0,
      draw: (pen, { x, y }) => {
        pen.symbol(SOURCE, x, y);
      },
    };
  return { width: 0, height: 0, draw: () => undefined };
}
