import { statedLead } from '../context/fitted.js';
import { AC_SYSTEM_DATA } from '../../electrical/ac-systems.js';
import type { SitePort } from '../../model/site.js';
import type { FitPlace } from '../../rules/fit-facts.js';
import { kiloamperes, volts } from '../../model/quantity.js';
import { reason, type Reason } from '../../model/reason.js';
import type { Specification } from './choose.js';
import type { OvercurrentPort } from '../rate/overcurrent-place.js';
import type { Requirement } from '../rate/rate.js';
import type { JobContext } from '../context/job-context.js';
import type { Placement } from '../context/verdict.js';
import { spareRoom, type PortWiring } from '../rate/wire.js';

/** What a placement asks for, for messages. */
export function asksFor(specification: Specification): Reason {
  return reason('asks/rating', {
    current: specification.current,
    mcov: volts(specification.mcov),
    nominalCurrent: kiloamperes(specification.nominalCurrent),
    sccr: specification.sccr === undefined ? null : kiloamperes(specification.sccr),
    listedFor: specification.listedFor ?? null,
    outdoors: specification.outdoors,
    aheadOfDisconnect: specification.aheadOfDisconnect,
  });
}

/** What is known of a placement before anything is rated. */
export function placeOf(job: JobContext, placement: Placement, requirement: Requirement): FitPlace {
  const { site } = job;
  const first = placement.ports[0];
  return {
    basis: site.basis.value,
    earthing: site.earthing.value,
    circuit: requirement.circuit,
    current: requirement.current,
    atService: first?.cls === 'service',
    outdoors: placement.fitted?.outdoors ?? first?.equipment.outdoors.value ?? false,
    lightning: site.list.facts.lightning_protection?.value ?? 'none',
  };
}

/** What a fit rule may know of a placement; undefined where its voltage isn't known. */
export function specificationOf(
  job: JobContext,
  placement: Placement,
  requirement: Requirement,
  wirings: readonly PortWiring[],
  ports: readonly OvercurrentPort[],
): Specification | undefined {
  const { site } = job;
  const first = placement.ports[0];
  const wiring = wirings[0];
  if (!first || !wiring || !requirement.mcov || requirement.current === undefined) return undefined;
  const { grounding, circuit } = wiring.facts;
  const asked = circuit === 'power' && grounding !== 'solid';
  const stated = placement.ports.some((p) => p.equipment.facts.system_grounding) || isDelta(first);
  const byEarthing = site.basis.value === 'iec' && site.earthing.value === 'IT' && !stated;
  const listedFor = !asked || byEarthing ? undefined : grounding === 'none' ? 'ungrounded' : grounding;
  const place = placeOf(job, placement, requirement);
  return {
    basis: site.basis.value,
    earthing: site.earthing.value,
    current: requirement.current,
    circuit: requirement.circuit,
    atService: place.atService,
    phases: first.system ? AC_SYSTEM_DATA[first.system].phases : 1,
    mcov: requirement.mcov.value,
    nominalCurrent: requirement.nominalCurrent.value,
    sccr: requirement.sccr?.value,
    withstand: requirement.withstand?.value,
    withstandAssumed: requirement.withstand?.assumed ?? false,
    aheadOfDisconnect: placement.ports.some((p) => p.equipment.facts.ahead_of_disconnect?.value === true),
    outdoors: place.outdoors,
    listedFor,
    lightning: place.lightning,
    conductors: wirings.reduce((sum, w) => sum + w.conductors.length, 0),
    spareRoom: spareRoom(wirings),
    // A 3+1 part leads its lines to the N channel of the same housing.
    oneHousing: placement.ports.length > 1 || wiring.facts.threePlusOne,
    leadPlaces: ports.map((one) => one.place),
    classOneAsked: isClassOneAsked(wirings),
    leadLength: statedLead(placement),
    strongFirst: isOutdoorEnd(placement, requirement)
      ? job.settings.thresholds.outdoorEndNominalCurrent
      : undefined,
  };
}

/** True where the leads of a class T1 part are asked for, whatever the part is. */
export function isClassOneAsked(wirings: readonly PortWiring[]): boolean {
  return wirings.some((w) => w.facts.classOneAsked);
}

/**
 * True at an AC end of a run outdoors or between buildings. Where nobody says in which building an end is, the stronger part is taken,
 * and its place isn't asked for.
 */
function isOutdoorEnd({ ports }: Placement, { current, circuit }: Requirement): boolean {
  if (current !== 'ac' || circuit === 'control') return false;
  return ports.some(({ runs }) =>
    runs.some((run) => run.outdoors || run.betweenBuildings || run.unplaced.length > 0),
  );
}

function isDelta(port: SitePort): boolean {
  return port.system === '240 delta' || port.system === '480 delta';
}
