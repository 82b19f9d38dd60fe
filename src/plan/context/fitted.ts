import type { Fact } from '../../model/fact.js';
import type { FittedAt } from './fitted-there.js';
import type { Placement } from './verdict.js';

/**
 * Placements with what hangs there.
 * @param at undefined: nothing does yet
 */
export function withFitted(placements: readonly Placement[], at: FittedAt | undefined): readonly Placement[] {
  if (at === undefined) return placements;
  return placements.map((placement) => {
    const port = placement.ports[0];
    const fitted = port && at(port.equipment.tag, port.name);
    return fitted === undefined ? placement : { ...placement, fitted };
  });
}

/** The total lead length of a placement as it is, else as the list states it, m; undefined: nobody says. */
export function statedLeadFact({ fitted, subject }: Placement): Fact<number> | undefined {
  return fitted?.lead ?? subject.facts.lead_length;
}

/** m; as {@link statedLeadFact}. */
export function statedLead(placement: Placement): number | undefined {
  return statedLeadFact(placement)?.value;
}
