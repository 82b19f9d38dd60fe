import { PLACE_MESSAGES } from '../../model/messages/place.js';
import type { PlanItem } from '../../model/plan.js';
import type { Assumption, AssumptionEntry } from './assumption-kit.js';
import { defaultAssumed, type DefaultKind } from './defaults.js';
import { OFFICE_CODES } from './office-codes.js';
import { PART_ASSUMPTIONS } from './parts.js';
import { SITE_ASSUMPTIONS } from './site.js';

const kind: DefaultKind = PLACE_MESSAGES.defaultsUsed;
const DEFAULT: AssumptionEntry = { kind, of: defaultAssumed as (values: object) => Assumption | 'office' };

const ENTRIES: ReadonlyMap<string, AssumptionEntry> = new Map(
  [...SITE_ASSUMPTIONS, ...PART_ASSUMPTIONS, DEFAULT].map((entry) => [entry.kind.code, entry]),
);

/** True where a kind of item has words as an assumption, or is the office's alone. */
export function isAssumptionKnown(code: string): boolean {
  return ENTRIES.has(code) || OFFICE_CODES.has(code);
}

/**
 * An item to confirm as an assumption in trade words.
 * @returns `office` where only the office needs it
 */
export function assumptionOf({ code, values }: Pick<PlanItem, 'code' | 'values'>): Assumption | 'office' {
  const of = ENTRIES.get(code)?.of ?? 'office';
  return of === 'office' ? of : of(values);
}
