import { farEndExempt } from '../../../src/rules/place/far-end-exempt.js';
import { placementTable } from '../table.js';

export const table = placementTable(import.meta.url, farEndExempt, [
  ...(['nec-2017', 'nec-2020', 'nec-2023', 'iec'] as const).map((basis) => ({
    name: `${basis}: nothing worth protecting waives what isn’t required (common practice, no source)`,
    given: { basis, worthProtecting: false },
    then: 'waived' as const,
    because: 'the list says that nothing here is worth protecting',
  })),
  {
    name: 'worth protecting, as by default',
    given: {},
    then: 'not-placed',
    because: 'what is here is worth protecting',
  },
  {
    name: 'a service has no far end (section 5)',
    given: { kind: 'service', port: 'service', worthProtecting: false },
    then: 'not-placed',
    because: 'a service has no far end',
  },
  {
    name: 'a signal line has no protector to waive',
    given: { kind: 'signal-line', port: 'terminals', worthProtecting: false },
    then: 'not-looked-at',
  },
]);
