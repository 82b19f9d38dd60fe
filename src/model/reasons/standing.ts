import type { None } from '../none.js';
import type { Kind, Strength } from '../words.js';

/** How a job stands to a rule: code and values. */
export interface StandingReasons {
  /** What a rule that places asks, and is met in. */
  'standing/placed': { readonly strength: Strength };
  'standing/no-part': None;
  'standing/not-rated': None;
  'standing/ratings-unknown': None;
  /** Converters of which nobody states what they send back into their DC inputs. */
  'standing/backfeed-unknown': { readonly converters: readonly string[] };
  'standing/no-protector': None;
  'standing/no-such-channel': None;
  'standing/no-equipment': { readonly kinds: readonly Kind[] };
  'standing/no-port': { readonly kinds: readonly Kind[] };
}
