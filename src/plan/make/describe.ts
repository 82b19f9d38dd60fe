import { isNec } from '../../model/editions.js';
import type { Conductor } from '../../model/words.js';
import type { SitePort } from '../../model/site.js';
import { list } from '../../words/figures.js';
import { poleGrounding, type PoleGrounding } from '../choose/indicate.js';
import type { Selected } from '../choose/select.js';
import type { JobContext } from '../context/job-context.js';
import type { Placement } from '../context/verdict.js';
import type { WiredChannel } from '../rate/wire.js';

/** One line: what a placement guards. */
export function protectsWhat(selected: Selected): string {
  const { ports, subject } = selected.placement;
  const first = ports[0];
  if (!first) return subject.tag;
  if (first.cls === 'terminals' && first.equipment !== subject) {
    return `${first.equipment.tag}: the end of the control circuit ${subject.tag}`;
  }
  return `${first.equipment.tag}: ${list(ports.map(portWords))}`;
}

function portWords(port: SitePort): string {
  const { kind } = port.equipment;
  switch (port.cls) {
    case 'service':
      return 'the utility service';
    case 'feeder':
      return kind === 'load' ? 'the supply of the load' : 'the feeder of the panel';
    case 'dc-in':
      return `DC input ${port.input}`;
    case 'battery':
      return kind === 'battery' ? 'the battery bus' : 'the end of the battery cable';
    case 'ac-in':
      return 'AC in';
    case 'ac-in-2':
      return 'the second AC in';
    case 'ac-out':
      return 'AC out';
    case 'output':
      return kind === 'array'
        ? 'the array'
        : kind === 'combiner'
          ? 'the combiner'
          : kind === 'generator'
            ? 'the generator'
            : 'the output';
    case 'terminals':
      return 'the control circuit';
  }
}

/** The system at a placement; a turbine whose list doesn't say what it gives has none yet. */
export function systemOf({ requirement, placement }: Selected): string {
  if (requirement.circuit === 'power') return placement.ports[0]?.system ?? 'not stated';
  if (requirement.circuit === 'turbine' && requirement.current === 'ac') return 'three-phase';
  return requirement.current ?? 'not stated';
}

/** How it is grounded: of a DC pair its pole, whatever the indicator of the part; the phases of a turbine float. */
export function groundingOf({ requirement, placement, wirings }: Selected): string {
  switch (requirement.circuit) {
    case 'power':
      return wirings[0]?.facts.grounding ?? '';
    case 'turbine':
      return requirement.current === 'ac' ? 'floating' : '';
    case 'control':
      return '';
    case 'array':
    case 'battery': {
      const pole = poleOf(placement);
      if (pole === 'unknown') return 'grounding not known';
      return pole === 'floating' ? pole : `${pole} grounded`;
    }
  }
}

/** The grounded pole of a DC pair, or the grounded phase, which is L2; undefined where neither is. N isn't meant. */
export function groundedConductor({ requirement, placement, wirings }: Selected): Conductor | undefined {
  switch (requirement.circuit) {
    case 'power':
      return wirings[0]?.facts.grounding === 'corner' ? 'L2' : undefined;
    case 'array':
    case 'battery': {
      const pole = poleOf(placement);
      return pole === 'floating' || pole === 'unknown' ? undefined : pole;
    }
    case 'turbine':
    case 'control':
      return undefined;
  }
}

function poleOf({ ports: [port], subject }: Placement): PoleGrounding {
  return port ? poleGrounding(port, subject) : 'floating';
}

/** Where it sits in or at the equipment. */
export function positionOf(selected: Selected): string {
  const first = selected.placement.ports[0];
  if (!first) return '';
  const ahead = first.equipment.facts.ahead_of_disconnect?.value === true;
  switch (first.cls) {
    case 'service':
      return ahead
        ? 'Ahead of the main breaker, nearest to the incoming feed: type 1; at the meter only with the utility’s consent.'
        : 'In or immediately beside the service equipment, behind the main breaker, on the position nearest to the incoming feed.';
    case 'feeder':
      if (first.equipment.kind === 'load') return 'At the equipment, where its feeder comes in.';
      return 'On the load side of the feeder, on the position nearest to where it comes in.';
    case 'output':
      return first.equipment.kind === 'wind-turbine'
        ? 'At the base of the tower, where its lights can be seen.'
        : 'At the equipment, where its cable leaves, where its lights can be seen.';
    case 'terminals':
      return 'At the equipment, where the control cable comes in.';
    case 'battery':
      return first.equipment.kind === 'battery'
        ? 'At the battery bus, behind the battery’s disconnect where there is one, so that it can be made dead.'
        : 'At the terminals of this port, where its lights can be seen.';
    case 'dc-in':
    case 'ac-in':
    case 'ac-in-2':
    case 'ac-out':
      return 'At the terminals of this port, where its lights can be seen.';
  }
}

/** The conductor of a channel as the plan names it: ` (doubled)` after it, the port before it on a shared protector. */
export function conductorName(channel: WiredChannel, shared: boolean): string {
  const name = channel.doubled ? `${channel.conductor} (doubled)` : channel.conductor;
  return shared ? `${channel.port.name} ${name}` : name;
}

/** The colour of a conductor by the settings, as a word. */
export function colourOf(job: JobContext, channel: WiredChannel): string {
  const { conductorColours } = job.settings;
  const nec = isNec(job.site.basis.value);
  if (nec && channel.port.system === '240/120 high-leg' && channel.conductor === 'L2')
    return conductorColours.necHighLeg;
  return (nec ? conductorColours.nec : conductorColours.iec)[channel.conductor];
}
