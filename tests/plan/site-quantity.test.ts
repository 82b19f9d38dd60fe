import { describe, expect, it } from 'vitest';
import { faults, items, one, planOf } from './plan-of.js';

// rules.md section 0, quantity and modules of arrays: each case that fires beside one that doesn't. Cases are our own.

const MODULES = 'voc_stc=40; modules_in_series=3; isc_stc=10';
const STRINGS = `${MODULES}; strings_in_parallel=1`;
const COLD = 'lowest_temp=0 C';
const BATTERY = 'BAT battery; battery_voltage=48; battery_chemistry=lfp; place=Hut; fault_current=3 kA';
const INVERTER = 'grid-tie-inverter; max_dc_voltage=250; ac_out=240; isolated=yes; place=Hut';

/** How many arrays a plan has. */
const arrays = (plan: ReturnType<typeof planOf>): number =>
  plan.site.equipments.filter((e) => e.kind === 'array').length;

describe('an array of quantity N is N arrays', () => {
  it.each([
    ['on a group of N', `C charge-controller; quantity=4; dc_inputs=1; max_dc_voltage=250; place=Hut`],
    [
      'on a group of M with N/M inputs each',
      'C charge-controller; quantity=2; dc_inputs=2; max_dc_voltage=250; place=Hut',
    ],
    [
      'on a group of N whose inputs aren’t stated',
      'C charge-controller; quantity=4; max_dc_voltage=250; place=Hut',
    ],
    ['on a converter of N inputs', `C ${INVERTER}; dc_inputs=4`],
    [
      'on a combiner of N inputs',
      `C combiner; dc_inputs=4; connects_to=D; run_length=3 m
       D charge-controller; dc_inputs=1; max_dc_voltage=250; place=Hut`,
    ],
    [
      'on a group of N, a disconnect for each between',
      `E charge-controller; quantity=4; dc_inputs=1; max_dc_voltage=250; place=Hut
       C disconnect; quantity=4; connects_to=E; run_length=3 m; place=Hut`,
    ],
  ])('%s', (_, rows) => {
    const plan = planOf(COLD, `A array; quantity=4; connects_to=C; run_length=5 m; ${STRINGS}\n${rows}`);
    expect(arrays(plan)).toBe(4);
    expect(faults(plan)).toEqual([]);
  });

  it('where its modules are stated too: of each', () => {
    const plan = planOf(
      COLD,
      `A array; quantity=4; connects_to=C; run_length=5 m; ${MODULES}; modules=6
       C combiner; connects_to=D; run_length=3 m
       D charge-controller; dc_inputs=1; max_dc_voltage=250; place=Hut`,
    );
    expect(arrays(plan)).toBe(4);
    expect(faults(plan)).toEqual([]);
    // Two strings of each of four: 1.25 x 10 A x 8 (NEC 690.8(A)(1)(a)(1)).
    expect(one(plan, 'D:dc-in-1').required.sccr).toBe(100);
  });

  it.each([
    ['on one converter of fewer inputs', `C ${INVERTER}; dc_inputs=2`],
    [
      'on one controller, whose inputs are 1 by default',
      'C charge-controller; max_dc_voltage=250; place=Hut',
    ],
    [
      'on a combiner that states no inputs',
      `C combiner; connects_to=D; run_length=3 m
       D charge-controller; dc_inputs=1; max_dc_voltage=250; place=Hut`,
    ],
    [
      'on two controllers of one input each',
      'C charge-controller; quantity=2; dc_inputs=1; max_dc_voltage=250; place=Hut',
    ],
  ])('or N modules, %s: that is asked, and one array is drafted', (_, rows) => {
    const plan = planOf(COLD, `A array; quantity=4; connects_to=C; run_length=5 m; ${STRINGS}\n${rows}`);
    expect(arrays(plan)).toBe(1);
    expect(items(plan, 'site/arrays-or-modules').map((i) => [i.severity, i.line, i.column])).toEqual([
      ['conflict', 2, 'quantity'],
    ]);
  });

  it('or N modules where one input of several is named', () => {
    const rows = (to: string): string =>
      `A array; quantity=2; connects_to=${to}; run_length=5 m; ${STRINGS}\nC ${INVERTER}; dc_inputs=2`;
    expect(faults(planOf(COLD, rows('C/1')))).toEqual(['site/arrays-or-modules']);
    expect(faults(planOf(COLD, rows('C')))).toEqual([]);
  });
});

