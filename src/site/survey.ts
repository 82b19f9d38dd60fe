import type { JobList } from '../model/list.js';
import type { Settings } from '../model/settings.js';
import type { Site } from '../model/site.js';
import { giveAcInputs } from './ac-inputs.js';
import { checkSite, unconnectedSources } from './checks.js';
import { resolveConnections } from './connections.js';
import { callRoll, orDefault, placeEquipments } from './equipment.js';
import { feedInputs } from './inputs.js';
import { directLinks } from './links.js';
import { fillPorts } from './ports.js';
import { makeRuns } from './runs.js';

/**
 * Surveys a job: its equipment with ports, what feeds what, and the runs between.
 * @param list the rows of one job as they were read
 * @param settings the company's settings
 * @returns the site; what was missing or contradictory stands in its notes, nothing is thrown
 */
export function surveySite(list: JobList, settings: Settings): Site {
  const roll = callRoll(list);
  const connections = resolveConnections(roll);
  const equipments = placeEquipments(roll.members.values(), (tag) => connections.targets.get(tag)?.member);
  const byTag = new Map(equipments.map((e) => [e.tag, e]));
  const { links, notes: linkNotes, dropped } = directLinks(byTag, connections);
  const inDoubt = new Set([...connections.inDoubt, ...dropped]);
  const portNotes = fillPorts(equipments, links);
  const { reached, notes: inputNotes } = feedInputs(equipments, links, inDoubt);
  const { acInputs, notes: acNotes } = giveAcInputs(equipments, links);
  const runs = makeRuns(links, reached, acInputs);
  return {
    list,
    job: list.job,
    basis: orDefault(list.facts.basis, settings.basis),
    earthing: orDefault(list.facts.earthing, 'TN'),
    occupancy: orDefault(list.facts.occupancy, 'dwelling'),
    equipments,
    runs,
    inDoubt,
    notes: [
      ...roll.notes,
      ...connections.notes,
      ...linkNotes,
      ...portNotes,
      ...inputNotes,
      ...acNotes,
      ...unconnectedSources(equipments, links, connections.blank),
      ...checkSite(equipments),
    ],
  };
}
