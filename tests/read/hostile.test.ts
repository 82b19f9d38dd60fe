import { saidOf } from '../told.js';
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { FIELD_NAMES } from '../../src/model/fields.js';
import { defaultSettings } from '../../src/model/settings.js';
import { readListText, type ReadResult } from '../../src/read/list/lists.js';
import { itemsOf, read } from './plain.js';

const said = (result: ReadResult): string[] => itemsOf(result).map((i) => `${i.code}:${i.line}:${i.column}`);
const rows = (count: number, row: (i: number) => string): string =>
  Array.from({ length: count }, (_, i) => row(i)).join('\n');

// `tests/attacks/limits.test.ts` reads one of as many as are allowed.
it('refuses a file of a million rows in one sentence', () => {
  const list = `job,tag,kind\n${rows(1_000_000, (i) => `J-${i},A,array`)}\n`;
  const refused = readListText('million.csv', list, { settings: defaultSettings() });
  expect(refused.jobs).toEqual([]);
  expect(refused.unreadable.map((item) => [item.code, saidOf(item).message])).toEqual([
    ['file/too-many-rows', 'million.csv has more than 100000 rows: it isn’t read.'],
  ]);
});

describe('one message each', () => {
  const big = 'x'.repeat(5_000_000);
  test.each([
    [
      'in a text',
      `job,tag,kind,description\nJ,A,array,${big}\nJ,B,battery,fine\n`,
      'cell/too-large:2:description',
    ],
    [
      'in a figure',
      `job,tag,kind,run_length\nJ,A,array,${big}\nJ,B,battery,1\n`,
      'cell/too-large:2:run_length',
    ],
    ['in a tag, quoted', `job,tag,kind\nJ,"${big}",array\nJ,B,battery\n`, 'cell/too-large:2:tag'],
    ['in the heading', `job,tag,kind,${big}\nJ,A,array,\nJ,B,battery,\n`, undefined],
    [
      'of digits',
      `job,tag,kind,run_length\nJ,A,array,${'1'.repeat(5_000_000)}\nJ,B,battery,1\n`,
      'cell/too-large:2:run_length',
    ],
  ])('5 MB in one cell, %s', (_, text, expected) => {
    const result = read(text);
    expect(result.jobs[0]?.rows).toHaveLength(2);
    const [item, ...more] = [...result.items, ...result.jobs.flatMap((j) => j.items)];
    expect(more).toEqual([]);
    if (expected !== undefined) expect(said(result)).toEqual([expected]);
    expect(JSON.stringify(item ?? {}).length).toBeLessThan(1000);
  });

  it('NUL bytes', () => {
    const result = read(Buffer.from('job,tag,kind,quantity\nJ,A\0,array,4\0 0\nJ,B,battery,2\n'));
    expect(said(result)).toEqual(['file/control-characters:2:']);
    expect(result.jobs[0]?.rows[0]?.facts.quantity).toBeUndefined();
    expect(result.jobs[0]?.rows[0]?.unreadable.has('quantity')).toBe(true);
    expect(result.jobs[0]?.rows[1]?.facts.quantity?.value).toBe(2);
  });

  it('nothing but NULs', () => {
    expect(read(Buffer.alloc(100_000)).unreadable).toHaveLength(1);
  });

  it('an unclosed quote on line 2 of 10,000', () => {
    const list = `job,tag,kind,place\nJ,A,array,"Hut\n${rows(9998, (i) => `J,T${i},load,"Hall, ${i}"`)}\n`;
    const result = read(list);
    expect(said(result)).toEqual(['file/quote-open:2:']);
    expect(result.jobs[0]?.rows).toHaveLength(9998);
    expect(result.jobs[0]?.rows[0]?.line).toBe(3);
  });

  it('an unclosed quote on every line', () => {
    const result = read(`job,tag,kind,place\n${rows(10_000, (i) => `J,T${i},load,"Hall`)}\n`);
    expect(result.unreadable).toHaveLength(1);
  });

  it('10,000 columns', () => {
    const heading = `job,tag,kind,${Array.from({ length: 10_000 }, (_, i) => `c${i}`).join(',')}`;
    const result = read(`${heading}\nJ,A,array,${'1,'.repeat(9_999)}1\n`);
    expect(said(result)).toEqual(['heading/many-unknown:1:c0']);
    expect(result.jobs[0]?.rows[0]?.facts.kind?.value).toBe('array');
  });

  it('`__proto__` as heading, job, tag, kind and place', () => {
    const result = read(
      'job,tag,kind,place,__proto__,constructor\n__proto__,__proto__,__proto__,__proto__,x,x\n',
    );
    expect(said(result)).toEqual([
      'heading/unknown:1:__proto__',
      'heading/unknown:1:constructor',
      'cell/wrong:2:kind',
    ]);
    expect(result.jobs.map((j) => j.job)).toEqual(['__proto__']);
    expect(result.jobs[0]?.rows[0]?.facts.tag?.value).toBe('__proto__');
    expect(Object.keys(Object.prototype)).toEqual([]);
  });

  it('right-to-left marks', () => {
    const result = read('job,tag,kind,connects_to\nJ,\u202eA\u202c,array,B\nJ,B\u200f,battery,\u200eA\n');
    expect(said(result)).toEqual(['file/unseen-marks:2:']);
    expect(result.jobs[0]?.rows.map((r) => [r.facts.tag?.value, r.facts.connects_to?.value.tag])).toEqual([
      ['A', 'B'],
      ['B', 'A'],
    ]);
  });
});

it('a formula in every field is text where text may stand, and one message where not', () => {
  const result = read(`${FIELD_NAMES.join(',')}\n${FIELD_NAMES.map(() => '=1+1').join(',')}\n`);
  const [job] = result.jobs;
  expect(job?.job).toBe('=1+1');
  expect(job?.rows[0]?.facts.description?.value).toBe('=1+1');
  expect(job?.rows[0]?.facts.quantity).toBeUndefined();
  const places = said(result);
  expect(new Set(places).size).toBe(places.length);
  // The language of the owner's sheet is text, but none that the sheet is written in.
  expect(new Set(itemsOf(result).map((i) => i.code))).toEqual(
    new Set(['cell/wrong', 'cell/language-unknown']),
  );
});

it('a text of any sort is read or refused, with a code and a line, and never throws', () => {
  const piece = fc.oneof(
    fc.constantFrom(
      ',',
      ';',
      '\t',
      '|',
      '"',
      '""',
      '\n',
      '\r\n',
      '\r',
      '\0',
      '\u202e',
      '\ufeff',
      ' ',
      'sep=;',
      '#REF!',
      'Total',
      '1,234',
    ),
    fc.constantFrom(
      'job',
      'tag',
      'kind',
      'run_length (ft)',
      'array',
      'J-1',
      'A-1',
      '12',
      '=1+1',
      '__proto__',
      'Maker / Model',
    ),
    fc.string({ maxLength: 6 }),
  );
  const texts = fc.array(piece, { maxLength: 80 }).map((pieces) => pieces.join(''));
  const headed = fc.boolean();
  fc.assert(
    fc.property(texts, headed, fc.boolean(), (text, heading, bytes) => {
      const list = `${heading ? 'job,tag,kind,run_length (ft),place\n' : ''}${text}`;
      const result = read(bytes ? Buffer.from(list, 'latin1') : list);
      for (const item of itemsOf(result)) {
        expect(item.code).toMatch(/^[a-z-]+\/[a-z-]+$/);
        expect(Number.isInteger(item.line)).toBe(true);
        expect(item.line).toBeLessThanOrEqual(list.split(/\r\n?|\n/).length);
      }
      expect(result.jobs.length + result.unreadable.length).toBeGreaterThan(0);
    }),
    { numRuns: 3000 },
  );
});

it('refuses a file that no list is as large as, in one message', () => {
  // Zeroed pages cost nothing until they are read.
  const result = read(Buffer.alloc(200e6 + 1));
  expect(said(result)).toEqual(['file/too-large:1:']);
  expect(result.jobs).toEqual([]);
});
