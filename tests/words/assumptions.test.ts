import { describe, expect, it } from 'vitest';
import { PLACE_MESSAGES } from '../../src/model/messages/place.js';
import { FIELDS } from '../../src/model/fields.js';
import { settledAssumed } from '../../src/words/assumptions/defaults.js';
import { assumptionOf, isAssumptionKnown } from '../../src/words/assumptions/told.js';
import { OFFICE_CODES } from '../../src/words/assumptions/office-codes.js';
import { reason } from '../../src/model/reason.js';
import { allEntries } from './message-entries.js';

const toConfirm = (await allEntries())
  .map(({ entry }) => entry.kind)
  // What a record brings up stands in a table of its own; a plan, and so a paper of assumptions, never has it.
  .filter(({ code, severity }) => severity === 'confirm' && !/^(?:record|register)\//.test(code));

describe('items to confirm', () => {
  it.each(toConfirm.map(({ code }) => [code]))(
    '%s has words as an assumption, or is the office’s',
    (code) => {
      expect(isAssumptionKnown(code)).toBe(true);
    },
  );

  it('of the office are kinds of messages', () => {
    const codes = new Set(toConfirm.map(({ code }) => code));
    expect([...OFFICE_CODES].filter((code) => !codes.has(code))).toEqual([]);
  });

  it('that are the office’s are no assumption', () => {
    expect(assumptionOf({ code: 'library/near-miss', values: {} })).toBe('office');
  });
});

describe('a default as an assumption', () => {
  const { code } = PLACE_MESSAGES.defaultsUsed;
  const used = (field: string, value: unknown, why = 'default-decides/withstand') =>
    assumptionOf({ code, values: { field, value, rows: ['A'], why: { code: why, values: {} } } });

  it.each([
    ['dc_grounding', 'negative', 'DC negative grounded'],
    ['system_grounding', 'none', 'AC system ungrounded'],
    ['n_pe_link', 'no', 'Neutral not bonded to ground at this place itself'],
    [
      'impulse_withstand',
      reason('default-value/by-category'),
      'Impulse withstand by overvoltage category, IEC 60664-1 Table F.1',
    ],
    ['building_occupancy', 'other', 'Building with neither dwelling unit nor sleeping rooms'],
    ['basis', 'nec-2020', 'Code in force: NEC 2020'],
  ])('%s %s', (field, value, says) => {
    expect(used(field, value)).toMatchObject({ says, tags: ['A'] });
  });

  it('of the wires of a control circuit isn’t one of an array', () => {
    const of = used('dc_grounding', reason('default-value/not-known'), 'default-decides/recorded-lights');
    expect(of).toMatchObject({ says: 'Control circuit: grounding of its wires not known' });
  });

  it('that only keeps protection where it is planned is the office’s', () => {
    expect(used('worth_protecting', 'yes')).toBe('office');
  });

  it('has words for every field that a company can settle, but those of the office', () => {
    const without = Object.keys(FIELDS).filter((field) => {
      const of = settledAssumed({ field, value: 'x', rows: [], by: 'us', date: '2025-01-01' });
      return of !== 'office';
    });
    expect(without).toEqual(
      expect.arrayContaining([
        'occupancy',
        'earthing',
        'lightning_protection',
        'outdoors',
        'isolated',
        'dc_inputs',
        'module_technology',
      ]),
    );
  });
});
