import { describe, expect, it } from 'vitest';
import { FIELD_NAMES } from '../../src/model/fields.js';
import { defaultSettings } from '../../src/model/settings.js';
import { answerReader } from '../../src/read/answers/readers.js';
import { exampleOf } from '../../src/words/questions/examples.js';
import { isAskedAlike } from '../../src/words/questions/question-words.js';

const read = answerReader(defaultSettings(), undefined);

describe('an example', () => {
  it.each(FIELD_NAMES.filter((field) => field !== 'job' && field !== 'tag'))(
    'of %s is taken by its reader',
    (field) => {
      for (const kind of [undefined, 'panel'] as const) {
        const example = exampleOf(field, kind) ?? '';
        expect(example).not.toBe('');
        for (const mark of ['auto', 'auto-comma'] as const)
          expect(read(field, example, mark)).toMatchObject({ is: 'value', note: null });
      }
    },
  );
  it('is none for what no answer can state', () => {
    expect([exampleOf('job', undefined), exampleOf('tag', undefined)]).toEqual([undefined, undefined]);
  });
});

describe('a question is asked as it was', () => {
  it.each([
    [
      'wherever its rows stand by now',
      'See A (line 3) and B (line 14).',
      'See A (line 4) and B (line 9).',
      true,
    ],
    ['with an apostrophe of our own before it', "'=x isn’t stated.", '=x isn’t stated.', true],
    ['but not of other rows', 'x of A: taken as no.', 'x of B: taken as no.', false],
    ['nor with another value', 'x of A: taken as no.', 'x of A: taken as yes.', false],
    ['nor with another figure', 'x is 3 m.', 'x is 4 m.', false],
  ])('%s', (_, asked, now, alike) => {
    expect(isAskedAlike(asked, now)).toBe(alike);
  });
});
