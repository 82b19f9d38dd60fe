import { join } from 'node:path';
import { writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { siteOf, type FormName, type Row } from './site.js';

// Each check of a record, through the command: what is found, how grave it is, and at which file, line and column it is told.

interface Case {
  readonly what: string;
  readonly form: FormName;
  readonly where: Row;
  readonly cells: Row;
  readonly code: string;
  readonly severity: 'missing' | 'conflict' | 'confirm';
  readonly line: number;
  readonly column: string;
  readonly state: string;
}

const OPEN = 'record open';
const BUILT = 'as built';
const record = (tag: string, cells: Row): Pick<Case, 'form' | 'where' | 'cells'> => ({
  form: 'site-record.csv',
  where: { protector: tag },
  cells,
});
const reading = (where: Row, cells: Row): Pick<Case, 'form' | 'where' | 'cells'> => ({
  form: 'site-readings.csv',
  where,
  cells,
});
const L1 = { protector: 'P-1', conductor: 'L1', kind: 'volts' };
const LIT = { protector: 'P-1', channel: '1', kind: 'light', state: 'utility on' };

const CASES: readonly Case[] = [
  {
    what: 'a protector that the plan doesn’t have',
    ...record('P-3', { protector: 'P-9' }),
    code: 'record/no-such-protector',
    severity: 'conflict',
    line: 4,
    column: 'protector',
    state: OPEN,
  },
  {
    what: 'a channel that the plan doesn’t have',
    ...reading(LIT, { channel: '7' }),
    code: 'record/no-such-reading',
    severity: 'conflict',
    line: 5,
    column: 'channel',
    state: OPEN,
  },
  {
    what: 'a record of another plan',
    ...record('P-1', { plan: 'BCDFGHJK' }),
    code: 'record/other-plan',
    severity: 'conflict',
    line: 2,
    column: 'plan',
    state: OPEN,
  },
  {
    what: 'a serial twice',
    ...record('P-2', { serial: '700101' }),
    code: 'record/serial-twice',
    severity: 'conflict',
    line: 3,
    column: 'serial',
    state: OPEN,
  },
  {
    what: 'an assumption found otherwise that decides nothing',
    form: 'site-facts.csv',
    where: { fact: 'impulse_withstand', tag: 'TRK-1' },
    cells: { found: '6 kV' },
    code: 'record/fact-other',
    severity: 'confirm',
    line: 3,
    column: 'found',
    state: BUILT,
  },
  {
    what: 'an assumption found otherwise that decides something',
    form: 'site-facts.csv',
    where: { fact: 'ahead_of_disconnect' },
    cells: { found: 'yes' },
    code: 'record/fact-other-decides',
    severity: 'conflict',
    line: 9,
    column: 'found',
    state: OPEN,
  },
  {
    what: 'another part that holds',
    ...record('P-1', { part_fitted: 'WK-HAWTHORN' }),
    code: 'record/part-other',
    severity: 'confirm',
    line: 2,
    column: 'part_fitted',
    state: BUILT,
  },
  {
    what: 'another part that fails',
    ...record('P-1', { part_fitted: 'WK-TEASEL' }),
    code: 'record/part-fails',
    severity: 'conflict',
    line: 2,
    column: 'part_fitted',
    state: OPEN,
  },
  {
    what: 'a part that the catalogue doesn’t have',
    ...record('P-1', { part_fitted: 'XX-NOWHERE' }),
    code: 'record/part-unknown',
    severity: 'conflict',
    line: 2,
    column: 'part_fitted',
    state: OPEN,
  },
  {
    what: 'longer leads',
    ...record('P-2', { lead_length: '1.4 m' }),
    code: 'record/lead-longer',
    severity: 'confirm',
    line: 3,
    column: 'lead_length',
    state: BUILT,
  },
  {
    what: 'a fault current above the rating of the device',
    ...record('P-1', { fault_current: '12 kA' }),
    code: 'record/fault-current-above',
    severity: 'conflict',
    line: 2,
    column: 'fault_current',
    state: OPEN,
  },
  {
    what: 'volts above the MCOV',
    ...reading(L1, { found: '151' }),
    code: 'record/volts-above-mcov',
    severity: 'conflict',
    line: 2,
    column: 'found',
    state: OPEN,
  },
  {
    what: 'volts outside their band',
    ...reading(L1, { found: '131' }),
    code: 'record/volts-outside-band',
    severity: 'confirm',
    line: 2,
    column: 'found',
    state: BUILT,
  },
  {
    what: 'a light that is dark where it should be lit',
    ...reading(LIT, { found: 'dark' }),
    code: 'record/look-other',
    severity: 'conflict',
    line: 5,
    column: 'found',
    state: OPEN,
  },
  {
    what: 'a required protector that wasn’t fitted',
    ...record('P-1', { outcome: 'not fitted', serial: '', date_code: '' }),
    code: 'record/required-not-there',
    severity: 'conflict',
    line: 2,
    column: 'outcome',
    state: OPEN,
  },
  {
    what: 'a recommended protector that wasn’t fitted',
    ...record('P-3', { outcome: 'not fitted' }),
    code: 'record/not-there',
    severity: 'confirm',
    line: 4,
    column: 'outcome',
    state: BUILT,
  },
  {
    what: 'a required protector that was moved to nobody knows where',
    ...record('P-1', { outcome: 'moved', place: 'Shed' }),
    code: 'record/moved-out-of-reach',
    severity: 'conflict',
    line: 2,
    column: 'place',
    state: OPEN,
  },
  {
    what: 'a recommended protector that was moved',
    ...record('P-3', { outcome: 'moved', place: 'Shed' }),
    code: 'record/moved',
    severity: 'confirm',
    line: 4,
    column: 'place',
    state: BUILT,
  },
  {
    what: 'no serial',
    ...record('P-2', { serial: '', date_code: '' }),
    code: 'record/not-recorded',
    severity: 'missing',
    line: 3,
    column: 'serial',
    state: OPEN,
  },
  {
    what: 'no serial on the part, and no date code',
    ...record('P-2', { serial: 'none', date_code: '' }),
    code: 'record/not-recorded',
    severity: 'missing',
    line: 3,
    column: 'date_code',
    state: OPEN,
  },
  {
    what: 'no torque',
    ...record('P-2', { torque: '' }),
    code: 'record/not-recorded',
    severity: 'missing',
    line: 3,
    column: 'torque',
    state: OPEN,
  },
  {
    what: 'no reading',
    ...reading(L1, { found: '' }),
    code: 'record/no-reading',
    severity: 'missing',
    line: 2,
    column: 'found',
    state: OPEN,
  },
  {
    what: 'a length that can be read two ways',
    ...record('P-2', { lead_length: '1,234 m' }),
    code: 'record/cell-wrong',
    severity: 'missing',
    line: 3,
    column: 'lead_length',
    state: OPEN,
  },
  {
    what: 'a date that can be read two ways',
    ...record('P-2', { date: '04/05/2026' }),
    code: 'record/cell-wrong',
    severity: 'missing',
    line: 3,
    column: 'date',
    state: OPEN,
  },
  {
    what: 'a photo that isn’t there',
    ...record('P-2', { photo: 'box.jpg' }),
    code: 'record/photo-not-there',
    severity: 'confirm',
    line: 3,
    column: 'photo',
    state: BUILT,
  },
];

describe('a check of a record', () => {
  it('a clean record is as built, and nothing is said of it', async () => {
    const site = await siteOf();
    const told = await site.record();
    expect(site.items()).toEqual([]);
    expect(site.json().state).toBe(BUILT);
    expect(told.status).toBe(0);
  });

  it.each(CASES)('$what', async ({ form, where, cells, code, severity, line, column, state }) => {
    const site = await siteOf();
    site.edit(form, where, cells);
    const told = await site.record();
    const mine = site.items().filter((item) => item['code'] === code);
    expect(mine.map((item) => [item['job'], item['severity'], item['line'], item['column']])).toContainEqual([
      'UF-108',
      severity,
      String(line),
      column,
    ]);
    expect(mine[0]?.['file']).toBe(form);
    expect(mine[0]?.['hint']).not.toBe('');
    expect(site.json().state).toBe(state);
    expect(told.status).toBe(state === BUILT ? 0 : 1);
  });

  it('volts of the wrong sign', async () => {
    const site = await siteOf('UF-102');
    site.edit(
      'site-readings.csv',
      { protector: 'P-1', from: 'positive', to: 'negative' },
      { found: '-404.8' },
    );
    await site.record();
    const [item] = site.items().filter(({ code }) => code === 'record/volts-wrong-sign');
    expect([item?.['severity'], item?.['file'], item?.['line'], item?.['column']]).toEqual([
      'conflict',
      'site-readings.csv',
      '2',
      'found',
    ]);
  });

  it('a job that isn’t there, of a file of its own', async () => {
    const site = await siteOf();
    writeFileSync(join(site.back, 'site-record-2.csv'), 'job,protector,outcome\nUF-999,P-1,fitted\n');
    const told = await site.record();
    const [item] = site.items();
    expect([item?.['job'], item?.['code'], item?.['file'], item?.['line'], item?.['column']]).toEqual([
      '',
      'record/no-such-job',
      'site-record-2.csv',
      '2',
      'job',
    ]);
    expect(told.status).toBe(1);
  });
});
