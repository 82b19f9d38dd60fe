import { overcurrentArray } from '../../../src/rules/wire/overcurrent-array.js';
import { overcurrentTable } from '../table.js';

// Parts and currents are own cases.
const part = { overcurrentMost: 30, overcurrentLeast: 15, overcurrentDevice: 'fuse' } as const;
const poles = { circuit: 'array', current: 'dc', lines: ['positive', 'negative'], part } as const;

export const table = overcurrentTable(import.meta.url, overcurrentArray, [
  {
    name: 'all that can flow is what the part allows: none, and the leads carry 1.25 of it (690.9(A); 690.8(B), value from memory)',
    given: { ...poles, arrayCurrent: 30, highest: 480 },
    then: 'none: - poles, - to 30 A, - V dc, breaks - A',
    because:
      'arrays and converters send at most 30 A, no more than the 30 A that the part allows: no device would open; leads for at least 37.5 A (see NEC 690.8(B), from memory)',
  },
  {
    name: 'iec: no clause of the NEC',
    given: { ...poles, basis: 'iec', arrayCurrent: 12 },
    then: 'none: - poles, - to 30 A, - V dc, breaks - A',
    because:
      'arrays and converters send at most 12 A, no more than the 30 A that the part allows: no device would open; leads for at least 15 A',
  },
  {
    name: 'more than the part allows: both poles, for the cold voltage and that current',
    given: { ...poles, arrayCurrent: 30.01, highest: 480 },
    then: 'fuse: 2 poles, 15 to 30 A, 480 V dc, breaks 30.01 A',
    because: 'arrays and converters send up to 30.01 A, more than the 30 A that the part allows',
  },
  {
    name: 'not known, and a pole that is grounded is none that is solidly grounded',
    given: { ...poles, groundedConductor: 'negative' },
    then: 'fuse: 2 poles, 15 to 30 A, - V dc, breaks - A',
    because:
      'what arrays and converters send isn’t known, so that it may be more than the 30 A that the part allows',
  },
  {
    name: 'a housing of one pole',
    given: { ...poles, lines: ['negative'], highest: 480 },
    then: 'fuse: 1 poles, 15 to 30 A, 480 V dc, breaks - A',
  },
  {
    name: 'the size isn’t stated',
    given: { ...poles, arrayCurrent: 12, part: { ...part, overcurrentMost: null } },
    then: 'fuse: 2 poles, 15 to - A, - V dc, breaks 12 A',
    because: 'the catalogue doesn’t state how large a device the part allows: as its instructions say',
  },
  {
    name: 'the part needs none',
    given: { ...poles, arrayCurrent: 300, part: { ...part, overcurrentDevice: 'none' } },
    then: 'none: - poles, - to - A, - V dc, breaks - A',
    because: 'the part needs none of its own',
  },
  {
    name: 'no part',
    given: { ...poles, part: undefined, arrayCurrent: 12, highest: 480 },
    then: 'unknown: 2 poles, - to - A, 480 V dc, breaks 12 A',
    because: 'no part is chosen',
  },
  {
    name: 'nothing is known of the conductors',
    given: { ...poles, lines: [] },
    then: 'fuse: - poles, 15 to 30 A, - V dc, breaks - A',
  },
  { name: 'an AC circuit', given: {}, outside: 'no array reaches it' },
]);
