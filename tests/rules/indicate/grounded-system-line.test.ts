import { groundedSystemLine } from '../../../src/rules/indicate/grounded-system-line.js';
import { indicatorTable } from '../table.js';

const utility = 'utility on: lit (energised): the utility gives it its voltage to ground';
const source = 'source on: lit (energised): the inverter or generator gives it its voltage to ground';
const off = 'source off: dark (de-energised): nothing feeds it: not a fault';
const outside = 'no ungrounded conductor of a grounded AC system';

export const table = indicatorTable(import.meta.url, groundedSystemLine, [
  {
    name: 'the utility alone (common practice, no source: both lit on a 120/240 V service)',
    given: {},
    shows: [utility, off],
  },
  {
    name: 'an inverter or a generator alone',
    given: { fedByUtility: false, fedBySource: true },
    shows: [source, off],
  },
  {
    name: 'both',
    given: { fedBySource: true },
    shows: [utility, source, off],
  },
  {
    name: 'nothing on the list feeds it: something does',
    given: { fedByUtility: false },
    shows: [source, off],
  },
  {
    name: 'a grounded conductor',
    given: { grounded: true },
    outside,
  },
  {
    name: 'a system that floats',
    given: { floating: true },
    outside,
  },
  {
    name: 'a control circuit',
    given: { circuit: 'control' },
    outside,
  },
]);
