import { describe, expect, it } from 'vitest';
import { because, conductorsAt, faults, items, one, planOf, rulesAt, strengthAt } from './plan-of.js';

// One site under the four bases: where they differ in decisions and in clause numbers (rules.md sections 1 to 3).

const SITE = (system: string, line: string): string =>
  `SVC service; ac_in=${system}; place=House / wall; outdoors=yes; fault_current=6 kA
   MP panel; connects_to=SVC; run_length=12 m; ac_in=${system}; place=House / hall
   ANNEX panel; connects_to=MP; run_length=20 m; ac_in=${system}; place=Annex / hall; building=Annex; building_occupancy=dwelling
   INV grid-tie-inverter; connects_to=MP; run_length=4 m; dc_inputs=1; max_dc_voltage=600; ac_out=${line}; isolated=yes; place=House / attic
   A array; connects_to=INV; run_length=25 m; voc_stc=40; modules_in_series=10; isc_stc=10; strings_in_parallel=1; place=House / roof
   WT wind-turbine; connects_to=CC; run_length=25 m; output=three-phase; open_circuit_voltage=100; place=Tower
   CC charge-controller; dc_inputs=1; max_dc_voltage=250; place=House / cellar`;
const FACTS = 'occupancy=dwelling; lowest_temp=-10 C; flash_density=4; lightning_protection=none';
const plans = {
  'nec-2017': planOf(`basis=nec-2017; ${FACTS}`, SITE('120/240', '240')),
  'nec-2020': planOf(`basis=nec-2020; ${FACTS}`, SITE('120/240', '240')),
  'nec-2023': planOf(`basis=nec-2023; ${FACTS}`, SITE('120/240', '240')),
  iec: planOf(`basis=iec; earthing=TN; ${FACTS}`, SITE('400Y/230', '400Y/230')),
};

describe('one site under the four bases', () => {
  it('is a complete plan under each', () => {
    for (const plan of Object.values(plans)) expect(faults(plan)).toEqual([]);
  });

  it('230.67 and its In', () => {
    const of = (basis: keyof typeof plans): unknown => {
      const p = one(plans[basis], 'SVC:service');
      return [p.strength, p.required.in];
    };
    expect(of('nec-2017')).toEqual(['required', 10_000]);
    expect(of('nec-2020')).toEqual(['required', 10_000]);
    expect(of('nec-2023')).toEqual(['required', 10_000]);
    // CRL 85 / (2 x 4) = 10.6, below 1000 (fenv from memory).
    expect(of('iec')).toEqual(['required', 5_000]);
    // In 2017 it is required by 694.7(D) alone.
    const reason = (basis: keyof typeof plans): string | undefined =>
      one(plans[basis], 'SVC:service').reasons.find((r) => r.rule === 'place/service')?.strength;
    expect([reason('nec-2017'), reason('nec-2020'), reason('nec-2023'), reason('iec')]).toEqual([
      'recommended',
      'required',
      'required',
      'required',
    ]);
  });

  it('215.18 and 225.42 only in 2023; an outbuilding’s entry at any length only with iec', () => {
    expect(rulesAt(plans['nec-2017'], 'ANNEX:feeder')).toEqual([]);
    expect(rulesAt(plans['nec-2020'], 'ANNEX:feeder')).toEqual([]);
    expect(rulesAt(plans['nec-2023'], 'ANNEX:feeder')).toEqual(['place/feeder']);
    expect(rulesAt(plans['nec-2023'], 'MP:feeder')).toEqual(['place/feeder']);
    expect(rulesAt(plans.iec, 'ANNEX:feeder')).toEqual(['place/long-run', 'place/outbuilding']);
    expect(rulesAt(plans.iec, 'MP:feeder')).toEqual(['place/long-run']);
  });

  it('694.7(D) in every nec, not in iec', () => {
    for (const basis of ['nec-2017', 'nec-2020', 'nec-2023'] as const)
      expect(rulesAt(plans[basis], 'SVC:service')).toContain('place/wind-premises');
    expect(rulesAt(plans.iec, 'SVC:service')).not.toContain('place/wind-premises');
  });

  it('100 ft or 10 m, and the critical length', () => {
    expect(rulesAt(plans['nec-2023'], 'A:output')).toEqual([]);
    expect(rulesAt(plans.iec, 'A:output')).toEqual(['place/long-run']);
    // Lcrit 115 / 4 = 28.75 m; required all the same, since it is at the service.
    expect(strengthAt(plans.iec, 'A:output')).toBe('required');
    expect(strengthAt(plans.iec, 'INV:dc-in-1')).toBe('required');
    expect(strengthAt(plans['nec-2023'], 'INV:dc-in-1')).toBe('recommended');
  });

  it('N: asked at every place but the service with iec TN, optional with nec', () => {
    expect(conductorsAt(plans.iec, 'MP:feeder')).toEqual(['L1', 'L2', 'L3', 'N']);
    expect(conductorsAt(plans.iec, 'SVC:service')).toEqual(['L1', 'L2', 'L3']);
    expect(conductorsAt(plans['nec-2023'], 'MP:feeder')).toEqual(['L1', 'L2']);
  });

  it('each cycle prints its own clause of one subject', () => {
    const clause = (basis: keyof typeof plans, rule: string): readonly string[] =>
      plans[basis].clauses.filter((c) => c.rule === rule && !c.commonPractice).map((c) => c.clause);
    expect(clause('nec-2017', 'rate/listing')).toEqual(['285.6', '285.3']);
    expect(clause('nec-2020', 'rate/listing')).toEqual(['242.8', '242.6']);
    expect(clause('nec-2023', 'rate/listing')).toEqual(['242.6', '242.12']);
    expect(plans.iec.clauses.every((c) => !c.standard.startsWith('NEC'))).toBe(true);
    for (const basis of ['nec-2017', 'nec-2020', 'nec-2023'] as const)
      expect(plans[basis].clauses.every((c) => !c.standard.startsWith('IEC 60364'))).toBe(true);
  });
});

