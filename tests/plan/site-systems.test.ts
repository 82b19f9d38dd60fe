import { describe, expect, it } from 'vitest';
import type { AcSystem } from '../../src/model/words.js';
import { at, faults, items, one, planOf } from './plan-of.js';

// rules.md section 0, systems that agree: what holds what, what is stacked, and what a part has of the whole. Voltages to ground by
// check-values.md section 5 (share 1.15: common practice, no source). Cases are our own.

const OTHER = 'occupancy=other';
const service = (system: string, more = ''): string =>
  `S service; ac_in=${system}; place=Works; fault_current=5 kA${more}`;
const load = (system: string, more = ''): string =>
  `L load; ac_in=${system}; connects_to=S; run_length=9 m; place=Works; protect=yes${more}`;

/** Every system that another holds beside itself, as rules.md lists them. */
const HELD: Readonly<Partial<Record<AcSystem, readonly AcSystem[]>>> = {
  '120/240': ['120', '240'],
  '208Y/120': ['120', '208', '120/208'],
  '120/208': ['120', '208'],
  '240/120 high-leg': ['120', '240', '120/240', '240 delta'],
  '480Y/277': ['277', '480', '480 delta'],
  '600Y/347': ['347'],
  '240 delta': ['240'],
  '480 delta': ['480'],
};
const ALL: readonly AcSystem[] = [
  '120',
  '277',
  '347',
  '120/240',
  '120/208',
  '208Y/120',
  '240',
  '208',
  '480',
  '240/120 high-leg',
  '240 delta',
  '480Y/277',
  '480 delta',
  '600Y/347',
];

describe('what feeds must hold what is fed', () => {
  it.each(ALL)('a service of %s: what it holds is no conflict, all else is one at both rows', (whole) => {
    for (const part of ALL) {
      const holds = part === whole || (HELD[whole] ?? []).includes(part);
      const plan = planOf(OTHER, `${service(whole)}\n${load(part)}`);
      const said = items(plan, 'site/systems-disagree').map((i) => [i.severity, i.equipment, i.column]);
      const both = [
        ['conflict', 'L', 'ac_in'],
        ['conflict', 'S', 'ac_in'],
      ];
      expect(said, `${part} behind ${whole}`).toEqual(holds ? [] : both);
    }
  });

  it('iec: 400Y/230 holds 230, 230 doesn’t hold 400Y/230', () => {
    const iec = 'basis=iec; earthing=TN; occupancy=other; flash_density=1';
    expect(items(planOf(iec, `${service('400Y/230')}\n${load('230')}`), 'site/systems-disagree')).toEqual([]);
    expect(
      items(planOf(iec, `${service('230')}\n${load('400Y/230')}`), 'site/systems-disagree'),
    ).toHaveLength(2);
  });

  it('the draft of what doesn’t agree rates both ends by the higher of the two', () => {
    const plan = planOf(OTHER, `${service('480Y/277')}\n${load('120/240')}`);
    // 277 V x 1.15.
    expect(one(plan, 'S:service').required.mcov).toBe(318.55);
    expect(one(plan, 'L:feeder').required.mcov).toBe(318.55);
    expect(plan.submittable).toBe(false);
  });

  it.each([
    ['grid-tie-inverter; ac_out=240; isolated=yes; dc_inputs=1; max_dc_voltage=600', '120/240', true],
    ['grid-tie-inverter; ac_out=208; isolated=yes; dc_inputs=1; max_dc_voltage=600', '208Y/120', true],
    ['grid-tie-inverter; ac_out=240; isolated=yes; dc_inputs=1; max_dc_voltage=600', '208Y/120', false],
    ['grid-tie-inverter; ac_out=480Y/277; isolated=yes; dc_inputs=1; max_dc_voltage=800', '480 delta', false],
    ['ac-module-branch; ac_out=240', '120/240', true],
    ['ac-module-branch; ac_out=240', '120/208', false],
    ['ac-battery; ac_out=240', '120/240', true],
    ['ac-battery; ac_out=208', '120/240', false],
  ])('what runs in step must be held: %s on %s', (kind, system, agrees) => {
    const plan = planOf(
      OTHER,
      `${service(system)}\nP panel; connects_to=S; run_length=9 m; place=Works
       X ${kind}; connects_to=P; run_length=3 m; place=Works`,
    );
    expect(items(plan, 'site/systems-disagree').map((i) => i.equipment)).toEqual(agrees ? [] : ['P', 'X']);
  });
});

