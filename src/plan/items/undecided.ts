import type { PlacedNote } from '../../model/open-item.js';
import { about } from '../../model/message.js';
import { PLACE_MESSAGES } from '../../model/messages/place.js';
import type { Basis } from '../../model/editions.js';
import { undecidedUnder } from '../../rules/undecided-cycle.js';
import type { Site, SitePort } from '../../model/site.js';

/**
 * A code cycle that rules or clauses aren't decided for: whatever the plan holds under it isn't to be relied on.
 * @returns one note, or none where the cycle is whole
 */
export function undecidedCycle(basis: Basis): readonly PlacedNote[] {
  const undecided = undecidedUnder(basis);
  if (undecided.length === 0) return [];
  return [about(PLACE_MESSAGES.cycleUndecided, { basis, count: undecided.length }, '', 'basis')];
}

/**
 * Ports with neither a protector nor a reason to have none. No list is to blame for that: a rule is missing, or a code cycle
 * that no rule knows. The pack says so as a conflict, since a bare port without a word would pass for one that needs nothing.
 * @param silent ports without a protector of which no rule says why they have none
 * @returns one note a port
 */
export function undecidedPorts(site: Site, silent: readonly SitePort[]): readonly PlacedNote[] {
  return silent.map(({ equipment: { tag }, name }) => {
    const p = { tag, port: name, basis: site.basis.value };
    return about(PLACE_MESSAGES.undecided, p, tag, '');
  });
}
