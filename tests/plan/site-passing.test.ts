import { describe, expect, it } from 'vitest';
import { because, faults, items, lightsOf, one, planOf, rulesAt } from './plan-of.js';

// rules.md section 0, what passes a connection through. Cases are our own.

const ARRAY =
  'A array; voc_stc=40; modules_in_series=10; strings_in_parallel=1; isc_stc=10; place=House / roof';
const INVERTER =
  'I grid-tie-inverter; dc_inputs=1; max_dc_voltage=600; ac_out=240; isolated=yes; place=House / hall; connects_to=P; run_length=2 m';
const HOUSE = `S service; ac_in=120/240; place=House / wall; fault_current=5 kA
   P panel; ac_in=120/240; connects_to=S; run_length=2 m; place=House / hall`;
const COLD = 'lowest_temp=0 C';

type Plan = ReturnType<typeof planOf>;
const runTo = (plan: Plan, tag: string): Plan['site']['runs'][number] | undefined =>
  plan.site.runs.find((r) => r.to.equipment === tag);

describe('a disconnect passes the connection through', () => {
  const rows = (parts: string, to = 'D'): string =>
    `${ARRAY}; connects_to=${to}; run_length=6 m\n${parts}\n${INVERTER}\n${HOUSE}`;

  it('lengths add: 260 ft behind it are a long run, at both ends', () => {
    const plan = planOf(COLD, rows('D disconnect; connects_to=I; run_length=260 ft; place=House / roof'));
    expect(runTo(plan, 'I')).toMatchObject({ length: 85.25, through: ['D'] });
    expect(rulesAt(plan, 'A:output')).toEqual(['place/long-run']);
    expect(rulesAt(plan, 'I:dc-in-1')).toEqual(['place/dc-input', 'place/long-run']);
    // 10 modules x 40 V x 1.10 at 0 C (NEC 690.7, Table 690.7(A)).
    expect(one(plan, 'I:dc-in-1').required.mcov).toBe(440);
    expect(because(plan, 'D:terminals').map((n) => n.because)).toHaveLength(1);
    expect(faults(plan)).toEqual([]);
    const near = planOf(COLD, rows('D disconnect; connects_to=I; run_length=20 m; place=House / roof'));
    expect(rulesAt(near, 'A:output')).toEqual([]);
  });

  it.each([
    ['names both', 'D disconnect; connects_to=A|I; run_length=6 m|9 m; place=House / roof', ''],
    ['is named by both', 'D disconnect; place=House / roof', 'D'],
    ['names the source', 'D disconnect; connects_to=A; run_length=6 m; place=House / roof', ''],
  ])('whichever row states it: one that %s', (_, disconnect, to) => {
    const inverter = disconnect.includes('I;')
      ? INVERTER
      : INVERTER.replace('connects_to=P', 'connects_to=P|D');
    const plan = planOf(
      COLD,
      `${ARRAY}${to === '' ? '' : '; connects_to=D; run_length=6 m'}\n${disconnect}\n${inverter}\n${HOUSE}`,
    );
    expect(runTo(plan, 'I')).toMatchObject({ through: ['D'], from: { equipment: 'A' } });
    expect(faults(plan)).toEqual([]);
  });

  it('a length that is blank on one part makes the whole unknown, and its row is asked', () => {
    const plan = planOf(COLD, rows('D disconnect; connects_to=I; place=House / roof'));
    expect(runTo(plan, 'I')?.length).toBeNull();
    expect(items(plan, 'fact/run-length').map((i) => [i.severity, i.line])).toEqual([['missing', 3]]);
  });

  it('the run is outdoors if any part of it is', () => {
    const rowsOf = (out: string): string =>
      `${HOUSE}\nD disconnect; connects_to=P; run_length=20 m; place=House / hall; outdoors=${out}
       L load; ac_in=240; connects_to=D; run_length=20 m; place=House / hall`;
    expect(rulesAt(planOf('', rowsOf('yes')), 'L:feeder')).toEqual(['place/long-run']);
    expect(rulesAt(planOf('', rowsOf('no')), 'L:feeder')).toEqual([]);
  });

  it('it is between buildings when its two real ends are', () => {
    const rowsOf = (disconnect: string, load: string): string =>
      `${HOUSE}\nD disconnect; connects_to=P; run_length=20 m; place=${disconnect}
       L load; ac_in=240; connects_to=D; run_length=20 m; place=${load}`;
    const between = (plan: Plan): boolean | undefined => runTo(plan, 'L')?.betweenBuildings;
    expect(between(planOf('', rowsOf('Shed', 'House / hall')))).toBe(false);
    expect(between(planOf('', rowsOf('House / hall', 'Barn')))).toBe(true);
    expect(between(planOf('', rowsOf('Shed', 'Barn')))).toBe(true);
  });

  it('fault current and system pass through; so does what a grid-tie inverter leans on', () => {
    const plan = planOf(
      'occupancy=other',
      `${HOUSE}\nD disconnect; connects_to=P; run_length=2 m; place=House / hall
       L load; connects_to=D; run_length=4 m; place=House / hall; protect=yes
       I grid-tie-inverter; dc_inputs=1; max_dc_voltage=600; ac_out=240; isolated=yes; place=House / hall; connects_to=D; run_length=4 m`,
    );
    expect(one(plan, 'L:feeder')).toMatchObject({ system: '120/240', required: { sccr: 5000 } });
    expect(because(plan, 'I:ac-out').map((n) => n.because)).toEqual(
      expect.arrayContaining([expect.stringMatching(/\(8 m\) away/)]),
    );
  });

  it('two arrays on one disconnect are in parallel behind it', () => {
    const plan = planOf(
      COLD,
      `${rows('D disconnect; connects_to=I; run_length=9 m; place=House / roof')}
       A2 array; connects_to=D; run_length=6 m; voc_stc=40; modules_in_series=11; isc_stc=10; strings_in_parallel=1; place=House / roof`,
    );
    expect(items(plan, 'site/sources-in-parallel')).toHaveLength(1);
    expect(one(plan, 'I:dc-in-1').required).toMatchObject({ mcov: 484, sccr: 25 });
    expect(faults(plan)).toEqual([]);
  });

  it.each([
    ['fed by nothing', 'D disconnect; connects_to=P; run_length=9 m; place=House / hall', 'D'],
    ['a transfer switch fed by nothing', 'D transfer-switch; place=House / hall', 'L'],
    ['in no run', 'D disconnect; place=House / hall', ''],
    ['a transfer switch in no run', 'D transfer-switch; place=House / hall', ''],
    ['feeding nothing', 'D disconnect; connects_to=S; run_length=9 m; place=House / hall', ''],
  ])('%s: its connection is missing', (_, row, load) => {
    const more = load === 'L' ? '\nL load; ac_in=120; connects_to=D; run_length=2 m; place=House / hall' : '';
    const service = HOUSE.split('\n')[0] ?? '';
    const plan = planOf(
      '',
      `${load === 'D' ? 'P load; ac_in=240; place=House / hall' : service}\n${row}${more}`,
    );
    expect(items(plan, 'missing').map((i) => [i.code, i.equipment])).toEqual([
      ['site/pass-unconnected', 'D'],
    ]);
  });

  it('between a service and its first panel: to be confirmed which is the service equipment', () => {
    const rowsOf = (kind: string): string =>
      `S service; ac_in=120/240; place=House / wall; fault_current=5 kA
       D ${kind}; connects_to=S; run_length=1 m; place=House / wall
       P panel; connects_to=D; run_length=1 m; place=House / hall
       D2 disconnect; connects_to=P; run_length=1 m; place=House / hall
       P2 panel; connects_to=D2; run_length=1 m; place=House / hall`;
    const plan = planOf('occupancy=other', rowsOf('disconnect'));
    expect(items(plan, 'site/service-equipment').map((i) => [i.severity, i.equipment])).toEqual([
      ['confirm', 'D'],
    ]);
    expect(items(planOf('occupancy=other', rowsOf('transfer-switch')), 'site/service-equipment')).toEqual([]);
  });

  it('behind a rapid-shutdown box the pole is dark with the inverter off; before it the sun alone counts', () => {
    const box = (more: string): Plan =>
      planOf(
        COLD,
        rows(`D disconnect; connects_to=I; run_length=60 m; place=House / roof${more}`).replace(
          'A array;',
          'A array; dc_grounding=negative;',
        ),
      );
    const states = (plan: Plan, where: string): readonly string[] =>
      lightsOf(plan, where, 'positive').map((s) => s.split(':')[0] ?? '');
    expect(states(box('; rapid_shutdown=yes'), 'I:dc-in-1')).toContain('sun, inverter on');
    expect(states(box('; rapid_shutdown=yes'), 'A:output')).not.toContain('sun, inverter on');
    expect(states(box(''), 'I:dc-in-1')).not.toContain('sun, inverter on');
    const combined = planOf(
      COLD,
      `A array; voc_stc=40; modules_in_series=10; dc_grounding=negative; place=House / roof; connects_to=D; run_length=2 m
       D disconnect; connects_to=K; run_length=2 m; place=House / roof; rapid_shutdown=yes
       K combiner; connects_to=I; run_length=60 m; place=House / roof\n${INVERTER}\n${HOUSE}`,
    );
    expect(states(combined, 'I:dc-in-1')).toContain('sun, inverter on');
    expect(states(combined, 'K:output')).toContain('sun, inverter on');
  });
});

