import { reason, type Reason } from '../../model/reason.js';
import type { Wire } from '../../model/wire.js';
import type { Conductor, ProtectedGrounding, ProtectedSystem } from '../../model/words.js';
import type { SitePort } from '../../model/site.js';
import { isDerived } from '../../site/fault-bus.js';
import { controlGroundingOf, poleGrounding, type PoleGrounding } from '../choose/indicate.js';
import type { Selected } from '../choose/select.js';
import type { Placement } from '../context/verdict.js';
import type { WiredChannel } from '../rate/wire.js';

/** The port that a placement is numbered by; of a shared protector the first. */
function firstPort({ ports: [first], subject }: Placement): SitePort {
  if (!first) throw new Error(`a placement of ${subject.tag} without a port`);
  return first;
}

/** One line: what a placement guards. */
export function protectsWhat({ placement }: Selected): Reason {
  const { ports, subject } = placement;
  const first = firstPort(placement);
  const equipment = first.equipment.tag;
  if (first.cls === 'terminals' && first.equipment !== subject)
    return reason('protects/control-end', { equipment, circuit: subject.tag });
  return reason('protects/ports', {
    equipment,
    ports: ports.map(({ cls, input, equipment: { kind } }) => ({ port: cls, kind, input })),
  });
}

/** The system at a placement; a turbine whose list doesn't say what it gives has none yet. */
export function systemOf({ requirement, placement }: Selected): ProtectedSystem | null {
  if (requirement.circuit === 'power') return firstPort(placement).system ?? null;
  if (requirement.circuit === 'turbine' && requirement.current === 'ac') return 'three-phase';
  return requirement.current ?? null;
}

/** How it is grounded, whatever the indicator of the part shows: of a DC pair its pole; the phases of a turbine float. */
export function groundingOf({ requirement, placement, wirings }: Selected): ProtectedGrounding | null {
  switch (requirement.circuit) {
    case 'power':
      return wirings[0]?.facts.grounding ?? null;
    case 'turbine':
      return requirement.current === 'ac' ? 'floating' : null;
    case 'control':
      return controlGrounding(placement, requirement.current);
    case 'array':
    case 'battery': {
      const pole = poleOf(placement);
      return pole === 'unknown' ? 'not-known' : pole;
    }
  }
}

/** Of an alternating control circuit the list can name one wire alone: N, as its negative. */
function controlGrounding({ subject }: Placement, current: 'ac' | 'dc' | undefined): ProtectedGrounding {
  const stated = controlGroundingOf(subject);
  if (stated === undefined) return 'not-known';
  if (current === 'dc' || stated === 'floating') return stated;
  return stated === 'negative' ? 'neutral' : 'not-known';
}

/** The grounded pole of a DC pair; undefined where neither is. */
export function groundedPole({ requirement, placement }: Selected): Conductor | undefined {
  const { circuit } = requirement;
  if (circuit !== 'array' && circuit !== 'battery') return undefined;
  const pole = poleOf(placement);
  return pole === 'floating' || pole === 'unknown' ? undefined : pole;
}

function poleOf({ ports: [port], subject }: Placement): PoleGrounding {
  return port ? poleGrounding(port, subject) : 'floating';
}

const AHEAD_OF_MAIN = reason('position/ahead-of-main');
const AT_SERVICE = reason('position/service');
const AT_LOAD = reason('position/load');
const AT_FEEDER = reason('position/feeder');
const AT_TOWER = reason('position/tower-base');
const AT_OUTPUT = reason('position/cable-leaves');
const AT_CONTROL_CABLE = reason('position/control-cable');
const AT_BATTERY = reason('position/battery-bus');
const AT_TERMINALS = reason('position/terminals');

/** Whose first overcurrent device decides the type at a port, beside that of a service. */
function firstDeviceAt(port: SitePort): 'building' | 'system' | 'generator' | undefined {
  const { cls, equipment, runs } = port;
  if (isDerived(port)) return 'system';
  if (equipment.kind === 'generator' && cls === 'output') return 'generator';
  const isEntry = runs.some((run) => run.to === port && run.betweenBuildings);
  return equipment.kind === 'panel' && isEntry ? 'building' : undefined;
}

/**
 * Where it sits in or at the equipment; under the NEC also on which side of the first overcurrent device of its service, building or
 * system (242.13, 242.14).
 * @param nec true where the basis of the job is one of the NEC
 */
export function positionOf({ placement }: Selected, nec: boolean): Reason {
  const port = firstPort(placement);
  const { cls, equipment } = port;
  const ahead = equipment.facts.ahead_of_disconnect?.value === true;
  const of = nec ? firstDeviceAt(port) : undefined;
  if (of) return reason('position/first-device', { ahead, of });
  switch (cls) {
    case 'service':
      return ahead ? AHEAD_OF_MAIN : AT_SERVICE;
    case 'feeder':
      return equipment.kind === 'load' ? AT_LOAD : AT_FEEDER;
    case 'output':
      return equipment.kind === 'wind-turbine' ? AT_TOWER : AT_OUTPUT;
    case 'terminals':
      return AT_CONTROL_CABLE;
    case 'battery':
      return equipment.kind === 'battery' ? AT_BATTERY : AT_TERMINALS;
    case 'dc-in':
    case 'dc-bus':
    case 'ac-in':
    case 'ac-in-2':
    case 'ac-out':
      return AT_TERMINALS;
  }
}

/** The conductor of a channel as the plan has it. */
export function wireOf({ port, conductor, doubled }: WiredChannel, shared: boolean): Wire {
  return { port: shared ? port.name : null, name: conductor, doubled };
}
