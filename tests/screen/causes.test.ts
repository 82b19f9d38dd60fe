import { describe, expect, it } from 'vitest';
import { defaultSettings, planJob, readListText, type JobItem, type OpenItem } from '../../src/index.js';
import { itemsText } from '../../src/screen/tell.js';

const settings = defaultSettings();

/** What a run tells of one list, planned. */
function toldOf(csv: string, file = 'list.csv'): string {
  const { jobs, items, unreadable } = readListText(file, csv, { settings });
  expect(unreadable).toEqual([]);
  const all: JobItem[] = [
    ...items.map((item: OpenItem) => ({ job: '', item })),
    ...jobs.flatMap((job) =>
      planJob(job, { catalogue: undefined, settings }).openItems.map((item) => ({ job: job.job, item })),
    ),
  ];
  return itemsText(all, false);
}

const codesIn = (text: string): string[] =>
  [...text.matchAll(/\[([a-z0-9/-]+)\]$/gm)].map(([, code]) => code ?? '');

const PARTS = [
  'Job,Tag,Part No.,Connected to,Cable length (ft),Location',
  ...['A', 'B', 'C', 'D', 'E', 'F', 'G'].map((tag) => `J,${tag},EX-${tag},,4,House / hall`),
].join('\n');

describe('a cause stands before what comes of it, which is one line', () => {
  it.each([
    [
      'a column of models that isn’t read, and rows without a kind',
      PARTS,
      'heading/unknown',
      /missing {2}list\.csv {2}7 items may come of it: 7 of row\/kind-missing \(lines 2 to 8\)/,
      ['row/kind-missing'],
    ],
    [
      'a column of maker and model in one',
      'Job,Tag,Maker / Model,Location\nJ,A,X EX-1,House\nJ,B,X EX-2,House\n',
      'heading/two-fields',
      /2 of row\/kind-missing \(lines 2 to 3\)/,
      ['row/kind-missing'],
    ],
    [
      'tags under a heading that isn’t known, and what connects to them',
      'Job,Pos,Type,Connected to\nJ,MP,panel,SVC\nJ,SUB,panel,MP\nJ,SVC,service,\n',
      'heading/tag-missing',
      /2 of site\/connection-to-nothing \(lines 2 to 3\)/,
      ['site/connection-to-nothing'],
    ],
    [
      'a misspelt heading of kinds',
      'Job,Tag,Kiind,Location\nJ,A,panel,House\nJ,B,service,House\n',
      'heading/near',
      /2 of row\/kind-missing \(lines 2 to 3\)/,
      ['row/kind-missing'],
    ],
    [
      'decimal marks that can be read two ways',
      'Job;Tag;Type;Connected to;Cable length (m)\nJ;A;panel;B;1,250\nJ;C;panel;B;2,125\nJ;B;service;;\n',
      'file/decimal-unsure',
      /2 of cell\/wrong \(lines 2 to 3\)/,
      ['cell/wrong'],
    ],
    [
      'an encoding that was guessed',
      'Job,Tag,Type\nJ,A,Verteilerk\u00e4sten\nJ,B,Anschlu\u00dfs\u00e4ule\n',
      'file/encoding-guessed',
      /2 of cell\/wrong \(lines 2 to 3\)/,
      ['cell/wrong'],
    ],
  ])('%s', (what, csv, cause, folded, effects) => {
    const bytes = what.includes('encoding') ? Uint8Array.from(csv, (c) => c.charCodeAt(0)) : csv;
    const { jobs, items } = readListText('list.csv', bytes, { settings });
    const all = [
      ...items.map((item) => ({ job: '', item })),
      ...jobs.flatMap((job) =>
        planJob(job, { catalogue: undefined, settings }).openItems.map((item) => ({ job: job.job, item })),
      ),
    ];
    const text = itemsText(all, false);
    expect(codesIn(text)[0], text).toBe(cause);
    expect(text).toMatch(folded);
    for (const effect of effects) expect(codesIn(text)).not.toContain(effect);
    // Nothing is lost: what is folded is counted.
    for (const effect of effects) expect(all.map(({ item }) => item.code)).toContain(effect);
  });
});

describe('what does not come of a column', () => {
  it.each([
    ['prices', 'Each ($)', ['120.00', '95.50', '3.20']],
    ['indices', 'Item #', ['1', '2', '3']],
    ['nothing', 'Zqx', ['', '', '']],
  ])('a kind, of %s', (_, heading, cells) => {
    const rows = cells.map((cell, i) => `J,T-${String(i)},${cell},House`);
    const text = toldOf(`Job,Tag,${heading},Location\n${rows.join('\n')}\n`);
    expect(codesIn(text)).toContain('row/kind-missing');
    expect(text).not.toContain('may come of');
  });

  it('anything of another file', () => {
    const blank = toldOf('Job,Tag,Location\nJ,A,House\nJ,B,House\n', 'other.csv');
    expect(blank).not.toContain('may come of');
  });
});

it('says the same column of many exports once', () => {
  const all = ['a.csv', 'b.csv', 'c.csv'].flatMap((file) => {
    const { jobs, items } = readListText(file, PARTS.replaceAll('J,', `${file},`), { settings });
    return [
      ...items.map((item) => ({ job: '', item })),
      ...jobs.flatMap((job) => job.items.map((item) => ({ job: job.job, item }))),
    ];
  });
  const text = itemsText(all, false);
  expect(text.match(/"Part No\."/g)).toHaveLength(2);
  for (const file of ['a.csv', 'b.csv', 'c.csv']) expect(text).toContain(`${file}  7 items may come of it`);
});
