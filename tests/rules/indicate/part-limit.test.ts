import { partLimit } from '../../../src/rules/indicate/part-limit.js';
import { indicatorTable } from '../table.js';

const outside = 'the part lets its light show what the conductor does';
const low = { indicatorMinVoltage: 90, usualVoltage: 48 } as const;

export const table = indicatorTable(import.meta.url, partLimit, [
  {
    name: 'no indicator, whatever the conductor',
    given: { indicator: 'none', grounded: true },
    shows: [
      'always: dark (no-indicator): this part has no indicator: nothing shows whether the channel is used up',
    ],
  },
  {
    name: 'a flag needs no voltage',
    given: { ...low, indicator: 'flag', grounded: true },
    shows: [
      'always: good (flag): a flag, not a light: it needs no voltage, and a new part shows its good flag at commissioning',
    ],
  },
  {
    name: 'a light that needs more than the conductor has (own case)',
    given: low,
    shows: [
      'always: dark (below-indicator-voltage): the light of this part needs 90 V, and this conductor has about 48 V: dark because of the part',
    ],
  },
  {
    name: 'a light that needs just what the conductor has',
    given: { ...low, usualVoltage: 90 },
    outside,
  },
  {
    name: 'the voltage of the conductor isn’t known',
    given: { ...low, usualVoltage: undefined },
    outside,
  },
  {
    name: 'the least voltage isn’t stated',
    given: { usualVoltage: 1 },
    outside,
  },
  {
    name: 'a grounded conductor is dark for its own reason',
    given: { ...low, grounded: true },
    outside,
  },
  {
    name: 'no part is chosen',
    given: { indicator: undefined },
    outside,
  },
]);
