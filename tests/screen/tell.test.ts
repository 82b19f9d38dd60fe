import { saying } from '../in-english.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { OpenItem, JobItem } from '../../src/model/open-item.js';
import { defaultSettings, planJob, readListText } from '../../src/index.js';
import { printable, textTable } from '../../src/screen/text-table.js';
import { batchTable, draftsText, itemsText } from '../../src/screen/tell.js';

type Some = Partial<OpenItem> & { readonly message?: string };
const item = ({ message = 'The run from ARR to INV has no length.', ...more }: Some = {}): OpenItem => ({
  code: 'fact/run-length',
  severity: 'missing',
  values: saying(message, { expected: 'a length', hint: 'Measure it.' }),
  who: 'installer',
  file: 'a.csv',
  line: 3,
  column: 'run_length (ft)',
  equipment: 'ARR',
  ...more,
});
const of = (job: string, more: Some = {}): JobItem => ({ job, item: item(more) });

describe('printable', () => {
  it('leaves plain text as it is', () => {
    expect(printable('Ünïcode µ 漢字, "quoted" <b>')).toBe('Ünïcode µ 漢字, "quoted" <b>');
  });
  it('shows what would steer a terminal or turn text around', () => {
    expect(printable('a\u001b[2Jb\nc\u202ed\0')).toBe('a\\u001b[2Jb\\nc\\u202ed\\u0000');
  });
  it('says how much it leaves out', () => {
    expect(printable('x'.repeat(5_000_000), 10)).toBe('xxxxxxxxxx… (4999990 more characters)');
  });
  it('never lets a control character through', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        expect(printable(text)).not.toMatch(/[\p{Cc}\u202a-\u202e\u2066-\u2069]/u);
      }),
    );
  });
});

describe('textTable', () => {
  it('aligns its columns, numbers to the right', () => {
    const table = textTable(
      [{ heading: 'job' }, { heading: 'n', align: 'right' }],
      [
        ['A', '1'],
        ['LONGER', '12'],
      ],
    );
    expect(table).toBe('job      n\n------  --\nA        1\nLONGER  12\n');
  });
});

