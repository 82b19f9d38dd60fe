import { discharge } from '../../../src/rules/rate/discharge.js';
import { fitTable } from '../table.js';

export const table = fitTable(import.meta.url, discharge, [
  ...(['nec-2017', 'nec-2020', 'nec-2023', 'iec'] as const).map((basis) => ({
    name: `${basis}: what the place asks itself is enough`,
    given: { basis, nominalCurrent: 10_000 },
    part: { nominalCurrent: 10_000 },
  })),
  {
    name: 'less than the place asks',
    given: { nominalCurrent: 10_000 },
    part: { nominalCurrent: 5_000 },
    rejects: 'In 5 kA < 10 kA',
    gap: 0.5,
  },
  {
    name: 'In isn’t stated',
    part: { nominalCurrent: null },
    rejects: 'In isn’t stated',
  },
]);
