import { lightning } from '../../../src/rules/rate/lightning.js';
import { THRESHOLDS } from '../facts.js';
import { fitTable } from '../table.js';

const origin = { basis: 'iec', atService: true, lightning: 'isolated' } as const;
const dc = { basis: 'iec', current: 'dc', circuit: 'array', lightning: 'attached' } as const;
const t1 = { iecClass: 'T1', impulseCurrent: 12_500 } as const;
const notT1 = (has: string): string => `class ${has} where T1 is asked beside a lightning protection system`;
const elsewhere = 'neither the service, nor DC of a system that is attached to lightning protection';

// T1 and 12.5 kA: IEC 60364-5-53 cl. 534.4.4.4, value from memory.
export const table = fitTable(import.meta.url, lightning, [
  ...(['isolated', 'attached'] as const).flatMap((system) => [
    {
      name: `iec, the origin, ${system}: T1 with 12.5 kA itself`,
      given: { ...origin, lightning: system },
      part: t1,
    },
    {
      name: `iec, the origin, ${system}: Iimp just below`,
      given: { ...origin, lightning: system },
      part: { ...t1, impulseCurrent: 12_000 },
      rejects: 'Iimp 12 kA < 12.5 kA',
      gap: 0.04,
    },
    {
      name: `iec, the origin, ${system}: T2`,
      given: { ...origin, lightning: system },
      part: { ...t1, iecClass: 'T2' as const },
      rejects: notT1('T2'),
    },
  ]),
  {
    name: 'iec, the origin: Iimp not stated',
    given: origin,
    part: { ...t1, impulseCurrent: null },
    rejects: 'Iimp isn’t stated',
  },
  {
    name: 'iec, the origin: the class not stated, and UL type 1 never stands for it',
    given: origin,
    part: { ...t1, iecClass: null, type: 1 },
    rejects: notT1('not stated'),
  },
  {
    name: 'iec, the origin: the figure is a setting (own case)',
    given: { ...origin, thresholds: { ...THRESHOLDS, lightningImpulseCurrentIec: 25_000 } },
    part: t1,
    rejects: 'Iimp 12.5 kA < 25 kA',
    gap: 0.5,
  },
  {
    name: 'iec, no lightning protection system',
    given: { ...origin, lightning: 'none' },
    outside: 'the list states no lightning protection system',
  },
  {
    name: 'iec, AC away from the origin',
    given: { ...origin, atService: false, lightning: 'attached' },
    outside: elsewhere,
  },
  {
    name: 'iec, DC of a system attached to the rods: T1, of any Iimp',
    given: dc,
    part: { ...t1, impulseCurrent: null },
  },
  {
    name: 'iec, DC of a system attached to the rods: Iimp below that of the origin',
    given: dc,
    part: { ...t1, impulseCurrent: 5_000 },
  },
  {
    name: 'iec, DC of a system attached to the rods: T2',
    given: dc,
    part: { iecClass: 'T2' },
    rejects: notT1('T2'),
  },
  {
    name: 'iec, DC kept apart from the rods',
    given: { ...dc, lightning: 'isolated' },
    outside: elsewhere,
  },
  {
    name: 'iec, a control circuit',
    given: { ...dc, circuit: 'control' },
    outside: 'a control circuit has parts of another kind',
  },
  ...(['nec-2017', 'nec-2020', 'nec-2023'] as const).map((basis) => ({
    name: `${basis}: rate/nominal-current asks for more instead (NFPA 780, value from memory)`,
    given: { ...origin, basis, lightning: 'attached' as const },
    outside: 'only IEC 60364 asks it of the part itself',
  })),
]);
