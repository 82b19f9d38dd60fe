import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { carriedRows, ROWS_FIELD, rowsCarried } from '../../src/site-forms/carried-rows.js';
import { fieldsOf } from '../../src/site-forms/field-names.js';
import { rowsOfValues, type ValueRows } from '../../src/site-forms/value-rows.js';
import { siteForms, type SiteForms } from '../../src/site-forms/rows.js';
import { dataOfCsv } from '../plan/plan-of.js';
import { csvOfSite, sites } from '../plan/sites.js';
import { demoPlans } from '../documents/fixtures/demo-plans.js';

const plan = demoPlans().find(({ job }) => job === 'UF-102');
if (!plan) throw new Error('the demo has no job UF-102');
const forms = siteForms(plan);
const carried = carriedRows(forms);

/** A form that came back with some fields filled in. */
function back(filled: Readonly<Record<string, string>>, from: SiteForms = forms): ValueRows {
  const { name, value } = carriedRows(from);
  const rows = rowsOfValues(new Map([[name, value], ...Object.entries(filled)]));
  if (!rows) throw new Error('the form carries no rows');
  return rows;
}
/** The cells of all rows, as texts. */
const cells = ({ record, readings, facts }: ValueRows): unknown =>
  [record, readings, facts].map((rows) => rows.map((row) => row.cells));
const texts = ({ record, readings, facts }: SiteForms): unknown =>
  [record, readings, facts].map((rows) =>
    rows.map((row: object) =>
      Object.fromEntries(Object.entries(row).map(([heading, cell]) => [heading, String(cell)])),
    ),
  );

describe('a form that came back', () => {
  it('untouched holds the rows of the tables, on every site', () => {
    fc.assert(
      fc.property(sites(), (site) => {
        const own = siteForms(dataOfCsv(csvOfSite(site), { unchecked: true }));
        expect(rowsCarried(carriedRows(own).value)).toEqual(own);
        expect(cells(back({}, own))).toEqual(texts(own));
      }),
      { numRuns: 40, seed: 20_260_302 },
    );
  });

  it('filled in cell by cell holds what the tables filled in cell by cell hold, each with its field', () => {
    const names = [...fieldsOf(forms)];
    const rows = back(Object.fromEntries(names.map(([name]) => [name, `of ${name}`])));
    for (const [name, { of, row, heading }] of names) {
      const { cells: own, fields } = rows[of][row] as { cells: Record<string, string>; fields: object };
      expect([own[heading], (fields as Record<string, string>)[heading]]).toEqual([`of ${name}`, name]);
    }
  });

  it('has the names that record.md gives its fields', () => {
    const names = [...fieldsOf(forms).keys()];
    expect(names).toContain('P-3.serial');
    expect(names).toContain('P-3.1.light.utility-on');
    expect(names).toContain('P-1.1.light.sun');
    expect(names).toContain('P-1.1.volts.sun.ground');
    expect(names.filter((name) => /^A\d+\.ARR-E\.found$/.test(name))).not.toEqual([]);
  });

  it('keeps the place of the plan until another is written', () => {
    expect(back({}).record[0]?.cells.place).toBe('House / garage');
    expect(back({ 'P-1.place': ' House / attic ' }).record[0]?.cells.place).toBe('House / attic');
  });

  it('takes what counts everywhere into the rows that something was written into, and no others', () => {
    const rows = back({
      'all.date': '2025-03-20',
      'all.name': 'crew 2',
      'all.instrument': 'meter 4, 2025-01-10',
      'P-1.serial': 'INV-1',
      'P-1.name': 'crew 1',
      'P-1.1.light.sun': 'lit',
      'P-2.1.light.sun_why_not': 'hour 17, overcast',
    });
    const [first, second] = rows.record;
    expect(first?.cells).toMatchObject({
      date: '2025-03-20',
      name: 'crew 1',
      instrument: 'meter 4, 2025-01-10',
    });
    expect(first?.fields).toMatchObject({ date: 'all.date', name: 'P-1.name', instrument: 'all.instrument' });
    expect(second?.cells).toMatchObject({ date: '', name: '', instrument: '' });
    const read = rows.readings.filter((row) => row.cells.date !== '');
    expect(read.map((row) => [row.cells.protector, row.cells.kind, row.cells.date, row.cells.name])).toEqual([
      ['P-1', 'light', '2025-03-20', 'crew 1'],
      ['P-2', 'light', '2025-03-20', 'crew 2'],
    ]);
  });
});

describe('a form that is none of ours', () => {
  it.each<[string, string]>([
    ['no rows', ''],
    ['no JSON', '{"version":1'],
    ['another version', carried.value.replace('"version":1', '"version":2')],
    ['a row too short', carried.value.replace('["P-1",', '[')],
    ['a row of something else', carried.value.replace('["P-1",', '[{},')],
    ['one housing twice', carried.value.replace('["P-2",', '["P-1",')],
  ])('with %s holds none', (_, value) => {
    expect(rowsOfValues(new Map([[ROWS_FIELD, value]]))).toBeUndefined();
  });

  it('adds nothing by fields that were never asked for', () => {
    const rows = back({ 'P-9.serial': 'x', 'P-1.plan': 'OTHER', '__proto__.serial': 'x', constructor: 'x' });
    expect(cells(rows)).toEqual(texts(forms));
  });
});
