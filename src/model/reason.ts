import type { NestedReason } from './nested-reason.js';
import type { None } from './none.js';
import type { Reasons } from './reasons/reasons.js';

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

/** What tells one reason from another: its code and values. */
export function reasonKey({ code, values }: NestedReason): string {
  return JSON.stringify([code, values]);
}
