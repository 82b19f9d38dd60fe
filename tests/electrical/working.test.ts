import { describe, expect, test } from 'vitest';
import { computed, statedAt, taken, takenFrom, workingOf } from '../../src/electrical/working.js';
import type { Origin } from '../../src/model/fact.js';
import { bare, volts } from '../../src/model/quantity.js';
import { reason } from '../../src/model/reason.js';
import { subject } from '../../src/model/step.js';
import { englishSteps } from '../in-english.js';
import { expectSound } from './evaluated.js';

describe('statedAt', () => {
  const working = workingOf(
    [
      taken('Voc', subject('cold-voltage/module-voltage'), 50, 'V'),
      taken(
        'F',
        subject('cold-voltage/factor-without-temperature'),
        1.2,
        '',
        'memory',
        reason('source/cold-voltage-annex'),
      ),
    ],
    computed(
      'U',
      subject('cold-voltage/string', { module: volts(50), modules: bare(1), factor: { fine: 1.2 } }),
      {
        value: 60,
        unit: 'V',
        sure: 'computed',
        uses: ['Voc', 'F'],
        source: reason('source/string-voltage'),
      },
    ),
  );
  const place: Origin = { from: 'list', file: 'jobs.csv', line: 12, column: 'Voc' };
  test('names the place of a stated figure, and of no other', () => {
    const placed = statedAt(working, { Voc: place, F: place, U: place });
    expect(placed.steps.map((s) => s.source)).toEqual([
      place,
      reason('source/cold-voltage-annex'),
      reason('source/string-voltage'),
    ]);
    expect(englishSteps(placed)[0]?.source).toBe('jobs.csv, line 12, Voc');
    expect(placed.value).toBe(60);
    expect(placed.unit).toBe('V');
  });
  test('leaves a figure whose place it is not told', () => {
    expect(statedAt(working, {}).steps[0]?.source).toEqual(reason('source/as-stated'));
    expect(englishSteps(working)[0]?.source).toBe('as stated');
  });
  test('a working ends with its figure', () => {
    expectSound(working);
    expect(working.steps).toHaveLength(3);
  });
});

describe('takenFrom', () => {
  test('says how sure a figure is that was taken, and from where; what is computed stays as it is', () => {
    const working = workingOf(
      [taken('Voc', subject('cold-voltage/module-voltage'), 50, 'V')],
      computed('U', subject('reach/level'), {
        value: 60,
        unit: 'V',
        sure: 'computed',
        uses: ['Voc'],
        source: reason('source/string-voltage'),
      }),
    );
    const from = { sure: 'assumption', source: { from: 'default', field: 'voc_stc' } } as const;
    const told = takenFrom(working, { Voc: from, U: from });
    expect(told.steps.map(({ sure, source }) => [sure, source])).toEqual([
      ['assumption', from.source],
      ['computed', reason('source/string-voltage')],
    ]);
    expect([told.value, told.unit]).toEqual([60, 'V']);
    expect(takenFrom(working, {})).toEqual(working);
  });
});
