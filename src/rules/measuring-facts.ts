import type { MeasuringSettings } from '../model/measuring-settings.js';
import { reason, type Reason } from '../model/reason.js';
import type { GroundedConductor } from '../model/reasons/measure.js';
import type { Conductor } from '../model/words.js';

/** One reading with the sources on: the figures between which a sound system stands, V. */
export interface Reading {
  readonly wire: Conductor;
  /** Null: ground. */
  readonly to: Conductor | null;
  readonly sign: '+' | '-' | null;
  /** Below it: stop. Undefined: no low figure, or not known. */
  readonly low: number | undefined;
  /** Above it: stop. Undefined: not known. */
  readonly high: number | undefined;
  readonly reads: Reason;
  readonly below: Reason | null;
  readonly above: Reason | null;
  readonly fault: Reason | null;
  readonly due: Reason | null;
}

/** What is said of a reading beside what it is; what isn't given isn't said. */
type Said = Partial<Pick<Reading, 'sign' | 'below' | 'above' | 'fault' | 'due'>>;

/** A reading: between which points, its band, what is read, and what else is to be said of it. */
export function readingOf(
  { wire, to }: Pick<Reading, 'wire' | 'to'>,
  { low, high }: Pick<Reading, 'low' | 'high'>,
  reads: Reason,
  { sign = null, below = null, above = null, fault = null, due = null }: Said,
): Reading {
  return { wire, to, sign, low, high, reads, below, above, fault, due };
}

/** Every pair of some conductors, each once, in their order. */
export function pairsOf(conductors: readonly Conductor[]): readonly (readonly [Conductor, Conductor])[] {
  return conductors.flatMap((a, i) => conductors.slice(i + 1).map((b) => [a, b] as const));
}

/** A conductor that a sound system holds at ground: the most that it may show is a setting. */
export function groundedReading(
  wire: Conductor,
  what: GroundedConductor,
  { groundedMost }: MeasuringSettings,
): Reading {
  return readingOf({ wire, to: null }, { low: 0, high: groundedMost }, GROUNDED[what], { above: LOST[what] });
}

const GROUNDED = {
  pole: reason('reading/grounded', { what: 'pole' }),
  neutral: reason('reading/grounded', { what: 'neutral' }),
  phase: reason('reading/grounded', { what: 'phase' }),
  wire: reason('reading/grounded', { what: 'wire' }),
};
const LOST = {
  pole: reason('reading-above/grounded', { what: 'pole' }),
  neutral: reason('reading-above/grounded', { what: 'neutral' }),
  phase: reason('reading-above/grounded', { what: 'phase' }),
  wire: reason('reading-above/grounded', { what: 'wire' }),
};
