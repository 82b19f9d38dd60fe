import { readFileSync } from 'node:fs';
import { describe, expect, it, test } from 'vitest';
import { defaultSettings } from '../../src/model/settings.js';
import { planJob } from '../../src/plan/plan-job.js';
import { readCatalogue } from '../../src/read/company/catalogue.js';
import { readColumnMap } from '../../src/read/table/column-map.js';
import { readLibrary } from '../../src/read/company/library.js';
import { readLists, type ReadResult } from '../../src/read/list/lists.js';
import { difference, plainPlan } from './plain-plan.js';
import { itemsOf, plainJob } from './plain.js';

interface Manifest {
  readonly twins: readonly {
    list: string;
    shows: string;
    columns?: string;
    library?: string;
    codes: string[];
  }[];
  readonly errors: readonly { list: string; unreadable?: boolean; items: [string, number, string][] }[];
}
const folder = 'fixtures/lists/';
const { twins, errors } = JSON.parse(readFileSync(`${folder}lists.json`, 'utf8')) as Manifest;
const settings = defaultSettings();

async function read(list: string, columns?: string, library?: string): Promise<ReadResult> {
  const map = columns === undefined ? null : await readColumnMap(folder + columns);
  expect(map?.unreadable ?? []).toEqual([]);
  const read = library === undefined ? undefined : (await readLibrary(folder + library)).library;
  return readLists({ lists: [folder + list], settings, columns: map?.map ?? undefined, library: read });
}

describe('an awkward list says what its tidy twin says', () => {
  test.each(twins.map((t) => [t.list, t.shows, t] as const))(
    '%s: %s',
    async (list, _shows, { columns, library, codes }) => {
      const awkward = await read(list, columns, library);
      const tidy = await read(`tidy/${list.replace(/\.\w+$/, '.csv')}`);
      expect(itemsOf(tidy)).toEqual([]);
      expect(awkward.jobs.map(plainJob)).toEqual(tidy.jobs.map(plainJob));
      expect(tidy.jobs.length).toBeGreaterThan(0);
      expect(itemsOf(awkward).map((i) => i.code)).toEqual(codes);
      const { catalogue } = await readCatalogue('fixtures/demo/catalogue.csv');
      const plans = (result: ReadResult): unknown[] =>
        result.jobs.map((job) => plainPlan(planJob(job, { catalogue, settings }), codes));
      expect(difference(plans(awkward), plans(tidy))).toBe('');
    },
  );
});

describe('a list that cannot be read as it stands says where and why', () => {
  test.each(errors.map((e) => [e.list, e] as const))('%s', async (list, { items, unreadable }) => {
    const result = await read(list);
    expect(itemsOf(result).map((i) => [i.code, i.line, i.column])).toEqual(items);
    expect(result.unreadable.length > 0).toBe(unreadable === true);
  });
});

it('has at least twelve awkward lists', () => {
  expect(twins.length).toBeGreaterThanOrEqual(12);
});
