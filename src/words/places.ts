import type { PortsAt } from '../model/ports-at.js';

/** Ports of one equipment, as messages name a place: `CC-1 dc-in-1 and dc-in-2`. */
export function portsAt({ equipment, ports }: PortsAt): string {
  return `${equipment} ${ports.join(' and ')}`;
}
