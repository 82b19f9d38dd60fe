import { written } from '../in-english.js';
import { volts } from '../../src/model/quantity.js';
import { reason, type Reason } from '../../src/model/reason.js';
import { describe, expect, it } from 'vitest';
import type { OpenItem } from '../../src/model/open-item.js';
import { about, itemAt } from '../../src/model/message.js';
import { CHOOSE_MESSAGES } from '../../src/model/messages/choose.js';
import { factMissing } from '../../src/model/messages/rate.js';
import { gapsOf, gapsText } from '../../src/screen/gaps.js';

const at = (line: number) => ({ file: 'a.csv', line, column: '' });
const noneFits = (tag: string, part: string, ...failures: readonly Reason[]): OpenItem => {
  const nearest = reason('choice/nearest', { part, failures });
  const p = { at: { equipment: tag, ports: ['service'] }, asks: reason('asks/not-known'), nearest };
  return itemAt(about(CHOOSE_MESSAGES.noneFits, p, tag, ''), at(2), tag);
};
const missing = (tag: string, line: number): OpenItem =>
  itemAt(about(factMissing('voc_stc'), { tag, why: written('it is needed') }, tag, 'voc_stc'), at(line), tag);

describe('gaps that run through a batch', () => {
  it('are one line each with their number of jobs, whatever the tag and the nearest part', () => {
    const items = ['A', 'B', 'C'].flatMap((job, i) => [
      { job, item: noneFits(`SVC-${i}`, `P-${i}`, reason('listing/other-system', { system: 'ungrounded' })) },
      {
        job,
        item: noneFits(
          `ARR-${i}`,
          `P-${i}`,
          reason('mcov/below', { has: volts(350 + i), asked: volts(500 + i) }),
        ),
      },
    ]);
    expect(gapsText(items)).toBe(
      'conflict  No part in your catalogue that fits otherwise is listed for ungrounded systems: 3 jobs\n' +
        'conflict  No part in your catalogue that fits otherwise has enough MCOV: 3 jobs\n',
    );
  });

  it('are those of facts too, the widest first', () => {
    const items = [
      { job: 'A', item: noneFits('S', 'P', reason('listing/not-stated')) },
      { job: 'B', item: noneFits('S', 'P', reason('listing/not-stated')) },
      ...['A', 'B', 'C'].map((job, i) => ({ job, item: missing(`ARR-${i}`, i + 2) })),
    ];
    expect(gapsOf(items)).toEqual([
      { severity: 'missing', says: 'voc_stc isn’t stated', jobs: 3 },
      {
        severity: 'conflict',
        says: 'No part in your catalogue fits everything asked for: no listing is stated',
        jobs: 2,
      },
    ]);
  });

  it('are not what stands in one job only, what fails in several ways, or what is only to confirm', () => {
    expect(
      gapsOf([
        { job: 'A', item: missing('X', 2) },
        { job: 'A', item: missing('Y', 3) },
        ...['A', 'B'].map((job) => ({
          job,
          item: noneFits(
            'S',
            'P',
            reason('mcov/below', { has: volts(1), asked: volts(2) }),
            reason('listing/other-system', { system: 'ungrounded' }),
          ),
        })),
        ...['A', 'B'].map((job) => ({ job, item: { ...missing('X', 2), code: 'default/used' } })),
        ...['C', 'D'].map((job) => ({ job, item: { ...missing('X', 2), severity: 'confirm' as const } })),
      ]),
    ).toEqual([]);
  });
});
