import { overcurrentControl } from '../../../src/rules/wire/overcurrent-control.js';
import { overcurrentTable } from '../table.js';

// Parts are own cases.
const part = { overcurrentMost: 30, overcurrentLeast: 15, overcurrentDevice: 'either' } as const;
const circuit = { circuit: 'control', part } as const;

export const table = overcurrentTable(import.meta.url, overcurrentControl, [
  {
    name: 'alternating: no larger than the part allows',
    given: circuit,
    then: 'unknown: - poles, 15 to 30 A, - V, breaks - A',
    because:
      'the limit of the circuit’s own supply (class 2), or as the part says, no larger than the 30 A that the part allows',
  },
  {
    name: 'direct current',
    given: { ...circuit, current: 'dc' },
    then: 'unknown: - poles, 15 to 30 A, - V dc, breaks - A',
  },
  {
    name: 'direct current of known voltage',
    given: { ...circuit, current: 'dc', highest: 64.6 },
    then: 'unknown: - poles, 15 to 30 A, 64.6 V dc, breaks - A',
  },
  {
    name: 'direct current of known voltage, no part',
    given: { ...circuit, current: 'dc', highest: 64.6, part: undefined },
    then: 'unknown: - poles, - to - A, 64.6 V dc, breaks - A',
  },
  {
    name: 'the size isn’t stated',
    given: { ...circuit, part: { ...part, overcurrentMost: null } },
    then: 'unknown: - poles, 15 to - A, - V, breaks - A',
    because:
      'the limit of the circuit’s own supply (class 2), or as the part says, no larger than what the part allows, which the catalogue doesn’t state',
  },
  {
    name: 'no part',
    given: { ...circuit, current: 'dc', part: undefined },
    then: 'unknown: - poles, - to - A, - V dc, breaks - A',
    because: 'no part is chosen',
  },
  { name: 'an AC circuit of the site', given: {}, outside: 'no control circuit' },
]);
