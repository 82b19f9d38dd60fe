import { windPremises } from '../../../src/rules/place/wind-premises.js';
import { placementTable } from '../table.js';

const service = { kind: 'service', port: 'service', tag: 'SVC', hasWind: true } as const;
const notHere = 'it isn’t the place that 694.7(D) falls to on this site';

export const table = placementTable(import.meta.url, windPremises, [
  ...(['nec-2017', 'nec-2020', 'nec-2023'] as const).map((basis) => ({
    name: `${basis}, the place that carries it: required (NEC 694.7(D))`,
    given: { ...service, basis, windCarrier: true },
    then: 'required' as const,
    because: 'the site has a wind turbine, and this is the place between its system and the loads',
  })),
  {
    name: 'iec doesn’t know 694.7(D)',
    given: { ...service, basis: 'iec', windCarrier: true },
    then: 'not-looked-at',
  },
  {
    name: 'another place carries it',
    given: { ...service },
    then: 'not-placed',
    because: notHere,
  },
  {
    name: 'no wind turbine on the list',
    given: { ...service, hasWind: false },
    then: 'not-placed',
    because: 'no wind turbine is on the list',
  },
  {
    name: 'a turbine on a site without AC equipment: a person confirms',
    given: { kind: 'wind-turbine', port: 'output', tag: 'WT-1', hasWind: true, windWithoutAc: true },
    then: 'not-placed',
    because: notHere,
    notes: [
      'place/wind-without-ac WT-1: WT-1 is a turbine, and no AC equipment is on the list that could carry the protector of 694.7(D).',
    ],
  },
  {
    name: 'the AC in of an inverter is no place between the wind system and the loads',
    given: { kind: 'inverter-charger', port: 'ac-in', hasWind: true },
    then: 'not-looked-at',
  },
]);
