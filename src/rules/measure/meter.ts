import { volts } from '../../model/quantity.js';
import { reason, type Reason } from '../../model/reason.js';

/** What a meter must bear before its probes go in. */
export interface MeterNeeded {
  readonly category: 'CAT III' | 'CAT IV';
  /** V; undefined: not known. */
  readonly volts: number | undefined;
  readonly says: Reason;
}

/**
 * The measurement category and the voltage of the meter: CAT III, at a service CAT IV; at least the highest voltage that the plan
 * has there.
 * @param f whether the place is a service; its current, null where it isn't known; V of everything that may stand there, undefined where one isn't known
 * Source: IEC 61010-2-033, measurement categories (value from memory); else common practice, no source.
 */
export function meterNeeded(f: {
  readonly atService: boolean;
  readonly current: 'ac' | 'dc' | null;
  readonly volts: readonly (number | undefined)[];
}): MeterNeeded {
  let most: number | undefined;
  let isKnown = true;
  for (const one of f.volts) {
    if (one === undefined) isKnown = false;
    else most = Math.max(most ?? 0, one);
  }
  const category = f.atService ? 'CAT IV' : 'CAT III';
  const least = isKnown ? most : undefined;
  const values = { category, volts: least === undefined ? null : volts(least), current: f.current } as const;
  return { category, volts: least, says: reason('meter/rated', values) };
}
