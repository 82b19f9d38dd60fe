import { describe, expect, it } from 'vitest';
import { enclosure, NEC_2023_TABLE_110_28_OUTDOORS, nemaTypes } from '../../../src/rules/rate/enclosure.js';
import { fitTable } from '../table.js';

const outdoors = { outdoors: true } as const;

export const table = fitTable(import.meta.url, enclosure, [
  ...NEC_2023_TABLE_110_28_OUTDOORS.map((type) => ({
    name: `outdoors, NEMA ${type} (NEC 2023 Table 110.28, value from memory)`,
    given: outdoors,
    part: { enclosure: type },
  })),
  ...['1', '2', '5', '12', '13'].map((type) => ({
    name: `outdoors, NEMA ${type} is for indoors (NEC 2023 Table 110.28, value from memory)`,
    given: outdoors,
    part: { enclosure: type },
    rejects: `enclosure ${type} isn’t for outdoors`,
  })),
  ...['NEMA 4X', 'Type 3R', ' 4x ', '1/3R', '12, 4'].map((cell) => ({
    name: `outdoors, as typed: "${cell}"`,
    given: outdoors,
    part: { enclosure: cell },
  })),
  ...(['nec-2023', 'iec'] as const).map((basis) => ({
    name: `${basis}, outdoors, IP65: the scales aren’t converted, a person confirms`,
    given: { ...outdoors, basis },
    part: { enclosure: ' IP65 ' },
    shortfall: 'enclosure IP65 isn’t a NEMA type, and the two scales aren’t converted',
  })),
  {
    name: 'outdoors, ip in small letters',
    given: outdoors,
    part: { enclosure: 'ip54' },
    shortfall: 'enclosure ip54 isn’t a NEMA type, and the two scales aren’t converted',
  },
  {
    name: 'outdoors, both scales named: the NEMA type settles it',
    given: outdoors,
    part: { enclosure: 'IP66 / 4X' },
  },
  {
    name: 'outdoors, a word that merely holds "ip"',
    given: outdoors,
    part: { enclosure: 'drip proof' },
    rejects: 'enclosure drip proof isn’t for outdoors',
  },
  {
    name: 'outdoors, not stated',
    given: outdoors,
    part: { enclosure: '  ' },
    rejects: 'its enclosure isn’t stated, and it would stand outdoors',
  },
  {
    name: 'indoors anything will do',
    part: { enclosure: '1' },
    outside: 'no place outdoors',
  },
  {
    name: 'indoors, not stated',
    part: { enclosure: '' },
    outside: 'no place outdoors',
  },
]);

describe('NEMA types of a cell', () => {
  it.each([
    ['4X', ['4X']],
    ['NEMA 3R', ['3R']],
    ['nema type 4x', ['4X']],
    ['4X/12', ['4X', '12']],
    ['3R; 4', ['3R', '4']],
    ['3R,4 12', ['3R', '4', '12']],
    ['', []],
  ])('"%s"', (cell, types) => {
    expect(nemaTypes(cell)).toEqual(types);
  });
});
