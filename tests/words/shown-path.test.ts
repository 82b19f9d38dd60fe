import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { shownPath, shownPaths, withoutPaths } from '../../src/words/shown-path.js';

describe('a file as papers name it', () => {
  it.each([
    ['lists/a.csv', 'lists/a.csv'],
    ['./a.csv', './a.csv'],
    ['lists/../a.csv', 'lists/../a.csv'],
    ['..a/b.csv', '..a/b.csv'],
    ['../a.csv', 'a.csv'],
    ['lists/../../a.csv', 'a.csv'],
    [resolve('lists/a.csv'), 'a.csv'],
    ['/a.csv', 'a.csv'],
    ['-', '-'],
    ['', ''],
  ])('%j is %j', (path, shown) => {
    expect(shownPath(path)).toBe(shown);
  });

  it('is told apart from another of the same name', () => {
    expect(shownPaths(['/x/a.csv', '/y/a.csv', 'a.csv', 'b.csv', '/z/a.csv'])).toEqual([
      'a.csv',
      'a.csv (2)',
      'a.csv (3)',
      'b.csv',
      'a.csv (4)',
    ]);
  });
});

describe('a text of a system', () => {
  it.each([
    [
      "ENOENT: no such file or directory, open '/srv/our jobs/out/A-1/plan.json'",
      "ENOENT: no such file or directory, open 'out/A-1/plan.json'",
    ],
    ['/opt/tool/bin/browser: it fell; /usr/bin/other: none', 'browser: it fell; other: none'],
    ['at file:///opt/tool/dist/x.js:12:3', 'at x.js:12:3'],
    ['C:\\Users\\someone\\a.csv is locked', 'a.csv is locked'],
    ['no such part: 3+1, 120/240, 10/350 us, and/or', 'no such part: 3+1, 120/240, 10/350 us, and/or'],
    ['the ratio /2 and /3', 'the ratio /2 and /3'],
  ])('%j keeps no folder', (text, kept) => {
    expect(withoutPaths(text, ['/srv/our jobs/out'])).toBe(kept);
  });

  it('keeps the name of a folder that is known', () => {
    expect(withoutPaths(`${join('/srv', 'our jobs')} is full`, ['/srv/our jobs'])).toBe('our jobs is full');
  });
});
