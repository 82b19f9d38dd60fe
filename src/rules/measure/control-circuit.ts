import type { MeasuringSettings } from '../../model/measuring-settings.js';
import { volts } from '../../model/quantity.js';
import { reason } from '../../model/reason.js';
import type { Conductor, DcGrounding } from '../../model/words.js';
import { groundedReading, readingOf, type Reading } from '../measuring-facts.js';

const ABOVE = reason('reading-above/source', { of: 'control' });
const FLOATING = reason('reading/floating-pole');
const NOT_KNOWN = reason('reading/grounding-not-known');

/** What is known of a control circuit that is measured. */
export interface ControlReadingFacts {
  /** Undefined: not stated. */
  readonly current: 'ac' | 'dc' | undefined;
  /** V; undefined: not stated. */
  readonly nominal: number | undefined;
  /** V; the most that the plan expects; undefined: not known. */
  readonly most: number | undefined;
  /** The grounded wire; of an AC circuit `negative` stands for N. Undefined: not known. */
  readonly grounding: DcGrounding | undefined;
  /** The two wires, the one that is live towards the other first. */
  readonly wires: readonly [Conductor, Conductor];
  readonly settings: MeasuringSettings;
}

/**
 * What to measure at a control circuit: wire to wire, then each to ground. It may be switched off, so that nothing is too little.
 * Source: common practice, no source.
 */
export function readControlCircuit(f: ControlReadingFacts): readonly Reading[] {
  const { current, nominal, most, grounding, wires, settings } = f;
  const [first, second] = wires;
  const isDc = current === 'dc';
  const reads = reason('reading/control', { nominal: nominal === undefined ? null : volts(nominal) });
  const band = { low: undefined, high: most };
  const above = most === undefined ? null : ABOVE;
  const grounded = grounding === 'negative' ? second : grounding === 'positive' && isDc ? first : undefined;
  const toGround = (wire: Conductor, sign: '+' | '-'): Reading => {
    if (wire === grounded) return groundedReading(wire, 'wire', settings);
    const what = grounded !== undefined ? reads : grounding === 'floating' ? FLOATING : NOT_KNOWN;
    return readingOf({ wire, to: null }, band, what, { above, sign: isDc ? sign : null });
  };
  return [
    readingOf({ wire: first, to: second }, band, reads, { above, sign: isDc ? '+' : null }),
    toGround(first, '+'),
    toGround(second, '-'),
  ];
}
