import { longestLead } from '../../electrical/longest-lead.js';
import type { Part } from '../../model/catalogue.js';
import type { plannedLeads } from './planned-lead.js';

/**
 * The longest leads of a part at its place, line lead plus ground lead.
 * @param part undefined or without a level: nothing but the aim counts
 * @param withstand V, of the equipment; undefined: not known
 * @param planned the leads as planned: m, m, A
 * @param aimed m; the length that is aimed at: the setting `longLead`
 * @returns m; where level and leads would be above the withstand, the longest at which they aren't; 0: the level alone is above it
 */
export function leadLimit(
  part: Pick<Part, 'up' | 'upBasis'> | undefined,
  withstand: number | undefined,
  { diameter, peak }: ReturnType<typeof plannedLeads>,
  aimed: number,
): number {
  if (!part || part.up === null || withstand === undefined) return aimed;
  return longestLead({ diameter, peak, most: aimed, withstand, up: part.up, upBasis: part.upBasis });
}
