import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { stringify } from 'csv-stringify/sync';
import { RecordSchema, type SiteRecord } from '../../src/model/record.js';
import { freshFolder, projectPath, shuntbook } from '../commands/command.js';

export type Row = Record<string, string>;
export type FormName = 'site-record.csv' | 'site-readings.csv' | 'site-facts.csv';
const FORMS: readonly FormName[] = ['site-record.csv', 'site-readings.csv', 'site-facts.csv'];

let planned: string | undefined;

/** The plans of some demo jobs, made once a worker. */
async function plannedOut(): Promise<string> {
  if (planned !== undefined) return planned;
  const folder = mkdtempSync(join(tmpdir(), 'shuntbook-record-'));
  const demo = projectPath('fixtures/demo');
  for (const job of ['UF-102', 'UF-108']) {
    const told = await shuntbook([
      'plan',
      demo,
      '--job',
      job,
      '--date',
      '2026-03-01',
      '--out',
      folder,
      '--quiet',
    ]);
    if (told.status > 1) throw new Error(told.err);
  }
  planned = folder;
  process.once('exit', () => {
    rmSync(folder, { recursive: true, force: true });
  });
  return folder;
}

/** What a crew brought back, in a folder of the test's own, beside the output folder that its plans are in. */
export interface Site {
  readonly out: string;
  readonly back: string;
  /** Rows of a form. */
  readonly rows: (form: FormName) => Row[];
  /** Writes a form, in these columns. */
  readonly write: (
    form: string,
    rows: readonly Row[],
    columns?: readonly string[],
    delimiter?: string,
  ) => void;
  /** Changes rows of a form: those of which all given cells are so. */
  readonly edit: (form: FormName, where: Row, cells: Row) => void;
  /** Runs `record` on what came back; more arguments behind it. */
  readonly record: (...more: string[]) => Promise<Awaited<ReturnType<typeof shuntbook>>>;
  /** Rows of `record-items.csv`. */
  readonly items: () => Row[];
  readonly json: (job?: string) => SiteRecord;
}

/**
 * A job of which the clean return of the demo came back.
 * @param job of the demo
 */
export async function siteOf(job: 'UF-108' | 'UF-102' = 'UF-108'): Promise<Site> {
  const source = await plannedOut();
  const folder = freshFolder();
  const [out, back] = [join(folder, 'out'), join(folder, 'back')];
  cpSync(source, out, { recursive: true });
  mkdirSync(back);
  for (const form of FORMS) cpSync(projectPath(`fixtures/demo/returns/${job}/${form}`), join(back, form));
  const rows: Site['rows'] = (form) => parse<Row>(readFileSync(join(back, form)), { columns: true });
  const write: Site['write'] = (form, of, columns, delimiter = ',') => {
    writeFileSync(
      join(back, form),
      stringify([...of], {
        header: true,
        columns: columns ? [...columns] : Object.keys(of[0] ?? {}),
        delimiter,
      }),
    );
  };
  return {
    out,
    back,
    rows,
    write,
    edit: (form, where, cells) => {
      const all = rows(form);
      const mine = all.filter((row) => Object.entries(where).every(([name, cell]) => row[name] === cell));
      if (mine.length === 0) throw new Error(`no such row in ${form}`);
      for (const row of mine) Object.assign(row, cells);
      write(form, all);
    },
    record: (...more) =>
      shuntbook(['record', back, '--out', out, '--no-pack', '--date', '2026-05-01', '--json', ...more]),
    items: () => parse<Row>(readFileSync(join(out, 'record-items.csv')), { columns: true }),
    json: (of = job) => RecordSchema.parse(JSON.parse(readFileSync(join(out, of, 'record.json'), 'utf8'))),
  };
}
