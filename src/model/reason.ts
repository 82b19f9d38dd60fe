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

/** True where two reasons say the same, as their keys do: most are told apart by their code, or are one and the same object. */
export function isSameReason(a: Reason | null, b: Reason | null): boolean {
  if (a === b) return true;
  return a !== null && b !== null && a.code === b.code && isSameValue(a.values, b.values);
}

function isSameValue(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  const x = Object.entries(a);
  const y = Object.entries(b);
  // Values of one code have the same names in one order; where they don't, their text decides.
  const isOtherwise = Array.isArray(a) !== Array.isArray(b) || x.length !== y.length;
  if (isOtherwise || x.some(([name], i) => name !== y[i]?.[0]))
    return JSON.stringify(a) === JSON.stringify(b);
  return x.every(([, value], i) => isSameValue(value, y[i]?.[1]));
}

/** What tells one reason from another: its code and values. */
export function reasonKey({ code, values }: NestedReason): string {
  return JSON.stringify([code, values]);
}
