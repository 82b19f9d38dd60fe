import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { parse } from 'csv-parse/sync';
import { stringify } from 'csv-stringify/sync';
import { describe, expect, it } from 'vitest';
import { planJob, readInputs } from '../../src/index.js';
import { siteTables } from '../../src/output/site-tables.js';
import { siteForms } from '../../src/site-forms/rows.js';

// What comes back of three jobs of the demo is the forms as they were given out, filled in: plan's fingerprint and all.
// `npm run golden:update` puts what is given out now in place of what was, and leaves what was filled in: read the diff.
const RETURNS = 'fixtures/demo/returns';
const UPDATE = process.env['UPDATE_GOLDEN'] === '1';
const inputs = await readInputs({
  make: 'plan',
  lists: ['fixtures/demo'],
  date: '2026-01-01',
  dateGiven: true,
});

type Row = Readonly<Record<string, string>>;
const rowsOf = (text: string): Row[] => parse(text, { columns: true });
const isGiven = (cell: string | undefined): boolean => cell !== undefined && cell !== '';

/** The forms of one job as they are given out now, by the name of the file. */
function givenOut(job: string): Map<string, string> {
  const list = inputs.jobs.find((one) => one.job === job);
  if (!list) throw new Error(`the demo has no job ${job}`);
  const plan = planJob(list, { catalogue: inputs.catalogue, settings: inputs.settings });
  return new Map(siteTables(siteForms(plan)).map(({ name, content }) => [name, String(content)]));
}

/** What tells a row from the others of its file. */
const KEYS = ['protector', 'channel', 'conductor', 'kind', 'from', 'to', 'state', 'tag', 'fact'];
const keyOf = (row: Row): string => JSON.stringify(KEYS.map((key) => row[key] ?? ''));

/** What is filled in of a row: what the form as given out leaves blank. */
function filledIn(given: readonly Row[], back: readonly Row[]): Row[] {
  const known = new Map(back.map((row) => [keyOf(row), row]));
  return given.map((row) => {
    const own = known.get(keyOf(row));
    return Object.fromEntries(
      Object.entries(row).map(([name, cell]) => [name, isGiven(cell) ? cell : (own?.[name] ?? '')]),
    );
  });
}

const JOBS = readdirSync(RETURNS);

describe('what comes back from the work of the demo', () => {
  it('is of three jobs', () => {
    expect(JOBS).toEqual(['UF-102', 'UF-108', 'UF-109']);
  });

  it.each(JOBS)('%s: the forms as they were given out, filled in', (job) => {
    for (const [name, content] of givenOut(job)) {
      const path = `${RETURNS}/${job}/${name}`;
      const given = rowsOf(content);
      const back = rowsOf(readFileSync(path, 'utf8'));
      const expected = filledIn(given, back);
      if (UPDATE) {
        const headings = Object.keys(given[0] ?? {});
        writeFileSync(
          path,
          stringify(expected, { header: true, columns: headings, record_delimiter: '\r\n' }),
        );
      } else expect(back, `${name}: npm run golden:update`).toEqual(expected);
      expect(expected.some((row) => isGiven(row['name'] ?? row['by']))).toBe(true);
    }
  });
});
