import { BARE_BRANCH, type Branch, type TreeNode } from './tree.js';

/** Buses that a box is tried with at most; common practice, no source. */
const MOST_BUSES = 4;
const LEAST_ON_BUSES = 4;
/** More lines than a sheet holds. */
const MOST_ON_BUSES = 48;

/**
 * A node whose lines leave at the same terminals with these lines on two buses and more, one beside the other, in their order. They
 * stay the same buses, so that their figures are made once.
 */
export function combs(node: TreeNode): TreeNode[] {
  const { branches } = node;
  const ports = new Set(branches.flatMap(({ near }) => near.map(({ port }) => port)));
  const isOpen = branches.some(({ near, nearTaps }) => near.length === 0 || nearTaps.length > 0);
  const isSeveral = node.equipments.some((e) => e.ports.length > 1);
  if (
    branches.length < LEAST_ON_BUSES ||
    branches.length > MOST_ON_BUSES ||
    ports.size !== 1 ||
    isOpen ||
    isSeveral
  )
    return [];
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
      trunks.push({ ...BARE_BRANCH, child });
    }
    found.push({ ...node, branches: trunks });
  }
  return found;
}
