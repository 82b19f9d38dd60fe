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
  ...(['IEC 61643-11', 'EN 61643-11:2012', 'to iec 61643-31, tested'] as const).map((text) => ({
    name: `nec, listed as "${text}": no listing as the code means it (NEC 2023 242.6)`,
    part: { listing: text },
    rejects: 'its listing names an IEC standard alone, not UL 1449',
  })),
  ...(['UL 1449 5th ed.; IEC 61643-11', 'cULus, 1449, EN 61643-11', 'listed by a laboratory'] as const).map(
    (text) => ({ name: `nec, listed as "${text}"`, part: { listing: text } }),
  ),
  {
    name: 'iec, a listing to an IEC standard is as good as any',
    given: { basis: 'iec' },
    part: { listing: 'IEC 61643-11' },
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
