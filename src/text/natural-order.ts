const collator = new Intl.Collator('en', { numeric: true });

/**
 * Compares two tags in natural order: `P-2` before `P-10`; ties by code unit, so that the order is total.
 * @returns negative, zero or positive as `Array.prototype.sort` wants it
 */
export function byNaturalOrder(a: string, b: string): number {
  if (a === b) return 0;
  return collator.compare(a, b) || (a < b ? -1 : 1);
}
