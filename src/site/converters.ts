import type { Kind } from '../model/words.js';

/** Kinds with DC inputs that arrays and turbines feed. */
export const CONVERTERS: ReadonlySet<Kind> = new Set<Kind>([
  'charge-controller',
  'grid-tie-inverter',
  'inverter-charger',
  'pump-drive',
]);
