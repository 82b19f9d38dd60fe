import { controlCircuit } from '../../../src/rules/indicate/control-circuit.js';
import { indicatorTable } from '../table.js';

const off = 'source off: dark (de-energised): the control supply is off: not a fault';
const outside = 'no ungrounded conductor of a control circuit';

// Common practice, no source.
export const table = indicatorTable(import.meta.url, controlCircuit, [
  {
    name: 'its ungrounded conductor, where the list says which is grounded',
    given: { circuit: 'control', conductor: 'positive' },
    shows: ['source on: lit (energised): the control supply gives it its voltage to ground', off],
  },
  {
    name: 'its grounding isn’t stated',
    given: { circuit: 'control', floating: true, groundingUnknown: true },
    shows: [
      'source on: either (floating): its grounding isn’t known: recorded at commissioning; a change from the record: call',
      off,
    ],
  },
  {
    name: 'stated to float',
    given: { circuit: 'control', floating: true },
    shows: [
      'source on: either (floating): neither wire is tied to ground: recorded at commissioning; a change from the record: call',
      off,
    ],
  },
  {
    name: 'its grounded conductor',
    given: { circuit: 'control', grounded: true },
    outside,
  },
  {
    name: 'a conductor of the site',
    given: {},
    outside,
  },
]);
