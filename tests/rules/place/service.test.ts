import { service } from '../../../src/rules/place/service.js';
import { placementTable } from '../table.js';

const at = { kind: 'service', port: 'service', tag: 'SVC' } as const;

const recommended = 'recommended' as const;

const WORKSHOP = {
  cites: ['practice'],
  unasked:
    '230.67 doesn’t ask at the service of a building that holds no dwelling or sleeping unit: one there is common practice',
};

export const table = placementTable(import.meta.url, service, [
  {
    name: 'nec-2017, dwelling: recommended, since 230.67 came with the 2020 cycle',
    given: { ...at, basis: 'nec-2017' },
    then: recommended,
    because: 'a utility service is here',
  },
  {
    name: 'nec-2020, dwelling: required (NEC 2020 230.67)',
    given: { ...at, basis: 'nec-2020' },
    then: 'required',
    because: 'a utility service of a dwelling unit is here',
  },
  {
    name: 'nec-2023, dwelling: required (NEC 2023 230.67)',
    given: { ...at, basis: 'nec-2023' },
    then: 'required',
    because: 'a utility service of a dwelling unit is here',
  },
  {
    name: 'nec-2017, sleeping rooms: recommended',
    given: { ...at, basis: 'nec-2017', occupancy: 'sleeping' },
    then: recommended,
    because: 'a utility service is here',
  },
  {
    name: 'nec-2020, sleeping rooms: recommended, since they came into 230.67 with the 2023 cycle',
    given: { ...at, basis: 'nec-2020', occupancy: 'sleeping' },
    then: recommended,
    because: 'a utility service is here',
    cites: ['practice'],
    unasked:
      '230.67 doesn’t ask at the service of a building with sleeping rooms in this cycle: one there is common practice',
  },
  {
    name: 'nec-2023, sleeping rooms: required (NEC 2023 230.67)',
    given: { ...at, basis: 'nec-2023', occupancy: 'sleeping' },
    then: 'required',
    because: 'a utility service of a building with sleeping rooms is here',
  },
  {
    name: 'nec-2023, a barn whose feeders reach a dwelling unit: recommended, and the authority is asked',
    given: {
      ...at,
      basis: 'nec-2023',
      occupancy: 'other',
      unitsFed: [
        { tag: 'HP', unit: 'dwelling' },
        { tag: 'LP', unit: 'other' },
      ],
    },
    then: recommended,
    because: 'a utility service is here',
    cites: ['practice'],
    unasked:
      '230.67 is taken not to ask here, as the service’s own building holds no dwelling or sleeping unit; yet it feeds such a unit through HP: the authority having jurisdiction says whether the clause means this service',
    notes: [
      'place/service-of-unit-elsewhere SVC: 230.67 is taken not to ask at SVC, whose own building holds no dwelling or sleeping unit; yet it feeds such a unit through HP.',
    ],
  },
  {
    name: 'nec-2020, a barn whose feeders reach sleeping rooms: that cycle doesn’t name them, so nobody is asked',
    given: { ...at, basis: 'nec-2020', occupancy: 'other', unitsFed: [{ tag: 'HP', unit: 'sleeping' }] },
    then: recommended,
    because: 'a utility service is here',
    ...WORKSHOP,
  },
  ...(['nec-2017', 'nec-2020', 'nec-2023'] as const).map((basis) => ({
    name: `${basis}, a workshop: recommended`,
    given: { ...at, basis, occupancy: 'other' as const },
    then: recommended,
    because: 'a utility service is here',
    // Before 2020 there was no 230.67 to ask, or not.
    ...(basis === 'nec-2017' ? {} : WORKSHOP),
  })),
  {
    name: 'nec-2023: a calculated risk level changes nothing',
    given: { ...at, basis: 'nec-2023', occupancy: 'other', riskLevel: 10 },
    then: recommended,
    because: 'a utility service is here',
    ...WORKSHOP,
  },
  ...(['other', 'sleeping'] as const).map((occupancy) => ({
    name: `iec, ${occupancy}: required whatever the risk level (IEC 60364-4-44 cl. 443.4, value from memory)`,
    given: { ...at, basis: 'iec' as const, occupancy, riskLevel: 5000 },
    then: 'required' as const,
    because: 'a service of a building that isn’t a single dwelling is here',
  })),
  {
    name: 'iec, dwelling without a risk level: recommended, and asks for the flash density',
    given: { ...at, basis: 'iec' },
    then: recommended,
    because: 'a utility service is here; the calculated risk level isn’t known',
    notes: [
      'place/risk-level-unknown job.flash_density: The flash density isn’t stated, or every line has a length of 0: the calculated risk level of the supply at SVC isn’t known.',
    ],
  },
  {
    name: 'iec, dwelling, CRL 132.8: required (IEC 60364-4-44 cl. 443.5; the rural example of check-values 2, value from memory)',
    given: { ...at, basis: 'iec', riskLevel: 132.8 },
    then: 'required',
    because: 'the calculated risk level is 133, below 1000',
  },
  {
    name: 'iec, dwelling, CRL 1328.1: recommended (the urban example of check-values 2, value from memory)',
    given: { ...at, basis: 'iec', riskLevel: 1328.1 },
    then: recommended,
    because: 'the calculated risk level is 1328, not below 1000',
  },
  {
    name: 'iec, dwelling, CRL just below 1000: required',
    given: { ...at, basis: 'iec', riskLevel: 999.4 },
    then: 'required',
    because: 'the calculated risk level is 999, below 1000',
  },
  {
    name: 'iec, dwelling, CRL of 1000 itself: recommended, since only below 1000 is protection needed',
    given: { ...at, basis: 'iec', riskLevel: 1000 },
    then: recommended,
    because: 'the calculated risk level is 1000, not below 1000',
  },
  {
    name: 'a panel is no service',
    given: { kind: 'panel', port: 'feeder' },
    then: 'not-looked-at',
  },
]);
