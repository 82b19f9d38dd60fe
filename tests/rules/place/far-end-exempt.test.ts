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
  {
    name: 'a diversion load is one that nobody need protect (section 5)',
    given: { kind: 'diversion-load', port: 'dc-bus' },
    then: 'waived',
    because: 'a diversion load is one that nobody need protect',
  },
  {
    name: 'a diversion load that the list waives by itself',
    given: { kind: 'diversion-load', port: 'dc-bus', protect: false },
    then: 'waived',
    because: 'a diversion load is one that nobody need protect',
  },
  {
    name: 'a diversion load that the list wants protected',
    given: { kind: 'diversion-load', port: 'dc-bus', protect: true },
    then: 'not-placed',
    because: 'what is here is worth protecting',
  },
  {
    name: 'a DC load is none',
    given: { kind: 'dc-load', port: 'dc-bus' },
    then: 'not-placed',
    because: 'what is here is worth protecting',
  },
  {
    name: 'a disconnect has no protector to waive',
    given: { kind: 'disconnect', port: 'terminals', worthProtecting: false },
    then: 'not-looked-at',
  },
]);
