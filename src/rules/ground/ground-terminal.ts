import { isNec, type Basis } from '../../model/editions.js';
import { reason, type Reason } from '../../model/reason.js';
import type { Kind, PortClass } from '../../model/words.js';

/** What lands on the ground terminal of an enclosure without a ground bar. */
export interface GroundTerminal {
  readonly fit: Reason;
  readonly lands: readonly Reason[];
  readonly never: Reason;
  readonly ask: Reason;
}

/** What is known of the place. */
export interface GroundTerminalFacts {
  readonly basis: Basis;
  readonly port: PortClass;
  readonly kind: Kind;
  readonly outdoors: boolean;
}

const FIT = reason('ground-terminal/fit');
const LEAD = reason('ground-terminal/lead');

/**
 * The ground terminal that is fitted where an enclosure has no ground bar: at a control circuit, a tower's base, an array's frame, a
 * pump. An electrode alone never does: without the conductor of the cable a fault, or a surge, has no path back but through the earth.
 * @returns undefined where an enclosure has a bar
 * Source: common practice, no source.
 */
export function groundTerminal(f: GroundTerminalFacts): GroundTerminal | undefined {
  const of = electrodeOf(f);
  if (!of) return undefined;
  const practice = isNec(f.basis) ? 'nec' : 'iec';
  return {
    fit: FIT,
    lands: [
      LEAD,
      reason('ground-terminal/electrode', { of }),
      reason('ground-terminal/conductor', { practice }),
    ],
    never: reason('ground-terminal/never', { practice }),
    ask: reason('ground-terminal/ask', { practice }),
  };
}

/** Whose electrode may be there; undefined: the enclosure has a bar. A motor or a pump stands out of doors, as a box with a bar doesn't. */
function electrodeOf({
  port,
  kind,
  outdoors,
}: GroundTerminalFacts): 'circuit' | 'tower' | 'frame' | 'casing' | undefined {
  if (port === 'terminals') return 'circuit';
  if (kind === 'wind-turbine') return 'tower';
  if (kind === 'array') return 'frame';
  if (kind === 'hydro-turbine' || kind === 'pump-drive') return 'casing';
  return kind === 'load' && outdoors ? 'casing' : undefined;
}
