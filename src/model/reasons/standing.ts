import type { None } from '../none.js';
import type { Kind, Strength } from '../words.js';

/** How a job stands to a rule: code and values. */
export interface StandingReasons {
  /** What a rule that places asks, and is met in. */
  'standing/placed': { readonly strength: Strength };
  'standing/no-part': None;
  'standing/not-rated': None;
  'standing/ratings-unknown': None;
  'standing/no-protector': None;
  'standing/no-such-channel': None;
  'standing/no-equipment': { readonly kinds: readonly Kind[] };
  'standing/no-port': { readonly kinds: readonly Kind[] };
}
