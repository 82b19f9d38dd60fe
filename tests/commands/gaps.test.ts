import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { freshFolder, projectPath, shuntbook } from './command.js';

it('says once what the catalogue lacks for many jobs', async () => {
  const folder = freshFolder();
  const jobs = Array.from({ length: 14 }, (_, i) => `J-${i},SVC-${i},service,480 delta,10 kA\n`);
  writeFileSync(join(folder, 'list.csv'), `job,tag,kind,ac_in,fault_current\n${jobs.join('')}`);
  const catalogue = readFileSync(projectPath('fixtures/demo/catalogue.csv'), 'utf8')
    .replaceAll(/\bungrounded\b/g, '')
    .replace(/^([^\n]*\n)/, '$1');
  writeFileSync(join(folder, 'catalogue.csv'), catalogue);
  const told = await shuntbook(['plan', join(folder, 'list.csv'), '--out', join(folder, 'out')]);
  expect(told.status).toBe(1);
  expect(told.err).toMatch(/^conflict {2}No part in your catalogue [^\n]*: 14 jobs$/m);
  expect(told.err.match(/14 jobs$/gm)?.length).toBe(1);
});
