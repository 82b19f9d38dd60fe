import type { Conductor } from '../../../src/model/words.js';
import { spareChannel } from '../../../src/rules/wire/spare-channel.js';
import { wiringTable } from '../table.js';

const doubled = (...lines: Conductor[]): { conductor: Conductor; doubled: boolean }[] =>
  lines.map((conductor) => ({ conductor, doubled: true }));
const n = { conductor: 'N' as const, doubled: false };
const toNeutral = 'N isn’t bonded to ground here, so a spare channel takes it';
const doubles = 'a spare channel doubles a line';
const three: readonly Conductor[] = ['L1', 'L2', 'L3'];

// Common practice, no source.
export const table = wiringTable(import.meta.url, spareChannel, [
  {
    name: 'DC never doubles',
    given: { current: 'dc', circuit: 'array' },
    fires: false,
    then: { uses: [], because: 'DC never doubles' },
  },
  {
    name: 'in a 3+1 part each channel has its own conductor',
    given: { threePlusOne: true },
    fires: false,
    then: { uses: [], because: 'in a 3+1 part each channel has its own conductor' },
  },
  {
    name: 'away from the bond: N first, then L1, then the other line',
    given: {},
    fires: true,
    then: { uses: [n, ...doubled('L1', 'L2')], because: toNeutral },
  },
  {
    name: 'at the bond: a line is doubled, L1 first',
    given: { bondedHere: true },
    fires: true,
    then: { uses: doubled('L1', 'L2'), because: doubles },
  },
  {
    name: 'N has a channel of its own already',
    given: { neutralAsked: true },
    fires: true,
    then: { uses: doubled('L1', 'L2'), because: doubles },
  },
  {
    name: 'a delta has no N',
    given: { lines: three, hasNeutral: false },
    fires: true,
    then: { uses: doubled('L1', 'L2', 'L3'), because: doubles },
  },
  {
    name: 'the high leg is doubled before the others',
    given: { system: '240/120 high-leg', lines: three, doubledFirst: 'L2' },
    fires: true,
    then: { uses: [n, ...doubled('L2', 'L1', 'L3')], because: toNeutral },
  },
  {
    name: 'a system without that line doubles those that it has (own case)',
    given: { lines: ['L1'], doubledFirst: 'L2', hasNeutral: false },
    fires: true,
    then: { uses: doubled('L1'), because: doubles },
  },
  {
    name: 'a turbine has no N',
    given: { circuit: 'turbine', lines: three },
    fires: true,
    then: { uses: doubled('L1', 'L2', 'L3'), because: doubles },
  },
  {
    name: 'an AC control circuit doubles L1; its N has a channel',
    given: { circuit: 'control', lines: [], doubledFirst: 'L1' },
    fires: true,
    then: { uses: doubled('L1'), because: doubles },
  },
]);
