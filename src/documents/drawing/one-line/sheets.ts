import { bestShapes, type Figure, type Room } from './figure.js';
import { nodeFigures, type NodeFigures } from './node-figures.js';
import { BETWEEN, nestled } from './nestled.js';
import type { SymbolFamily } from './symbols.js';
import { fromLeaves } from './from-leaves.js';
import type { Branch, TreeNode } from './tree.js';
import type { OneLineWords } from './words.js';

/** A sheet: the pieces of the site on it, and their arrangement. */
export interface LaidSheet {
  readonly pieces: readonly TreeNode[];
  readonly figure: Figure;
}

function besideEachOther(a: Figure, b: Figure): Figure {
  return {
    ...a,
    width: a.width + BETWEEN + b.width,
    height: Math.max(a.height, b.height),
    draw(pen, x, y) {
      a.draw(pen, x, y);
      b.draw(pen, x + a.width + BETWEEN, y);
    },
  };
}

function belowEachOther(a: Figure, b: Figure): Figure {
  return {
    ...a,
    width: Math.max(a.width, b.width),
    height: a.height + BETWEEN + b.height,
    draw(pen, x, y) {
      a.draw(pen, x, y);
      b.draw(pen, x, y + a.height + BETWEEN);
    },
  };
}

function together(all: readonly Figure[], more: readonly Figure[], room: Room): Figure[] {
  const pairs = all.flatMap((a) =>
    more.flatMap((b) => [besideEachOther(a, b), belowEachOther(a, b), ...nestled(a, b)]),
  );
  return bestShapes(pairs, room);
}

/** Equipment of a tree of which the largest lines are cut, so that its pieces are as large as sheets. */
const MANY = 40;

interface Cutting {
  /** True for a tree of many sheets. */
  readonly isLarge: boolean;
  readonly figures: NodeFigures;
  readonly pieces: TreeNode[];
}

/** A piece that begins where a line of another was cut. */
function pieceOf(branch: Branch): TreeNode {
  return {
    form: 'from',
    equipments: [],
    branches: [{ ...branch, hasMain: false, nearTaps: [] }],
    part: 'whole',
  };
}

const area = ({ width, height }: Figure): number => width * height;

/** Lines below a node that are tried to be cut, each with the figures that it asks for; common practice, no source. */
const MOST_CUTS_TRIED = 24;
/** More lines of one equipment than a sheet holds. */
const MOST_ON_A_SHEET = 64;

/** A line below a node: the branches that lead to it, by their numbers. */
type Way = readonly number[];

function waysBelow(node: TreeNode): Way[] {
  const found: { node: TreeNode; way: Way }[] = [{ node, way: [] }];
  const ways: Way[] = [];
  // It grows while it is walked.
  for (const { node: at, way } of found) {
    for (const [index, { child }] of at.branches.entries()) {
      if (!child || child.branches.length === 0) continue;
      if (ways.length === MOST_CUTS_TRIED) return ways;
      ways.push([...way, index]);
      found.push({ node: child, way: [...way, index] });
    }
  }
  return ways;
}

function branchAt(node: TreeNode, way: Way): Branch | undefined {
  const [first, ...more] = way;
  const branch = node.branches[first ?? -1];
  return more.length === 0 || !branch?.child ? branch : branchAt(branch.child, more);
}

/** A node with one of the lines below it cut. */
function withCut(node: TreeNode, way: Way): TreeNode {
  const [first, ...more] = way;
  const branches = node.branches.map((branch, index) => {
    if (index !== first) return branch;
    if (more.length > 0 && branch.child) return { ...branch, child: withCut(branch.child, more) };
    return { ...branch, child: null, farTaps: [] };
  });
  return { ...node, branches };
}

/**
 * Cuts lines below a node until the rest goes into the room: the one that takes least away where one is enough, else the one that takes
 * most, and again; of a tree of many sheets always the one that takes most.
 * @param line that leads to the node in a piece of its own; null: the node is drawn where it stands
 */
