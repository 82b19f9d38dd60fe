import { expect, test } from 'vitest';
import { reason, type Reason } from '../../../src/model/reason.js';
import type { DoubtFacts } from '../../../src/rules/fit-facts.js';
import { clamping } from '../../../src/rules/rate/clamping.js';
import { indication } from '../../../src/rules/rate/indication.js';
import { listing } from '../../../src/rules/rate/listing.js';
import { shortCircuit } from '../../../src/rules/rate/short-circuit.js';
import { type } from '../../../src/rules/rate/type.js';
import { fitFacts, part } from '../facts.js';

// What nobody states of a part that is chosen all the same: it is asked about, and no clause is called met.
const floats = reason('listing/turbine-floats');
const unclassed = reason('class/not-stated');

interface Doubted {
  readonly doubt: (facts: DoubtFacts) => Reason | undefined;
}
type Case = readonly [
  name: string,
  rule: Doubted,
  given: Partial<DoubtFacts>,
  of: Parameters<typeof part>[0],
  expected: Reason | undefined,
];
const cases: readonly Case[] = [
  ['clamping, withstand known', clamping, { withstand: 2500 }, {}, undefined],
  ['clamping, withstand unknown', clamping, { withstand: undefined }, {}, reason('withstand/not-known')],
  ['indication stated', indication, {}, { indicator: 'light' }, undefined],
  ['indication not stated', indication, {}, { indicator: null }, reason('indication/not-stated')],
  ['listing, nec', listing, { basis: 'nec-2023' }, { iecClass: null }, undefined],
  [
    'listing, the phases of a turbine',
    listing,
    { basis: 'nec-2023', circuit: 'turbine', current: 'ac' },
    {},
    floats,
  ],
  ['listing, a DC turbine', listing, { basis: 'nec-2023', circuit: 'turbine', current: 'dc' }, {}, undefined],
  ['listing, iec, class stated', listing, { basis: 'iec' }, { iecClass: 'T2' }, undefined],
  ['listing, iec, class not stated', listing, { basis: 'iec' }, { iecClass: null }, unclassed],
  [
    'listing, iec, both',
    listing,
    { basis: 'iec', circuit: 'turbine', current: 'ac' },
    { iecClass: null },
    reason('several', { reasons: [floats, unclassed] }),
  ],
  ['type, nec, stated', type, { basis: 'nec-2020' }, { type: 2, iecClass: null }, undefined],
  [
    'type, nec, not stated',
    type,
    { basis: 'nec-2020' },
    { type: null, iecClass: 'T2' },
    reason('type/not-stated'),
  ],
  ['class, iec, stated', type, { basis: 'iec' }, { type: null, iecClass: 'T2' }, undefined],
  ['class, iec, not stated', type, { basis: 'iec' }, { type: 2, iecClass: null }, unclassed],
];

const unknown = reason('several', { reasons: [] });
test('the fault current: as the place has it', () => {
  expect(shortCircuit.doubt({ sccrUnknown: unknown })).toBe(unknown);
  expect(shortCircuit.doubt({ sccrUnknown: undefined })).toBeUndefined();
});

test.each(cases)('%s', (_, rule, given, of, expected) => {
  expect(rule.doubt({ ...fitFacts(), sccrUnknown: undefined, ...given, part: part(of) })).toEqual(expected);
});
