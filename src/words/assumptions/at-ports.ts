import type { Plan } from '../../model/plan.js';
import type { PortsAt } from '../../model/ports-at.js';

/** Tags of the protectors at some ports, in the plan's order. */
export function tagsAt(plan: Plan, places: readonly PortsAt[]): string[] {
  const isMeant = (at: { readonly equipment: string; readonly port: string }): boolean =>
    places.some(({ equipment, ports }) => equipment === at.equipment && ports.includes(at.port));
  return plan.protectors.filter(({ ports }) => ports.some(isMeant)).map(({ tag }) => tag);
}
