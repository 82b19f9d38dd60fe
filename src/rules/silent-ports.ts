import { reason } from '../model/reason.js';
import type { Kind } from '../model/words.js';
import type { Withheld } from './placement-facts.js';
import { asked } from './place/asked.js';
import { longRun } from './place/long-run.js';

/** Kinds whose ports no rule looks at: what stands there takes no protector of its own, and says so. */
const SILENT: { readonly [K in Kind]?: Withheld } = {
  'transfer-switch': { rule: longRun, because: reason('long-run/transfer-switch'), outside: true },
  disconnect: { rule: longRun, because: reason('long-run/disconnect'), outside: true },
  other: { rule: asked, because: reason('asked/kind-other'), outside: true },
};

/**
 * Why nothing stands at a port that no rule looks at.
 * @returns undefined of any other kind
 */
export function whySilent(kind: Kind): Withheld | undefined {
  return SILENT[kind];
}
