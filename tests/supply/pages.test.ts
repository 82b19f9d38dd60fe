import { readFileSync, writeFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { dependenciesPage } from './dependencies-page.js';
import { noticesPage } from './notices-page.js';
import { runTimePackages } from './run-time-packages.js';

it.each([
  ['docs/dependencies.md', dependenciesPage],
  ['docs/third-party-notices.md', noticesPage],
])('%s is what the lock file and the packages say (npm run docs:supply writes it)', (path, pageOf) => {
  const page = pageOf(runTimePackages());
  if (process.env['UPDATE_DOCS'] === '1') writeFileSync(path, page);
  expect(readFileSync(path, 'utf8')).toBe(page);
});
