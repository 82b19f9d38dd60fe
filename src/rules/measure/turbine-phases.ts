import { reason } from '../../model/reason.js';
import type { Conductor } from '../../model/words.js';
import { pairsOf, readingOf, type Reading } from '../measuring-facts.js';

const BETWEEN = reason('reading/turbine-phases');
const TO_GROUND = reason('reading/turbine-to-ground');
const ABOVE = reason('reading-above/source', { of: 'turbine' });
const STILL = reason('reading-due/turbine-still');
const PHASES: readonly Conductor[] = ['L1', 'L2', 'L3'];

/**
 * What to measure at the phases of a turbine under its load: line to line, up to its highest voltage at that speed.
 * @param f conductors of the housing; V, the most that the plan expects, undefined where that isn't known
 * @returns the readings; its phases float, so that none has a low figure to ground
 * Source: common practice, no source.
 */
export function readTurbinePhases(f: {
  readonly conductors: readonly Conductor[];
  readonly most: number | undefined;
}): readonly Reading[] {
  const { conductors, most } = f;
  const band = { low: undefined, high: most };
  const said = { above: most === undefined ? null : ABOVE, due: STILL };
  return [
    ...pairsOf(PHASES)
      .filter((pair) => pair.some((wire) => conductors.includes(wire)))
      .map(([wire, to]) => readingOf({ wire, to }, band, BETWEEN, said)),
    ...conductors.map((wire) => readingOf({ wire, to: null }, band, TO_GROUND, said)),
  ];
}
