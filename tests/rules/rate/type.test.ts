import { type } from '../../../src/rules/rate/type.js';
import { fitTable } from '../table.js';

const ahead = { aheadOfDisconnect: true } as const;

export const table = fitTable(import.meta.url, type, [
  ...(['nec-2017', 'nec-2020', 'nec-2023'] as const).flatMap((basis) => [
    {
      name: `${basis}, ahead of the disconnect: type 1 (NEC 2023 242.13)`,
      given: { ...ahead, basis },
      part: { type: 1 as const },
    },
    {
      name: `${basis}, ahead of the disconnect: not type 2 (NEC 2023 242.14)`,
      given: { ...ahead, basis },
      part: { type: 2 as const },
      rejects: 'type 2 ahead of the disconnect, where type 1 is asked',
    },
    {
      name: `${basis}, behind the disconnect: type 1 too`,
      given: { basis },
      part: { type: 1 as const },
    },
    {
      name: `${basis}, behind the disconnect: type 2 (NEC 2023 242.14)`,
      given: { basis },
      part: { type: 2 as const },
    },
    {
      name: `${basis}, behind the disconnect: type 3 never stands in for it (section 5)`,
      given: { basis },
      part: { type: 3 as const },
      rejects: 'type 3 where type 1 or 2 is asked',
    },
  ]),
  {
    name: 'ahead of the disconnect, type not stated',
    given: ahead,
    part: { type: null },
    rejects: 'type not stated ahead of the disconnect, where type 1 is asked',
  },
  {
    name: 'behind the disconnect, type not stated',
    part: { type: null },
    rejects: 'its type isn’t stated',
  },
  {
    name: 'DC has no disconnect of the service to stand ahead of',
    given: { ...ahead, current: 'dc', circuit: 'array' },
    part: { type: 2 },
  },
  {
    name: 'DC, type 3',
    given: { current: 'dc', circuit: 'array' },
    part: { type: 3 },
    rejects: 'type 3 where type 1 or 2 is asked',
  },
  {
    name: 'DC, type not stated',
    given: { current: 'dc', circuit: 'array' },
    part: { type: null },
  },
  {
    name: 'a turbine, type not stated',
    given: { circuit: 'turbine' },
    part: { type: null },
  },
  {
    name: 'a control circuit asks for no type',
    given: { ...ahead, circuit: 'control' },
    part: { type: 3 },
    outside: 'no type is asked on a control circuit',
  },
  {
    name: 'iec, class T3',
    given: { basis: 'iec' },
    part: { iecClass: 'T3', type: 2 },
    rejects: 'class T3 where T1 or T2 is asked',
  },
  {
    name: 'iec, class T3 on a control circuit',
    given: { basis: 'iec', circuit: 'control' },
    part: { iecClass: 'T3' },
    rejects: 'class T3 where T1 or T2 is asked',
  },
  ...(['T1', 'T2'] as const).map((iecClass) => ({
    name: `iec, class ${iecClass}`,
    given: { basis: 'iec' as const },
    part: { iecClass },
  })),
  {
    name: 'iec, a part listed to UL 1449 alone: kept, a person confirms elsewhere',
    given: { basis: 'iec' },
    part: { iecClass: null },
  },
  {
    name: 'iec doesn’t ask for the UL type',
    given: { ...ahead, basis: 'iec' },
    part: { iecClass: 'T2', type: 3 },
  },
]);
