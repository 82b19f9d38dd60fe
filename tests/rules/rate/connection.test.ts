import { connection } from '../../../src/rules/rate/connection.js';
import { fitTable } from '../table.js';

const tt = { basis: 'iec', earthing: 'TT' } as const;
const notThreePlusOne = 'connection isn’t 3+1, which a TT system asks for';

// TT: lines to N, N to ground (IEC 60364-5-53, value from memory).
export const table = fitTable(import.meta.url, connection, [
  {
    name: 'iec TT, a 3+1 part',
    given: tt,
    part: { connection: '3+1' },
  },
  {
    name: 'iec TT, conductor to ground',
    given: tt,
    rejects: notThreePlusOne,
  },
  ...(['TN', 'IT'] as const).flatMap((earthing) => [
    {
      name: `iec ${earthing}, conductor to ground`,
      given: { basis: 'iec' as const, earthing },
    },
    {
      name: `iec ${earthing}, a 3+1 part`,
      given: { basis: 'iec' as const, earthing },
      part: { connection: '3+1' as const },
      rejects: 'connection 3+1 is for lines and neutral of a TT system',
    },
  ]),
  {
    name: 'iec TT, DC: conductor to ground',
    given: { ...tt, current: 'dc', circuit: 'array' },
  },
  {
    name: 'iec TT, DC said to be power: conductor to ground all the same',
    given: { ...tt, current: 'dc' },
  },
  {
    name: 'iec TT, a turbine: conductor to ground',
    given: { ...tt, circuit: 'turbine' },
  },
  {
    name: 'iec TT, DC, a 3+1 part',
    given: { ...tt, current: 'dc', circuit: 'array' },
    part: { connection: '3+1' },
    rejects: 'connection 3+1 is for lines and neutral of a TT system',
  },
  ...(['nec-2017', 'nec-2020', 'nec-2023'] as const).flatMap((basis) => [
    {
      name: `${basis} knows no TT: conductor to ground`,
      given: { ...tt, basis },
    },
    {
      name: `${basis}, a 3+1 part`,
      given: { basis },
      part: { connection: '3+1' as const },
      rejects: 'connection 3+1 is for lines and neutral of a TT system',
    },
  ]),
]);
