import { describe, expect, it } from 'vitest';
import { volts } from '../../src/model/quantity.js';
import { isSameReason, reason, reasonKey } from '../../src/model/reason.js';

const bears = (converter: string, value: number) =>
  reason('needed/array-rated-by-converter', { converter, bears: volts(value) });
const arrays = (...tags: string[]) => reason('array-voltage/stand-in', { arrays: tags });

describe('reasons that say the same', () => {
  it.each([
    ['two made alike', bears('INV', 600), bears('INV', 600), true],
    ['another figure', bears('INV', 600), bears('INV', 500), false],
    ['another tag', bears('INV', 600), bears('INV-2', 600), false],
    ['alike lists', arrays('A', 'B'), arrays('A', 'B'), true],
    ['a longer list', arrays('A', 'B'), arrays('A'), false],
    ['a list in another order', arrays('A', 'B'), arrays('B', 'A'), false],
    ['another code without values', reason('long-run/indoors'), reason('long-run/no-run'), false],
    [
      'reasons within',
      reason('several', { reasons: [arrays('A'), bears('INV', 1)] }),
      reason('several', { reasons: [arrays('A'), bears('INV', 1)] }),
      true,
    ],
  ])('%s', (_, a, b, same) => {
    expect(isSameReason(a, b)).toBe(same);
    expect(reasonKey(a) === reasonKey(b)).toBe(same);
  });

  it('none is the same as none alone', () => {
    expect(isSameReason(null, null)).toBe(true);
    expect(isSameReason(null, reason('long-run/indoors'))).toBe(false);
    expect(isSameReason(reason('long-run/indoors'), null)).toBe(false);
  });

  it('values named in another order are as their text says', () => {
    const { code, values } = bears('INV', 600);
    const turned = { code, values: Object.fromEntries(Object.entries(values).reverse()) } as typeof a;
    const a = bears('INV', 600);
    expect(isSameReason(a, turned)).toBe(reasonKey(a) === reasonKey(turned));
  });
});
