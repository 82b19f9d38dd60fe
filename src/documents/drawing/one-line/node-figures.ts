import { bestShapes, choices, type Figure, type Room } from './figure.js';
import type { Area, Pen, SymbolPart } from './pen.js';
import { lineBlock, type LineBlock } from './line-blocks.js';
import { heightOf, widthOf } from './measure.js';
import type { SymbolFamily } from './symbols.js';
import type { Branch, TreeNode } from './tree.js';
import type { OneLineWords } from './words.js';

/** Inside a box, around its text. */
const PAD = 1.5;
/** Between what stands beside each other. */
const GAP = 2.5;
/** Where a line from above arrives: so far from the left of a box. */
const ENTRY = 5;
/** The line of a source, and how far a bus goes beyond its last line. */
const BUS_END = 1.5;

/** A line that ends without a box: the piece of it past its words. */
const NOTHING: Figure = { width: 0.5, height: 0.5, entryX: 0, entryY: 0, topY: 0, draw: () => undefined };

/** The end of the utility's line. */
const SOURCE: readonly SymbolPart[] = [
  {
    filled: true,
    commands: [['M', -0.7, 0], ['a', 0.7, 0.7, 0, 1, 0, 1.4, 0], ['a', 0.7, 0.7, 0, 1, 0, -1.4, 0], ['Z']],
  },
];

/** What is drawn for the node itself. */
interface Core {
  readonly width: number;
  readonly height: number;
  /** Drawn over the extent that its lines ask for. */
  draw(pen: Pen, extent: Area, direction: 'right' | 'down'): void;
}

/** A figure of which another can hang below its box. */
interface Upper extends Figure {
  readonly boxBottom: number;
}

