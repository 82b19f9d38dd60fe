/** Rounds to 0.01, as every figure of a plan. */
export function rounded(value: number): number {
  return Math.round((value + Number.EPSILON) * 100) / 100;
}

/** The same of a figure that may not be known. */
export function roundedOr(value: number | null | undefined): number | null {
  return value === null || value === undefined ? null : rounded(value);
}
