import { volts, type Quantity } from '../../model/quantity.js';
import { reason, type Reason } from '../../model/reason.js';
import { highest } from './highest.js';

/** What a meter must bear before its probes go in. */
export interface MeterNeeded {
  readonly category: 'CAT III' | 'CAT IV';
  /** V; undefined: not known. */
  readonly volts: number | undefined;
  readonly says: Reason;
}

/**
 * The measurement category and the voltage of the meter: CAT III, at a service CAT IV; at least the highest voltage that the plan
 * has there, of alternating and of direct current each.
 * @param f whether the place is a service; its current, null where it isn't known; V of everything that may stand there, undefined where one isn't known;
 *   `beside`: what else may stand in the same enclosure
 * Source: IEC 61010-2-033, measurement categories (value from memory); else common practice, no source.
 */
export function meterNeeded(f: {
  readonly atService: boolean;
  readonly current: 'ac' | 'dc' | null;
  readonly volts: readonly (number | undefined)[];
  readonly beside: readonly { readonly current: 'ac' | 'dc' | null; readonly value: number | undefined }[];
}): MeterNeeded {
  const own = [...f.volts];
  for (const { current, value } of f.beside) if (current === f.current) own.push(value);
  const least = highest(own);
  const category = f.atService ? 'CAT IV' : 'CAT III';
  const beside: { volts: Quantity | null; current: 'ac' | 'dc' | null }[] = [];
  for (const current of CURRENTS) {
    const isThere = current !== f.current && f.beside.some((one) => one.current === current);
    if (!isThere) continue;
    const others = f.beside.filter((one) => one.current === current).map(({ value }) => value);
    beside.push({ volts: quantityOf(highest(others)), current });
  }
  const values = { category, volts: quantityOf(least), current: f.current, beside } as const;
  return { category, volts: least, says: reason('meter/rated', values) };
}

const CURRENTS = ['ac', 'dc', null] as const;

const quantityOf = (value: number | undefined): Quantity | null =>
  value === undefined ? null : volts(value);
