import type { Basis } from '../model/editions.js';
import type { NestedReason } from '../model/nested-reason.js';
import type { ReasonCode } from '../model/reason.js';
import type { Reasons } from '../model/reasons/reasons.js';
import { isObject } from '../words/english-beside.js';
import { isReason } from '../words/reasons/say.js';

/** The codes of reasons whose words depend on the basis. */
type CodeOfBasis = {
  [C in ReasonCode]: Reasons[C] extends { readonly basis: Basis } ? C : never;
}[ReasonCode];

/** The compiler asks for each. */
const OF_BASIS: Readonly<Record<CodeOfBasis, true>> = {
  'battery/longer-than-limit': true,
  'control/long-run': true,
  'dc-input/length-compared': true,
  'generator/far': true,
  'generator/not-longer': true,
  'grid-tie/beyond-reach': true,
  'grid-tie/no-reach': true,
  'grid-tie/within-reach': true,
  'long-run/longer-than-limit': true,
  'long-run/not-longer': true,
  'outbuilding/not-longer': true,
  'source/pv-limit': true,
  'source/uses-not-permitted': true,
};

function valueWithBasis(value: unknown, basis: unknown): unknown {
  if (Array.isArray(value)) return value.map((one: unknown) => valueWithBasis(one, basis));
  return isReason(value) ? withBasis(value, basis) : value;
}

/**
 * A reason with the basis that its lengths are told by: early plans of version 2 have none there, and their own basis decides.
 * @param of as `plan.json` has it, with reasons among its values or none
 * @param basis of the plan, as it stands there
 */
export function withBasis({ code, values }: NestedReason, basis: unknown): NestedReason {
  // A file that was changed by hand: the schema refuses it.
  if (!isObject(values)) return { code, values };
  const told = Object.fromEntries(
    Object.entries(values).map(([name, value]: [string, unknown]) => [name, valueWithBasis(value, basis)]),
  );
  return { code, values: Object.hasOwn(OF_BASIS, code) && !('basis' in told) ? { ...told, basis } : told };
}
