/** Units that values are counted in; words/figures.ts says how each is printed. */
export type QuantityUnit =
  | 'V'
  | 'A'
  | 'kA'
  | 'm'
  | 'C'
  | 'V/m'
  | 'uH'
  | 'Hz'
  | 'rpm'
  | 'mm2'
  | 'km'
  | 'kVA'
  | 'h'
  | 'm2'
  | 'V/C'
  | 'uH/m'
  | 'A/us'
  | '1/min'
  | '1/(km2 a)'
  | '';

/** A figure with its unit, as a value of a reason or a message: how it is rounded and printed is the matter of words/. */
export interface Quantity {
  readonly value: number;
  readonly unit: QuantityUnit;
}

/** A figure in volts. */
export const volts = (value: number): Quantity => ({ value, unit: 'V' });
/** A figure in amperes. */
export const amperes = (value: number): Quantity => ({ value, unit: 'A' });
/** A current counted in A that the trade writes in kA. */
export const kiloamperes = (value: number): Quantity => ({ value: value / 1000, unit: 'kA' });
/** A length in metres. */
export const metres = (value: number): Quantity => ({ value, unit: 'm' });
/** A figure without a unit: a factor, a level of risk. */
export const bare = (value: number): Quantity => ({ value, unit: '' });
/** A temperature in degrees Celsius. */
export const celsius = (value: number): Quantity => ({ value, unit: 'C' });
/** A figure in a unit that has no maker of its own here. */
export const quantity = (value: number, unit: QuantityUnit): Quantity => ({ value, unit });

/**
 * A factor of a product that is checked by hand: it keeps five decimals where other figures keep four digits, since with fewer
 * whoever multiplies gets another result.
 */
export interface FineFactor {
  readonly fine: number;
}
