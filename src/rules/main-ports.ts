import type { Kind, PortClass } from '../model/words.js';

const MAIN_PORTS: { readonly [K in Kind]?: readonly PortClass[] } = {
  service: ['service'],
  panel: ['feeder'],
  load: ['feeder'],
  array: ['output'],
  combiner: ['output'],
  'charge-controller': ['dc-in'],
  'grid-tie-inverter': ['ac-out'],
  'ac-module-branch': ['output'],
  'inverter-charger': ['ac-in', 'ac-in-2', 'ac-out'],
  battery: ['battery'],
  'wind-turbine': ['output'],
  'hydro-turbine': ['output'],
  generator: ['output'],
  'control-circuit': ['terminals'],
  transformer: ['ac-out'],
  'dc-load': ['dc-bus'],
  'dc-panel': ['dc-bus'],
  'diversion-load': ['dc-bus'],
  'ac-battery': ['ac-out'],
  'pump-drive': ['dc-in', 'ac-in'],
};

/** The kinds that have a main port, at which the list may ask for a protector. */
export const KINDS_WITH_MAIN_PORT = Object.keys(MAIN_PORTS) as readonly Kind[];

/** The classes of port at which such equipment can have a protector. */
export const PROTECTABLE_PORTS: readonly PortClass[] = [
  'service',
  'feeder',
  'dc-in',
  'dc-bus',
  'battery',
  'ac-in',
  'ac-in-2',
  'ac-out',
  'output',
  'terminals',
];

/**
 * The main ports of a kind: where `protect` `yes` asks for a protector.
 * @param kind of the equipment
 * @param has the classes of its ports: a pump drive's is its DC input, or its AC input where it has no other
 * @returns none of a kind that takes no protector of its own
 */
export function mainPortsOf(kind: Kind, has: readonly PortClass[]): readonly PortClass[] {
  const main = MAIN_PORTS[kind] ?? [];
  return kind === 'pump-drive' ? main.filter((cls) => has.includes(cls)).slice(0, 1) : main;
}
