import { expect, it } from 'vitest';
import { portsInWords } from '../../src/words/port-words.js';
import { tagList } from '../../src/words/tag-list.js';

it.each([
  [[], ''],
  [['P-1'], 'P-1'],
  [['P-1', 'P-2', 'P-3'], 'P-1, P-2, P-3'],
  [['P-5', 'P-6', 'P-7', 'P-8'], 'P-5 to P-8'],
  [['P-1', 'P-3', 'P-4', 'P-5', 'P-6', 'Q-7'], 'P-1, P-3 to P-6, Q-7'],
  // Numbers with noughts before them are names, and a stem of its own is no run.
  [['A-08', 'A-09', 'A-10', 'A-11'], 'A-08, A-09, A-10, A-11'],
  [['INV', 'SVC'], 'INV, SVC'],
])('%j are told as %s', (tags, told) => {
  expect(tagList(tags)).toBe(told);
});

it.each([
  [['dc-in-1'], 'DC input 1'],
  [['dc-in-1', 'dc-in-2'], 'DC inputs 1, 2'],
  [['dc-in-1', 'dc-in-2', 'dc-in-3', 'dc-in-4'], 'DC inputs 1 to 4'],
  [['ac-in', 'ac-out'], 'AC input and AC output'],
  [['service'], 'service'],
  [['dc-in'], 'DC supply'],
])('ports %j are told as %s', (ports, told) => {
  expect(portsInWords(ports)).toBe(told);
});
