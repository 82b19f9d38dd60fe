import { inverterLink } from '../../../src/rules/rate/inverter-link.js';
import { array, converter } from '../facts.js';
import { ratingTable } from '../table.js';

const inverter = converter({ tag: 'INV-1', kind: 'grid-tie-inverter', acOut: '240' });
const at = { port: 'dc-in', kind: 'grid-tie-inverter', tag: 'INV-1', arrays: [array()] } as const;
const lifted = (volts: string): string =>
  `rate/lifted-by-inverter INV-1.isolated: INV-1 isn’t stated to be isolated: conductors of its arrays at INV-1 are rated for at least ${volts} V, which is derived, not published.`;

// 1.414 x 127/120 x nominal for nec, 1.414 x 1.1 x nominal for iec: derived.
export const table = ratingTable(import.meta.url, inverterLink, [
  ...(['nec-2017', 'nec-2020', 'nec-2023'] as const).map((basis) => ({
    name: `${basis}, 240 V between its conductors: 359.16 V (derived)`,
    given: { ...at, basis, converters: [inverter] },
    asks: 359.16,
    whereItDecides: [lifted('359.16')],
  })),
  {
    name: 'iec, 230 V from line to N: 357.74 V (derived)',
    given: { ...at, basis: 'iec', converters: [{ ...inverter, acOut: '230' }] },
    asks: 357.74,
    whereItDecides: [lifted('357.74')],
  },
  {
    name: 'an array’s own port is lifted the same',
    given: { port: 'output', kind: 'array', tag: 'ARR-1', arrays: [array()], converters: [inverter] },
    asks: 359.16,
    whereItDecides: ['rate/lifted-by-inverter INV-1.isolated'],
  },
  {
    name: 'stated not to be isolated: the same',
    given: { ...at, converters: [{ ...inverter, isolated: false }] },
    asks: 359.16,
    whereItDecides: [lifted('359.16')],
  },
  {
    name: 'stated to be isolated: nothing lifts the array',
    given: { ...at, converters: [{ ...inverter, isolated: true }] },
    outside: 'no grid-tie inverter without isolation is on this port',
  },
  {
    name: 'a charge controller has no such link',
    given: { ...at, converters: [converter({ acOut: '240' })] },
    outside: 'no grid-tie inverter without isolation is on this port',
  },
  {
    name: 'an inverter-charger hangs on its battery',
    given: { ...at, converters: [converter({ kind: 'inverter-charger', acOut: '240' })] },
    outside: 'no grid-tie inverter without isolation is on this port',
  },
  {
    name: 'the setting turns the rule off',
    given: { ...at, converters: [inverter], inverterDcLink: false },
    outside: 'the settings turn this rule off',
  },
  {
    name: 'no array behind the port',
    given: { ...at, arrays: [], converters: [inverter] },
    outside: 'no array is behind this port',
  },
  {
    name: 'an output without an array, though nothing feeds it',
    given: { port: 'output', inputUse: 'assumed', converters: [inverter] },
    outside: 'no array is behind this port',
  },
  {
    name: 'an input that no source names counts as an array’s',
    given: { ...at, arrays: [], inputUse: 'assumed', converters: [inverter] },
    asks: 359.16,
    whereItDecides: [lifted('359.16')],
  },
  {
    name: 'several inverters: the one that lifts most, whichever comes first',
    given: {
      ...at,
      tag: 'ARR-1',
      converters: [
        { ...inverter, tag: 'INV-0', acOut: undefined },
        { ...inverter, tag: 'INV-1', acOut: '208' },
        { ...inverter, tag: 'INV-2', acOut: '480Y/277' },
        { ...inverter, tag: 'INV-3', acOut: '240' },
      ],
    },
    asks: 718.31,
    whereItDecides: [
      'rate/lifted-by-inverter INV-2.isolated: INV-2 isn’t stated to be isolated: conductors of its arrays at ARR-1 are rated for at least 718.31 V, which is derived, not published.',
    ],
  },
  {
    name: 'of inverters that lift the same, the first is named',
    given: { ...at, converters: [inverter, { ...inverter, tag: 'INV-2' }] },
    asks: 359.16,
    whereItDecides: ['rate/lifted-by-inverter INV-1.isolated'],
  },
  {
    name: 'its AC system isn’t stated: missing',
    given: { ...at, converters: [{ ...inverter, acOut: undefined }] },
    unknown: 'the AC system of the inverter isn’t stated',
    notes: [
      'fact/ac-out INV-1.ac_out: ac_out of INV-1 isn’t stated: it sets the least voltage that the array is rated for.',
    ],
  },
  {
    name: 'its AC system is unreadable: its own item asks already',
    given: {
      ...at,
      converters: [{ ...inverter, acOut: undefined, unreadable: new Set(['ac_out']) }],
    },
    unknown: 'the AC system of the inverter isn’t stated',
  },
]);
