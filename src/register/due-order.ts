import { byNaturalOrder } from '../model/natural-order.js';
import type { DueCheck } from '../model/register.js';

/** Compares two checks: the soonest first, then by job, protector and what is looked at, so that the order is total. */
export function soonestFirst(a: DueCheck, b: DueCheck): number {
  return (
    byText(a.due, b.due) ||
    byNaturalOrder(a.job, b.job) ||
    byNaturalOrder(a.protector, b.protector) ||
    byText(a.what, b.what) ||
    byText(a.kind, b.kind) ||
    byText(a.state, b.state)
  );
}

const byText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
