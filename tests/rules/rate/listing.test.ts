import { listing } from '../../../src/rules/rate/listing.js';
import { fitTable } from '../table.js';

export const table = fitTable(import.meta.url, listing, [
  ...(['nec-2017', 'nec-2020', 'nec-2023'] as const).map((basis) => ({
    name: `${basis}, no listing: rejected (NEC 2023 242.6)`,
    given: { basis },
    part: { listing: '  ' },
    rejects: 'no listing is stated',
  })),
  {
    name: 'nec, listed',
    part: { listing: 'UL 1449' },
  },
  {
    name: 'nec, DC: a listing is asked for as well',
    given: { current: 'dc', circuit: 'array' },
    part: { listing: '' },
    rejects: 'no listing is stated',
  },
  {
    name: 'iec asks for no listing',
    given: { basis: 'iec' },
    part: { listing: '' },
  },
  ...(
    [
      ['ungrounded', 'isn’t listed for ungrounded systems'],
      ['impedance', 'isn’t listed for impedance-grounded systems'],
      ['corner', 'isn’t listed for corner-grounded systems'],
    ] as const
  ).flatMap(([listedFor, rejects]) => [
    {
      name: `a system that is ${listedFor}: listed for it (NEC 2023 242.12)`,
      given: { listedFor },
      part: { listedFor: ['corner', 'impedance', 'ungrounded'] as const },
    },
    {
      name: `a system that is ${listedFor}: not listed for it (NEC 2023 242.12)`,
      given: { listedFor },
      part: { listedFor: (['corner', 'impedance', 'ungrounded'] as const).filter((l) => l !== listedFor) },
      rejects,
    },
  ]),
  {
    name: 'iec, a delta or a stated grounding: asked for too (section 5)',
    given: { basis: 'iec', listedFor: 'ungrounded' },
    part: { listing: '' },
    rejects: 'isn’t listed for ungrounded systems',
  },
  {
    name: 'the phases of a turbine float, and the listing question is a confirm',
    given: { circuit: 'turbine', listedFor: 'ungrounded' },
  },
  {
    name: 'a solidly grounded system asks for nothing special',
    given: { listedFor: undefined },
  },
]);