describe('what states no system', () => {
  const behind = (row: string, more = ''): ReturnType<typeof planOf> =>
    planOf(OTHER, `${service('480Y/277')}\n${row}; connects_to=S; run_length=9 m; place=Works${more}`);

  it.each(['panel', 'load'])('a %s has that of what feeds it', (kind) => {
    const plan = behind(`L ${kind}; protect=yes`);
    expect(one(plan, 'L:feeder').system).toBe('480Y/277');
    expect(faults(plan)).toEqual([]);
  });

  it.each(['disconnect', 'transfer-switch'])(
    'a %s passes it on; one that states another is a conflict',
    (kind) => {
      const rows = '\nL load; connects_to=D; run_length=2 m; place=Works; protect=yes';
      expect(one(behind(`D ${kind}`, rows), 'L:feeder').system).toBe('480Y/277');
      expect(faults(behind(`D ${kind}; ac_in=480`, rows.replace('load;', 'load; ac_in=480;')))).toEqual([]);
      const odd = behind(`D ${kind}; ac_in=120/240`, rows);
      expect(items(odd, 'site/systems-disagree').map((i) => [i.equipment, i.column])).toEqual([
        ['D', 'ac_in'],
      ]);
    },
  );

  it('a panel that two feeds of different systems feed has the first one’s, and the other disagrees', () => {
    const plan = planOf(
      OTHER,
      `${service('120/240')}\nTS transfer-switch; connects_to=S; run_length=1 m; place=Works
       P panel; connects_to=TS; run_length=9 m; place=Works
       G generator; ac_out=208Y/120; connects_to=TS; run_length=3 m; place=Works; fault_current=1 kA`,
    );
    expect(items(plan, 'site/systems-disagree').map((i) => i.equipment)).toEqual(['G', 'P']);
  });

  it('panels of panels have that of the head, through each of several', () => {
    const plan = planOf(
      OTHER,
      `${service('480Y/277')}
       P3 panel; connects_to=P8|P9; run_length=3 m; place=Works
       P8 panel; connects_to=S; run_length=3 m; place=Works
       P9 panel; connects_to=S; run_length=3 m; place=Works
       L load; ac_in=120; connects_to=P3; run_length=3 m; place=Works`,
    );
    expect(items(plan, 'site/systems-disagree').map((i) => i.equipment)).toEqual(['L', 'P3']);
  });
});

describe('stacked sources', () => {
  const stack = (count: number, of: string, system: string): ReturnType<typeof planOf> =>
    planOf(
      OTHER,
      `P panel; ac_in=${system}; connects_to=I; run_length=2 m; place=Hut; n_pe_link=yes; protect=yes
       I inverter-charger; quantity=${count}; ac_out=${of}; place=Hut`,
    );

  it.each([
    [2, '120', '120/240', true],
    [4, '120', '120/240', true],
    [3, '120', '120/240', false],
    [3, '120', '208Y/120', true],
    [6, '120', '208Y/120', true],
    [2, '120', '208Y/120', false],
    [2, '120/208', '208Y/120', true],
    [3, '277', '480Y/277', true],
    [2, '277', '480Y/277', false],
    [2, '120/240', '120/240', true],
    [2, '120/240', '208Y/120', false],
  ])('%i of %s on a panel of %s', (count, of, system, agrees) => {
    const plan = stack(count, of, system);
    expect(items(plan, 'site/systems-disagree').length === 0).toBe(agrees);
    expect(items(plan, 'site/one-120-source')).toEqual([]);
  });

  it('two 120 V inverters on a 120/240 panel: no conflict, and 138 V at each of them', () => {
    const plan = stack(2, '120', '120/240');
    expect(faults(plan)).toEqual([]);
    // 120 V x 1.15.
    for (const where of ['I-1:ac-out', 'I-2:ac-out', 'P:feeder'])
      expect(one(plan, where).required.mcov).toBe(138);
  });

  it('AC batteries that alone feed a panel stack as inverters do', () => {
    const rows = `P panel; ac_in=120/240; place=Hut; n_pe_link=yes
       B1 ac-battery; ac_out=120; connects_to=P; run_length=2 m; place=Hut
       B2 ac-battery; ac_out=120; connects_to=P; run_length=2 m; place=Hut`;
    expect(faults(planOf(OTHER, rows))).toEqual([]);
    const alone = rows.split('\n').slice(0, 2).join('\n');
    expect(items(planOf(OTHER, alone), 'site/one-120-source').map((i) => i.severity)).toEqual(['confirm']);
  });

  it('whose panel doesn’t state what they make: missing', () => {
    const rows = (of: string): string =>
      `P panel; connects_to=I; run_length=2 m; place=Hut; n_pe_link=yes
       I inverter-charger; quantity=2; ac_out=${of}; place=Hut`;
    expect(faults(planOf(OTHER, rows('120')))).toEqual(['fact/ac-in']);
    expect(faults(planOf(OTHER, rows('120/240')))).toEqual([]);
  });

  it('of two systems, each of which holds the panel’s: a conflict at both', () => {
    const rows = (second: string): string =>
      `P panel; ac_in=120; connects_to=I1|I2; run_length=2 m; place=Hut; n_pe_link=yes
       I1 inverter-charger; ac_out=120/240; place=Hut
       I2 inverter-charger; ac_out=${second}; place=Hut`;
    const plan = planOf(OTHER, rows('208Y/120'));
    expect(items(plan, 'site/systems-disagree').map((i) => i.equipment)).toEqual(['I1', 'I2']);
    expect(faults(planOf(OTHER, rows('120/240')))).toEqual([]);
  });
});

