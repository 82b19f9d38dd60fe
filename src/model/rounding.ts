/** Beyond this a number holds no hundredths. */
const NO_HUNDREDTHS = 1e13;

/**
 * A figure as plans, files and papers hold it: rounded to 0.01, a half away from zero, never -0.
 * @param value V, A, m, C or a count; any finite number
 */
export function hundredths(value: number): number {
  if (Number.isInteger(value)) return value || 0;
  const size = Math.abs(value);
  if (size > NO_HUNDREDTHS) return value;
  const shifted = size * 100;
  const part = shifted - Math.floor(shifted);
  // Near a half the decimal shift by text is exact where a product isn't (1.005); elsewhere it would only be slow.
  const isNearHalf = part > 0.4999 && part < 0.5001;
  const rounded = isNearHalf ? Number(`${Math.round(Number(`${size}e2`))}e-2`) : Math.round(shifted) / 100;
  return Math.sign(value) * rounded || 0;
}

/** The same of a figure that may not be known. */
export function hundredthsOr(value: number | null | undefined): number | null {
  return value === null || value === undefined ? null : hundredths(value);
}

/**
 * A figure of a working: 0.01 from 10 upwards; what is smaller keeps four significant digits, so that a coefficient or a leakage
 * current doesn't vanish.
 * @param value in any unit; any finite number
 */
export function workingFigure(value: number): number {
  if (Number.isInteger(value)) return value || 0;
  return Math.abs(value) >= 10 ? hundredths(value) : Number(value.toPrecision(4));
}

/** A factor that a product is checked by hand with: five decimals. */
export function fiveDecimals(factor: number): number {
  return Math.round(factor * 1e5) / 1e5;
}

/**
 * Takes the dust of binary arithmetic off a figure that is compared with a rating: 1.1 x 400 V must not exceed 440 V.
 * @param value a figure below 1e6 in its unit
 * @returns the value, rounded to 1e-9
 */
export function withoutDust(value: number): number {
  return Math.round(value * 1e9) / 1e9;
}
