import { describe, expect, it } from 'vitest';
import { nearByCells } from '../../src/read/table/near-by-cells.js';

const rows = (text: string): string[][] => text.split('\n').map((line) => line.split(','));

describe('what a column looks like by its cells', () => {
  it.each([
    ['words of kinds', 'A,Load center\nB,PV\nC,Thing', 0, [1], [[1, 'kind']]],
    ['systems', 'A,120/240 V\nB,480Y/277\nC,', 0, [1], [[1, 'ac_in']]],
    ['names of rows that are known', 'A,B\nB,C/1\nC,', 0, [1], [[1, 'connects_to']]],
    [
      'names, and names of those, where no heading is known',
      'A,B,x\nB,C/1+2,y\nC,,x',
      -1,
      [0, 1, 2],
      [
        [0, 'tag'],
        [1, 'connects_to'],
      ],
    ],
    ['the names once more: they name no other rows', 'A,A\nB,B\nC,C', 0, [1], []],
    ['few words of kinds among others', 'A,PV\nB,blue\nC,green\nD,red', 0, [1], []],
    ['figures', 'A,120\nB,240\nC,1', 0, [1], []],
    ['one cell', 'A,PV', 0, [1], []],
    ['one and the same name', 'A,C\nB,C\nD,C\nC,C', 0, [1], []],
  ] as const)('%s', (_, text, tags, unknown, near) => {
    expect([...nearByCells(rows(text), 0, unknown, tags)].sort()).toEqual(near);
  });

  it('is nothing where there are no rows', () => {
    expect(nearByCells([['tag', 'kind']], -1, [0, 1], -1).size).toBe(0);
  });
});
