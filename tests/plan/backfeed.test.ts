import { describe, expect, it } from 'vitest';
import { scheduleCells } from '../../src/documents/parts/contents/schedule-row.js';
import type { EnglishPlan } from '../in-english.js';
import { dataOf, items, planOf } from './plan-of.js';

// What a converter sends back into its DC input isn't known unless its backfeed_a is stated; rules.md 2.5 and 2.10. Own cases.

const ARRAY =
  'A array; connects_to=C; voc_stc=40; isc_stc=10; modules_in_series=3; strings_in_parallel=2; run_length=200 ft; place=roof; outdoors=yes';
const BATTERY = 'B battery; battery_voltage=48; battery_chemistry=lfp; fault_current=5 kA';
const rows = (controller = ''): string =>
  `${ARRAY}\nC charge-controller; max_dc_voltage=150; connects_to=B; place=room; ${controller}\n${BATTERY}; place=room`;

function standings(plan: EnglishPlan, rule: string): readonly string[] {
  return plan.standings
    .filter((one) => one.rule === rule)
    .map(({ standing, at, because }) => `${standing} at ${at.join(', ')}: ${because ?? ''}`);
}

const messages = (plan: EnglishPlan): readonly string[] =>
  items(plan, 'choose/backfeed-unknown').map((i) => i.message);
const currents = (controller: string): readonly string[] => {
  const plan = dataOf('lowest_temp=0', rows(controller));
  return plan.protectors
    .filter((p) => p.ports.some(({ equipment }) => equipment !== 'B'))
    .map((p) => scheduleCells(p, plan).faultCurrent)
    .map(({ lines, fill }) => `${lines.join()}${fill ? ' ____' : ''}`);
};

describe('a charge controller that doesn’t say what it sends back', () => {
  const plan = planOf('lowest_temp=0', rows());

  it('is asked about once, of its maker', () => {
    expect(items(plan, 'choose/backfeed-unknown')).toMatchObject([
      { severity: 'confirm', who: 'maker', equipment: 'C' },
    ]);
    expect(messages(plan)).toEqual([expect.stringMatching(/^backfeed_a of C isn’t stated/)]);
  });

  it('leaves three rules to confirm wherever it sends', () => {
    for (const rule of ['wire/overcurrent-array', 'rate/array-current', 'rate/short-circuit']) {
      const of = standings(plan, rule).filter((one) => one.includes('P-1'));
      expect(of).toEqual([
        expect.stringMatching(/^to confirm at P-1, P-2: what C sends back into its DC input isn’t known/),
      ]);
    }
  });

  it('stands beside the current of the arrays in the schedule', () => {
    expect(currents('')).toEqual(['25 A + ____', '25 A + ____']);
  });
});

describe('one that says it', () => {
  it.each(['3 A', '0 A'])('is asked nothing and met: %s', (backfeed) => {
    const plan = planOf('lowest_temp=0', rows(`backfeed_a=${backfeed}`));
    expect(messages(plan)).toEqual([]);
    expect(standings(plan, 'rate/short-circuit')).toEqual([expect.stringMatching(/^met at P-1, P-2/)]);
    expect(currents(`backfeed_a=${backfeed}`)).toEqual([
      backfeed === '0 A' ? '25 A' : '28 A',
      backfeed === '0 A' ? '25 A' : '28 A',
    ]);
  });
});

describe('where it doesn’t matter or is taken as none', () => {
  it('a grid-tie inverter without a battery is asked by its default alone', () => {
    const grid = `${ARRAY.replace('=C', '=I/1')}\nI grid-tie-inverter; dc_inputs=1; ac_out=240; max_dc_voltage=600; isolated=yes; connects_to=S\nS service; ac_in=120/240`;
    const plan = planOf('lowest_temp=0', grid);
    expect(messages(plan)).toEqual([]);
    expect(items(plan, 'default/used').some(({ message }) => message.startsWith('backfeed_a '))).toBe(true);
  });

  it('a converter on a turbine isn’t asked', () => {
    const turbine = `T wind-turbine; output=dc; max_voltage=100; connects_to=C; run_length=100 ft\nC charge-controller; max_dc_voltage=150; connects_to=B\n${BATTERY}`;
    expect(messages(planOf('', turbine))).toEqual([]);
  });
});
