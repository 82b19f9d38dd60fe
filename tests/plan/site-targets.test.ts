import { describe, expect, it } from 'vitest';
import { faults, items, planOf } from './plan-of.js';

// rules.md section 0, several targets in one cell. Cases are our own.

const BATTERY =
  'BAT battery; battery_voltage=48; battery_chemistry=lfp; dc_grounding=negative; place=Hut; fault_current=3 kA';
const TWO = `I1 inverter-charger; ac_out=120; place=Hut; n_pe_link=yes
   I2 inverter-charger; ac_out=120; place=Hut`;
type Plan = ReturnType<typeof planOf>;
const ends = (plan: Plan): readonly string[] =>
  plan.site.runs.map((r) => `${r.from.equipment} > ${r.to.equipment}: ${String(r.length)}`);

describe('connects_to names several rows', () => {
  it('a battery feeds two inverters, a panel takes the outputs of two', () => {
    const plan = planOf(
      'occupancy=other',
      `${BATTERY}; connects_to=I1|I2; run_length=1 m|2 m\n${TWO}
       P panel; ac_in=120/240; connects_to=I1|I2; run_length=4 m; place=Hut`,
    );
    expect(ends(plan)).toEqual(['BAT > I1: 1', 'BAT > I2: 2', 'I1 > P: 4', 'I2 > P: 4']);
    expect(faults(plan)).toEqual([]);
    expect(items(plan, 'site/one-120-source')).toEqual([]);
  });

  it.each([
    ['one length for all', '2 m', [], ['BAT > I1: 2', 'BAT > I2: 2']],
    ['one for each, in their order', '2 m|3 m', [], ['BAT > I1: 2', 'BAT > I2: 3']],
    ['a third', '2 m|3 m|4 m', ['site/lengths-count'], ['BAT > I1: null', 'BAT > I2: null']],
  ])('%s', (_, lengths, expected, runs) => {
    const plan = planOf('occupancy=other', `${BATTERY}; connects_to=I1|I2; run_length=${lengths}\n${TWO}`);
    expect(faults(plan)).toEqual(expected);
    expect(ends(plan)).toEqual(runs);
  });

  it('one of them isn’t on the list: that is said, and the other is joined', () => {
    const plan = planOf('occupancy=other', `${BATTERY}; connects_to=I1|I9; run_length=2 m\n${TWO}`);
    expect(items(plan, 'site/connection-to-nothing').map((i) => [i.line, i.message])).toEqual([
      [2, 'BAT connects to I9, which is not on the list.'],
    ]);
    expect(ends(plan)).toEqual(['BAT > I1: 2']);
  });

  it('one of them twice is a conflict; two inputs of one aren’t', () => {
    const batteries = (to: string): Plan =>
      planOf('occupancy=other', `${BATTERY}; connects_to=${to}; run_length=2 m\n${TWO}`);
    expect(items(batteries('I1|I1'), 'conflict').map((i) => [i.code, i.line, i.column])).toEqual([
      ['site/connection-twice', 2, 'connects_to'],
    ]);
    expect(faults(batteries('I1|I2'))).toEqual([]);
    const inputs = planOf(
      'occupancy=other; lowest_temp=0 C',
      `A array; voc_stc=40; modules_in_series=3; connects_to=C/1|C/2; run_length=2 m; place=Hut / roof
       C charge-controller; dc_inputs=2; max_dc_voltage=150; place=Hut / hall`,
    );
    expect(faults(inputs)).toEqual([]);
  });

  it('a tag that holds a semicolon is one target', () => {
    const plan = planOf(
      'occupancy=other',
      `${BATTERY}; connects_to=I; run_length=2 m\nI inverter-charger; tag=A|B; ac_out=120; place=Hut; n_pe_link=yes`.replace(
        'connects_to=I;',
        'connects_to=A|B;',
      ),
    );
    expect(ends(plan)).toEqual(['BAT > A; B: 2']);
    expect(faults(plan)).toEqual([]);
  });

  it('two services on one load, panel or AC input are a conflict; behind a transfer switch not', () => {
    const services = `S1 service; ac_in=120/240; place=House; fault_current=5 kA
       S2 service; ac_in=120/240; place=House; fault_current=5 kA`;
    for (const row of [
      'X load; ac_in=120',
      'X panel; ac_in=120/240',
      'X inverter-charger; ac_in=120/240; ac_out=120/240',
    ]) {
      const straight = `${services}\n${row}; connects_to=S1|S2; run_length=9 m; place=House`;
      expect(faults(planOf('occupancy=other', straight))).toEqual(['site/two-services']);
      const switched = `${services}\nTS transfer-switch; connects_to=S1|S2; run_length=1 m; place=House
        ${row}; connects_to=TS; run_length=9 m; place=House`;
      expect(faults(planOf('occupancy=other', switched))).toEqual([]);
    }
  });

  it('two services that meet through a transformer are one conflict, at the panel where they meet', () => {
    const rows = (to: string): string =>
      `S1 service; ac_in=480Y/277; place=House; fault_current=5 kA
       S2 service; ac_in=208Y/120; place=House; fault_current=5 kA; connects_to=${to}; run_length=5 m
       T transformer; ac_in=480; ac_out=208Y/120; isolated=yes; connects_to=S1; run_length=5 m; place=House
       P panel; connects_to=T; run_length=9 m; place=House
       T2 transformer; ac_in=208; ac_out=120/240; isolated=yes; connects_to=P; run_length=5 m; place=House
       L load; ac_in=120; connects_to=T2; run_length=5 m; place=House
       Q panel; ac_in=208Y/120; place=House`;
    expect(items(planOf('occupancy=other', rows('P')), 'conflict').map((i) => [i.code, i.equipment])).toEqual(
      [['site/two-services', 'P']],
    );
    expect(faults(planOf('occupancy=other', rows('Q')))).toEqual([]);
  });
});