function cutToFit(node: TreeNode, line: Branch | null, cutting: Cutting): TreeNode {
  const { figures, pieces, isLarge } = cutting;
  const goes = (one: TreeNode): boolean =>
    figures.shapes(line === null ? one : pieceOf({ ...line, child: one })).length > 0;
  let current = node;
  while (!goes(current)) {
    const whole = current;
    const size = (way: Way): number => {
      const child = branchAt(whole, way)?.child;
      const [shape] = child ? figures.shapes(child) : [];
      return shape ? area(shape) : 0;
    };
    const ways = waysBelow(whole)
      .map((way) => ({ way, size: size(way) }))
      .filter((one) => one.size > 0)
      .sort((a, b) => a.size - b.size);
    const least = isLarge ? undefined : ways.find(({ way }) => goes(withCut(whole, way)));
    const cut = least ?? ways.findLast(({ way }) => way.length === 1);
    const branch = cut && branchAt(whole, cut.way);
    if (!cut || !branch?.child) return inParts(whole, goes, cutting);
    pieces.push(pieceOf({ ...branch, child: cutToFit(branch.child, branch, cutting) }));
    current = withCut(whole, cut.way);
  }
  return current;
}

/** A node with as many of its branches as go into the room; the others stand at the same equipment, drawn again. */
function inParts(node: TreeNode, goes: (one: TreeNode) => boolean, { pieces }: Cutting): TreeNode {
  const parts: TreeNode[] = [];
  let rest = node.branches;
  while (rest.length > 0) {
    let [low, high] = [1, Math.min(rest.length, MOST_ON_A_SHEET)];
    const part = (count: number): TreeNode => ({
      ...node,
      branches: rest.slice(0, count),
      part: node.part === 'later' || parts.length > 0 ? 'later' : 'first',
    });
    while (low < high) {
      const middle = Math.ceil((low + high) / 2);
      if (goes(part(middle))) low = middle;
      else high = middle - 1;
    }
    parts.push(part(low));
    rest = rest.slice(low);
  }
  pieces.push(...parts.slice(1));
  return parts[0] ?? node;
}

/** The pieces of a tree of which each goes into the room, the one that it begins with first. */
function piecesOf(root: TreeNode, figures: NodeFigures): TreeNode[] {
  const pieces: TreeNode[] = [];
  const made = new Map<TreeNode, TreeNode>();
  const nodes = fromLeaves(root);
  const isLarge = nodes.length > MANY;
  for (const node of nodes) {
    const isSame = node.branches.every(({ child }) => !child || made.get(child) === child);
    const own = isSame
      ? node
      : {
          ...node,
          branches: node.branches.map((b) => (b.child ? { ...b, child: made.get(b.child) ?? b.child } : b)),
        };
    made.set(node, cutToFit(own, null, { figures, pieces, isLarge }));
  }
  return [made.get(root) ?? root, ...pieces.reverse()];
}

/**
 * Lays trees on sheets, as few as it takes, cut where a line leaves an equipment.
 * @param rooms of the first sheet, and of those that follow
 */
export function layOnSheets(
  trees: readonly TreeNode[],
  words: OneLineWords,
  family: SymbolFamily,
  rooms: { readonly first: Room; readonly next: Room },
): LaidSheet[] {
  const both = {
    width: Math.min(rooms.first.width, rooms.next.width),
    height: Math.min(rooms.first.height, rooms.next.height),
  };
  const known = new Map<string, NodeFigures>();
  const figuresFor = (room: Room): NodeFigures => {
    const key = `${room.width} x ${room.height}`;
    const figures = known.get(key) ?? nodeFigures(words, family, room);
    known.set(key, figures);
    return figures;
  };
  const whole = figuresFor(rooms.first);
  const common = figuresFor(both);
  const goesWhole = (tree: TreeNode): boolean =>
    fromLeaves(tree).every((node) => whole.shapes(node).length > 0);
  const pieces = trees.flatMap((tree) => (goesWhole(tree) ? [tree] : piecesOf(tree, common)));
  const sheets: { pieces: TreeNode[]; shapes: readonly Figure[] }[] = [];
  for (const piece of pieces) {
    const last = sheets.at(-1);
    const room = sheets.length <= 1 ? rooms.first : rooms.next;
    const own = whole.shapes(piece);
    const shapes = last ? together(last.shapes, own, room) : [];
    if (last && shapes.length > 0) {
      last.pieces.push(piece);
      last.shapes = shapes;
    } else {
      const next = sheets.length === 0 ? own : figuresFor(rooms.next).shapes(piece);
      sheets.push({ pieces: [piece], shapes: next.length > 0 ? next : figuresFor(LARGE).shapes(piece) });
    }
  }
  return sheets.flatMap(({ pieces: on, shapes }) => {
    const [figure] = shapes;
    return figure ? [{ pieces: on, figure }] : [];
  });
}

/** For one box that is larger than a sheet: it is drawn all the same. */
const LARGE: Room = { width: 1e6, height: 1e6 };
