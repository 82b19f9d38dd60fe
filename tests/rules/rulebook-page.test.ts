import { readFileSync, writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { ALL_RULES } from '../../src/rules/rulebook.js';
import { rulebookPage } from '../../src/screen/rulebook-page.js';

const PATH = 'docs/rulebook.md';

test('docs/rulebook.md is what the rules say (npm run docs:rulebook writes it)', () => {
  const page = rulebookPage(ALL_RULES);
  if (process.env['UPDATE_DOCS'] === '1') writeFileSync(PATH, page);
  expect(readFileSync(PATH, 'utf8')).toBe(page);
});
