import type { TreeNode } from './tree.js';

/** Every node of a tree from the leaves up, without recursion: a site may be a chain of thousands. */
export function fromLeaves(root: TreeNode): TreeNode[] {
  const order = [root];
  // It grows while it is walked.
  for (const node of order) for (const { child } of node.branches) if (child) order.push(child);
  return order.reverse();
}
