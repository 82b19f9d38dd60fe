import type { PortsAt } from '../../model/ports-at.js';
import type { Placement } from '../context/verdict.js';

/** Where a placement is, for messages. */
export function whereIs(placement: Placement): PortsAt {
  return {
    equipment: placement.ports[0]?.equipment.tag ?? '',
    ports: placement.ports.map((p) => p.name),
  };
}
