import { about } from '../../model/message.js';
import { CHOOSE_MESSAGES } from '../../model/messages/choose.js';
import type { PlacedNote } from '../../model/open-item.js';
import { volts, type Quantity } from '../../model/quantity.js';
import type { SitePort } from '../../model/site.js';
import { joinedPorts } from '../../site/ac-bus.js';
import { portsOnBus } from '../../site/battery-bus.js';
import { samePlaceName } from '../../site/equipment.js';
import type { Selected } from './select.js';
import { whereIs } from './where.js';

/**
 * What has to be confirmed where a new protector stands in one place with one that is there already, on the same wires: that both
 * are of one MCOV class, since the lower of two takes the surges of both. Two parts of the catalogue that are say so themselves.
 */
export function besideExisting(selected: readonly Selected[]): readonly PlacedNote[] {
  // A control circuit has wires of its own, whatever port it ends at.
  const there = selected.filter((one) => one.existing !== '' && one.requirement.circuit !== 'control');
  if (there.length === 0) return [];
  const notes: PlacedNote[] = [];
  for (const one of there) {
    const wires = wiresOf(one);
    for (const other of selected) {
      if (other.existing !== '' || !other.part || other.requirement.circuit === 'control') continue;
      if (!isBeside(one, other, wires)) continue;
      const mcov = mcovOf(other);
      const existingMcov = mcovOf(one);
      if (mcov !== null && mcov.value === existingMcov?.value) continue;
      const p = {
        at: whereIs(other.placement),
        existing: whereIs(one.placement),
        part: other.part.part,
        mcov,
        existingMcov,
      };
      notes.push(about(CHOOSE_MESSAGES.besideExisting, p, one.placement.subject.tag, 'existing'));
    }
  }
  return notes;
}

/** The ports that are on the same wires as those of a placement. */
function wiresOf({ placement, requirement }: Selected): ReadonlySet<SitePort> {
  const found = new Set<SitePort>();
  for (const port of placement.ports) {
    const joined =
      requirement.circuit === 'power'
        ? joinedPorts(port)
        : requirement.circuit === 'battery'
          ? portsOnBus(port)
          : [port, ...port.runs.flatMap((run) => [run.from, run.to])];
    for (const one of joined) found.add(one);
  }
  return found;
}

function isBeside(one: Selected, other: Selected, wires: ReadonlySet<SitePort>): boolean {
  const place = one.placement.ports[0]?.equipment.place ?? '';
  return other.placement.ports.some(
    (port) => place !== '' && samePlaceName(place, port.equipment.place) && wires.has(port),
  );
}

function mcovOf({ part, requirement }: Selected): Quantity | null {
  const rated = requirement.current === 'ac' ? part?.mcovAc : part?.mcovDc;
  return rated === undefined || rated === null ? null : volts(rated);
}
