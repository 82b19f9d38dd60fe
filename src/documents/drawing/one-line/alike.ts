import type { OneLineWords } from './words.js';
import { fromLeaves } from './from-leaves.js';
import type { Branch, End, Tap, TreeNode } from './tree.js';

/** What is told of a branch but for its tags. */
interface Told {
  readonly branch: (branch: Branch, near: TreeNode) => string;
}

const classOf = (port: string): string => port.replace(/-\d+$/, '');
const unnumbered = (end: End): End => ({ ...end, port: classOf(end.port) });

/** Which lengths of lines are alike: equal ones, or all that are stated. */
export type Lengths = 'equal' | 'stated';

/** A text that two branches share exactly when they are drawn alike: what is printed of them, without tags and places. */
function telling(words: OneLineWords, lengths: Lengths): Told {
  const nodes = new Map<TreeNode, number>();
  const ids = new Map<string, number>();
  const untagged = (tap: Tap): unknown => [
    words
      .tap({
        ...tap,
        protectors: tap.protectors.map((p) => ({ ...p, tag: 'P' })),
      })
      .map(({ text }) => text),
    tap.housings,
    tap.protectors.map((p) => [p.part, p.existing, p.channels.length]),
    tap.again,
  ];
  const asTold = (of: Branch['lengths']): Branch['lengths'] =>
    lengths === 'equal' || of.includes(null) ? of : [0];
  const node = (of: TreeNode): number => {
    const known = nodes.get(of);
    if (known !== undefined) return known;
    const [first] = of.equipments;
    const bare = first ? [{ ...first, tag: '', place: '' }] : [];
    const told = JSON.stringify([
      of.form,
      words.box({ ...of, equipments: bare }).map(({ text }) => text),
      first?.ports,
      of.branches.map((b) => branch(b, of)),
    ]);
    const id = ids.get(told) ?? ids.size;
    ids.set(told, id);
    nodes.set(of, id);
    return id;
  };
  const branch = (of: Branch, near: TreeNode): string => {
    const ports = (ends: Branch['near']): string[] => ends.map(({ port }) => classOf(port));
    return JSON.stringify([
      ports(of.near),
      ports(of.far),
      words
        .atLine({ ...of, near: of.near.map(unnumbered), lengths: asTold(of.lengths) }, near)
        .map(({ text }) => text),
      of.hasMain,
      of.nearTaps.map(untagged),
      of.farTaps.map(untagged),
      of.child === null ? of.far.map(({ equipment }) => equipment) : node(of.child),
    ]);
  };
  return { branch };
}

function mergedTaps(all: readonly (readonly Tap[])[]): Tap[] {
  return (all[0] ?? []).map((tap, index) => ({
    ...tap,
    protectors: all.flatMap((taps) => taps[index]?.protectors ?? []),
  }));
}

function mergedNode(nodes: readonly TreeNode[]): TreeNode | null {
  const [first] = nodes;
  if (!first) return null;
  return {
    ...first,
    equipments: nodes.flatMap((n) => n.equipments),
    branches: first.branches.map((_, index) =>
      mergedBranch(
        nodes.flatMap((n) => n.branches[index] ?? []),
        1,
      ),
    ),
  };
}

/** One branch for several alike; `times` 1 where its count stays what it was. */
function mergedBranch(branches: readonly Branch[], times: number): Branch {
  const [first, second] = branches;
  if (!first) throw new Error('nothing to merge');
  if (!second) return first;
  return {
    ...first,
    near: branches.flatMap((b) => b.near),
    far: branches.flatMap((b) => b.far),
    lengths: branches.flatMap((b) => b.lengths),
    nearTaps: mergedTaps(branches.map((b) => b.nearTaps)),
    farTaps: mergedTaps(branches.map((b) => b.farTaps)),
    child: first.child === null ? null : mergedNode(branches.flatMap((b) => b.child ?? [])),
    count: first.count * times,
  };
}

/**
 * A tree in which alike branches of one equipment are one, with the tags of all: alike are those of the same kinds, models, figures,
 * systems, lengths and protectors.
 * @param lengths `stated`: lines of unequal length are alike as well, and say all their lengths
 */
export function withAlikeOnce(root: TreeNode, words: OneLineWords, lengths: Lengths): TreeNode {
  const { branch: told } = telling(words, lengths);
  const made = new Map<TreeNode, TreeNode>();
  for (const node of fromLeaves(root)) {
    const branches = node.branches.map((b) => (b.child ? { ...b, child: made.get(b.child) ?? b.child } : b));
    const groups = new Map<string, Branch[]>();
    for (const branch of branches) {
      const key = told(branch, node);
      const known = groups.get(key);
      if (known) known.push(branch);
      else groups.set(key, [branch]);
    }
    made.set(node, { ...node, branches: [...groups.values()].map((g) => mergedBranch(g, g.length)) });
  }
  return made.get(root) ?? root;
}
