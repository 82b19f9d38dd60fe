import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { expect, it } from 'vitest';
import { freshFolder, projectPath, shuntbook } from '../commands/command.js';

const table = (path: string): Record<string, string>[] =>
  parse(readFileSync(path, 'utf8'), { columns: true });

it('takes what comes back of three jobs of the demo: one clean, one with deviations, one half filled in', async () => {
  const out = freshFolder();
  const plan = () =>
    shuntbook(['plan', projectPath('fixtures/demo'), '--out', out, '--date', '2026-03-02', '--quiet']);
  await plan();
  const date = ['--date', '2026-05-01'];
  const told = await shuntbook([
    'record',
    projectPath('fixtures/demo/returns'),
    '--out',
    out,
    '--no-pack',
    ...date,
  ]);
  expect(told.status).toBe(1);
  await plan();
  const states = table(join(out, 'report.csv')).filter(({ record }) => record !== 'planned');
  expect(states.map(({ job, status, record }) => [job, status, record])).toEqual([
    ['UF-102', 'complete', 'as built with deviations'],
    ['UF-108', 'complete', 'as built'],
    ['UF-109', 'complete', 'record open'],
  ]);
  const register = table(join(out, 'register.csv'));
  expect(register.map(({ job, protector, serial }) => `${job} ${protector} ${serial}`)).toEqual([
    'UF-102 P-1 510044',
    'UF-102 P-2 510045',
    'UF-102 P-3 700117',
    'UF-102 P-4 700118',
    'UF-108 P-1 700101',
    'UF-108 P-2 700102',
    'UF-108 P-3 700103',
    'UF-109 P-1 330017',
    'UF-109 P-2 330018',
  ]);
  // Another part than planned, and a light that was dark on the first day.
  expect(register[2]).toMatchObject({ part: 'WK-FOXGLOVE', lead_length: '0.41' });
  expect(register[3]?.['first_look']).toContain('L2 utility on: dark');
  const due = table(join(out, 'checks-due.csv'));
  expect(due.some(({ job, state }) => job === 'UF-102' && state === 'night')).toBe(true);
  expect(new Set(register.map(({ by }) => by))).toEqual(new Set(['crew 2']));
});
