import { expect, it } from 'vitest';
import { runOut } from '../../src/words/refusals.js';

const refused = (code: string, message = ''): Error => Object.assign(new Error(message), { code });

it.each([
  [refused('EMFILE'), 'the limit of open files is too low'],
  [refused('ENFILE'), 'the machine has too many files open'],
  [refused('ENOMEM'), 'the machine has no memory left'],
  [new Error('not read', { cause: refused('EMFILE') }), 'the limit of open files is too low'],
  // As the loaders of Node 22 and 24 say it.
  [
    refused('ERR_INVALID_PACKAGE_CONFIG', 'Cannot read package config /a/package.json: too many open files.'),
    'the limit of open files is too low',
  ],
  [
    refused('ERR_INVALID_PACKAGE_CONFIG', 'Cannot read package config /a/package.json: file table overflow.'),
    'the machine has too many files open',
  ],
])('%o: what ran out of the machine', (error, says) => {
  expect(runOut(error)).toBe(says);
});

it.each([
  refused('ENOSPC'),
  refused('ERR_INVALID_PACKAGE_CONFIG', 'Invalid package config /too many open files/package.json.'),
  refused('', 'Cannot read package config /a/package.json: too many open files.'),
  new Error('too many open files'),
  'too many open files',
])('%o: nothing ran out', (error) => {
  expect(runOut(error)).toBeUndefined();
});

// Seen on Node 20, whose loader opened all but the package.json: "Cannot find package '.../index.js'".
it('a package that the loader finds nowhere: files ran out where the process may have few open', () => {
  const lost = refused('ERR_MODULE_NOT_FOUND', 'Cannot find package');
  expect(runOut(lost, true)).toBe('the limit of open files is too low');
  expect(runOut(lost)).toBeUndefined();
  expect(runOut(refused('EACCES'), true)).toBeUndefined();
});
