import { mcov } from '../../../src/rules/rate/mcov.js';
import { fitTable } from '../table.js';

const dc = { current: 'dc', circuit: 'array', mcov: 600 } as const;

export const table = fitTable(import.meta.url, mcov, [
  ...(['nec-2017', 'nec-2020', 'nec-2023', 'iec'] as const).map((basis) => ({
    name: `${basis}, AC: the figure itself is enough`,
    given: { basis, mcov: 150 },
    part: { mcovAc: 150 },
  })),
  {
    name: 'AC: just below',
    given: { mcov: 187 },
    part: { mcovAc: 150 },
    rejects: 'MCOV 150 V < 187 V',
    gap: 0.1979,
  },
  {
    name: 'DC: the figure itself is enough, and the AC rating isn’t looked at',
    given: dc,
    part: { mcovAc: 100, mcovDc: 600 },
  },
  {
    name: 'DC: just below, though the AC rating is higher',
    given: dc,
    part: { mcovAc: 1000, mcovDc: 599.5 },
    rejects: 'MCOV 599.5 V < 600 V',
    gap: 0.0008,
  },
  {
    name: 'a part without a DC rating is never used on DC',
    given: dc,
    part: { mcovAc: 1000, mcovDc: null },
    rejects: 'no DC rating',
  },
  {
    name: 'a part without an AC rating is never used on AC',
    part: { mcovAc: null, mcovDc: 1000 },
    rejects: 'no AC rating',
  },
]);
