import { ungroundedSystemLine } from '../../../src/rules/indicate/ungrounded-system-line.js';
import { indicatorTable } from '../table.js';

const outside = 'no conductor of an AC system that floats';

export const table = indicatorTable(import.meta.url, ungroundedSystemLine, [
  {
    name: 'a line of a system that floats, or through an impedance (common practice, no source)',
    given: { floating: true },
    shows: [
      'source on: either (ungrounded-system): the system isn’t solidly tied to ground; one dark and the others brighter: a ground fault may be on the line, call',
      'source off: dark (de-energised): nothing feeds it: not a fault',
    ],
  },
  {
    name: 'N that an impedance holds near ground (common practice, no source)',
    given: { floating: true, liftedNeutral: 'held' },
    shows: [
      'source on: dark (neutral-at-rest): an impedance holds N near ground in a sound system; if it lights, a ground fault may be on a line: call',
      'source off: dark (de-energised): nothing feeds it: not a fault',
    ],
  },
  {
    name: 'N that nothing ties to ground',
    given: { floating: true, liftedNeutral: 'free' },
    shows: [
      'source on: either (ungrounded-system): nothing ties N to ground; recorded at commissioning; if it gets brighter, a ground fault may be on a line: call',
      'source off: dark (de-energised): nothing feeds it: not a fault',
    ],
  },
  {
    name: 'a line of a grounded system',
    given: {},
    outside,
  },
  {
    name: 'N that is bonded here',
    given: { floating: true, grounded: true, conductor: 'N' },
    outside,
  },
  {
    name: 'a floating array',
    given: { circuit: 'array', floating: true },
    outside,
  },
]);
