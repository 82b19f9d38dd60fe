import { combs } from './combs.js';
import { coreOf, type Core } from './cores.js';
import { bestShapes, choices, type Figure, type Room } from './figure.js';
import { lineBlock, type LineBlock } from './line-blocks.js';
import type { SymbolFamily } from './symbols.js';
import type { Branch, TreeNode } from './tree.js';
import type { OneLineWords } from './words.js';

/** Between what stands beside each other. */
const GAP = 2.5;
/** Where a line from above arrives: so far from the left of a box. */
const ENTRY = 5;
/** The line of a source, and how far a bus goes beyond its last line. */
const BUS_END = 1.5;

/** A line that ends without a box: the piece of it past its words. */
const NOTHING: Figure = { width: 0.5, height: 0.5, entryX: 0, entryY: 0, topY: 0, draw: () => undefined };

/** A figure of which another can hang below its box. */
interface Upper extends Figure {
  readonly boxBottom: number;
}

interface Fed {
  readonly block: LineBlock;
  readonly child: Figure;
}

/** Which form of a line is meant: its protectors beside each other, or below each other. */
type Form = 0 | 1;

/** How long lines are that need so much each: as long as the longest, so that what they lead to stands in line, or as they need. */
function lengthsOf(needed: readonly number[], isRagged: boolean): readonly number[] {
  const most = Math.max(...needed);
  return isRagged ? needed : needed.map(() => most);
}

/** Lines to the right, below each other; the box as tall as they ask for. */
function toTheRight(core: Core, fed: readonly Fed[], form: Form, isRagged = false): Upper {
  const lengths = lengthsOf(
    fed.map(({ block }) => block.level[form].width),
    isRagged,
  );
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
  // A box reaches up to where a line from above ends: what hangs at that end stands right beside it.
  const top = core.height === 0 ? first : 0;
  const tall = core.height === 0 ? last - first : Math.max(core.height, last + BUS_END - top);
  const left = core.width;
  return {
    width: left + Math.max(...fed.map(({ child }, index) => (lengths[index] ?? 0) + child.width)),
    height: Math.max(bottom, top + tall),
    entryX: Math.min(ENTRY, core.width),
    entryY: first,
    topY: top,
    boxBottom: top + tall,
    draw(pen, x, y) {
      core.draw(pen, { x, y: y + top, width: core.width, height: tall }, 'right');
      for (const [index, { block, child }] of fed.entries()) {
        const [at, length] = [y + (ys[index] ?? 0), lengths[index] ?? 0];
        block.level[form].draw(pen, x + left, at, length + (child.inset ?? 0));
        child.draw(pen, x + left + length, at - child.entryY);
      }
    },
  };
}

/** Lines downwards, beside each other; the box as wide as they ask for. */
function downwards(core: Core, fed: readonly Fed[], form: Form, isRagged = false): Figure {
  const lengths = lengthsOf(
    fed.map(({ block }) => block.upright[form].height),
    isRagged,
  );
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
    height: core.height + Math.max(...fed.map(({ child }, index) => (lengths[index] ?? 0) + child.height)),
    entryX: first,
    entryY: core.height / 2,
    ...(core.width === 0 ? { inset: first } : {}),
    topY: 0,
    draw(pen, x, y) {
      if (core.width === 0) core.draw(pen, { x: x + first, y, width: last - first, height: 0 }, 'down');
      else core.draw(pen, { x, y, width: wide, height: core.height }, 'down');
      for (const [index, { block, child }] of fed.entries()) {
        const [at, length] = [x + (xs[index] ?? 0), lengths[index] ?? 0];
        const start = y + core.height;
        block.upright[form].draw(pen, at, start, length);
        if (child.topY > 0) pen.wire(at, start + length, at, start + length + child.topY);
        child.draw(pen, at - child.entryX, start + length);
      }
    },
  };
}

/** What lines of unequal length have to save, mm, to be drawn so; common practice, no source. */
const LEAST_SAVED = 8;

