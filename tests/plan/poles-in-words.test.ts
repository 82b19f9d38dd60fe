import { expect, test } from 'vitest';
import { polesInWords } from '../../src/plan/make/poles-in-words.js';

test.each([
  ['two-pole breaker, 20 A or less', 2],
  ['Single pole fuse', 1],
  ['one-pole breaker', 1],
  ['double-pole breaker', 2],
  ['Three-Pole breaker', 3],
  ['four poles', 4],
  ['3-pole breaker or 3 pole fuses', 3],
  ['two-pole or three-pole breaker', undefined],
  ['fuses in each pole', undefined],
  ['', undefined],
  ['12-pole', undefined],
  ['1.2 pole', undefined],
  ['two-polearm', undefined],
  ['someone pole', undefined],
])('%s: %s', (words, poles) => {
  expect(polesInWords(words)).toBe(poles);
});