describe('modules of an array', () => {
  it.each([
    ['with those in series, the strings follow', 'modules=12; modules_in_series=3', [], 132, 50],
    ['with the strings, those in series follow', 'modules=12; strings_in_parallel=3', [], 176, 37.5],
    ['that both agree with', 'modules=12; modules_in_series=3; strings_in_parallel=4', [], 132, 50],
    ['that the string doesn’t divide', 'modules=13; modules_in_series=3', ['site/modules-uneven'], 132, null],
    [
      'that are another product',
      'modules=12; modules_in_series=3; strings_in_parallel=3',
      ['site/modules-product'],
      132,
      37.5,
    ],
    ['with neither', 'modules=12', ['fact/modules-in-series'], 250, null],
  ])('%s', (_, cells, expected, mcov, sccr) => {
    const plan = planOf(
      COLD,
      `A array; voc_stc=40; isc_stc=10; ${cells}; connects_to=C; run_length=5 m
       C charge-controller; dc_inputs=1; max_dc_voltage=250; place=Hut`,
    );
    expect(faults(plan)).toEqual(expected);
    expect(one(plan, 'C:dc-in-1').required).toMatchObject({ mcov, sccr });
  });
});

describe('what joins a group', () => {
  const GROUP = BATTERY.replace('place=Hut', 'quantity=3; place=Shed');

  it.each([
    ['an inverter-charger on a group of batteries', `X inverter-charger; ac_out=120/240; connects_to=BAT`],
    ['a charge controller on one', 'X charge-controller; dc_inputs=1; max_dc_voltage=150; connects_to=BAT'],
  ])('%s: each of it, one length or one for each', (_, row) => {
    for (const lengths of ['2 m', '1 m|2 m|3 m']) {
      const plan = planOf(COLD, `${GROUP}\n${row}; run_length=${lengths}; place=Hut`);
      expect(faults(plan)).toEqual([]);
      const runs = plan.site.runs.filter((r) => r.to.equipment === 'X');
      expect(runs.map((r) => r.from.equipment)).toEqual(['BAT-1', 'BAT-2', 'BAT-3']);
      expect(runs.map((r) => r.length)).toEqual(lengths === '2 m' ? [2, 2, 2] : [1, 2, 3]);
    }
    const two = planOf(COLD, `${GROUP}\n${row}; run_length=1 m|2 m; place=Hut`);
    expect(items(two, 'site/lengths-count').map((i) => [i.severity, i.line, i.column])).toEqual([
      ['conflict', 3, 'run_length'],
    ]);
  });

  it.each([
    ['a battery on a group of controllers', BATTERY, 'charge-controller; dc_inputs=1; max_dc_voltage=150'],
    [
      'a panel on a group of inverters',
      'BAT panel; place=Hut; ac_in=120/240',
      'inverter-charger; ac_out=120',
    ],
    ['a DC panel on a group of batteries', 'BAT dc-panel; place=Hut', BATTERY.slice(4)],
  ])('%s: each of it', (_, row, group) => {
    const plan = planOf(
      'lowest_temp=0 C; occupancy=other',
      `${row}; connects_to=X; run_length=2 m\nX ${group}; quantity=2; place=Hut`,
    );
    expect(faults(plan)).toEqual([]);
    expect(plan.site.runs).toHaveLength(2);
  });

  it.each([
    ['a load', 'L load; ac_in=120; connects_to=X; run_length=2 m; place=Hut'],
    ['a grid-tie inverter', `L ${INVERTER}; dc_inputs=1; connects_to=X; run_length=2 m`],
    ['a panel of quantity 2', 'L panel; quantity=2; ac_in=120/240; connects_to=X; run_length=2 m; place=Hut'],
  ])('%s on a group of three: which of them is missing', (_, row) => {
    const plan = planOf('occupancy=other', `${row}\nX panel; quantity=3; ac_in=120/240; place=Hut`);
    expect(faults(plan)).toEqual(['site/group-unclear']);
  });

  it('a source that an unclear group names isn’t said to connect to nothing', () => {
    const plan = planOf(
      COLD,
      `A array; quantity=2; ${STRINGS}; modules=3\nI ${INVERTER}; dc_inputs=2; connects_to=A; run_length=5 m`,
    );
    expect(faults(plan)).toEqual(['site/group-unclear']);
  });
});
