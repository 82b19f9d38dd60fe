import { readFileSync, writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { messagesPage } from '../../src/screen/messages-page.js';
import { allEntries } from '../words/message-entries.js';

const PATH = 'docs/messages.md';
const entries = (await allEntries()).map((e) => e.entry);

test('docs/messages.md is what the catalogue says (npm run docs:messages writes it)', () => {
  const page = messagesPage(entries);
  if (process.env['UPDATE_DOCS'] === '1') writeFileSync(PATH, page);
  expect(readFileSync(PATH, 'utf8')).toBe(page);
});

test('the page names every code once', () => {
  const codes = [...messagesPage(entries).matchAll(/^\| `([^`]+)` \|/gm)].map(([, code]) => code);
  expect(codes).toEqual(entries.map((e) => e.kind.code).toSorted());
  expect(new Set(codes).size).toBe(codes.length);
});
