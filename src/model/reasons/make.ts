import type { Said } from '../reason.js';

/** What a protector guards, where it sits, how it is wired and measured: code and values. */
export interface MakeReasons {
  /** Several reasons at once. */
  several: { readonly reasons: readonly Said[] };
}
