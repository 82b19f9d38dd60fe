import { asked } from '../../../src/rules/place/asked.js';
import { placementTable } from '../table.js';

export const table = placementTable(import.meta.url, asked, [
  ...(['nec-2017', 'nec-2020', 'nec-2023', 'iec'] as const).map((basis) => ({
    name: `${basis}, protect yes: one at the main port, counted as recommended (section 5)`,
    given: { basis, protect: true },
    then: 'recommended' as const,
    because: 'the list says protect "yes"',
  })),
  {
    name: 'protect yes, at a port that isn’t the main one',
    given: { kind: 'inverter-charger', port: 'dc-in', protect: true, mainPort: false },
    then: 'not-placed',
    because: 'the list asks for one at the main port, which is another',
  },
  {
    name: 'protect no waives what isn’t required',
    given: { protect: false },
    then: 'waived',
    because: 'the list says protect "no"',
  },
  {
    name: 'protect no waives at every port',
    given: { kind: 'inverter-charger', port: 'dc-in', protect: false, mainPort: false },
    then: 'waived',
    because: 'the list says protect "no"',
  },
  {
    name: 'nothing said',
    given: {},
    then: 'not-placed',
    because: 'the list doesn’t ask for one',
  },
  {
    name: 'a transfer switch has no protector of its own',
    given: { kind: 'transfer-switch', protect: true },
    then: 'not-looked-at',
  },
]);
