import type { Plan } from '../../../model/plan.js';
import { tagsInShort } from './tags.js';
import type { LaidSheet } from './sheets.js';
import type { TreeNode } from './tree.js';

/** What a sheet of the drawing shows, for a reader that can't see it. */
export function altText(plan: Plan, { pieces }: LaidSheet, number: number, of: number): string {
  const nodes: TreeNode[] = [...pieces];
  const protectors: string[] = [];
  // It grows while it is walked.
  for (const node of nodes) {
    for (const { nearTaps, farTaps, child } of node.branches) {
      for (const tap of [...nearTaps, ...farTaps]) protectors.push(...tap.protectors.map((p) => p.tag));
      if (child) nodes.push(child);
    }
  }
  const equipments = nodes.flatMap((n) => n.equipments.map((e) => e.tag));
  const sheet = of > 1 ? `, sheet ${number} of ${of}` : '';
  const hung =
    protectors.length === 0 ? 'no surge protectors' : `surge protectors ${tagsInShort(protectors)}`;
  return `One-line drawing of job ${plan.job}${sheet}: ${tagsInShort(equipments)}, and the lines between them, with ${hung}.`;
}
