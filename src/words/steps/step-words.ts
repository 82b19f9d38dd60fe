import type { FineFactor, Quantity, QuantityUnit } from '../../model/quantity.js';
import { fiveDecimals, workingFigure } from '../../model/rounding.js';

/** A text that is always the same, or one that is made of a step's values. */
type Text<V> = string | ((values: V) => string);

/** The words of one step: what its figure is, and of a computed one its formula, bare and with the figures put in. */
export interface StepWords<V> {
  readonly says: Text<V>;
  readonly formula?: Text<V>;
  readonly substituted?: Text<V>;
}

/** Words for each code of a table of steps: the compiler asks for each. */
export type StepTexts<S> = { readonly [C in keyof S]: StepWords<S[C]> };

/** Units as a calculation prints them; of the others it prints what they are called. */
const PRINTED: { readonly [U in QuantityUnit]?: string } = {
  C: '°C',
  m2: 'm²',
  'V/C': 'V/°C',
  uH: 'µH',
  'uH/m': 'µH/m',
  'A/us': 'A/µs',
  '1/(km2 a)': '1/(km² a)',
};

/** A figure without its unit, as a calculation prints it: 0.01 from 10 upwards, else four significant digits. */
export function number({ value }: Quantity): string {
  return String(workingFigure(value));
}

/** A figure with its unit, as a calculation prints it. */
export function figured(of: Quantity): string {
  const unit = PRINTED[of.unit] ?? of.unit;
  return unit === '' ? number(of) : `${number(of)} ${unit}`;
}

/** A factor with as many digits as whoever multiplies by hand needs. */
export function fine({ fine: factor }: FineFactor): string {
  return String(fiveDecimals(factor));
}