describe('a place that is blank', () => {
  it('is that of what the row connects to, disconnects passed through', () => {
    const plan = planOf(
      '',
      `${HOUSE}\nD disconnect; connects_to=P; run_length=2 m; place=Shed
       L load; ac_in=240; connects_to=D; run_length=4 m`,
    );
    expect(plan.site.equipments.find((e) => e.tag === 'L')?.place).toBe('House / hall');
  });

  const meter = (place: string, length: string): string =>
    `S service; ac_in=120/240; fault_current=5 kA${place}
     P panel; ac_in=120/240; connects_to=S; run_length=${length}; place=House / hall`;

  it('and decides whether a panel is its service’s place: missing, and the draft protects both', () => {
    const plan = planOf('occupancy=dwelling', meter('', '2 m'));
    expect(items(plan, 'missing').map((i) => [i.code, i.equipment, i.column])).toEqual([
      ['fact/place', 'S', 'place'],
    ]);
    expect(rulesAt(plan, 'P:feeder')).toEqual(['place/feeder']);
    expect(rulesAt(plan, 'S:service')).toEqual(['place/service']);
  });

  it.each([
    ['stated', 'occupancy=dwelling', meter('; place=House / wall', '2 m')],
    ['too far away in any case', 'occupancy=dwelling', meter('', '20 m')],
    ['where no rule turns on it', 'occupancy=other', meter('', '2 m')],
    [
      'where the row names the other',
      'occupancy=dwelling',
      meter('; connects_to=P; run_length=2 m', '2 m').replace(
        ' connects_to=S; run_length=2 m; place',
        ' place',
      ),
    ],
  ])('isn’t asked for: %s', (_, facts, rows) => {
    expect(faults(planOf(facts, rows))).toEqual([]);
  });

  it('of a battery whose cable may leave the room is missing, and the draft protects', () => {
    const rows = (place: string): string =>
      `B battery; battery_voltage=48; battery_chemistry=lfp; fault_current=3 kA${place}
       I inverter-charger; ac_out=120; n_pe_link=yes; place=Hut; connects_to=B; run_length=2 m`;
    const plan = planOf('occupancy=other', rows(''));
    expect(items(plan, 'missing').map((i) => [i.code, i.equipment])).toEqual([['fact/place', 'B']]);
    expect(rulesAt(plan, 'B:battery')).toEqual(['place/battery']);
    const stated = planOf('occupancy=other', rows('; place=Hut'));
    expect(faults(stated)).toEqual([]);
    expect(rulesAt(stated, 'B:battery')).toEqual([]);
  });

  it('of a long run that may lead to another building is missing; of a short one not', () => {
    const rows = (length: string): string =>
      `P panel; ac_in=120/240; place=House; n_pe_link=yes; connects_to=Q; run_length=${length}
       Q panel; ac_in=120/240`;
    expect(faults(planOf('occupancy=other', rows('80 m')))).toEqual(['fact/place']);
    expect(faults(planOf('occupancy=other', rows('8 m')))).toEqual([]);
  });
});