/** The arrangement with what stands at the ends in line, and the one without where that is much smaller. */
function inLineOrNot(
  arranged: typeof downwards,
  size: 'width' | 'height',
  core: Core,
  fed: readonly Fed[],
  form: Form,
): Figure[] {
  const inLine = arranged(core, fed, form);
  if (fed.length < 2) return [inLine];
  const ragged = arranged(core, fed, form, true);
  return inLine[size] - ragged[size] < LEAST_SAVED ? [inLine] : [inLine, ragged];
}

/** One line downwards, below all that stands to the right. */
function oneBelow(core: Core, beside: readonly Fed[], { block, child }: Fed, form: Form): Figure {
  const left = Math.max(child.entryX, Math.min(ENTRY, core.width));
  // What hangs below the box may reach further to the left: the box goes as far, so that a line from there ends at it.
  const shift = left - Math.min(ENTRY, core.width);
  const upper = toTheRight({ ...core, width: shift + core.width }, beside, form);
  const start = Math.max(upper.height + GAP, 0);
  const length = block.upright[form].height;
  return {
    width: Math.max(upper.width, left + Math.max(block.upright[form].right, child.width - child.entryX)),
    height: start + length + child.height,
    entryX: upper.entryX,
    entryY: upper.entryY,
    topY: upper.topY,
    draw(pen, x, y) {
      upper.draw(pen, x, y);
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

/** Makes the figures of nodes, each once: those that go into a room, of every way to arrange them that is worth it. */
export interface NodeFigures {
  shapes(node: TreeNode): readonly Figure[];
}

/**
 * @param room what doesn't go into it isn't a figure
 */
export function nodeFigures(words: OneLineWords, family: SymbolFamily, room: Room): NodeFigures {
  const known = new Map<TreeNode, readonly Figure[]>();
  const knownCombs = new Map<TreeNode, readonly TreeNode[]>();
  const teeth = new Set<TreeNode>();
  const knownBlocks = new Map<Branch, LineBlock>();
  // A bus has the lines of its equipment: where they leave is told of equipment with several terminals alone, which has no buses.
  const blockOf = (branch: Branch, near: TreeNode): LineBlock => {
    let found = knownBlocks.get(branch);
    if (!found) knownBlocks.set(branch, (found = lineBlock(branch, near, words, family)));
    return found;
  };
  const made = (node: TreeNode): Figure[] => {
    const core = coreOf(node, words);
    if (node.branches.length === 0) return [alone(core)];
    const blocks = node.branches.map((branch) => blockOf(branch, node));
    const sets = node.branches.map(({ child }) => (child ? shapes(child) : [NOTHING]));
    if (sets.some((set) => set.length === 0)) return [];
    const fed = (chosen: readonly Figure[], of = blocks): Fed[] =>
      chosen.flatMap((child, i) => {
        const block = of[i];
        return block ? [{ block, child }] : [];
      });
    const forms: readonly Form[] = blocks.some(({ isManifold }) => isManifold) ? [0, 1] : [0];
    return forms.flatMap((form) => [
      ...choices(sets, 'width').flatMap((chosen) =>
        inLineOrNot(toTheRight, 'width', core, fed(chosen), form),
      ),
      ...choices(sets, 'height').flatMap((chosen) =>
        inLineOrNot(downwards, 'height', core, fed(chosen), form),
      ),
      ...(node.form === 'box' ? oneOfThemBelow(core, blocks, sets, form) : []),
      ...combsOf(node).flatMap((comb) => madeWith(comb, core, form)),
    ]);
  };
  // A bus of a comb isn't combed again: its figures would multiply with each level.
  const combsOf = (node: TreeNode): readonly TreeNode[] => {
    if (teeth.has(node)) return [];
    let found = knownCombs.get(node);
    if (!found) {
      knownCombs.set(node, (found = combs(node)));
      for (const { branches } of found) for (const { child } of branches) if (child) teeth.add(child);
    }
    return found;
  };
  /** The figures of a node with other lines than its own. */
  const madeWith = (node: TreeNode, core: Core, form: Form): Figure[] => {
    const sets = node.branches.map(({ child }) => (child ? shapes(child) : []));
    if (sets.some((set) => set.length === 0)) return [];
    const blocks = node.branches.map((branch) => blockOf(branch, node));
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
