import { describe, expect, it } from 'vitest';
import { faults, items, one, planOf } from './plan-of.js';

// rules.md section 0, sources that can run together, and the grounding of one bus. Cases are our own.

type Plan = ReturnType<typeof planOf>;
const OTHER = 'occupancy=other';
const SERVICE = 'S service; ac_in=120/240; place=House; fault_current=5 kA';
const PANEL = 'P panel; connects_to=S; run_length=2 m; place=House';
const generator = (to: string, more = ''): string =>
  `G generator; ac_out=120/240; connects_to=${to}; run_length=9 m; place=House; fault_current=1 kA${more}`;

describe('a generator on what another supply feeds', () => {
  it.each([
    ['a panel of the service', `${SERVICE}\n${PANEL}\n${generator('P')}`],
    [
      'a panel of a panel, by a disconnect',
      `${SERVICE}\n${PANEL}\nQ panel; connects_to=P; run_length=2 m; place=House\nD disconnect; connects_to=Q; run_length=1 m; place=House\n${generator('D')}`,
    ],
    [
      'a load of the service',
      `${SERVICE}\nP load; connects_to=S; run_length=2 m; place=House\n${generator('P')}`,
    ],
    [
      'the one AC input that the service feeds',
      `${SERVICE}\nI inverter-charger; ac_in=120/240; ac_out=120/240; connects_to=S; run_length=2 m; place=House\n${generator('I')}`,
    ],
    [
      'a panel behind a transformer of the service',
      `S service; ac_in=480Y/277; place=House; fault_current=5 kA\nT transformer; isolated=yes; ac_in=480; ac_out=120/240; connects_to=S; run_length=2 m; place=House\nP panel; connects_to=T; run_length=2 m; place=House\n${generator('P')}`,
    ],
    ['what it can’t hold, too', `${SERVICE}\n${PANEL}\n${generator('P').replace('120/240', '120')}`],
  ])('%s: transfer equipment is missing', (_, rows) => {
    const plan = planOf(OTHER, rows);
    expect(items(plan, 'missing').map((i) => [i.code, i.equipment])).toEqual([
      ['fact/transfer-equipment', 'G'],
    ]);
    expect(items(plan, 'fact/transfer-equipment')[0]?.message).toMatch(/G and S/);
  });

  it.each([
    [
      'behind a transfer switch',
      `${SERVICE}\nTS transfer-switch; connects_to=S; run_length=1 m; place=House\nP panel; connects_to=TS; run_length=2 m; place=House\n${generator('TS')}`,
    ],
    [
      'on the second AC input',
      `${SERVICE}\nI inverter-charger; ac_in=120/240; ac_in_2=120/240; ac_out=120/240; connects_to=S; run_length=2 m; place=House\n${generator('I')}`,
    ],
    ['alone', `P panel; ac_in=120/240; place=House; n_pe_link=yes\n${generator('P')}`],
    [
      'beside a grid-tie inverter',
      `P panel; ac_in=120/240; place=House; n_pe_link=yes\n${generator('P')}\nX grid-tie-inverter; ac_out=240; isolated=yes; dc_inputs=1; max_dc_voltage=600; connects_to=P; run_length=3 m; place=House`,
    ],
  ])('%s: nothing is missing', (_, rows) => {
    expect(faults(planOf(OTHER, rows))).toEqual([]);
  });

  it('meant to run in parallel: to be confirmed', () => {
    const two = (a: string, b: string): Plan =>
      planOf(
        OTHER,
        `P panel; ac_in=120/240; place=House; n_pe_link=yes\n${generator('P', a)}\n${generator('P', b).replace('G ', 'H ')}`,
      );
    expect(faults(two('', ''))).toEqual(['fact/transfer-equipment', 'fact/transfer-equipment']);
    const meant = two('; parallel=yes', '; parallel=yes');
    expect(faults(meant)).toEqual([]);
    expect(items(meant, 'site/parallel-sources').map((i) => [i.severity, i.equipment])).toEqual([
      ['confirm', 'G'],
      ['confirm', 'H'],
    ]);
    // What the generator states of itself is enough beside a utility.
    expect(faults(planOf(OTHER, `${SERVICE}\n${PANEL}\n${generator('P', '; parallel=yes')}`))).toEqual([]);
  });
});