describe('itemsText', () => {
  it('shows at most five of one kind a column and counts the rest', () => {
    const items = Array.from({ length: 9 }, (_, i) =>
      of('A', { line: i + 2, message: `Row ${String(i)} has no length.` }),
    );
    const text = itemsText(items, false);
    expect(text.match(/has no length/g)).toHaveLength(5);
    expect(text).toContain('and 4 more of fact/run-length in a.csv');
  });
  it('hides no fault of one column behind those of another', () => {
    const filled = Array.from({ length: 9 }, (_, i) =>
      of('A', { line: i + 2, column: 'run_length', message: `Row ${String(i)} has no length.` }),
    );
    const kind = of('A', { line: 20, column: 'kind', message: 'The kind can’t be understood.' });
    const text = itemsText([...filled, kind], false);
    expect(text).toContain('The kind can’t be understood.');
    expect(text).toContain('and 4 more of fact/run-length in a.csv, run_length');
  });
  it('says the same gap of several jobs once, with their number', () => {
    const message = 'No part in your catalogue is listed for ungrounded systems.';
    const text = itemsText(
      ['A', 'B', 'C'].map((job) => of(job, { message, code: 'part/none' })),
      false,
    );
    expect(text.match(/ungrounded systems/g)).toHaveLength(1);
    expect(text).toContain('3 jobs');
  });
  it('keeps two items of one job apart', () => {
    expect(
      itemsText([of('A', { line: 3 }), of('A', { line: 4 })], false).match(/has no length/g),
    ).toHaveLength(2);
  });
  it('counts what jobs have to confirm, unless it is asked for', () => {
    const confirm = of('A', { severity: 'confirm', message: 'The basis is a default.' });
    expect(itemsText([confirm], false)).toContain('1 default or assumption to confirm in 1 job');
    expect(itemsText([confirm], true)).toContain('The basis is a default.');
  });
  it('always shows what belongs to no job', () => {
    expect(itemsText([of('', { severity: 'confirm', message: 'The part X is left out.' })], false)).toContain(
      'X is left',
    );
  });
  describe('a column that nobody reads', () => {
    const unread = of('', {
      severity: 'confirm',
      code: 'heading/unknown',
      message: 'The column Model is not read.',
    });
    const blank = Array.from({ length: 7 }, (_, i) =>
      of('A', { line: i + 2, code: 'row/kind-missing', message: `Row ${String(i)} has no kind.` }),
    );
    it('is told first, and the rows without a kind that it may cause in one line with their number', () => {
      const text = itemsText([...blank, unread], false);
      expect(text.indexOf('Model is not read')).toBeLessThan(
        text.indexOf('7 of row/kind-missing (lines 2 to 8)'),
      );
      expect(text).not.toContain('has no kind.');
      expect(text).toContain('maybe why 7 items below');
      expect(text.match(/Model is not read/g)).toHaveLength(1);
    });
    it('leads when a list is read: a purchase list whose column of models has a heading of its own', () => {
      const csv = 'Job,Tag,Zqx of goods\nJ,A,Roof set\nJ,B,Wall set\nJ,C,Shed set\n';
      const { jobs, items } = readListText('buy.csv', csv, { settings: defaultSettings() });
      const all = [
        ...items.map((item) => ({ job: '', item })),
        ...jobs.flatMap((job) =>
          planJob(job, { catalogue: undefined, settings: defaultSettings() }).openItems.map((item) => ({
            job: job.job,
            item,
          })),
        ),
      ];
      const text = itemsText(all, false);
      expect(text).toContain('maybe why');
      expect(text.indexOf('Zqx of goods')).toBeLessThan(text.indexOf('kind'));
    });
    it('of another file stays among what is to confirm', () => {
      const text = itemsText([...blank, { ...unread, item: { ...unread.item, file: 'other.csv' } }], false);
      expect(text.indexOf('Model is not read')).toBeGreaterThan(text.indexOf('Row 0 has no kind'));
      expect(text).not.toContain('maybe why');
    });
    it('causes no fact of a column that the file has', () => {
      const text = itemsText([of('A', { column: 'Length' }), unread], false);
      expect(text).not.toContain('maybe why');
      expect(itemsText([of('A', { column: '' }), unread], false)).toContain('maybe why 1 item below');
    });
  });
  it('lists what can change more first', () => {
    const parts = of('A', { code: 'choose/no-catalogue', message: 'There is no catalogue.' });
    const kind = of('B', { code: 'fact/kind', message: 'It has no kind.' });
    const text = itemsText([parts, kind], false);
    expect(text.indexOf('no kind')).toBeLessThan(text.indexOf('no catalogue'));
  });
  it('says nothing where there is nothing', () => {
    expect(itemsText([], true)).toBe('');
  });
});

describe('the batch', () => {
  const lines = [
    { job: 'A', folder: 'out/A', status: 'complete', protectors: 3, missing: 0, conflict: 0, confirm: 4 },
    { job: 'B', folder: 'out/B', status: 'draft', protectors: 2, missing: 1, conflict: 1, confirm: 0 },
  ] as const;
  it('is a table with one line a job', () => {
    const rows = batchTable(lines).trimEnd().split('\n');
    expect(rows).toHaveLength(4);
    expect(rows[3]).toMatch(/^B +draft +2 +1 +1 +0 +out\/B$/);
  });
  it('says for each draft in one line why', () => {
    const text = draftsText(lines, [of('B'), of('B', { severity: 'conflict', message: 'Nothing fits.' })]);
    expect(text).toBe(
      'B is a draft: 1 fact is missing, 1 conflict. The run from ARR to INV has no length. Nothing fits.\n',
    );
  });
});
