import { readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, it, test } from 'vitest';
import {
  ALL_RULES,
  ColumnMapSchema,
  SettingsSchema,
  catalogueGuide,
  defaultSettings,
  jsonSchemas,
  kindGuide,
  listGuide,
  planJob,
  readCatalogueText,
  readLibraryText,
  readListText,
  rulesAskingField,
  rulesAskingPart,
} from '../../src/index.js';
import { cataloguePage, fieldsPage, fieldText } from '../../src/screen/fields-page.js';
import { EXAMPLE_COLUMN_MAP, EXAMPLE_SETTINGS } from '../../src/screen/form-examples.js';
import { startFiles } from '../../src/screen/start-files.js';
import type { Kind } from '../../src/model/words.js';
import { saidOf } from '../told.js';

const FILES = new Map(startFiles(() => '').map(({ name, text }) => [name, text]));
const file = (name: string): string => FILES.get(name) ?? '';
const FIELDS = listGuide().map(({ field, ...entry }) => ({ ...entry, rules: rulesAskingField(field) }));
const COLUMNS = catalogueGuide().map(({ reads, ...entry }) => ({ ...entry, rules: rulesAskingPart(reads) }));
const settings = defaultSettings();

test.each([
  [
    'docs/fields.md',
    fieldsPage({
      fields: FIELDS,
      kinds: kindGuide(),
      list: file('list.csv'),
      columnMap: EXAMPLE_COLUMN_MAP,
      settings: EXAMPLE_SETTINGS,
      settingsSchema: jsonSchemas()[0]?.text ?? '',
    }),
  ],
  [
    'docs/catalogue.md',
    cataloguePage({
      columns: COLUMNS,
      fields: FIELDS,
      catalogue: file('catalogue.csv'),
      library: file('library.csv'),
    }),
  ],
])('%s is what the program reads by (npm run docs:fields writes it)', (path, page) => {
  if (process.env['UPDATE_DOCS'] === '1') writeFileSync(path, page);
  expect(readFileSync(path, 'utf8')).toBe(page);
});

/** A kind of which a field is, where most kinds make no sense of it. */
const KIND_OF: Readonly<Record<string, Kind>> = {
  ac_in_2: 'inverter-charger',
  ac_out: 'grid-tie-inverter',
  control_voltage: 'control-circuit',
  output: 'wind-turbine',
};

const csvCell = (text: string): string => `"${text.replaceAll('"', '""')}"`;

describe('the example of a field', () => {
  it.each(FIELDS.map((f) => [f.name, f] as const))('%s is taken by the reader and planned', (name, told) => {
    const fixed: Record<string, string> = { job: 'J', tag: 'X', kind: KIND_OF[name] ?? 'panel' };
    const cells = Object.entries({ ...fixed, [name]: told.example });
    const csv = `${cells.map(([heading]) => heading).join(',')}\n${cells.map(([, cell]) => csvCell(cell)).join(',')}\n`;
    const { jobs, items } = readListText('list.csv', csv, { settings });
    expect(items).toEqual([]);
    const [job] = jobs;
    expect(job?.items.map((item) => saidOf(item).message)).toEqual([]);
    if (job === undefined) return;
    const facts: Readonly<Record<string, unknown>> = { job: job.job, ...job.facts, ...job.rows[0]?.facts };
    expect(facts[name]).toBeDefined();
    expect(planJob(job, { catalogue: undefined, settings }).job).toBe(job.job);
  });

  it.each(FIELDS.flatMap((f) => f.headings.map((heading) => [heading, f.name] as const)))(
    'a heading that the page names is taken: %s for %s',
    (heading, name) => {
      const { understood } = readListText('list.csv', `tag,kind,${csvCell(heading)}\nX,panel,1\n`, {
        settings,
      });
      expect(understood[0]?.columns.find((c) => c.heading === heading)?.field).toBe(name);
    },
  );

  it.each(FIELDS.flatMap((f) => f.words.map((word) => [f.name, word] as const)))(
    'a word that the page names is taken: %s %s',
    (name, word) => {
      const csv =
        name === 'kind' ? `job,tag,kind\nJ,X,${word}\n` : `job,tag,kind,${name}\nJ,X,panel,${word}\n`;
      expect(wrongOf(csv)).toEqual([]);
    },
  );
});

