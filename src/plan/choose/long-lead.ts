import { statedLead } from '../context/fitted.js';
import { leadFigures } from '../../electrical/leads.js';
import type { Part } from '../../model/catalogue.js';
import { isNec } from '../../model/editions.js';
import { about } from '../../model/message.js';
import { CHOOSE_MESSAGES, type LeadAt } from '../../model/messages/choose.js';
import type { PlacedNote } from '../../model/open-item.js';
import { metres, volts } from '../../model/quantity.js';
import type { JobContext } from '../context/job-context.js';
import { leadsToPlan, type MetalLeads } from '../../rules/smallest-lead.js';
import type { Placement } from '../context/verdict.js';
import type { Requirement } from '../rate/rate.js';
import { plannedLeads } from './planned-lead.js';
import { reachWithstandOf } from './reach-withstand.js';
import { longestRun, reachWith } from './reach.js';
import { whereIs } from './where.js';

/**
 * What has to be said of leads that are longer than they should be, from tap to terminal and on to ground: the level at that length
 * and at the length that is aimed at, and the reach that is lost.
 * @param part the chosen part, whose level is stated
 * @returns undefined where they are short enough
 */
export function longLead(
  job: JobContext,
  selected: {
    readonly placement: Placement;
    readonly requirement: Requirement;
    readonly leads: readonly MetalLeads[];
  },
  part: Part,
): PlacedNote | undefined {
  const { placement } = selected;
  const { basis } = job.site;
  const t = job.settings.thresholds;
  const stated = statedLead(placement);
  const leads = plannedLeads(part, stated, basis.value, job.settings, leadsToPlan(selected.leads));
  if (leads.length <= t.longLead || part.up === null) return undefined;
  const { up, upBasis } = part;
  const withstand = reachWithstandOf(job, selected)?.value;
  const at = (total: number): LeadAt => {
    const lead = leadFigures({ ...leads, length: total, upBasis }).value;
    const reach = reachWith(job, up, lead, withstand, longestRun(placement));
    return {
      total: metres(total),
      level: volts(up + lead),
      reach: reach === undefined ? 'unknown' : reach === null ? 'unlimited' : metres(reach),
    };
  };
  const p = {
    at: whereIs(placement),
    part: part.part,
    basis: basis.value,
    planned: at(leads.length),
    aimed: at(t.longLead),
  };
  const isTooLong = !isNec(basis.value) && leads.length > t.longestLeadIec;
  return isTooLong
    ? about(
        CHOOSE_MESSAGES.leadTooLong,
        { ...p, most: metres(t.longestLeadIec) },
        placement.subject.tag,
        'lead_length',
      )
    : about(CHOOSE_MESSAGES.leadLong, p, placement.subject.tag, 'lead_length');
}
