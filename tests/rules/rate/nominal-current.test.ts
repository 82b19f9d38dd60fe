import { nominalCurrent } from '../../../src/rules/rate/nominal-current.js';
import { THRESHOLDS } from '../facts.js';
import { ratingTable } from '../table.js';

const practice = 'common practice; common practice, no source';
const service = { kind: 'service', port: 'service' } as const;
const steps = (says: string, amperes: number, from: string): readonly string[] => [
  `In: ${says} = ${amperes} A [${from}]`,
];
const usual = steps('Nominal discharge current, at least', 3000, practice);

export const table = ratingTable(import.meta.url, nominalCurrent, [
  ...(['dwelling', 'sleeping'] as const).map((occupancy) => ({
    name: `nec-2023, the service of a ${occupancy}: 10 kA (NEC 2023 230.67)`,
    given: { ...service, occupancy },
    asks: 10_000,
    steps: steps('Nominal discharge current at a service', 10_000, 'published; NEC 2023, 230.67'),
    cites: ['230.67', 'nominal discharge current'],
  })),
  {
    name: 'nec-2023, the service of another building: 10 kA, which 230.67 doesn’t ask of it (common practice, no source)',
    given: { ...service, occupancy: 'other' },
    asks: 10_000,
    steps: steps('Nominal discharge current at a service', 10_000, practice),
    cites: ['practice', 'nominal discharge current'],
  },
  ...(['nec-2017', 'nec-2020'] as const).map((basis) => ({
    name: `${basis}, a service: 10 kA (common practice, no source)`,
    given: { ...service, basis },
    asks: 10_000,
    steps: steps('Nominal discharge current at a service', 10_000, practice),
  })),
  ...(['isolated', 'attached'] as const).map((lightning) => ({
    name: `nec, a service with lightning protection, ${lightning}: 20 kA (NFPA 780, value from memory)`,
    given: { ...service, lightning },
    asks: 20_000,
    steps: steps(
      'Nominal discharge current at a service with a lightning protection system',
      20_000,
      'memory; NFPA 780, value from memory',
    ),
  })),
  ...(
    [
      ['inside', '215.18'],
      ['outside', '225.42'],
    ] as const
  ).map(([feederPlace, clause]) => ({
    name: `nec-2023, a panel that is fed from ${feederPlace}: 10 kA, by one clause alone (NEC 2023 ${clause})`,
    given: { feederPlace },
    asks: 10_000,
    steps: steps(
      'Nominal discharge current at a panel that a feeder supplies',
      10_000,
      `published; NEC 2023, ${clause}`,
    ),
    cites: [clause, 'nominal discharge current'],
  })),
  {
    name: 'nec-2023, a place of place/feeder with lightning protection: only the service takes 20 kA',
    given: { feederPlace: 'inside', lightning: 'attached' },
    asks: 10_000,
  },
  {
    name: 'nec-2020, a feeder: 3 kA, since 215.18 came with the 2023 cycle (common practice, no source)',
    given: { basis: 'nec-2020', feederPlace: 'inside' },
    asks: 3_000,
    steps: usual,
  },
  ...(['nec-2017', 'nec-2020', 'nec-2023'] as const).map((basis) => ({
    name: `${basis}, elsewhere: 3 kA (common practice, no source)`,
    given: { basis, port: 'dc-in' as const },
    asks: 3_000,
    steps: usual,
  })),
  {
    name: 'nec, elsewhere with lightning protection: 3 kA (common practice, no source)',
    given: { port: 'dc-in', lightning: 'attached' },
    asks: 3_000,
  },
  ...(['service', 'dc-in'] as const).map((port) => ({
    name: `iec, ${port}: 5 kA (IEC 60364-5-53 cl. 534.4.4.4, value from memory)`,
    given: { basis: 'iec' as const, port, lightning: 'attached' as const, feederPlace: 'inside' as const },
    asks: 5_000,
    steps: steps(
      'Nominal discharge current, at least',
      5_000,
      'memory; IEC 60364-5-53 cl. 534.4.4.4, value from memory',
    ),
  })),
  {
    name: 'what it asks are settings (own case)',
    given: { ...service, thresholds: { ...THRESHOLDS, serviceNominalCurrent: 15_000 } },
    asks: 15_000,
  },
]);
