import type { None } from './none.js';
import type { Reasons } from './reasons/reasons.js';

export type { None } from './none.js';

/** The permanent codes of all reasons. */
export type ReasonCode = keyof Reasons;

/**
 * Why something is as it is, as data: a permanent code and what its sentence is made of. The sentence stands in words/reasons/,
 * once a language; nothing is ever decided by it.
 */
export type Reason = {
  readonly [C in ReasonCode]: { readonly code: C; readonly values: Reasons[C] };
}[ReasonCode];

const NO_VALUES: None = {};

/**
 * A reason.
 * @param code its permanent code
 * @param values what its sentence is made of: quantities, tags, words of the contract, other reasons; left out where it needs none
 */
export function reason<C extends ReasonCode>(
  code: C,
  ...values: None extends Reasons[C] ? [] : [values: Reasons[C]]
): Reason {
  return { code, values: values[0] ?? NO_VALUES } as Reason;
}

/** In transition: a sentence that isn't data yet. */
export type Said = Reason | string;

/** In transition: the sentence of what isn't data yet; throws where it is data already, so that none is taken for text. */
export function stillText(said: Said): string {
  if (typeof said === 'string') return said;
  throw new Error(`${said.code} is data already`);
}

/** What tells one reason from another: its code and values. */
export function reasonKey(said: Said): string {
  return typeof said === 'string' ? said : JSON.stringify([said.code, said.values]);
}
