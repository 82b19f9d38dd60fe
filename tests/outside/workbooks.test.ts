import { execFileSync } from 'node:child_process';
import { copyFileSync, cpSync, mkdirSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { plansOfFolder } from '../read/plan-twin.js';

// The lists, library and catalogue of the demo as LibreOffice stores them: workbooks by another hand than ours.
const DEMO = 'fixtures/demo';
const work = mkdtempSync(join(tmpdir(), 'shuntbook-twins-'));
let twins: Readonly<Record<string, string>> = {};

/** Its CSV import with detected numbers and dates, as a person gets who opens the file: comma, double quote, UTF-8, English (USA). */
const AS_OPENED = 'CSV:44,34,76,1,,1033,false,true';

function convert(format: string, into: string): void {
  const lists = readdirSync(DEMO).filter((name) => name.endsWith('.csv'));
  execFileSync(
    'soffice',
    [
      '--headless',
      // A profile of its own: another LibreOffice that runs would take the work over.
      `-env:UserInstallation=${pathToFileURL(join(work, 'profile')).href}`,
      `--infilter=${AS_OPENED}`,
      '--convert-to',
      format,
      '--outdir',
      into,
      ...lists.map((name) => join(DEMO, name)),
    ],
    { stdio: 'pipe' },
  );
  copyFileSync(join(DEMO, 'settings.json'), join(into, 'settings.json'));
}

beforeAll(async () => {
  const folder = join(work, 'csv');
  cpSync(DEMO, folder, { recursive: true });
  twins = await plansOfFolder(folder);
});

afterAll(() => {
  rmSync(work, { recursive: true, force: true });
});

describe('the demo, opened and saved by LibreOffice', () => {
  test.each(['xlsx', 'ods'])('as .%s gives the plans of its CSVs', async (format) => {
    const folder = join(work, format);
    mkdirSync(folder);
    convert(format, folder);
    expect(readdirSync(folder).filter((name) => name.endsWith(`.${format}`)).length).toBeGreaterThan(5);
    const plans = await plansOfFolder(folder);
    expect(Object.keys(plans)).toEqual(Object.keys(twins));
    expect(Object.keys(plans).length).toBeGreaterThan(14);
    for (const [job, plan] of Object.entries(plans)) expect(plan, job).toBe(twins[job]);
  });
});