describe('iec by earthing', () => {
  const site = (earthing: string): ReturnType<typeof planOf> =>
    planOf(
      `basis=iec; earthing=${earthing}; occupancy=other; flash_density=1`,
      `S service; ac_in=400Y/230; place=Works
       L load; connects_to=S; run_length=9 m; ac_in=230; place=Works; protect=yes`,
    );

  it.each([
    ['TN', 253, ['L1', 'L2', 'L3'], 'BEECH-3', 253, 'BEECH-2'],
    ['TT', 253, ['L1', 'L2', 'L3', 'N'], 'SAGE', 253, 'MINT'],
    ['IT', 440, ['L1', 'L2', 'L3', 'N'], 'LARCH-4', 440, 'LARCH-2'],
  ])('%s', (earthing, atService, conductors, part, atLoad, loadPart) => {
    const plan = site(earthing);
    expect(one(plan, 'S:service').required.mcov).toBe(atService);
    expect(conductorsAt(plan, 'S:service')).toEqual(conductors);
    expect(one(plan, 'S:service').part).toBe(part);
    expect(one(plan, 'L:feeder').required.mcov).toBe(atLoad);
    expect(conductorsAt(plan, 'L:feeder')).toEqual(['L1', 'N']);
    expect(one(plan, 'L:feeder').part).toBe(loadPart);
    expect(faults(plan)).toEqual([]);
  });

  it('the default TN is printed where AC is protected', () => {
    const plan = planOf('basis=iec; occupancy=other', 'S service; ac_in=230');
    expect(plan.earthing).toBe('TN');
    expect(
      items(plan, 'default/used')
        .map((i) => i.message)
        .join(),
    ).toMatch(/earthing isn’t stated: taken as TN/);
  });

  it('a bare length is metres with iec, feet with nec', () => {
    const rows = 'S service; ac_in=230; place=A\nP panel; connects_to=S; run_length=20; ac_in=230; place=A';
    expect(planOf('basis=iec; earthing=TN', rows).site.runs[0]?.length).toBe(20);
    expect(planOf('basis=nec-2023', rows).site.runs[0]?.length).toBe(6.1);
  });

  it('Table F.1 for 230 V in IT is that of its two conductors', () => {
    expect(one(site('IT'), 'L:feeder').figures?.impulseWithstand).toBe(2500);
    expect(one(site('IT'), 'S:service').figures?.impulseWithstand).toBe(6000);
  });
});

describe('the default basis', () => {
  it('is nec-2023, printed to be confirmed; a setting changes it', () => {
    const plan = planOf('', 'S service; ac_in=120/240');
    expect(plan.basis).toBe('nec-2023');
    expect(items(plan, 'default/basis')).toHaveLength(1);
    expect(planOf('', 'S service; ac_in=230', { settings: { basis: 'iec' } }).basis).toBe('iec');
    expect(because(plan, 'S:service')).toEqual([]);
  });
});

describe('what can’t be with an earthing', () => {
  const conflicts = (earthing: string, row: string, basis = 'iec'): readonly string[] =>
    planOf(`basis=${basis}; earthing=${earthing}`, row)
      .openItems.filter((i) => i.code === 'rate/no-neutral-in-tt' || i.code === 'rate/link-in-it')
      .map((i) => `${i.severity} ${i.code} ${i.equipment}.${i.column}`);

  it.each([
    ['TT', 'S service; ac_in=240 delta', ['conflict rate/no-neutral-in-tt S.ac_in']],
    ['TT', 'I inverter-charger; ac_in=230; ac_out=240', ['conflict rate/no-neutral-in-tt I.ac_out']],
    ['TT', 'S service; ac_in=400Y/230', []],
    ['TN', 'S service; ac_in=240 delta', []],
    ['IT', 'S service; ac_in=230; n_pe_link=yes', ['conflict rate/link-in-it S.n_pe_link']],
    ['IT', 'S service; ac_in=230; n_pe_link=no', []],
    // 230 V in IT is rated at 400 V between lines, and is no conflict.
    ['IT', 'S service; ac_in=230', []],
    ['TN', 'S service; ac_in=230; n_pe_link=yes', []],
  ])('%s, %s', (earthing, row, expected) => {
    expect(conflicts(earthing, row)).toEqual(expected);
  });

  it('is nothing of the NEC', () => {
    expect(conflicts('TT', 'S service; ac_in=240 delta', 'nec-2023')).toEqual([]);
  });
});
