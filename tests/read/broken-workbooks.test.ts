import { expect, it } from 'vitest';
import { workbookCase } from '../../bench/fuzz-workbooks.mjs';
import { sheetData, xlsxParts, zipOf } from '../../bench/workbooks.mjs';
import { defaultSettings } from '../../src/model/settings.js';
import { readListText } from '../../src/read/list/lists.js';
import { saidOf } from '../told.js';
import { itemsOf, plainJob } from './plain.js';

const settings = defaultSettings();
const SEED = 20261130;

it('mutated workbooks are read, or said to be none, each item with a sentence and a row', () => {
  const ends = { read: 0, not: 0 };
  for (let number = 0; number < 150; number += 1) {
    const { name, list } = workbookCase(SEED, number);
    const result = readListText(name, list, { settings });
    ends[result.jobs.length > 0 ? 'read' : 'not'] += 1;
    expect(result.jobs.length + result.unreadable.length, name).toBeGreaterThan(0);
    for (const item of [...result.unreadable, ...result.items, ...result.jobs.flatMap((job) => job.items)]) {
      expect(String(saidOf(item).message), item.code).not.toMatch(/undefined|NaN|\[object|^$/);
      expect(item.line, `${name} ${item.code}`).toBeGreaterThanOrEqual(1);
    }
  }
  // Were all of them of one sort, the mutations would try nothing.
  expect(ends.read).toBeGreaterThan(40);
  expect(ends.not).toBeGreaterThan(20);
});

it('a workbook of which one byte changed says what it said, or is damaged', () => {
  const grid = [
    ['job', 'tag', 'kind', 'connects_to', 'rating_a'],
    ['J', 'SVC', 'service', null, 200],
    ['J', 'MP', 'panel', 'SVC', 100],
  ];
  const bytes = zipOf(xlsxParts([{ name: 'S', content: sheetData(grid) }]));
  const [whole] = readListText('list.xlsx', bytes, { settings }).jobs;
  const said = whole && plainJob(whole);
  let damaged = 0;
  for (let at = 0; at < bytes.length; at += 3) {
    const changed = Uint8Array.from(bytes);
    changed[at] = (changed[at] ?? 0) ^ 0x10;
    const result = readListText('list.xlsx', changed, { settings });
    if (result.unreadable.length > 0) {
      damaged += 1;
      continue;
    }
    expect(result.jobs.map(plainJob), `byte ${String(at)}`).toEqual([said]);
    expect(itemsOf(result), `byte ${String(at)}`).toEqual([]);
  }
  expect(damaged).toBeGreaterThan(bytes.length / 6);
});
