import { readFileSync } from 'node:fs';
import { describe, expect, it, test } from 'vitest';
import { defaultSettings } from '../../src/model/settings.js';
import { planJob } from '../../src/plan/plan-job.js';
import { readLibrary } from '../../src/read/company/library.js';
import { readLists, readListText, type ReadResult } from '../../src/read/list/lists.js';
import { readColumnMap } from '../../src/read/table/column-map.js';
import { itemsOf } from './plain.js';

/** Lists in the manner of ten design sources, none of which was made for us: what is read, what is asked, and that nothing is dropped. */

interface Source {
  readonly list: string;
  readonly shows: string;
  readonly columns?: string;
  readonly library?: string;
  /** Kind by tag; null: it is asked for. */
  readonly kinds: Readonly<Record<string, string | null>>;
  /** Lines left out as titles, totals or notes. */
  readonly left: readonly number[];
  /** `code:line` of each item of the reading. */
  readonly items: readonly string[];
  /** Codes of items that keep the plan a draft, among them. */
  readonly draft: readonly string[];
  readonly states: readonly (readonly [tag: string, field: string, value: unknown])[];
}
const folder = 'fixtures/lists/';
const { sources } = JSON.parse(readFileSync(`${folder}sources.json`, 'utf8')) as {
  sources: readonly Source[];
};
const settings = defaultSettings();

async function readSource({ list, columns, library }: Source): Promise<ReadResult> {
  const map = columns === undefined ? null : await readColumnMap(folder + columns);
  expect(map?.unreadable ?? []).toEqual([]);
  return readLists({
    lists: [folder + list],
    settings,
    columns: map?.map ?? undefined,
    library: library === undefined ? undefined : (await readLibrary(folder + library)).library,
  });
}

const rowsOf = (result: ReadResult): ReadResult['jobs'][number]['rows'] => result.jobs.flatMap((j) => j.rows);
const valueAt = (result: ReadResult, tag: string, field: string): unknown =>
  rowsOf(result)
    .filter((row) => row.facts.tag?.value === tag)
    .flatMap((row) => Object.entries(row.facts).filter(([name]) => name === field))
    .map(([, fact]) => fact.value)[0];

describe.each(sources.map((s) => [s.list, s.shows, s] as const))('%s: %s', (list, _shows, source) => {
  it('is read as far as it says something, and asked about where it doesn’t', async () => {
    const result = await readSource(source);
    const kinds = rowsOf(result).map((row) => [row.facts.tag?.value ?? '', row.facts.kind?.value ?? null]);
    expect(Object.fromEntries(kinds)).toEqual(source.kinds);
    expect(itemsOf(result).map((i) => `${i.code}:${i.line}`)).toEqual(source.items);
    for (const [tag, field, value] of source.states)
      expect([tag, field, valueAt(result, tag, field)]).toEqual([tag, field, value]);
  });

  it('has no line and no column of which nothing is said', async () => {
    const result = await readSource(source);
    const [understood] = result.understood;
    const left = understood?.leftOut.map((l) => l.line) ?? [];
    expect(left).toEqual(source.left);
    const accounted = [
      ...rowsOf(result).map((row) => row.line),
      ...left,
      understood?.headingLine,
      understood?.unitsLine,
    ];
    const lines = readFileSync(folder + list, 'utf8').split(/\r?\n/);
    const filled = lines.flatMap((line, i) => (/[^\s,;]/.test(line) ? [i + 1] : []));
    expect(filled.filter((line) => !accounted.includes(line))).toEqual([]);
    const items = itemsOf(result);
    const unread = (understood?.columns ?? []).filter((c) => c.field === null && c.how !== 'left-out');
    expect(unread.filter((c) => !items.some((i) => i.column === c.heading))).toEqual([]);
    if (left.length > 0) expect(items.map((i) => i.code)).toContain('file/rows-left-out');
  });

  it('is a draft for what it lacks', async () => {
    const result = await readSource(source);
    const plans = result.jobs.map((job) => planJob(job, { catalogue: undefined, settings }));
    const grave = new Set(
      plans.flatMap((p) => p.openItems.filter((i) => i.severity !== 'confirm').map((i) => i.code)),
    );
    for (const code of source.draft) expect([...grave]).toContain(code);
    // Without a catalogue no plan is complete; what is left out with figures is told with each plan all the same.
    const told = plans.flatMap((p) => p.openItems.map((i) => i.code));
    expect(told.includes('row/figures-left-out')).toBe(
      source.items.some((i) => i.startsWith('row/figures-left-out')),
    );
  });
});

test('there are ten of them', () => {
  expect(sources.length).toBeGreaterThanOrEqual(10);
});

describe('a column of indices', () => {
  test.each(['String #', 'String no.', 'String Nr', 'String'])('"%s" is the index of a string', (heading) => {
    const text = `tag,kind,${heading}\nA,array,1\nA,array,2\n`;
    const result = readListText('list.csv', text, { settings });
    expect(itemsOf(result)).toEqual([]);
    expect(rowsOf(result).map((row) => row.facts.string?.value)).toEqual(['1', '2']);
  });
  test.each(['Item #', 'Item no.', 'No.', '#', 'Module #', 'MPPT no.', 'Cell Nr', 'Line', 'Count #'])(
    '"%s" is no count, and none is offered',
    (heading) => {
      const { understood } = readListText('list.csv', `tag,kind,${heading}\nA,array,1\n`, { settings });
      expect(understood[0]?.columns[2]).toMatchObject({ field: null, nearest: null });
    },
  );
  test('but the number of something is one', () => {
    const { understood } = readListText(
      'list.csv',
      'tag,kind,No. of modules,Number of strings\nA,array,1,2\n',
      {
        settings,
      },
    );
    expect(understood[0]?.columns.map((c) => c.field)).toEqual([
      'tag',
      'kind',
      'modules',
      'strings_in_parallel',
    ]);
  });
});
