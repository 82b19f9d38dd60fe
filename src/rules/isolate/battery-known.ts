import type { Kind } from '../../model/words.js';

/**
 * Whether the list has the battery of each DC bus that an equipment is on. A charge controller always charges one; a diversion load may
 * hang on a turbine instead.
 * @param f kind of the equipment; how many batteries each bus that it is on has
 * Source: common practice, no source.
 */
export function isBatteryKnown(f: { readonly kind: Kind; readonly batteries: readonly number[] }): boolean {
  if (f.kind === 'diversion-load') return true;
  if (f.kind === 'charge-controller' && f.batteries.length === 0) return false;
  return f.batteries.every((count) => count > 0);
}
