import { describe, expect, it } from 'vitest';
import { cited, placeText } from '../../src/words/origin.js';

describe('a place in a file', () => {
  it('names file, line and column as far as they are known', () => {
    expect(placeText({ file: 'a.csv', line: 3, column: 'run length' })).toBe('a.csv, line 3, run length');
    expect(placeText({ file: '-', line: 3, column: '' })).toBe('standard input, line 3');
    expect(placeText({ file: '', line: 0, column: '' })).toBe('');
  });

  it('is told the same where a value comes from', () => {
    const place = { file: 'a.csv', line: 3, column: 'Voc' };
    expect(cited({ from: 'list', ...place })).toBe(placeText(place));
    expect(cited({ from: 'library', ...place })).toBe('equipment library a.csv, line 3, Voc');
  });
});
