import { LIMITS } from '../model/limits.js';
import type { JobList } from '../model/list.js';
import { about } from '../model/message.js';
import type { PlacedNote } from '../model/open-item.js';
import { LIMIT_MESSAGES } from '../model/messages/limits.js';
import { withSettled, withSettledFacts } from '../model/settled.js';
import type { Settings } from '../model/settings.js';
import type { Site, SiteEquipment } from '../model/site.js';
import { giveAcInputs } from './ac-inputs.js';
import { checkNetwork } from './network.js';
import { checkSite, unconnectedSources } from './checks.js';
import { resolveConnections } from './connections.js';
import { callRoll, orDefault, placeEquipments, type Member } from './equipment.js';
import { feedInputs } from './inputs.js';
import { directLinks } from './links.js';
import { jointsOf } from './passing.js';
import { fillPorts } from './ports.js';
import { suppliesOf } from './premises.js';
import { metersInDoubt } from './meters.js';
import { makeRuns } from './runs.js';
import { agreeOnSystems } from './systems.js';

/**
 * Surveys a job: its equipment with ports, what feeds what, and the runs between.
 * @param read the rows of one job as they were read
 * @param settings the company's settings
 * @returns the site; what was missing or contradictory stands in its notes, nothing is thrown. Of a job beyond the limits it
 *   holds no equipment, and `limit` says why
 */
export function surveySite(read: JobList, settings: Settings): Site {
  const list = withSettledFacts(read, settings.settled);
  const rows = list.rows.reduce((sum, row) => sum + (row.facts.quantity?.value ?? 1), 0);
  const p = { job: list.job, rows, most: LIMITS.jobRows };
  return rows > LIMITS.jobRows
    ? beyondLimits(list, settings, about(LIMIT_MESSAGES.jobRows, p, '', ''))
    : survey(list, settings);
}

/** A job that is larger than a site may be: nothing of it is looked at. */
function beyondLimits(list: JobList, settings: Settings, limit: PlacedNote): Site {
  return {
    ...jobOf(list, settings),
    equipments: [],
    runs: [],
    supplies: suppliesOf([]),
    inDoubt: new Set(),
    notes: [limit],
    limit,
  };
}

function jobOf(
  list: JobList,
  settings: Settings,
): Pick<Site, 'list' | 'job' | 'basis' | 'earthing' | 'occupancy'> {
  return {
    list,
    job: list.job,
    basis: orDefault(list.facts.basis, settings.basis),
    earthing: orDefault(list.facts.earthing, 'TN'),
    occupancy: orDefault(list.facts.occupancy, 'dwelling'),
  };
}

function survey(list: JobList, settings: Settings): Site {
  const { job, basis, earthing, occupancy } = jobOf(list, settings);
  const roll = callRoll(list, (row) => withSettled(row, settings.settled, occupancy.value));
  const connections = resolveConnections(roll);
  const firstTarget = (tag: string): Member | undefined => connections.targets.get(tag)?.[0]?.member;
  const equipments = placeEquipments(roll.members.values(), firstTarget);
  const byTag = new Map<string, SiteEquipment>();
  for (const equipment of equipments) byTag.set(equipment.tag, equipment);
  const joined = jointsOf(byTag, connections);
  const { links, notes: linkNotes, dropped } = directLinks(joined?.joints ?? []);
  const inDoubt = new Set(connections.inDoubt);
  for (const tag of joined?.dropped ?? []) inDoubt.add(tag);
  for (const tag of dropped) inDoubt.add(tag);
  const portNotes = fillPorts(equipments, links);
  const { reached, notes: inputNotes } = feedInputs(equipments, links, inDoubt);
  const { acInputs, notes: acNotes } = giveAcInputs(equipments, links);
  const runs = joined && makeRuns(links, reached, acInputs);
  if (!joined || !runs) {
    const p = { job: list.job, most: LIMITS.jobConnections };
    return beyondLimits(list, settings, about(LIMIT_MESSAGES.jobRuns, p, '', ''));
  }
  const systemNotes = agreeOnSystems(equipments, byTag, runs);
  return {
    list,
    job,
    basis,
    earthing,
    occupancy,
    equipments,
    runs,
    supplies: suppliesOf(equipments),
    inDoubt,
    notes: [
      ...roll.notes,
      ...connections.notes,
      ...joined.notes,
      ...linkNotes,
      ...portNotes,
      ...inputNotes,
      ...acNotes,
      ...unconnectedSources(equipments, links, connections.blank, inDoubt),
      ...systemNotes,
      ...checkNetwork(equipments, links, connections, inDoubt),
      ...checkSite(equipments),
      ...metersInDoubt(list),
    ],
  };
}