describe('one 120 V source on a 120/240 panel is to be confirmed', () => {
  const panel = (source: string, more = ''): ReturnType<typeof planOf> =>
    planOf(
      OTHER,
      `X ${source}; place=Hut; n_pe_link=yes
       P panel; ac_in=120/240; connects_to=X; run_length=2 m; place=Hut${more}`,
    );

  it.each([
    'inverter-charger; ac_out=120',
    'generator; ac_out=120; fault_current=1 kA',
    'ac-battery; ac_out=120',
  ])('%s', (source) => {
    const plan = panel(source);
    expect(faults(plan)).toEqual([]);
    const [item, ...others] = items(plan, 'site/one-120-source');
    expect(others).toEqual([]);
    expect(item).toMatchObject({ severity: 'confirm', equipment: 'P' });
    expect(item?.message).toMatch(/no multiwire circuits and no 240 V loads/);
  });

  it('also behind a transfer switch whose other side is the utility’s', () => {
    const plan = planOf(
      OTHER,
      `${service('120/240')}\nTS transfer-switch; connects_to=S; run_length=1 m; place=Works
       P panel; connects_to=TS; run_length=9 m; place=Works
       G generator; ac_out=120; connects_to=TS; run_length=3 m; place=Works; fault_current=1 kA`,
    );
    expect(faults(plan)).toEqual([]);
    expect(items(plan, 'site/one-120-source')).toHaveLength(1);
  });

  it('one of 120/240 V isn’t; a service of 120 V is a conflict', () => {
    expect(items(panel('inverter-charger; ac_out=120/240'), 'site/one-120-source')).toEqual([]);
    const plan = planOf(OTHER, `${service('120')}\n${load('120/240')}`);
    expect(items(plan, 'site/systems-disagree')).toHaveLength(2);
  });
});

describe('a part has the grounding and the conductors of the whole', () => {
  it.each([
    // 277 V to ground x 1.15.
    ['480Y/277', 'solid', '480 delta', 318.55],
    ['480Y/277', 'solid', '480', 318.55],
    ['480Y/277', 'solid', '277', 318.55],
    // Line to line of the whole x 1.15.
    ['480Y/277', 'none', '277', 552],
    ['480Y/277', 'impedance', '277', 552],
    ['480Y/277', 'none', '480 delta', 552],
    ['480 delta', 'corner', '480', 552],
    ['240 delta', 'corner', '240', 276],
    ['208Y/120', 'none', '120', 239.2],
    ['120/240', 'none', '120', 276],
    // The high leg, 208 V x 1.15.
    ['240/120 high-leg', 'solid', '240 delta', 239.2],
    ['240/120 high-leg', 'solid', '240', 239.2],
    // Two lines that never are the high leg.
    ['240/120 high-leg', 'solid', '120/240', 138],
    ['240/120 high-leg', 'solid', '120', 138],
    ['120/240', 'solid', '240', 138],
    ['208Y/120', 'solid', '208', 138],
  ])('%s %s, of which %s: %d V', (whole, grounding, part, mcov) => {
    const plan = planOf(OTHER, `${service(whole, `; system_grounding=${grounding}`)}\n${load(part)}`);
    expect(one(plan, 'L:feeder').required.mcov).toBe(mcov);
    expect(one(plan, 'L:feeder').grounding).toBe(grounding);
    expect(items(plan, 'site/which-two-lines')).toHaveLength(
      whole.includes('high-leg') && part === '240' ? 1 : 0,
    );
    // Two of three lines, of which one is grounded: which of them goes without a device hangs on it.
    expect(items(plan, 'site/corner-line').map((i) => [i.severity, i.equipment])).toEqual(
      grounding === 'corner' ? [['confirm', 'L']] : [],
    );
  });

  it.each([
    ['two of three lines', '480 delta', '480', ['L']],
    ['all three lines', '480 delta', '480 delta', []],
    ['both lines of a supply that has no more', '480', '480', []],
    ['a port that is stated to be unused', '480 delta', 'unused', []],
  ])(
    'of a corner-grounded system %s: which two is asked only where there is a choice',
    (_, whole, own, asked) => {
      const rows = `${service(whole, '; system_grounding=corner')}\n${load(own)}`;
      const found = items(planOf(OTHER, rows), 'site/corner-line');
      expect(found.map((i) => i.equipment)).toEqual(asked);
      for (const { message, column } of found) {
        expect(message).toBe(
          'L takes two lines of a corner-grounded 480 delta: which two isn’t stated. They are planned as L1 and the grounded L2, which has no overcurrent device.',
        );
        expect(column).toBe('ac_in');
      }
    },
  );

  it('347 V behind an impedance-grounded 600Y/347: 600 V x 1.15, which no part of the stock bears', () => {
    const plan = planOf(OTHER, `${service('600Y/347', '; system_grounding=impedance')}\n${load('347')}`);
    expect(at(plan, 'L:feeder')[0]?.required.mcov).toBe(690);
    expect(items(plan, 'choose/none-fits').map((i) => i.equipment)).toContain('L');
  });
});