function wrongOf(csv: string): readonly string[] {
  const { jobs, unreadable } = readListText('list.csv', csv, { settings });
  expect(unreadable).toEqual([]);
  return jobs.flatMap((job) => job.items.map(({ code }) => code));
}

describe('the example of a column of the catalogue', () => {
  const least: Readonly<Record<string, string>> = { part: 'EXAMPLE-1', channels: '2', mcov_ac: '150' };
  it.each(COLUMNS.map((c) => [c.name, c] as const))('%s is taken', (name, told) => {
    const cells = Object.entries({ ...least, [name]: told.example });
    const csv = `${cells.map(([heading]) => heading).join(',')}\n${cells.map(([, cell]) => csvCell(cell)).join(',')}\n`;
    const { catalogue, unreadable } = readCatalogueText('catalogue.csv', csv);
    expect(unreadable).toEqual([]);
    expect(catalogue.items.map((item) => saidOf(item).message)).toEqual([]);
    expect(catalogue.parts).toHaveLength(1);
    const [entry] = catalogueGuide().filter((c) => c.name === name);
    const [part] = catalogue.parts;
    for (const key of entry?.reads ?? []) expect(part?.[key]).not.toBeNull();
  });
});

describe('the forms', () => {
  it('are taken as they stand', () => {
    expect(ColumnMapSchema.safeParse(JSON.parse(EXAMPLE_COLUMN_MAP)).error).toBeUndefined();
    expect(SettingsSchema.safeParse(JSON.parse(EXAMPLE_SETTINGS)).error).toBeUndefined();
  });
  it('of list, catalogue and library plan a job that is complete', () => {
    const { catalogue } = readCatalogueText('catalogue.csv', file('catalogue.csv'));
    const { library, items } = readLibraryText('library.csv', file('library.csv'));
    expect(items).toEqual([]);
    const { jobs } = readListText('list.csv', file('list.csv'), { settings, library });
    expect(jobs.map((job) => planJob(job, { catalogue, settings }).submittable)).toEqual([true]);
  });
});

describe('the rules that ask for a field', () => {
  const ids = new Set<string>(ALL_RULES.map(({ id }) => id));
  it('are rules', () => {
    for (const { rules } of [...FIELDS, ...COLUMNS]) for (const id of rules) expect(ids).toContain(id);
  });
  it.each([
    ['run_length', 'place/long-run'],
    ['lowest_temp', 'rate/array-voltage'],
    ['fault_current', 'rate/fault-current'],
    ['protect', 'place/asked'],
    ['rapid_shutdown', 'indicate/array-pole'],
    ['impulse_withstand', 'rate/withstand'],
  ])('%s is asked for by %s', (field, rule) => {
    expect(FIELDS.find(({ name }) => name === field)?.rules).toContain(rule);
  });
  it.each([
    ['mcov_dc', 'rate/mcov'],
    ['in_ka', 'rate/discharge'],
    ['enclosure', 'rate/enclosure'],
    ['wire_range', 'rate/lead-size'],
  ])('column %s is asked for by %s', (column, rule) => {
    expect(COLUMNS.find(({ name }) => name === column)?.rules).toContain(rule);
  });
  it('every rule about parts says what it reads of one', () => {
    for (const rule of ALL_RULES)
      if (rule.facts.some((fact) => fact === 'part')) expect(rule).toHaveProperty('ofPart');
  });
  it.each(['job_name', 'address', 'description', 'serial'])('none asks for %s', (field) => {
    expect(FIELDS.find(({ name }) => name === field)?.rules).toEqual([]);
  });
});

it('tells a field with its words, units, default and rules', () => {
  const told = FIELDS.find(({ name }) => name === 'run_length');
  expect(told && fieldText(told)).toMatch(
    /^run_length {2}\(of a row\)[^]*a bare figure is ft with nec[^]*Example: 45 ft[^]*place\/long-run/,
  );
});
