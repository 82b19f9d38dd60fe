import { expect, it } from 'vitest';
import { joints } from '../../src/documents/drawing/joints.js';

const at = (x: number, y: number): { x: number; y: number } => ({ x, y });
const straight = [at(0, 0), at(100, 0)];
const branch = [at(0, 0), at(40, 0), at(40, -30), at(100, -30)];

it.each([
  ['a branch off a straight run', [straight, branch], [at(40, 0)]],
  ['the other way round', [branch, straight], [at(40, 0)]],
  [
    'two branches at one corner',
    [straight, branch, [at(0, 0), at(40, 0), at(40, 30), at(90, 30)]],
    [at(40, 0)],
  ],
  [
    'two branches that part without a straight run',
    [branch, [at(0, 0), at(40, 0), at(40, 30), at(90, 30)]],
    [at(40, 0)],
  ],
  ['a bend alone', [branch], []],
  [
    'two runs that turn together, and part later',
    [branch, [at(0, 0), at(40, 0), at(40, -60), at(100, -60)]],
    [at(40, -30)],
  ],
  [
    'runs that meet at their end',
    [
      [at(0, 0), at(50, 0), at(50, 20), at(100, 20)],
      [at(0, 40), at(50, 40), at(50, 20), at(100, 20)],
    ],
    [at(50, 20)],
  ],
  ['runs of other ports that cross', [straight, [at(50, -40), at(50, 40)]], []],
  ['another port’s corner on a line', [straight, [at(50, 40), at(50, 0), at(90, 40)]], []],
])('%s', (_, routes, expected) => {
  expect(joints(routes)).toEqual(expected);
});
