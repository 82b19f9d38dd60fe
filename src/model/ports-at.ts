/** Ports of one equipment, as messages name a place: `CC-1 dc-in-1`. */
export interface PortsAt {
  readonly equipment: string;
  readonly ports: readonly string[];
}
