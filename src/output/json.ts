import { fiveDecimals, hundredths, workingFigure } from '../model/rounding.js';

/**
 * Where 0.01 would falsify: the value of a step of a calculation (a coefficient in V/C, uH, kA) or of a stated fact without a unit, and a
 * leakage current in A.
 */
const FOUR_DIGITS: ReadonlySet<string> = new Set(['value', 'leakage']);

/**
 * JSON for files and for `--json`: two blanks of indent, figures rounded as in a plan, a line break at the end.
 * @param value plain data
 */
export function jsonText(value: unknown): string {
  const text = JSON.stringify(
    value,
    (key, v: unknown) => (typeof v === 'number' && !Number.isInteger(v) ? finite(key, v) : v),
    2,
  );
  return `${text}\n`;
}

function finite(key: string, value: number): number | null {
  if (!Number.isFinite(value)) return null;
  // The factor of a product that is checked by hand.
  if (key === 'fine') return fiveDecimals(value);
  return FOUR_DIGITS.has(key) ? workingFigure(value) : hundredths(value);
}
