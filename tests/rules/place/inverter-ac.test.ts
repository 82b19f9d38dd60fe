import { inverterAc } from '../../../src/rules/place/inverter-ac.js';
import { placementTable } from '../table.js';

const at = { kind: 'inverter-charger', tag: 'INV-1' } as const;

export const table = placementTable(import.meta.url, inverterAc, [
  ...(['nec-2017', 'nec-2020', 'nec-2023', 'iec'] as const).map((basis) => ({
    name: `${basis}, AC in: recommended (common practice, no source)`,
    given: { ...at, basis, port: 'ac-in' as const },
    then: 'recommended' as const,
    because: 'the ac-in port of an inverter-charger is in use',
  })),
  ...(['ac-in-2', 'ac-out'] as const).map((port) => ({
    name: `${port}: recommended`,
    given: { ...at, port },
    then: 'recommended' as const,
    because: `the ${port} port of an inverter-charger is in use`,
  })),
  {
    name: 'unused by the list',
    given: { ...at, port: 'ac-in-2', unused: 'stated' },
    then: 'not-placed',
    because: 'the list says that this port is unused',
  },
  {
    name: 'nothing names it',
    given: { ...at, port: 'ac-in', unused: 'nothing-named' },
    then: 'not-placed',
    because: 'the list names no system for this port, and nothing on it connects there',
  },
  {
    name: 'a grid-tie inverter has place/grid-tie-ac',
    given: { kind: 'grid-tie-inverter', port: 'ac-out' },
    then: 'not-looked-at',
  },
  {
    name: 'the AC out of an AC battery: recommended (section 5)',
    given: { kind: 'ac-battery', port: 'ac-out' },
    then: 'recommended',
    because: 'the ac-out port of an AC battery is in use',
  },
  {
    name: 'an AC battery whose AC out the list says is unused',
    given: { kind: 'ac-battery', port: 'ac-out', unused: 'stated' },
    then: 'not-placed',
    because: 'the list says that this port is unused',
  },
  ...(['transformer', 'pump-drive'] as const).map((kind) => ({
    name: `the AC out of a ${kind} is none of an inverter`,
    given: { kind, port: 'ac-out' as const },
    then: 'not-looked-at' as const,
  })),
]);
