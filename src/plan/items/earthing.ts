import { AC_SYSTEM_DATA } from '../../electrical/ac-systems.js';
import { isNec } from '../../model/editions.js';
import { about } from '../../model/message.js';
import { NETWORK_MESSAGES } from '../../model/messages/network.js';
import { RATE_MESSAGES } from '../../model/messages/rate.js';
import type { PlacedNote } from '../../model/open-item.js';
import type { JobContext } from '../context/job-context.js';
import type { Site, SiteEquipment, SitePort } from '../../model/site.js';
import { systemField } from '../../site/system-field.js';

/**
 * What can't be with the earthing of an IEC job: TT with a system that has no N, where a part of connection 3+1 has nothing to
 * lead its lines to; and IT with a link from N to earth, which would make another system of it.
 * @param site the survey
 * @returns a conflict for each port, or each row
 */
export function earthingConflicts(site: Site): readonly PlacedNote[] {
  if (isNec(site.basis.value)) return [];
  if (site.earthing.value === 'TT') return site.equipments.flatMap((e) => e.ports.flatMap(withoutNeutral));
  if (site.earthing.value !== 'IT') return [];
  const apart = behindTransformers(site);
  return site.equipments.filter((e) => !apart.has(e)).flatMap(linked);
}

/**
 * A link from N to ground in a system that is stated to be ungrounded, or grounded through an impedance: it would be solidly grounded
 * by that link (NEC 250.36: the neutral of an impedance-grounded system has no other connection to ground, value from memory).
 * @returns a conflict for each row; what an IT job says so of stands with its earthing
 */
export function linkedThoughNotSolid(job: JobContext): readonly PlacedNote[] {
  const { site } = job;
  if (!isNec(site.basis.value) && site.earthing.value === 'IT') return [];
  const notes: PlacedNote[] = [];
  for (const { tag, kind, facts, ports } of site.equipments) {
    if (facts.n_pe_link?.value !== true) continue;
    const port = ports.find(
      (p) => p.system !== undefined && p.unused === '' && !(kind === 'transformer' && p.cls === 'ac-in'),
    );
    const grounding = port && job.groundingAt(port).grounding;
    if (grounding === 'none' || grounding === 'impedance')
      notes.push(about(RATE_MESSAGES.linkNotSolid, { tag, grounding }, tag, 'n_pe_link'));
  }
  return notes;
}

/**
 * Ports that take two lines of a corner-grounded system: the plan takes the grounded one for their L2, which then has no overcurrent
 * device, and nobody says so.
 * @returns one note a port
 */
export function linesOfCorner(job: JobContext): readonly PlacedNote[] {
  return job.site.equipments.flatMap((e) =>
    e.ports.flatMap((port) => {
      const { system, unused } = port;
      if (system === undefined || unused !== '' || AC_SYSTEM_DATA[system].lines.length !== 2) return [];
      const { grounding, whole } = job.groundingAt(port);
      if (grounding !== 'corner' || whole === undefined || AC_SYSTEM_DATA[whole].lines.length !== 3)
        return [];
      return [about(NETWORK_MESSAGES.cornerLine, { tag: e.tag, system, whole }, e.tag, systemField(port))];
    }),
  );
}

function withoutNeutral(port: SitePort): readonly PlacedNote[] {
  const { system, unused, equipment } = port;
  if (system === undefined || unused !== '' || AC_SYSTEM_DATA[system].hasNeutral) return [];
  const { tag } = equipment;
  return [about(RATE_MESSAGES.noNeutralInTt, { tag, system }, tag, systemField(port))];
}

function linked(equipment: SiteEquipment): readonly PlacedNote[] {
  const { tag, facts } = equipment;
  return facts.n_pe_link?.value === true ? [about(RATE_MESSAGES.linkInIt, { tag }, tag, 'n_pe_link')] : [];
}

/** Transformers and what hangs behind them, a system of its own: there a link is as it should be. */
function behindTransformers({ equipments }: Site): ReadonlySet<SiteEquipment> {
  const found = new Set<SiteEquipment>();
  const queue = equipments.filter((e) => e.kind === 'transformer');
  for (let at = queue.pop(); at; at = queue.pop()) {
    if (found.has(at)) continue;
    found.add(at);
    for (const port of at.ports)
      for (const run of port.runs)
        if (run.from === port && run.carries === 'ac') queue.push(run.to.equipment);
  }
  return found;
}
