import { neutralPath } from '../../../src/rules/rate/neutral-path.js';
import { THRESHOLDS } from '../facts.js';
import { fitTable } from '../table.js';

const tt = { basis: 'iec', earthing: 'TT' } as const;
const three = { ...tt, phases: 3 } as const;
const struck = { ...tt, atService: true, lightning: 'isolated' } as const;
const path = (nominal: number | null, impulse: number | null = null) =>
  ({ connection: '3+1', neutralNominalCurrent: nominal, neutralImpulseCurrent: impulse }) as const;
const noTt = 'no AC port of a TT system, so no 3+1 part stands here';
const unstated = (rating: string, asked: string): string =>
  `${rating} of its path from neutral to ground isn’t stated, and ${asked} is asked`;
const below = (rating: string, compared: string): string =>
  `${rating} of its path from neutral to ground ${compared}`;

// In 10 kA single phase, 20 kA three phase; Iimp 25 kA and 50 kA: IEC 60364-5-53 Table 534.4, value from memory.
export const table = fitTable(import.meta.url, neutralPath, [
  { name: 'single phase: In 10 kA itself', given: tt, part: path(10_000) },
  {
    name: 'single phase: In just below',
    given: tt,
    part: path(9_900),
    rejects: below('In', '9.9 kA < 10 kA'),
    gap: 0.01,
  },
  { name: 'three phase: In 20 kA itself', given: three, part: path(20_000) },
  {
    name: 'three phase: what does for one phase isn’t enough',
    given: three,
    part: path(10_000),
    rejects: below('In', '10 kA < 20 kA'),
    gap: 0.5,
  },
  { name: 'In not stated', given: tt, part: path(null), shortfall: unstated('In', '10 kA') },
  { name: 'In not stated, three phase', given: three, part: path(null), shortfall: unstated('In', '20 kA') },
  { name: 'Iimp 25 kA itself where T1 is asked', given: struck, part: path(10_000, 25_000) },
  {
    name: 'Iimp just below',
    given: struck,
    part: path(10_000, 24_750),
    rejects: below('Iimp', '24.75 kA < 25 kA'),
    gap: 0.01,
  },
  {
    name: 'attached as well as isolated',
    given: { ...struck, lightning: 'attached' },
    part: path(10_000, 20_000),
    rejects: below('Iimp', '20 kA < 25 kA'),
    gap: 0.2,
  },
  {
    name: 'three phase: Iimp 50 kA itself',
    given: { ...struck, phases: 3 },
    part: path(20_000, 50_000),
  },
  {
    name: 'three phase: Iimp of one phase isn’t enough',
    given: { ...struck, phases: 3 },
    part: path(20_000, 25_000),
    rejects: below('Iimp', '25 kA < 50 kA'),
    gap: 0.5,
  },
  {
    name: 'In below goes before Iimp not stated',
    given: struck,
    part: path(5_000),
    rejects: below('In', '5 kA < 10 kA'),
    gap: 0.5,
  },
  {
    name: 'Iimp below although In isn’t stated',
    given: struck,
    part: path(null, 12_500),
    rejects: below('Iimp', '12.5 kA < 25 kA'),
    gap: 0.5,
  },
  {
    name: 'Iimp alone not stated',
    given: struck,
    part: path(10_000),
    shortfall: unstated('Iimp', '25 kA'),
  },
  {
    name: 'neither stated: both are named',
    given: struck,
    part: path(null),
    shortfall: `${unstated('In', '10 kA')}; ${unstated('Iimp', '25 kA')}`,
  },
  {
    name: 'away from the service no T1 is asked, so no Iimp',
    given: { ...struck, atService: false },
    part: path(10_000),
  },
  {
    name: 'no lightning protection system: no Iimp',
    given: { ...struck, lightning: 'none' },
    part: path(10_000),
  },
  {
    name: 'the figures are settings (own case)',
    given: {
      ...struck,
      thresholds: {
        ...THRESHOLDS,
        neutralPathCurrent: { single: 5_000, three: 5_000 },
        neutralPathImpulseCurrent: { single: 12_500, three: 12_500 },
      },
    },
    part: path(5_000, 12_500),
  },
  {
    name: 'a part with each channel to ground has no such path',
    given: tt,
    part: { connection: 'to-ground' },
  },
  { name: 'TN', given: { ...tt, earthing: 'TN' }, part: path(null), outside: noTt },
  { name: 'IT', given: { ...tt, earthing: 'IT' }, part: path(null), outside: noTt },
  { name: 'DC', given: { ...tt, current: 'dc', circuit: 'array' }, part: path(null), outside: noTt },
  { name: 'a turbine', given: { ...tt, circuit: 'turbine' }, part: path(null), outside: noTt },
  {
    name: 'DC of a power circuit (own case)',
    given: { ...tt, current: 'dc' },
    part: path(null),
    outside: noTt,
  },
  ...(['nec-2017', 'nec-2020', 'nec-2023'] as const).map((basis) => ({
    name: `${basis}, whatever the earthing`,
    given: { ...tt, basis },
    part: path(null),
    outside: 'only IEC 60364 knows connection 3+1',
  })),
]);
