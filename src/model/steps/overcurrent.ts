import type { Quantity } from '../quantity.js';
import type { None } from '../none.js';

/** Steps about the overcurrent device of a protector and the least of its leads: code and values. */
export interface OvercurrentSteps {
  /** The largest device that the part allows. */
  'overcurrent/most': { readonly part: string };
  'overcurrent/circuit-device': { readonly equipment: string };
  'overcurrent/array': { readonly array: string };
  'overcurrent/backfeed': { readonly converter: string; readonly input: number };
  'overcurrent/sum': { readonly each: readonly Quantity[] };
  'overcurrent/sum-of-many': { readonly arrays: number; readonly inputs: number };
  'overcurrent/ampacity': { readonly share: Quantity; readonly current: Quantity };
  'lead/code': { readonly lead: 'line' | 'ground' | 'both' };
  'lead/terminals': None;
  'lead/behind-device': { readonly device: Quantity; readonly gauge: string };
  'lead/for-current': { readonly current: Quantity; readonly gauge: string };
  /** What stands ahead of leads that may be thinner than it asks. */
  'lead/by-instructions': None;
  /** Line lead and ground lead alike. */
  'lead/either': { readonly gauge: string };
  'lead/line': { readonly gauge: string };
  'lead/ground': { readonly gauge: string };
}
