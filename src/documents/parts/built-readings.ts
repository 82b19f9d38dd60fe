import type { SiteRecord } from '../../model/record.js';
import { CONDUCTORS } from '../../model/words.js';
import type { BuiltVolts } from './as-built.js';

type Point = BuiltVolts['wire'];

/** `L1`, `ac-in L1`; undefined: no conductor. */
function pointOf(text: string): Point | undefined {
  const [, port, word] = /^(?:(\S+) )?(\S+)$/.exec(text) ?? [];
  const name = CONDUCTORS.find((one) => one === word);
  return name === undefined ? undefined : { port: port ?? null, name };
}

/** Between what volts were found; null: of something else, or not known. */
export function probesOf({
  from,
  to,
}: Pick<SiteRecord['readings'][number], 'from' | 'to'>): Pick<BuiltVolts, 'wire' | 'to'> | null {
  const wire = pointOf(from);
  const other = to === 'ground' ? null : pointOf(to);
  return wire === undefined || other === undefined ? null : { wire, to: other };
}