function coreOf(node: TreeNode, words: OneLineWords): Core {
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

interface Fed {
  readonly block: LineBlock;
  readonly child: Figure;
}

/** Which form of a line is meant: its protectors beside each other, or below each other. */
type Form = 0 | 1;

/** Lines to the right, below each other; the box as tall as they ask for. */
function toTheRight(core: Core, fed: readonly Fed[], form: Form): Upper {
  const length = Math.max(...fed.map(({ block }) => block.level[form].width));
  const middle = Math.min(core.height / 2, 14);
  const ys: number[] = [];
  let bottom = 0;
  for (const [index, { block, child }] of fed.entries()) {
    const above = Math.max(block.level[form].above, child.entryY, index === 0 ? middle : 0);
    const y = bottom + (index === 0 ? 0 : GAP) + above;
    ys.push(y);
    bottom = y + Math.max(block.level[form].below, child.height - child.entryY);
  }
  const first = ys[0] ?? middle;
  const last = ys.at(-1) ?? middle;
  const top = first - middle;
  const tall = core.height === 0 ? last - first : Math.max(core.height, last + BUS_END - top);
  const left = core.width;
  return {
    width: left + length + Math.max(...fed.map(({ child }) => child.width)),
    height: Math.max(bottom, top + tall),
    entryX: Math.min(ENTRY, core.width),
    entryY: first,
    topY: top,
    boxBottom: top + tall,
    draw(pen, x, y) {
      core.draw(pen, { x, y: y + top, width: core.width, height: tall }, 'right');
      for (const [index, { block, child }] of fed.entries()) {
        const at = y + (ys[index] ?? 0);
        block.level[form].draw(pen, x + left, at, length);
        child.draw(pen, x + left + length, at - child.entryY);
      }
    },
  };
}

/** Lines downwards, beside each other; the box as wide as they ask for. */
function downwards(core: Core, fed: readonly Fed[], form: Form): Figure {
  const length = Math.max(...fed.map(({ block }) => block.upright[form].height));
  const xs: number[] = [];
  let right = 0;
  for (const [index, { block, child }] of fed.entries()) {
    const left = Math.max(child.entryX, core.width === 0 ? 0.5 : ENTRY);
    const x = right + (index === 0 ? 0 : GAP) + left;
    xs.push(x);
    right = x + Math.max(block.upright[form].right, child.width - child.entryX);
  }
  const first = xs[0] ?? 0;
  const last = xs.at(-1) ?? 0;
  const wide = core.width === 0 ? last : Math.max(core.width, last + BUS_END);
  return {
    width: Math.max(right, wide),
    height: core.height + length + Math.max(...fed.map(({ child }) => child.height)),
    entryX: first,
    entryY: core.height / 2,
    topY: 0,
    draw(pen, x, y) {
      if (core.width === 0) core.draw(pen, { x: x + first, y, width: last - first, height: 0 }, 'down');
      else core.draw(pen, { x, y, width: wide, height: core.height }, 'down');
      for (const [index, { block, child }] of fed.entries()) {
        const at = x + (xs[index] ?? 0);
        const start = y + core.height;
        block.upright[form].draw(pen, at, start, length);
        if (child.topY > 0) pen.wire(at, start + length, at, start + length + child.topY);
        child.draw(pen, at - child.entryX, start + length);
      }
    },
  };
}

/** One line downwards, below all that stands to the right. */
function oneBelow(core: Core, beside: readonly Fed[], { block, child }: Fed, form: Form): Figure {
  const upper = toTheRight(core, beside, form);
  const left = Math.max(child.entryX, upper.entryX);
  // The box stands at the left edge; what hangs below it may reach further to the left.
  const shift = left - upper.entryX;
  const start = Math.max(upper.height + GAP, 0);
  const length = block.upright[form].height;
  return {
    width: Math.max(
      shift + upper.width,
      left + Math.max(block.upright[form].right, child.width - child.entryX),
    ),
    height: start + length + child.height,
    entryX: left,
    entryY: upper.entryY,
    topY: upper.topY,
    draw(pen, x, y) {
      if (shift > 0) pen.wire(x, y + upper.entryY, x + shift, y + upper.entryY);
      upper.draw(pen, x + shift, y);
      const at = x + left;
      pen.wire(at, y + upper.boxBottom, at, y + start);
      block.upright[form].draw(pen, at, y + start, length);
      if (child.topY > 0) pen.wire(at, y + start + length, at, y + start + length + child.topY);
      child.draw(pen, at - child.entryX, y + start + length);
    },
  };
}

function alone(core: Core): Figure {
  const { width, height } = core;
  return {
    width,
    height,
    entryX: Math.min(ENTRY, width),
    entryY: Math.min(height / 2, 14),
    topY: 0,
    draw: (pen, x, y) => {
      core.draw(pen, { x, y, width, height }, 'right');
    },
  };
}

/** Branches of which each is tried below the others; common practice, no source. */
const MOST_TRIED_BELOW = 6;

function oneOfThemBelow(
  core: Core,
  blocks: readonly LineBlock[],
  sets: readonly (readonly Figure[])[],
  form: Form,
): Figure[] {
  if (sets.length < 2 || sets.length > MOST_TRIED_BELOW) return [];
  return sets.flatMap((own, index) => {
    const block = blocks[index];
    if (!block) return [];
    const otherBlocks = blocks.filter((_, i) => i !== index);
    return choices(
      sets.filter((_, i) => i !== index),
      'width',
    ).flatMap((chosen) => {
      const others = chosen.flatMap((child, i) => {
        const one = otherBlocks[i];
        return one ? [{ block: one, child }] : [];
      });
      return own.map((child) => oneBelow(core, others, { block, child }, form));
    });
  });
}

/** Buses that a box is tried with at most; common practice, no source. */
const MOST_BUSES = 4;
const LEAST_ON_BUSES = 4;

/**
 * A node whose lines leave at the same terminals with these lines on two buses and more, one beside the other, in their order. They
 * stay the same buses, so that their figures are made once.
 */
function combs(node: TreeNode): TreeNode[] {
  const { branches } = node;
  const ports = new Set(branches.flatMap(({ near }) => near.map(({ port }) => port)));
  const isOpen = branches.some(({ near, nearTaps }) => near.length === 0 || nearTaps.length > 0);
  const isSeveral = node.equipments.some((e) => e.ports.length > 1);
  if (branches.length < LEAST_ON_BUSES || ports.size !== 1 || isOpen || isSeveral) return [];
  const found: TreeNode[] = [];
  for (let buses = 2; buses <= Math.min(MOST_BUSES, branches.length / 2); buses += 1) {
    const size = Math.ceil(branches.length / buses);
    const trunks: Branch[] = [];
    for (let at = 0; at < branches.length; at += size) {
      const child: TreeNode = {
        form: 'bus',
        equipments: [],
        branches: branches.slice(at, at + size),
        part: 'whole',
      };
      trunks.push({ ...TRUNK, child });
    }
    found.push({ ...node, branches: trunks });
  }
  return found;
}

const TRUNK = {
  near: [],
  far: [],
  isUpstream: false,
  length: null,
  lengthFrom: null,
  nearTaps: [],
  farTaps: [],
  count: 1,
} as const;

/** Makes the figures of nodes, each once: those that go into a room, of every way to arrange them that is worth it. */
export interface NodeFigures {
  shapes(node: TreeNode): readonly Figure[];
}

/**
 * @param room what doesn't go into it isn't a figure
 */
export function nodeFigures(words: OneLineWords, family: SymbolFamily, room: Room): NodeFigures {
  const known = new Map<TreeNode, readonly Figure[]>();
  const made = (node: TreeNode): Figure[] => {
    const core = coreOf(node, words);
    if (node.branches.length === 0) return [alone(core)];
    const blocks = node.branches.map((branch) => lineBlock(branch, node, words, family));
    const sets = node.branches.map(({ child }) => (child ? shapes(child) : [NOTHING]));
    if (sets.some((set) => set.length === 0)) return [];
    const fed = (chosen: readonly Figure[], of = blocks): Fed[] =>
      chosen.flatMap((child, i) => {
        const block = of[i];
        return block ? [{ block, child }] : [];
      });
    const forms: readonly Form[] = blocks.some(({ isManifold }) => isManifold) ? [0, 1] : [0];
    return forms.flatMap((form) => [
      ...choices(sets, 'width').map((chosen) => toTheRight(core, fed(chosen), form)),
      ...choices(sets, 'height').map((chosen) => downwards(core, fed(chosen), form)),
      ...(node.form === 'box' ? oneOfThemBelow(core, blocks, sets, form) : []),
      ...combs(node).flatMap((comb) => madeWith(comb, core, form)),
    ]);
  };
  /** The figures of a node with other lines than its own. */
  const madeWith = (node: TreeNode, core: Core, form: Form): Figure[] => {
    const sets = node.branches.map(({ child }) => (child ? shapes(child) : []));
    if (sets.some((set) => set.length === 0)) return [];
    const blocks = node.branches.map((branch) => lineBlock(branch, node, words, family));
    return choices(sets, 'height').map((chosen) =>
      downwards(
        core,
        chosen.flatMap((child, i) => {
          const block = blocks[i];
          return block ? [{ block, child }] : [];
        }),
        form,
      ),
    );
  };
  const shapes = (node: TreeNode): readonly Figure[] => {
    let found = known.get(node);
    if (!found) known.set(node, (found = bestShapes(made(node), room)));
    return found;
  };
  return { shapes };
}
