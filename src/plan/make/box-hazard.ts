import { AC_SYSTEM_DATA } from '../../electrical/ac-systems.js';
import type { SiteEquipment, SitePort } from '../../model/site.js';
import { BOX_HAZARDS, type BoxHazard } from '../../model/words.js';
import { portsInUse } from '../../site/in-use.js';
import { boxHazard, type BoxVoltages } from '../../rules/box-hazard.js';
import type { JobContext } from '../context/job-context.js';
import type { Selected } from '../choose/select.js';
import type { Requirement } from '../rate/rate.js';

/**
 * What the gravest caution is about at the boxes of a job's equipment, each asked once.
 * @param atBare what would be asked at a port without a protector
 */
export function boxHazards(
  job: JobContext,
  selected: readonly Selected[],
  atBare: (port: SitePort) => Requirement,
): (placement: Selected['placement']) => BoxHazard {
  const rated = new Map<SitePort, Requirement[]>();
  for (const one of selected) {
    for (const port of one.placement.ports) {
      const before = rated.get(port);
      if (before) before.push(one.requirement);
      else rated.set(port, [one.requirement]);
    }
  }
  const asked: Asked = {
    isRated: (port) => rated.has(port),
    // A control circuit without a protector at its other end is told by its own box.
    at: (port) => rated.get(port) ?? (port.cls === 'terminals' ? [] : [atBare(port)]),
  };
  const found = new Map<SiteEquipment, BoxHazard>();
  const at = (equipment: SiteEquipment): BoxHazard => {
    const before = found.get(equipment);
    if (before) return before;
    const hazard = hazardIn(job, equipment, asked);
    found.set(equipment, hazard);
    return hazard;
  };
  return ({ ports }) => {
    const each = new Set(ports.map((port) => at(port.equipment)));
    return BOX_HAZARDS.find((hazard) => each.has(hazard)) ?? 'shock';
  };
}

/** What is asked of protectors at a port; where there is none, what would be. */
interface Asked {
  readonly isRated: (port: SitePort) => boolean;
  readonly at: (port: SitePort) => readonly Pick<Requirement, 'current' | 'mcov'>[];
}

/** By all ports of an equipment, with a protector or without; one that is spare or stated unused has no voltage. */
function hazardIn(job: JobContext, equipment: SiteEquipment, asked: Asked): BoxHazard {
  const { thresholds } = job.settings;
  const ports = portsInUse(equipment);
  // What else is in a box of which the list knows nothing but a control circuit that ends there isn't known.
  const isOfControl = equipment.kind === 'control-circuit';
  if (!isOfControl && ports.every((port) => port.cls === 'terminals')) return 'shock';
  const battery = ports.some((port) => port.cls === 'battery' || port.cls === 'dc-bus');
  let voltages: BoxVoltages = { ac: 0, dc: 0, battery };
  // What is known already goes first: where that decides, nothing more is rated.
  const isKnown = (port: SitePort): boolean => port.system !== undefined || asked.isRated(port);
  for (const port of [...ports.filter(isKnown), ...ports.filter((port) => !isKnown(port))]) {
    voltages = withPort(port, asked, voltages);
    if (boxHazard(voltages, thresholds) === 'shock') break;
  }
  return boxHazard(voltages, thresholds);
}

function withPort(port: SitePort, asked: Asked, { ac, dc, battery }: BoxVoltages): BoxVoltages {
  if (port.system !== undefined) {
    return { ac: higher(ac, AC_SYSTEM_DATA[port.system].betweenConductors), dc, battery };
  }
  let found: BoxVoltages = { ac, dc, battery };
  for (const { current, mcov } of asked.at(port)) {
    found = {
      ac: current === 'dc' ? found.ac : higher(found.ac, mcov?.value),
      dc: current === 'ac' ? found.dc : higher(found.dc, mcov?.value),
      battery,
    };
  }
  return found;
}

/** The higher of two; a voltage that isn't known makes both unknown. */
function higher(a: number | undefined, b: number | undefined): number | undefined {
  return a === undefined || b === undefined ? undefined : Math.max(a, b);
}