describe('what is joined to one bus has one grounding', () => {
  const Y = 'ac_in=480Y/277';
  const at = (plan: Plan, ...where: readonly string[]): readonly string[] =>
    where.map((one_) => one(plan, one_).grounding);

  it('stacked outputs: a stated one before a default, at their own ports too, and line to line of what they make', () => {
    const plan = planOf(
      OTHER,
      `P panel; ${Y}; connects_to=I1|I2|I3; run_length=2 m; place=House; protect=yes
       I1 inverter-charger; ac_out=277; place=House
       I2 inverter-charger; ac_out=277; place=House; system_grounding=impedance
       I3 inverter-charger; ac_out=277; place=House`,
    );
    const ports = ['P:feeder', 'I1:ac-out', 'I2:ac-out', 'I3:ac-out'];
    expect(at(plan, ...ports)).toEqual(ports.map(() => 'impedance'));
    // 480 V x 1.15.
    for (const where of ports) expect(one(plan, where).required.mcov).toBe(552);
    expect(faults(plan)).toEqual([]);
  });

  it('two 120 V inverters that make an ungrounded 120/240: 240 V line to line at each of them', () => {
    const rows = (grounding: string): Plan =>
      planOf(
        OTHER,
        `P panel; ac_in=120/240; connects_to=I; run_length=2 m; place=House; n_pe_link=no${grounding}
         I inverter-charger; quantity=2; ac_out=120; place=House`,
      );
    // 240 V x 1.15; 120 V x 1.15.
    expect(one(rows('; system_grounding=none'), 'I-1:ac-out').required.mcov).toBe(276);
    expect(one(rows(''), 'I-1:ac-out').required.mcov).toBe(138);
  });

  it('a panel states it: the service has it too', () => {
    const plan = planOf(
      OTHER,
      `S service; ${Y}; place=House; fault_current=5 kA
       P panel; connects_to=S; run_length=9 m; place=House; protect=yes; system_grounding=impedance`,
    );
    expect(at(plan, 'S:service', 'P:feeder')).toEqual(['impedance', 'impedance']);
  });

  it('of several that state it, one that isn’t solid', () => {
    const plan = planOf(
      OTHER,
      `P panel; ${Y}; place=House; protect=yes; system_grounding=solid
       G generator; ac_out=480Y/277; connects_to=P; run_length=9 m; place=House; parallel=yes; system_grounding=none; protect=yes
       H generator; ac_out=480Y/277; connects_to=P; run_length=9 m; place=House; parallel=yes; protect=yes`,
    );
    expect(at(plan, 'P:feeder', 'G:output', 'H:output')).toEqual(['none', 'none', 'none']);
  });

  it.each([
    ['a transfer switch', 'TS transfer-switch; place=House', ''],
    ['a transformer', 'TS transformer; isolated=yes; ac_in=480Y/277; ac_out=480Y/277; place=House', ''],
    ['an inverter-charger', 'TS inverter-charger; ac_in=480Y/277; ac_out=480Y/277; place=House', ''],
  ])('but not back through %s', (_, between) => {
    const plan = planOf(
      OTHER,
      `S service; ${Y}; place=House; fault_current=5 kA\n${between}; connects_to=S; run_length=2 m
       P panel; connects_to=TS; run_length=9 m; place=House; protect=yes; system_grounding=impedance`,
    );
    expect(at(plan, 'S:service', 'P:feeder')).toEqual(['solid', 'impedance']);
  });

  it('behind a transfer switch the one that isn’t solid counts', () => {
    const plan = planOf(
      OTHER,
      `S service; ${Y}; place=House; fault_current=5 kA
       TS transfer-switch; connects_to=S; run_length=2 m; place=House
       G generator; ac_out=480Y/277; connects_to=TS; run_length=9 m; place=House; system_grounding=impedance; protect=yes
       P panel; connects_to=TS; run_length=9 m; place=House; protect=yes`,
    );
    expect(at(plan, 'S:service', 'G:output', 'P:feeder')).toEqual(['solid', 'impedance', 'impedance']);
  });

  it.each([
    ['480Y/277', 'impedance'],
    ['208Y/120', 'solid'],
  ])(
    'an inverter-charger passes its AC in through to an AC out of the same system: %s',
    (system, expected) => {
      const plan = planOf(
        OTHER,
        `S service; ${Y}; system_grounding=impedance; place=House; fault_current=5 kA
       I inverter-charger; ac_in=480Y/277; ac_out=${system}; connects_to=S; run_length=2 m; place=House`,
      );
      expect(at(plan, 'I:ac-in', 'I:ac-out')).toEqual(['impedance', expected]);
    },
  );

  it.each([
    ['TT', 'S service; ac_in=480 delta', 'rate/no-neutral-in-tt'],
    ['TT', 'S service; ac_in=400Y/230', ''],
    ['IT', 'S service; ac_in=400Y/230; n_pe_link=yes', 'rate/link-in-it'],
    ['IT', 'S service; ac_in=400Y/230; n_pe_link=no', ''],
    ['TN', 'S service; ac_in=400Y/230; n_pe_link=yes', ''],
  ])('iec %s: %s', (earthing, row, code) => {
    const plan = planOf(
      `basis=iec; earthing=${earthing}; occupancy=other`,
      `${row}; place=House; fault_current=5 kA`,
    );
    expect(
      items(plan, 'conflict')
        .map((i) => i.code)
        .filter((c) => !c.startsWith('choose/')),
    ).toEqual(code === '' ? [] : [code]);
  });
});
