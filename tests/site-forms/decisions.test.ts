import { describe, expect, it } from 'vitest';
import {
  decisionChanges,
  decisionsOf,
  planMark,
  type HousingDecision,
} from '../../src/site-forms/decisions.js';
import { planOf } from '../demo/plan-of.js';

const HOUSING: HousingDecision = {
  tag: 'P-1',
  ports: ['CC:dc-in-1'],
  place: 'Hut / room',
  part: 'XX-1',
  conductors: ['positive to ground', 'negative to ground'],
};
const OTHER: HousingDecision = {
  ...HOUSING,
  tag: 'P-2',
  ports: ['INV:ac-out'],
  conductors: ['L1 to ground'],
};

const SITE = (jobName: string, garage: string, length: string): string => `
job,job_name,tag,kind,connects_to,run_length (ft),place,ac_in,ac_out,dc_inputs,max_dc_voltage (V),lowest_temp (C),voc_stc (V),isc_stc (A),voc_coefficient,modules_in_series,strings_in_parallel
J,${jobName},SVC,service,,,House / wall,120/240,,,,-18,,,,,
J,,INV,grid-tie-inverter,SVC,10,${garage},,240,1,600,,,,,,
J,,ARR,array,INV/1,${length},House / roof,,,,,,41.2,10.2,-0.28 %/C,10,1
`;

describe('the fingerprint of a plan', () => {
  const mark = planMark([HOUSING, OTHER]);

  it('is eight capital letters that are no number, no date and no word', () => {
    expect(mark).toMatch(/^[BCDFGHJKLMNPQRSTVWXZ]{8}$/);
    expect(planMark([])).toMatch(/^[BCDFGHJKLMNPQRSTVWXZ]{8}$/);
  });

  it.each<[string, Partial<HousingDecision>]>([
    ['tag', { tag: 'P-3' }],
    ['ports', { ports: ['CC:dc-in-2'] }],
    ['place', { place: 'Hut / roof' }],
    ['part', { part: 'XX-2' }],
    ['no part', { part: '' }],
    ['conductors', { conductors: ['positive to ground'] }],
  ])('changes with the %s', (_, change) => {
    expect(planMark([{ ...HOUSING, ...change }, OTHER])).not.toBe(mark);
  });

  it('stays whatever the job is called and however its figures come out', async () => {
    const one = decisionsOf(await planOf(SITE('One', 'House / garage', '40')));
    const renamed = decisionsOf(await planOf(SITE('Another name', 'House / garage', '41')));
    const moved = decisionsOf(await planOf(SITE('One', 'House / attic', '40')));
    expect(one.length).toBeGreaterThan(1);
    expect(planMark(renamed)).toBe(planMark(one));
    expect(planMark(moved)).not.toBe(planMark(one));
    expect(decisionChanges(one, renamed)).toEqual([]);
    expect(decisionChanges(one, moved)).toContainEqual({
      tag: 'P-1',
      is: 'changed',
      what: [{ of: 'place', before: 'House / garage', now: 'House / attic' }],
    });
  });
});

describe('what differs between two plans', () => {
  it('names each housing that is gone, new or changed, and what of it', () => {
    const third = { ...OTHER, tag: 'P-10' };
    expect(decisionChanges([HOUSING, OTHER], [{ ...HOUSING, part: 'XX-2', place: 'Barn' }, third])).toEqual([
      {
        tag: 'P-1',
        is: 'changed',
        what: [
          { of: 'place', before: 'Hut / room', now: 'Barn' },
          { of: 'part', before: 'XX-1', now: 'XX-2' },
        ],
      },
      { tag: 'P-2', is: 'gone', what: [] },
      { tag: 'P-10', is: 'new', what: [] },
    ]);
  });
});
