import { describe, expect, it } from 'vitest';
import { ITEM_ORDER } from '../../src/model/item-groups.js';
import { byLead, inOrder, rankOf } from '../../src/model/item-order.js';
import type { OpenItem } from '../../src/model/open-item.js';
import { allEntries } from '../words/message-entries.js';

const catalogue = (await allEntries()).map(({ entry }) => entry.kind);
const ranked = ITEM_ORDER.flat();
const severities = new Map(catalogue.map((kind) => [kind.code, kind.severity]));

function item(code: string, some: Partial<OpenItem> = {}): OpenItem {
  const severity = severities.get(code);
  if (!severity) throw new Error(`no message has the code ${code}`);
  return {
    code,
    severity,
    who: 'designer',
    values: {},
    file: 'l.csv',
    line: 2,
    column: '',
    equipment: 'A',
    ...some,
  };
}

describe('the order of items', () => {
  it('holds every code of the catalogue once, and no other', () => {
    expect(catalogue.map((kind) => kind.code).filter((code) => !ranked.includes(code))).toEqual([]);
    expect(ranked.filter((code) => !severities.has(code))).toEqual([]);
    expect(ranked.filter((code, i) => ranked.indexOf(code) !== i)).toEqual([]);
  });

  it('puts a code that it doesn’t know last', () => {
    expect(rankOf('nothing/known')).toBeGreaterThan(rankOf('default/used'));
  });

  it.each([
    ['a column that isn’t read leads the rows without a kind', 'heading/tag-missing', 'row/kind-missing'],
    ['what a row is leads what it is joined to', 'row/kind-missing', 'fact/connects-to'],
    ['a connection leads its length', 'fact/connects-to', 'fact/run-length'],
    ['where protection goes leads what it bears', 'fact/place', 'fact/voc-stc'],
    ['what it bears leads which part', 'fact/lowest-temp', 'choose/no-catalogue'],
    ['a cell that can’t be read leads what no part fits', 'cell/wrong', 'choose/none-fits'],
    ['a broken file leads a cell', 'file/quote-open', 'cell/wrong'],
    ['what feeds a place leads a part that may not protect', 'place/feed-unknown', 'choose/may-not-protect'],
    ['a part that may not protect leads the file', 'choose/may-not-protect', 'file/encoding-guessed'],
    ['an aim that is missed leads every default', 'choose/shortfall', 'default/basis'],
    ['every other thing to confirm leads a default', 'photo/no-tag', 'default/used'],
  ])('%s', (_, first, second) => {
    expect(severities.get(first)).toBe(severities.get(second));
    expect(byLead(item(first), item(second))).toBeLessThan(0);
    expect(byLead(item(second), item(first))).toBeGreaterThan(0);
  });

  it.each([
    [{ field: 'basis' }, { field: 'earthing' }],
    [{ field: 'a' }, { field: 'a b' }],
    [{ field: 'a' }, { field: 'a-b' }],
    [{ field: 'a' }, { field: 'a!' }],
    [{ field: 'a"' }, { field: 'aa' }],
    [{ field: 'ä' }, { field: 'b' }],
    [
      { field: 'same', value: 10 },
      { field: 'same', value: 9 },
    ],
    [{ field: 'x' }, { value: 'x' }],
    [{ value: 1 }, { value: 'one' }],
    [{}, { field: 'x' }],
  ])('of items alike in all else is that of their values as text: %j and %j', (a, b) => {
    const texts = [a, b].map((values) => JSON.stringify(values)).sort();
    for (const pair of [
      [a, b],
      [b, a],
    ]) {
      const sorted = inOrder(pair.map((values) => item('default/used', { values })));
      expect(sorted.map(({ values }) => JSON.stringify(values))).toEqual(texts);
    }
  });

  it('is severity, then rank, then equipment, code, values, line', () => {
    const wanted = [
      item('choose/none-fits', { equipment: 'Z' }),
      item('fact/kind', { equipment: 'A10' }),
      item('fact/connects-to', { equipment: 'A2' }),
      item('site/pass-unclear', { equipment: 'A2', values: { tag: 'a' } }),
      item('site/pass-unclear', { equipment: 'A2', values: { tag: 'b' }, line: 3 }),
      item('site/pass-unclear', { equipment: 'A2', values: { tag: 'b' }, line: 4 }),
      item('fact/connects-to', { equipment: 'A10' }),
      item('place/sub-panel', { equipment: 'A1' }),
      item('default/used', { equipment: '' }),
    ];
    const mixed = [...wanted.slice(4), ...wanted.slice(0, 4)].toReversed();
    expect(inOrder(mixed)).toEqual(wanted);
  });
});
