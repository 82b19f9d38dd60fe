import { batteryPole } from '../../../src/rules/indicate/battery-pole.js';
import { indicatorTable } from '../table.js';

const outside = 'no ungrounded pole of a grounded battery';

export const table = indicatorTable(import.meta.url, batteryPole, [
  {
    name: 'the ungrounded pole: lit always (common practice, no source)',
    given: { circuit: 'battery', conductor: 'positive' },
    shows: [
      'always: lit (battery-connected): the battery gives it its voltage to ground, as long as its disconnect is closed',
    ],
  },
  {
    name: 'the grounded pole',
    given: { circuit: 'battery', conductor: 'negative', grounded: true },
    outside,
  },
  {
    name: 'a battery that floats',
    given: { circuit: 'battery', floating: true },
    outside,
  },
  {
    name: 'an array',
    given: { circuit: 'array' },
    outside,
  },
]);
