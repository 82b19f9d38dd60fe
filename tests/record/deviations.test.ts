import { describe, expect, it } from 'vitest';
import { siteOf, type Row, type Site } from './site.js';

const COLUMNS = ['job', 'protector', 'check', 'by', 'date', 'reason', 'paper'];
const SIGNED = { job: 'UF-108', by: 'office 1', date: '2026-05-01', reason: 'agreed with the owner' };
const accept = (site: Site, ...rows: Row[]): void => {
  site.write(
    'deviations.csv',
    rows.map((row) => ({ ...SIGNED, paper: '', ...row })),
    COLUMNS,
  );
};
const DARK = { protector: 'P-1', channel: '1', kind: 'light', state: 'utility on' };

describe('a deviation', () => {
  it('accepted by name and date makes a job as built with deviations', async () => {
    const site = await siteOf();
    site.edit('site-readings.csv', DARK, { found: 'dark' });
    accept(site, { protector: 'P-1', check: 'light' });
    const told = await site.record();
    const { state, deviations, accepted } = site.json();
    expect(state).toBe('as built with deviations');
    expect(deviations.map(({ protector, check, by }) => [protector, check, by])).toEqual([
      ['P-1', 'light', 'office 1'],
    ]);
    expect(accepted?.map(({ code }) => code)).toEqual(['record/look-other']);
    expect(site.items()).toEqual([]);
    expect(told.status).toBe(1);
  });

  it('stays accepted once the file of it is gone, until what hangs there is recorded anew', async () => {
    const site = await siteOf();
    site.edit('site-readings.csv', DARK, { found: 'dark' });
    accept(site, { protector: 'P-1', check: 'light' });
    await site.record();
    site.write('deviations.csv', [], COLUMNS);
    await site.record();
    expect(site.json().state).toBe('as built with deviations');
    site.edit('site-record.csv', { protector: 'P-1' }, { date: '2026-06-01' });
    await site.record();
    expect(site.json().state).toBe('record open');
  });

  it.each([
    ['without a name', { by: '' }],
    ['without a date', { date: '' }],
    ['dated before the record', { date: '2026-04-01' }],
  ])('%s doesn’t count', async (_, cells) => {
    const site = await siteOf();
    site.edit('site-readings.csv', DARK, { found: 'dark' });
    accept(site, { protector: 'P-1', check: 'light', ...cells });
    await site.record();
    expect(site.json().state).toBe('record open');
    expect(
      site.items().map((item) => [item['code'], item['file'], item['line'], item['column']]),
    ).toContainEqual(['record/deviation-refused', 'deviations.csv', '2', 'check']);
  });

  it.each([
    ['a part that fails', 'part', { part_fitted: 'WK-TEASEL' }],
    ['a fault current above a rating', 'fault_current', { fault_current: '12 kA' }],
    ['a required protector that isn’t there', 'outcome', { outcome: 'not fitted' }],
  ])('%s is cleared by the authority alone, by a paper', async (_, check, cells) => {
    const site = await siteOf();
    site.edit('site-record.csv', { protector: 'P-1' }, cells);
    accept(site, { protector: 'P-1', check });
    await site.record();
    expect(site.json().state).toBe('record open');
    accept(site, { protector: 'P-1', check, paper: 'letter 12 of 2026-05-01' });
    await site.record();
    expect(site.json().state).toBe('as built with deviations');
  });

  it('of what is as planned is told, and changes nothing', async () => {
    const site = await siteOf();
    accept(site, { protector: 'P-1', check: 'lead' });
    const told = await site.record();
    expect(site.items().map(({ code }) => code)).toEqual(['record/deviation-idle']);
    expect(site.json().state).toBe('as built');
    expect(told.status).toBe(0);
  });
});