describe('kind other in the way', () => {
  it.each([
    [
      'an array and an inverter on both sides',
      `${ARRAY}; connects_to=X; run_length=6 m\nX other; connects_to=I; run_length=80 m; place=House / roof\n${INVERTER}\n${HOUSE}`,
      true,
    ],
    [
      'a load names it',
      `${HOUSE}\nX other; place=House / hall\nL load; ac_in=240; connects_to=X; run_length=2 m; place=House / hall`,
      true,
    ],
    [
      'a source names it',
      `${HOUSE}\nX other; place=House / hall\nG generator; ac_out=240; connects_to=X; run_length=2 m; place=House / hall`,
      true,
    ],
    ['it names a panel, and no more', `${HOUSE}\nX other; connects_to=P; place=House / hall`, false],
    [
      'a control circuit ends there',
      `${HOUSE}\nX other; place=House / hall\nC control-circuit; control_voltage=24 V dc; connects_to=X; run_length=2 m; place=House / hall`,
      false,
    ],
    ['it stands alone', `${HOUSE}\nX other; place=House / hall`, false],
  ])('%s', (_, rows, asked) => {
    const plan = planOf(COLD, rows);
    expect(items(plan, 'fact/kind-of-other').map((i) => [i.severity, i.equipment])).toEqual(
      asked ? [['missing', 'X']] : [],
    );
    expect(plan.submittable).toBe(!asked);
  });
});
