import { describe, expect, it } from 'vitest';
import type { EnglishPlan } from '../in-english.js';
import { at, because, defaultsOf, faults, items, one, planOf, rulesAt, strengthAt } from './plan-of.js';

// rules.md section 1, rule by rule, from the text of a list to its plan. Cases are our own.

const NEC = ['nec-2017', 'nec-2020', 'nec-2023'] as const;
const ALL = [...NEC, 'iec'] as const;
const ARRAY = 'voc_stc=40; modules_in_series=3; isc_stc=10; strings_in_parallel=1';
/** m just within and just past 100 ft. */
const SHORT = '30.48 m';
const LONG = '30.49 m';

describe('place/service', () => {
  const service = (facts: string): string | undefined =>
    strengthAt(planOf(facts, 'SVC service; ac_in=120/240'), 'SVC:service');

  it.each([
    ['nec-2017', 'dwelling', 'recommended'],
    ['nec-2017', 'sleeping', 'recommended'],
    ['nec-2017', 'other', 'recommended'],
    ['nec-2020', 'dwelling', 'required'],
    ['nec-2020', 'sleeping', 'recommended'],
    ['nec-2020', 'other', 'recommended'],
    ['nec-2023', 'dwelling', 'required'],
    ['nec-2023', 'sleeping', 'required'],
    ['nec-2023', 'other', 'recommended'],
  ])('%s, %s: %s', (basis, occupancy, strength) => {
    expect(service(`basis=${basis}; occupancy=${occupancy}`)).toBe(strength);
  });

  it.each([
    ['other; flash_density=0.01', 'required'],
    ['sleeping; flash_density=0.01', 'required'],
    // 85 / (2 x 0.04) = 1062.5 and 85 / (2 x 0.05) = 850, by IEC 60364-4-44 cl. 443.5 (fenv from memory).
    ['dwelling; flash_density=0.04', 'recommended'],
    ['dwelling; flash_density=0.05', 'required'],
    ['dwelling; flash_density=0.05; surroundings=urban', 'recommended'],
    ['dwelling', 'recommended'],
  ])('iec, %s: %s', (facts, strength) => {
    expect(
      strengthAt(
        planOf(`basis=iec; earthing=TN; occupancy=${facts}`, 'SVC service; ac_in=230'),
        'SVC:service',
      ),
    ).toBe(strength);
  });

  it('iec: a dwelling without a calculated risk level is to be confirmed', () => {
    const plan = planOf('basis=iec; occupancy=dwelling', 'SVC service; ac_in=230');
    expect(items(plan, 'place/risk-level-unknown')).toHaveLength(1);
    expect(defaultsOf(plan, 'flash_density')).toEqual([]);
  });

  it('iec: what stands in for unstated lines and surroundings is printed where it decides', () => {
    const plan = planOf('basis=iec; occupancy=dwelling; flash_density=1', 'SVC service; ac_in=230');
    expect(defaultsOf(plan, 'surroundings')).toEqual([expect.stringContaining('taken as rural')]);
    expect(defaultsOf(plan, 'lv_overhead_km')).toEqual([expect.stringContaining('1 km of overhead line')]);
    const stated = planOf(
      'basis=iec; occupancy=dwelling; flash_density=1; surroundings=rural; lv_overhead_km=1',
      'SVC service; ac_in=230',
    );
    expect(defaultsOf(stated, 'surroundings')).toEqual([]);
    expect(defaultsOf(stated, 'lv_overhead_km')).toEqual([]);
  });

  it('sits nearest to the incoming feed, behind the main breaker; ahead of it only as type 1', () => {
    const behind = one(planOf('', 'SVC service; ac_in=120/240'), 'SVC:service');
    expect(behind.position).toMatch(/behind the main breaker.*nearest to the incoming feed/);
    expect(behind.required.types).toEqual([1, 2]);
    const ahead = one(planOf('', 'SVC service; ac_in=120/240; ahead_of_disconnect=yes'), 'SVC:service');
    expect(ahead.position).toMatch(/type 1.*consent/);
    expect(ahead.required.types).toEqual([1]);
  });
});

describe('the side of the first overcurrent device (242.13, 242.14)', () => {
  const site = (facts = ''): string =>
    `S service; ac_in=480Y/277; place=Barn; fault_current=10 kA; ahead_of_disconnect=no
     Q panel; connects_to=S; run_length=20 m; ac_in=480Y/277; place=Barn; protect=yes
     X transformer; connects_to=Q; run_length=3 m; ac_in=480 delta; ac_out=120/240; place=Barn; protect=yes; ${facts}
     P panel; connects_to=X; run_length=50 m; ac_in=120/240; place=House; protect=yes
     G generator; connects_to=T; run_length=50 m; ac_out=480Y/277; place=Shed; fault_current=1 kA; protect=yes
     T transfer-switch; connects_to=R; run_length=3 m; place=Barn
     R panel; ac_in=480Y/277; place=Barn`;

  it('is asked at a panel, a generator and where a separately derived system begins', () => {
    expect(defaultsOf(planOf('occupancy=other', site('isolated=yes')), 'ahead_of_disconnect')).toEqual([
      'ahead_of_disconnect isn’t stated for G, P, Q, R, X: taken as no, which decides the type.',
    ]);
    // Blank: it counts as one.
    expect(defaultsOf(planOf('occupancy=other', site()), 'ahead_of_disconnect').join()).toContain('X');
    const one = site('isolated=no').replace('ac_out=120/240', 'ac_out=208Y/120');
    expect(defaultsOf(planOf('occupancy=other', one), 'ahead_of_disconnect').join()).not.toContain('X');
    const stated = planOf('occupancy=other', site('isolated=yes; ahead_of_disconnect=no'));
    expect(defaultsOf(stated, 'ahead_of_disconnect').join()).not.toContain('X');
    const iec = planOf('occupancy=other; basis=iec', site('isolated=yes'));
    expect(defaultsOf(iec, 'ahead_of_disconnect')).toEqual([]);
  });

  it('is named in the position, where it is the first of its building, its system, or of the generator', () => {
    const positions = (made: EnglishPlan): readonly string[] =>
      ['Q:feeder', 'X:ac-out', 'P:feeder', 'G:output'].map((where) => one(made, where).position.slice(0, 56));
    const building = 'Behind the first overcurrent device of this building, on';
    expect(positions(planOf('occupancy=other', site('isolated=yes')))).toEqual([
      'On the load side of the feeder, on the position nearest ',
      'Behind the first overcurrent device of the system that b',
      building,
      'Behind the first overcurrent device of the generator, wh',
    ]);
    expect(positions(planOf('occupancy=other; basis=iec', site('isolated=yes')))).toEqual([
      'On the load side of the feeder, on the position nearest ',
      'At the terminals of this port, where its lights can be s',
      'On the load side of the feeder, on the position nearest ',
      'At the equipment, where its cable leaves, where its ligh',
    ]);
    const ahead = one(planOf('occupancy=other', site('ahead_of_disconnect=yes')), 'X:ac-out');
    expect(ahead.position).toMatch(/^Type 1, ahead of the first overcurrent device of the system/);
    expect(ahead.required.types).toEqual([1]);
  });
});

describe('place/feeder', () => {
  const dwelling = 'basis=nec-2023; occupancy=dwelling';

  it.each([
    ['SVC service; ac_in=120/240; place=House', 'SVC'],
    ['SVC panel; ac_in=120/240; place=House', 'SVC'],
    ['SVC inverter-charger; ac_out=120/240; place=House', 'SVC'],
    ['SVC generator; ac_out=120/240; place=House', 'SVC'],
  ])('required at a panel of a dwelling fed by %s, at any length', (row) => {
    for (const length of ['3.1 m', '200 m']) {
      const plan = planOf(
        dwelling,
        `${row}\nP panel; connects_to=SVC; run_length=${length}; ac_in=120/240; place=House`,
      );
      expect(rulesAt(plan, 'P:feeder')).toContain('place/feeder');
      expect(strengthAt(plan, 'P:feeder')).toBe('required');
    }
  });

  it.each(['nec-2017', 'nec-2020', 'iec'])('isn’t known to %s', (basis) => {
    const plan = planOf(
      `basis=${basis}; occupancy=dwelling`,
      `SVC service; ac_in=120/240; place=House
       P panel; connects_to=SVC; run_length=9 m; ac_in=120/240; place=House`,
    );
    expect(at(plan, 'P:feeder')).toEqual([]);
  });

  it.each([
    ['dwelling', 'dwelling', true],
    ['dwelling', '', false],
    ['dwelling', 'sleeping', true],
    ['other', 'dwelling', true],
    ['other', '', false],
  ])('in another building of a job of %s, what it holds ("%s") decides', (occupancy, holds, fires) => {
    const plan = planOf(
      `basis=nec-2023; occupancy=${occupancy}`,
      `SVC service; ac_in=120/240; place=House
       P panel; connects_to=SVC; run_length=9 m; ac_in=120/240; place=Annex; building_occupancy=${holds}`,
    );
    expect(rulesAt(plan, 'P:feeder').includes('place/feeder')).toBe(fires);
    expect(defaultsOf(plan, 'building_occupancy')).toHaveLength(holds === '' ? 1 : 0);
  });

  it.each([
    ['dwelling', true],
    ['sleeping', true],
    ['other', false],
  ])('in the building of the service the job’s occupancy decides: %s', (occupancy, fires) => {
    const plan = planOf(
      `basis=nec-2023; occupancy=${occupancy}`,
      `SVC service; ac_in=120/240; place=House
       P panel; connects_to=SVC; run_length=9 m; ac_in=120/240; place=House`,
    );
    expect(rulesAt(plan, 'P:feeder').includes('place/feeder')).toBe(fires);
  });

  it('fed from a pole in the yard, where nobody lives, takes the job’s occupancy, printed', () => {
    const plan = planOf(
      dwelling,
      `SVC service; ac_in=120/240; place=Yard / pole; outdoors=yes
       P panel; connects_to=SVC; run_length=9 m; ac_in=120/240; place=House`,
    );
    expect(rulesAt(plan, 'P:feeder')).toContain('place/feeder');
    expect(defaultsOf(plan, 'building_occupancy')).toEqual([expect.stringContaining('taken as dwelling')]);
  });

  it('a panel at a service on a pole needs no word of what it feeds: the service’s protector is its own', () => {
    const plan = planOf(
      dwelling,
      `SVC service; ac_in=120/240; place=Yard / pole; outdoors=yes
       P panel; connects_to=SVC; run_length=1 m; ac_in=120/240; place=Yard / pole; outdoors=yes`,
    );
    expect(rulesAt(plan, 'P:feeder')).toEqual([]);
    expect(defaultsOf(plan, 'building_occupancy')).toEqual([]);
  });

  it('a sub-panel of a dwelling: required, and to be confirmed since offices differ', () => {
    const plan = planOf(
      dwelling,
      `SVC service; ac_in=120/240; place=House
       MP panel; connects_to=SVC; run_length=9 m; ac_in=120/240; place=House
       SUB panel; connects_to=MP; run_length=9 m; ac_in=120/240; place=House`,
    );
    expect(strengthAt(plan, 'SUB:feeder')).toBe('required');
    expect(items(plan, 'place/sub-panel').map((i) => i.equipment)).toEqual(['SUB']);
  });

  it('what feeds it isn’t on the list: to be confirmed, not placed', () => {
    const plan = planOf(dwelling, 'P panel; ac_in=120/240; place=House');
    expect(at(plan, 'P:feeder')).toEqual([]);
    expect(items(plan, 'place/feed-unknown')).toHaveLength(1);
  });

  it('215.18 inside, 225.42 outside', () => {
    const rows = (place: string): string =>
      `SVC service; ac_in=120/240; place=House
       P panel; connects_to=SVC; run_length=9 m; ac_in=120/240; place=${place}; building_occupancy=dwelling`;
    const reason = (place: string): string | undefined =>
      one(planOf(dwelling, rows(place)), 'P:feeder').reasons.find((r) => r.rule === 'place/feeder')?.because;
    expect(reason('House')).toMatch(/215\.18/);
    expect(reason('Annex')).toMatch(/225\.42/);
  });

  it.each([
    ['a panel in the service’s building', 'House', 'House; outdoors=no', '215.18'],
    // An outside wall is a place out of doors, and no other structure.
    ['a service on the outside wall', 'House / wall; outdoors=yes', 'House', '215.18'],
    ['another building', 'House', 'Annex', '225.42'],
    ['a pole, which is a structure', 'Pole; outdoors=yes', 'House', '225.42'],
  ])('%s: one clause, the same in the reason, the figure and the strip', (_, service, place, clause) => {
    const plan = planOf(
      dwelling,
      `SVC service; ac_in=120/240; place=${service}
       P panel; connects_to=SVC; run_length=9 m; ac_in=120/240; place=${place}; building_occupancy=dwelling`,
    );
    const other = clause === '215.18' ? '225.42' : '215.18';
    const protector = one(plan, 'P:feeder');
    const said = JSON.stringify([protector.reasons, protector.calculations, plan.clauses]);
    expect(said).toContain(clause);
    expect(said).not.toContain(other);
    for (const rule of ['place/feeder', 'rate/nominal-current'])
      expect(plan.clauses.filter((c) => c.rule === rule).map((c) => c.clause)).toContain(clause);
  });
});

describe('place/dc-input', () => {
  it.each(ALL)('%s: one for each input, not for each housing', (basis) => {
    const plan = planOf(
      `basis=${basis}; lowest_temp=-5 C`,
      `INV grid-tie-inverter; dc_inputs=3; max_dc_voltage=600; ac_out=240; place=House; isolated=yes
       A array; connects_to=INV/1; run_length=4 m; ${ARRAY}
       B array; connects_to=INV/2; run_length=4 m; ${ARRAY}
       C array; connects_to=INV/3; run_length=4 m; ${ARRAY}`,
    );
    for (const n of [1, 2, 3]) {
      expect(at(plan, `INV:dc-in-${n}`)).toHaveLength(1);
      expect(rulesAt(plan, `INV:dc-in-${n}`)).toEqual(['place/dc-input']);
      expect(strengthAt(plan, `INV:dc-in-${n}`)).toBe('recommended');
    }
  });

  it.each(['array', 'wind-turbine', 'hydro-turbine'])('from a %s', (kind) => {
    const plan = planOf(
      'lowest_temp=-5 C',
      `X ${kind}; connects_to=CC; run_length=4 m; ${ARRAY}; output=dc; open_circuit_voltage=100
       CC charge-controller; dc_inputs=1; place=House`,
    );
    expect(rulesAt(plan, 'CC:dc-in-1')).toContain('place/dc-input');
  });

  // IEC 60364-7-712 cl. 712.443: 115 / Ng for a dwelling, 450 / Ng for others (memory), 200 / Ng in the field (memory).
  const iec = (facts: string, length: string, more = '', converter = 'place=House'): string | undefined =>
    strengthAt(
      planOf(
        `basis=iec; earthing=TN; lowest_temp=-5 C; ${facts}`,
        `INV grid-tie-inverter; dc_inputs=1; max_dc_voltage=600; ac_out=230; ${converter}; isolated=yes
         A array; connects_to=INV/1; run_length=${length}; ${ARRAY}${more}`,
      ),
      'INV:dc-in-1',
    );

  it.each([
    ['occupancy=dwelling; flash_density=2.5', '45.9 m', 'recommended'],
    ['occupancy=dwelling; flash_density=2.5', '46 m', 'required'],
    ['occupancy=other; flash_density=4', '112.4 m', 'recommended'],
    ['occupancy=other; flash_density=4', '112.5 m', 'required'],
    ['occupancy=dwelling; thunderstorm_days=25', '46 m', 'required'],
    ['occupancy=dwelling', '200 m', 'recommended'],
  ])('iec, %s, %s: %s', (facts, length, strength) => {
    expect(iec(facts, length)).toBe(strength);
  });

  it('iec: a ground-mounted array whose converter isn’t in a building has 200 / Ng', () => {
    const outside = 'place=Field; outdoors=yes';
    expect(iec('occupancy=dwelling; flash_density=4', '49.9 m', '; mounting=ground', outside)).toBe(
      'recommended',
    );
    expect(iec('occupancy=dwelling; flash_density=4', '50 m', '; mounting=ground', outside)).toBe('required');
    expect(iec('occupancy=dwelling; flash_density=4', '28.75 m', '; mounting=ground')).toBe('required');
  });

  it('iec: L is the sum of the runs of all arrays upstream of one converter, combiners’ runs too', () => {
    const rows = (combiner: string): string =>
      `INV grid-tie-inverter; dc_inputs=2; max_dc_voltage=600; ac_out=230; place=House; isolated=yes
       A array; connects_to=C; run_length=6 m; ${ARRAY}
       B array; connects_to=C; run_length=6 m; ${ARRAY}
       C combiner; connects_to=INV/1; run_length=${combiner}
       D array; connects_to=INV/2; run_length=8 m; ${ARRAY}`;
    // Lcrit 115 / 4 = 28.75 m; 6 + 6 + 8 = 20 m without the combiner's run.
    const facts = 'basis=iec; earthing=TN; lowest_temp=-5 C; flash_density=4; occupancy=dwelling';
    expect(strengthAt(planOf(facts, rows('8.7 m')), 'INV:dc-in-2')).toBe('recommended');
    expect(strengthAt(planOf(facts, rows('8.75 m')), 'INV:dc-in-2')).toBe('required');
  });

  it('iec: a pump drive is a converter like the others, also behind a combiner', () => {
    const facts = 'basis=iec; earthing=TN; lowest_temp=-5 C; flash_density=4; occupancy=dwelling';
    const rows = (length: string): string =>
      `DRV pump-drive; dc_inputs=1; max_dc_voltage=600; ac_out=400Y/230; place=House / cellar
       C combiner; connects_to=DRV; run_length=${length}
       A array; connects_to=C; run_length=6 m; ${ARRAY}`;
    // Lcrit 115 / 4 = 28.75 m.
    expect(strengthAt(planOf(facts, rows('22.7 m')), 'DRV:dc-in-1')).toBe('recommended');
    expect(strengthAt(planOf(facts, rows('22.75 m')), 'DRV:dc-in-1')).toBe('required');
  });

  it('iec: required where place/service is required at that site; no service: not', () => {
    const facts = 'basis=iec; earthing=TN; lowest_temp=-5 C; occupancy=other';
    const rows = `INV grid-tie-inverter; dc_inputs=1; max_dc_voltage=600; ac_out=230; place=Works; isolated=yes
       A array; connects_to=INV/1; run_length=2 m; ${ARRAY}`;
    expect(strengthAt(planOf(facts, rows), 'INV:dc-in-1')).toBe('recommended');
    expect(
      strengthAt(planOf(facts, `${rows}\nSVC service; ac_in=400Y/230; place=Works`), 'INV:dc-in-1'),
    ).toBe('required');
  });

  it('iec: a turbine’s input is recommended whatever the exposure', () => {
    const plan = planOf(
      'basis=iec; earthing=TN; flash_density=20; occupancy=other',
      `SVC service; ac_in=400Y/230; place=Works
       CC charge-controller; dc_inputs=1; max_dc_voltage=250; place=Works
       WT wind-turbine; connects_to=CC; run_length=200 m; output=three-phase; open_circuit_voltage=100`,
    );
    expect(strengthAt(plan, 'CC:dc-in-1')).toBe('recommended');
  });

  it('iec: the flash density is asked for once a job', () => {
    const plan = planOf(
      'basis=iec; earthing=TN; lowest_temp=-5 C; occupancy=dwelling',
      `C1 charge-controller; dc_inputs=1; place=House
       C2 charge-controller; dc_inputs=1; place=House
       A array; connects_to=C1; run_length=4 m; ${ARRAY}
       B array; connects_to=C2; run_length=4 m; ${ARRAY}`,
    );
    expect(items(plan, 'place/critical-length-unknown').map((i) => i.equipment)).toEqual(['']);
  });

  it('iec: a run without a length is one item, not two', () => {
    const plan = planOf(
      'basis=iec; earthing=TN; lowest_temp=-5 C; flash_density=1',
      `C1 charge-controller; dc_inputs=1; place=House\nA array; connects_to=C1; ${ARRAY}`,
    );
    expect(items(plan, 'fact/run-length')).toHaveLength(1);
    expect(items(plan, 'place/arrays-length-unknown')).toEqual([]);
  });
});

describe('place/inverter-ac', () => {
  const inverter = (facts: string, basis = 'nec-2023'): ReturnType<typeof planOf> =>
    planOf(`basis=${basis}; earthing=TN`, `INV inverter-charger; place=House; ${facts}`);

  it.each(ALL)('%s: AC in and AC out, either present', (basis) => {
    const system = basis === 'iec' ? '400Y/230' : '120/240';
    const both = inverter(`ac_in=${system}; ac_out=${system}`, basis);
    expect(rulesAt(both, 'INV:ac-in')).toEqual(['place/inverter-ac']);
    expect(rulesAt(both, 'INV:ac-out')).toEqual(['place/inverter-ac']);
    const out = inverter(`ac_out=${system}`, basis);
    expect(rulesAt(out, 'INV:ac-out')).toEqual(['place/inverter-ac']);
    expect(because(out, 'INV:ac-in').length).toBeGreaterThan(0);
    expect(rulesAt(inverter(`ac_in=${system}; ac_out=unused`, basis), 'INV:ac-in')).toEqual([
      'place/inverter-ac',
    ]);
  });

  it('single phase: the two ports share one protector, each conductor with its port before it', () => {
    const plan = inverter('ac_in=120; ac_out=120');
    expect(plan.protectors).toHaveLength(1);
    expect(one(plan, 'INV:ac-in').ports).toEqual([
      { equipment: 'INV', port: 'ac-in' },
      { equipment: 'INV', port: 'ac-out' },
    ]);
    expect(one(plan, 'INV:ac-in').channels.map((c) => c.conductor)).toEqual(['ac-in L1', 'ac-out L1']);
    expect(one(plan, 'INV:ac-in').wiring.fedFromTwoSupplies).toBe(true);
  });

  it.each(['120/240', '208Y/120', '240', '480Y/277'])('%s: one set at each port', (system) => {
    const plan = inverter(`ac_in=${system}; ac_out=${system}`);
    expect(one(plan, 'INV:ac-in').ports).toHaveLength(1);
    expect(one(plan, 'INV:ac-out').ports).toHaveLength(1);
  });

  it('of two systems they don’t share', () => {
    const plan = inverter('ac_in=120; ac_out=230');
    expect(one(plan, 'INV:ac-in').ports).toHaveLength(1);
  });

  it('iec: they share only where N of both fits too: four channels', () => {
    const plan = inverter('ac_in=230; ac_out=230', 'iec');
    expect(one(plan, 'INV:ac-in').channels.map((c) => c.conductor)).toEqual([
      'ac-in L1',
      'ac-in N',
      'ac-out L1',
      'ac-out N',
    ]);
    expect(one(plan, 'INV:ac-in').part).toBe('BEECH-4');
  });

  it('iec TT: a 3+1 part has one channel from N to ground, so each port has its own', () => {
    const plan = planOf('basis=iec; earthing=TT', 'INV inverter-charger; place=House; ac_in=230; ac_out=230');
    expect(one(plan, 'INV:ac-in').ports).toHaveLength(1);
    expect(one(plan, 'INV:ac-out').ports).toHaveLength(1);
  });

  it('a second AC in has its own, or shares where all three fit', () => {
    const plan = inverter('ac_in=120; ac_in_2=120; ac_out=120');
    expect(one(plan, 'INV:ac-in-2').channels.map((c) => c.conductor)).toEqual([
      'ac-in L1',
      'ac-in-2 L1',
      'ac-out L1',
    ]);
    const split = inverter('ac_in=120/240; ac_in_2=120/240; ac_out=120/240');
    expect(split.protectors.map((p) => p.ports.map((o) => o.port))).toEqual([
      ['ac-in'],
      ['ac-in-2'],
      ['ac-out'],
    ]);
  });
});

describe('place/grid-tie-ac', () => {
  const inverter = (run: string, more = ''): string =>
    `MP panel; ac_in=120/240; place=House; protect=yes; fault_current=5 kA
     INV grid-tie-inverter; connects_to=MP; run_length=${run}; dc_inputs=1; max_dc_voltage=400; ac_out=240; isolated=yes; place=House${more}`;

  it('none where the run leads to a protected panel in the same building within its reach', () => {
    const plan = planOf('', inverter('10 m'));
    expect(at(plan, 'INV:ac-out')).toEqual([]);
    expect(because(plan, 'INV:ac-out').at(-1)).toMatchObject({ rule: 'place/grid-tie-ac' });
    expect(because(plan, 'INV:ac-out').at(-1)?.because).toMatch(
      /the protector at MP is 32.8 ft \(10 m\) away/,
    );
  });

  it.each([
    ['beyond its reach', inverter('40 m')],
    ['at an unknown distance', inverter('')],
    [
      'in another building',
      inverter('10 m').replace('isolated=yes; place=House', 'isolated=yes; place=Barn'),
    ],
    ['that isn’t protected', inverter('10 m').replace('protect=yes; ', '')],
    ['whose place isn’t known', inverter('10 m').replace('; place=House; protect', '; protect')],
  ])('one where the panel is %s', (_, rows) => {
    expect(rulesAt(planOf('', rows), 'INV:ac-out')).toContain('place/grid-tie-ac');
  });

  it('one where the list doesn’t say where the output goes', () => {
    const plan = planOf(
      '',
      'INV grid-tie-inverter; dc_inputs=1; max_dc_voltage=400; ac_out=240; place=House',
    );
    expect(rulesAt(plan, 'INV:ac-out')).toEqual(['place/grid-tie-ac']);
  });

  it('reach is held against the withstand of the inverter', () => {
    // ALDER-2: VPR 600 V; half of 1300 V is 650 V, so nothing limits it; 100 V leave no reach at all.
    expect(at(planOf('', inverter('10 m', '; impulse_withstand=1300')), 'INV:ac-out')).toEqual([]);
    const none = planOf('', inverter('0.5 m', '; impulse_withstand=620'));
    expect(rulesAt(none, 'INV:ac-out')).toContain('place/grid-tie-ac');
  });

  it('iec: at most 10 m, whatever the reach', () => {
    const rows = (run: string): string =>
      inverter(run).replaceAll('120/240', '400Y/230').replace('ac_out=240', 'ac_out=400Y/230');
    expect(at(planOf('basis=iec; earthing=TN', rows('10 m')), 'INV:ac-out')).toEqual([]);
    expect(rulesAt(planOf('basis=iec; earthing=TN', rows('10.1 m')), 'INV:ac-out')).toContain(
      'place/grid-tie-ac',
    );
  });

  it.each([
    ['SVC service; ac_in=120/240; place=House', 'SVC'],
    ['SVC inverter-charger; ac_in=120/240; ac_out=120/240; place=House', 'SVC'],
  ])('leans on a service or an inverter’s AC out too: %s', (row) => {
    const plan = planOf(
      '',
      `${row}; impulse_withstand=4000\nINV grid-tie-inverter; connects_to=SVC; run_length=5 m; dc_inputs=1; max_dc_voltage=400; ac_out=240; isolated=yes; place=House; impulse_withstand=4000`,
    );
    expect(at(plan, 'INV:ac-out')).toEqual([]);
  });

  it('behind a transfer switch leans on the service, not on the generator', () => {
    const plan = planOf(
      '',
      `SVC service; ac_in=120/240; place=House
       TS transfer-switch; connects_to=SVC; run_length=1 m; place=House
       GEN generator; connects_to=TS; run_length=5 m; ac_out=120/240; place=House
       INV grid-tie-inverter; connects_to=TS; run_length=5 m; dc_inputs=1; max_dc_voltage=400; ac_out=240; isolated=yes; place=House; impulse_withstand=4000`,
    );
    expect(at(plan, 'INV:ac-out')).toEqual([]);
  });

  it('a panel at the service leans on the service’s protector, and the runs add', () => {
    const rows = (run: string): string =>
      `SVC service; ac_in=120/240; place=House
       MP panel; connects_to=SVC; run_length=3 m; ac_in=120/240; place=House
       INV grid-tie-inverter; connects_to=MP; run_length=${run}; dc_inputs=1; max_dc_voltage=400; ac_out=240; isolated=yes; place=House; impulse_withstand=4000`;
    expect(because(planOf('', rows('10 m')), 'INV:ac-out').at(-1)?.because).toMatch(
      /the protector at SVC is 42.7 ft \(13 m\) away/,
    );
    expect(rulesAt(planOf('', rows('28 m')), 'INV:ac-out')).toContain('place/grid-tie-ac');
  });

  it('a trunk of AC modules: no DC place, one at its output always', () => {
    const plan = planOf(
      '',
      `MP panel; ac_in=120/240; place=House; protect=yes\nAM ac-module-branch; connects_to=MP; run_length=3 m; ac_out=240; place=House`,
    );
    expect(plan.site.equipments.find((e) => e.tag === 'AM')?.ports).toEqual(['output']);
    expect(rulesAt(plan, 'AM:output')).toEqual(['place/grid-tie-ac']);
  });

  it('a long run of a trunk asks at its other end only', () => {
    const plan = planOf(
      '',
      `MP panel; ac_in=120/240; place=House\nAM ac-module-branch; connects_to=MP; run_length=50 m; ac_out=240; place=House / roof; outdoors=yes`,
    );
    expect(rulesAt(plan, 'AM:output')).toEqual(['place/grid-tie-ac']);
    expect(rulesAt(plan, 'MP:feeder')).toContain('place/long-run');
  });

  it.each([
    [4, 0],
    [5, 1],
  ])(
    '%i grid-tie inverters with one module in series: asked %i times whether they are microinverters',
    (n, count) => {
      const plan = planOf(
        'lowest_temp=0 C',
        `INV grid-tie-inverter; quantity=${n}; dc_inputs=1; max_dc_voltage=80; ac_out=240; place=House
       A array; quantity=${n}; connects_to=INV; run_length=1 m; voc_stc=40; modules_in_series=1`,
      );
      expect(items(plan, 'site/microinverters')).toHaveLength(count);
    },
  );
});

describe('place/wind', () => {
  it.each(ALL)('%s: one at the tower’s base and one where the run enters', (basis) => {
    const plan = planOf(
      `basis=${basis}`,
      `WT wind-turbine; connects_to=CC; run_length=5 m; output=three-phase; open_circuit_voltage=100; place=Tower
       CC charge-controller; dc_inputs=1; max_dc_voltage=250; place=House`,
    );
    expect(rulesAt(plan, 'WT:output')).toEqual(['place/wind']);
    expect(rulesAt(plan, 'CC:dc-in-1')).toEqual(['place/dc-input', 'place/wind']);
    expect(one(plan, 'WT:output').position).toMatch(/base of the tower/i);
  });

  it('hydro has none of its own at its output', () => {
    const plan = planOf(
      '',
      `HT hydro-turbine; connects_to=CC; run_length=5 m; output=dc; open_circuit_voltage=100; place=Creek\nCC charge-controller; dc_inputs=1; place=House`,
    );
    expect(at(plan, 'HT:output')).toEqual([]);
  });
});

describe('place/wind-premises', () => {
  const turbine = `WT wind-turbine; connects_to=CC; run_length=5 m; output=three-phase; open_circuit_voltage=100; place=Tower
     CC charge-controller; dc_inputs=1; max_dc_voltage=250; place=House`;
  const carriers = (rows: string, basis = 'nec-2023'): readonly string[] =>
    planOf(`basis=${basis}; occupancy=other`, `${turbine}\n${rows}`)
      .protectors.filter((p) => p.reasons.some((r) => r.rule === 'place/wind-premises'))
      .map((p) => `${p.ports[0]?.equipment ?? ''}:${p.ports[0]?.port ?? ''} ${p.strength}`);

  const SERVICE = 'SVC service; ac_in=120/240; place=House';
  const PANELS = 'P2 panel; ac_in=120/240; place=House\nP10 panel; ac_in=120/240; place=House';
  const INVERTERS =
    'I2 inverter-charger; ac_out=120/240; place=House\nI10 inverter-charger; ac_out=120/240; place=House';

  it.each(NEC)('%s: the service’s, required', (basis) => {
    expect(carriers(`${SERVICE}\n${PANELS}\n${INVERTERS}`, basis)).toEqual(['SVC:service required']);
  });

  it('isn’t known to iec', () => {
    expect(carriers(SERVICE, 'iec')).toEqual([]);
  });

  it('a service ahead of its disconnect isn’t one: the first panel’s by natural order', () => {
    expect(carriers(`${SERVICE}; ahead_of_disconnect=yes\n${PANELS}`)).toEqual(['P2:feeder required']);
  });

  it('such a panel keeps it even where it stands at the service', () => {
    expect(
      carriers(
        `${SERVICE}; ahead_of_disconnect=yes\nMP panel; connects_to=SVC; run_length=1 m; ac_in=120/240; place=House`,
      ),
    ).toEqual(['MP:feeder required']);
  });

  it('else the AC out of the first inverter-charger, one that is in use', () => {
    expect(carriers(INVERTERS)).toEqual(['I2:ac-out required']);
    expect(
      carriers(
        INVERTERS.replace(
          'I2 inverter-charger; ac_out=120/240',
          'I2 inverter-charger; ac_in=120/240; ac_out=unused',
        ),
      ),
    ).toEqual(['I10:ac-out required']);
  });

  it('the turbine’s grid-tie inverter goes before it; one that only an array feeds doesn’t', () => {
    const grid = (source: string): readonly string[] =>
      planOf(
        'basis=nec-2023; lowest_temp=0 C',
        `I1 inverter-charger; ac_out=120/240; place=House
         WT wind-turbine; connects_to=${source === 'array' ? 'CC' : 'CMB'}; run_length=5 m; output=dc; open_circuit_voltage=100; place=Tower
         CC charge-controller; dc_inputs=1; max_dc_voltage=250; place=House
         CMB combiner; connects_to=G; run_length=5 m
         A array; connects_to=${source === 'array' ? 'CMB' : 'CC'}; run_length=3 m; ${ARRAY}
         G grid-tie-inverter; dc_inputs=1; max_dc_voltage=400; ac_out=240; place=House; isolated=yes`,
      )
        .protectors.filter((p) => p.reasons.some((r) => r.rule === 'place/wind-premises'))
        .map((p) => p.ports[0]?.equipment ?? '');
    expect(grid('turbine')).toEqual(['G']);
    expect(grid('array')).toEqual(['I1']);
  });

  it('no AC equipment listed: to be confirmed', () => {
    const plan = planOf('basis=nec-2023', turbine);
    expect(items(plan, 'place/wind-without-ac').map((i) => i.equipment)).toEqual(['WT']);
  });
});

describe('place/long-run', () => {
  const feeder = (length: string, more = ''): string =>
    `SVC service; ac_in=120/240; place=House
     L load; connects_to=SVC; run_length=${length}; ac_in=120/240; place=Barn${more}`;

  it.each(NEC)('%s: between buildings past 100 ft, both ends', (basis) => {
    const plan = planOf(`basis=${basis}`, feeder(LONG));
    expect(rulesAt(plan, 'L:feeder')).toContain('place/long-run');
    expect(rulesAt(plan, 'SVC:service')).toContain('place/long-run');
    expect(strengthAt(plan, 'L:feeder')).toBe('recommended');
  });

  it.each(['100 ft', SHORT])('nec: %s isn’t past it', (length) => {
    const plan = planOf('', feeder(length));
    expect(at(plan, 'L:feeder')).toEqual([]);
    expect(rulesAt(plan, 'SVC:service')).toEqual(['place/service']);
  });

  it('100.1 ft is', () => {
    expect(rulesAt(planOf('', feeder('100.1 ft')), 'L:feeder')).toContain('place/long-run');
  });

  it('iec: past 10 m', () => {
    const facts = 'basis=iec; earthing=TN';
    const rows = (length: string): string =>
      `S panel; ac_in=400Y/230; place=House; outdoors=yes
       L load; connects_to=S; run_length=${length}; ac_in=400Y/230; place=House`;
    expect(at(planOf(facts, rows('10 m')), 'L:feeder')).toEqual([]);
    expect(rulesAt(planOf(facts, rows('10.1 m')), 'L:feeder')).toEqual(['place/long-run']);
    expect(rulesAt(planOf(facts, rows('10.1 m')), 'S:feeder')).toEqual(['place/long-run']);
  });

  it('neither outdoors nor between buildings: no, and that outdoors is a default is printed', () => {
    const plan = planOf('', feeder('90 m').replace('place=Barn', 'place=House'));
    expect(at(plan, 'L:feeder')).toEqual([]);
    expect(defaultsOf(plan, 'outdoors').join()).toMatch(/for L, SVC: taken as no/);
  });

  it('the limit is a setting', () => {
    const plan = planOf('', feeder('20 m'), { settings: { thresholds: { longRunNec: 15 } } });
    expect(rulesAt(plan, 'L:feeder')).toContain('place/long-run');
  });

  it('iec: an array’s run is required where place/dc-input is required for it, through combiners too', () => {
    const rows = `INV grid-tie-inverter; dc_inputs=1; max_dc_voltage=600; ac_out=230; place=House; isolated=yes
       A array; connects_to=C; run_length=15 m; ${ARRAY}
       C combiner; connects_to=INV; run_length=15 m`;
    const strengths = (ng: number): readonly (string | undefined)[] =>
      ['A:output', 'C:output', 'INV:dc-in-1'].map((where) =>
        strengthAt(
          planOf(`basis=iec; earthing=TN; lowest_temp=-5 C; occupancy=dwelling; flash_density=${ng}`, rows),
          where,
        ),
      );
    // Lcrit 115 / 3 = 38.3 m and 115 / 4 = 28.75 m, against 30 m.
    expect(strengths(3)).toEqual(['recommended', 'recommended', 'recommended']);
    expect(strengths(4)).toEqual(['required', 'required', 'required']);
  });

  it('iec: another run stays recommended', () => {
    const plan = planOf(
      'basis=iec; earthing=TN; occupancy=other; flash_density=9',
      `SVC service; ac_in=400Y/230; place=House\nL load; connects_to=SVC; run_length=50 m; ac_in=400Y/230; place=Barn`,
    );
    expect(strengthAt(plan, 'L:feeder')).toBe('recommended');
  });
});

describe('place/far-end-exempt', () => {
  const rows = (more: string): string =>
    `SVC service; ac_in=120/240; place=House
     BARN panel; connects_to=SVC; run_length=60 m; ac_in=120/240; place=Barn; worth_protecting=no${more}`;

  it('nothing there, and the plan says why; the near end stays', () => {
    const plan = planOf('', rows(''));
    expect(at(plan, 'BARN:feeder')).toEqual([]);
    expect(because(plan, 'BARN:feeder')).toContainEqual({
      rule: 'place/far-end-exempt',
      because: 'the list says that nothing here is worth protecting',
    });
    expect(rulesAt(plan, 'SVC:service')).toContain('place/long-run');
  });

  it('where a required rule asks it stays, and a confirm names the contradiction', () => {
    const plan = planOf('basis=nec-2023', rows('; building_occupancy=dwelling'));
    expect(strengthAt(plan, 'BARN:feeder')).toBe('required');
    expect(items(plan, 'place/nothing-worth-protecting').map((i) => [i.line, i.column])).toEqual([
      [3, 'worth_protecting'],
    ]);
  });

  it('removes every placement of that row that isn’t required, except what the list asks for', () => {
    const row = (more: string): string =>
      `INV inverter-charger; ac_in=120/240; ac_out=120/240; dc_inputs=1; max_dc_voltage=150; place=Hut; worth_protecting=no${more}`;
    expect(planOf('', row('')).protectors).toEqual([]);
    const asked = planOf('', row('; protect=yes'));
    expect(rulesAt(asked, 'INV:ac-out')).toEqual(['place/asked']);
    expect(at(asked, 'INV:dc-in-1')).toEqual([]);
  });

  it('a service has no far end', () => {
    const plan = planOf('basis=nec-2017', 'SVC service; ac_in=120/240; worth_protecting=no');
    expect(rulesAt(plan, 'SVC:service')).toEqual(['place/service']);
  });

  it('takes a grid-tie inverter’s output away too', () => {
    const plan = planOf(
      '',
      'INV grid-tie-inverter; dc_inputs=1; max_dc_voltage=400; ac_out=240; worth_protecting=no',
    );
    expect(at(plan, 'INV:ac-out')).toEqual([]);
    expect(because(plan, 'INV:ac-out').map((n) => n.rule)).toContain('place/far-end-exempt');
  });
});

describe('place/battery', () => {
  const rows = (place: string, more = ''): string =>
    `BAT battery; battery_voltage=48; battery_chemistry=lfp; place=Hut / cellar
     INV inverter-charger; connects_to=BAT; run_length=2 m; ac_out=120; place=${place}${more}`;

  it.each([
    ['Hut / cellar', false],
    ['hut / Cellar', false],
    ['Hut / hall', true],
    ['', false],
  ])('its inverter in "%s": %s', (place, fires) => {
    const plan = planOf('', rows(place));
    expect(rulesAt(plan, 'BAT:battery').includes('place/battery')).toBe(fires);
  });

  it('a long run in the same place', () => {
    const plan = planOf('', rows('Hut / cellar').replace('run_length=2 m', `run_length=${LONG}`));
    expect(rulesAt(plan, 'BAT:battery')).toEqual(['place/battery']);
  });

  it('the inverter’s end is its port battery, placed by a long run only', () => {
    const near = planOf('', rows('Hut / hall'));
    expect(at(near, 'INV:battery')).toEqual([]);
    expect(because(near, 'INV:battery')).not.toEqual([]);
    const far = planOf('', rows('House').replace('run_length=2 m', 'run_length=40 m'));
    expect(rulesAt(far, 'INV:battery')).toEqual(['place/long-run']);
    expect(rulesAt(far, 'BAT:battery')).toEqual(['place/battery', 'place/long-run']);
  });
});

describe('place/generator and place/outbuilding', () => {
  it('a generator outdoors or in another building: its end by the length of its run', () => {
    const rows = (length: string, out: string): string =>
      `P panel; ac_in=120/240; place=House\nGEN generator; connects_to=P; run_length=${length}; ac_out=120/240; ${out}`;
    expect(rulesAt(planOf('', rows(LONG, 'place=House; outdoors=yes')), 'GEN:output')).toEqual([
      'place/generator',
      'place/long-run',
    ]);
    expect(rulesAt(planOf('', rows(LONG, 'place=Shed')), 'GEN:output')).toContain('place/generator');
    expect(at(planOf('', rows(SHORT, 'place=Shed')), 'GEN:output')).toEqual([]);
    expect(at(planOf('', rows(LONG, 'place=House')), 'GEN:output')).toEqual([]);
  });

  it('a feeder to another building: by its length; with iec at any length', () => {
    const rows = (length: string, system: string): string =>
      `P panel; ac_in=${system}; place=House\nL load; connects_to=P; run_length=${length}; ac_in=${system}; place=Barn`;
    expect(at(planOf('', rows(SHORT, '120/240')), 'L:feeder')).toEqual([]);
    expect(rulesAt(planOf('', rows(LONG, '120/240')), 'L:feeder')).toEqual([
      'place/long-run',
      'place/outbuilding',
    ]);
    const iec = planOf('basis=iec; earthing=TN', rows('2 m', '400Y/230'));
    expect(rulesAt(iec, 'L:feeder')).toEqual(['place/outbuilding']);
    expect(items(iec, 'default/building')).toHaveLength(1);
  });
});

describe('place/control', () => {
  const rows = (more: string, connects = 'connects_to=PUMP; '): string =>
    `PUMP load; ac_in=120; place=House
     CTL control-circuit; ${connects}control_voltage=24 V dc; ${more}`;

  it.each([
    ['outdoors', 'run_length=3 m; place=House; outdoors=yes'],
    ['between buildings', 'run_length=3 m; place=Well'],
    ['on a long run', `run_length=${LONG}; place=House`],
  ])('%s: one at the equipment, and one at the other end', (_, more) => {
    const plan = planOf('', rows(more));
    expect(rulesAt(plan, 'CTL:terminals')).toEqual(['place/control']);
    expect(rulesAt(plan, 'PUMP:terminals')).toEqual(['place/control']);
    expect(one(plan, 'PUMP:terminals').protects).toBe('PUMP: the end of the control circuit CTL');
  });

  it('indoors and short: none, at either end, and both say why', () => {
    const plan = planOf('', rows('run_length=3 m; place=House'));
    for (const where of ['CTL:terminals', 'PUMP:terminals']) {
      expect(at(plan, where)).toEqual([]);
      expect(because(plan, where)).not.toEqual([]);
    }
  });

  it('whose other end isn’t named: to be confirmed', () => {
    const plan = planOf('', rows('place=House; outdoors=yes', ''));
    expect(rulesAt(plan, 'CTL:terminals')).toEqual(['place/control']);
    expect(items(plan, 'place/control-other-end').map((i) => [i.line])).toEqual([[3]]);
  });

  it.each([
    ['60 V dc', true],
    ['61 V dc', false],
  ])('of %s', (volts, fires) => {
    const plan = planOf('', rows('outdoors=yes; place=House').replace('24 V dc', volts));
    expect(at(plan, 'CTL:terminals').length > 0).toBe(fires);
    expect(faults(plan)).toEqual(fires ? [] : ['place/control-voltage-high']);
  });

  it('each circuit has its own protector at an end that several share, in order of their tags', () => {
    const plan = planOf(
      '',
      `PUMP load; ac_in=120; place=House
       C10 control-circuit; connects_to=PUMP; run_length=9 m; control_voltage=24 V dc; place=Well
       C2 control-circuit; connects_to=PUMP; run_length=9 m; control_voltage=24 V ac; place=Well`,
    );
    expect(at(plan, 'PUMP:terminals').map((p) => [p.protects, p.required.current])).toEqual([
      ['PUMP: the end of the control circuit C2', 'ac'],
      ['PUMP: the end of the control circuit C10', 'dc'],
    ]);
  });

  it('an end that holds nothing worth protecting has none; what the circuit’s row waives counts at both', () => {
    const onPump = (cell: string): ReturnType<typeof planOf> =>
      planOf('', rows('run_length=3 m; place=Well').replace('PUMP load; ', `PUMP load; ${cell}; `));
    const worthless = onPump('worth_protecting=no');
    expect(at(worthless, 'PUMP:terminals')).toEqual([]);
    expect(because(worthless, 'PUMP:terminals')).not.toEqual([]);
    expect(at(worthless, 'CTL:terminals')).toHaveLength(1);
    expect(planOf('', rows('run_length=3 m; place=Well; protect=no')).protectors).toEqual([]);
    // The terminals there belong to the circuit: what the pump's row waives is about the pump's supply.
    expect(at(onPump('protect=no'), 'PUMP:terminals')).toHaveLength(1);
  });
});

describe('a control circuit’s terminals', () => {
  const rows = (circuit: string, load: string): string =>
    `CTL control-circuit; control_voltage=24 V dc; connects_to=PUMP; place=Well; run_length=3 m${circuit}
     PUMP load; ac_in=120/240; place=House${load}`;

  it('are the circuit’s, so that protect of the row that it ends at says nothing of them', () => {
    for (const load of ['; protect=no', '; protect=yes', ''])
      expect(at(planOf('', rows('', load)), 'PUMP:terminals'), load).toHaveLength(1);
    for (const load of ['; protect=no', '; protect=yes', ''])
      expect(at(planOf('', rows('; protect=no', load)), 'PUMP:terminals'), load).toEqual([]);
  });

  it.each(ALL)('%s: a stated run that is long, and no other end: one, to be confirmed', (basis) => {
    const circuit = (length: string): string =>
      `CTL control-circuit; control_voltage=24 V dc; place=House; run_length=${length}`;
    const long = planOf(`basis=${basis}`, circuit('40 m'));
    expect(at(long, 'CTL:terminals')).toHaveLength(1);
    expect(items(long, 'place/control-other-end')[0]?.message).toMatch(/protector at this end only/);
    const short = planOf(`basis=${basis}`, circuit('5 m'));
    expect(at(short, 'CTL:terminals')).toEqual([]);
    expect(items(short, 'place/control-other-end')[0]?.message).toMatch(/it has no protector/);
    expect(short.notPlaced.find((n) => n.equipment === 'CTL')?.open).toBe(true);
  });
});

describe('place/signal and kind other', () => {
  it.each(ALL)('%s: a signal line has no power protector: to be confirmed', (basis) => {
    const plan = planOf(`basis=${basis}`, 'SIG signal-line; outdoors=yes');
    expect(plan.protectors).toEqual([]);
    expect(because(plan, 'SIG:terminals').map((n) => n.rule)).toEqual(['place/signal']);
    expect(items(plan, 'place/signal-line')).toHaveLength(1);
  });

  it('kind other: to be confirmed, and its port says why', () => {
    const plan = planOf('', 'X other');
    expect(items(plan, 'place/other-kind')).toHaveLength(1);
    expect(because(plan, 'X:terminals')).not.toEqual([]);
  });

  it('kind other at the end of a control circuit: the item names what place/control does look at', () => {
    const text = (rows: string): string[] =>
      items(planOf('', rows), 'place/other-kind').map((item) => item.message);
    expect(text('X other')).toEqual(['X is of kind other: no rule of shuntbook looks at it.']);
    expect(
      text(`X other; place=House
        C2 control-circuit; connects_to=X; run_length=60 m; control_voltage=24 V dc; place=Gate; outdoors=yes
        C1 control-circuit; connects_to=X; run_length=60 m; control_voltage=24 V dc; place=Well; outdoors=yes`),
    ).toEqual([
      'X is of kind other: no rule of shuntbook looks at it, but for the control circuits that end there: C1 and C2.',
    ]);
  });
});

describe('place/asked', () => {
  it.each([
    ['service; ac_in=120/240', ['service']],
    ['panel; ac_in=120/240', ['feeder']],
    ['load; ac_in=120/240', ['feeder']],
    [`array; ${ARRAY}`, ['output']],
    ['combiner', ['output']],
    ['wind-turbine; output=dc; open_circuit_voltage=90', ['output']],
    ['hydro-turbine; output=dc; open_circuit_voltage=90', ['output']],
    ['generator; ac_out=120', ['output']],
    ['ac-module-branch; ac_out=240', ['output']],
    ['charge-controller; dc_inputs=2; max_dc_voltage=150', ['dc-in-1', 'dc-in-2']],
    ['grid-tie-inverter; dc_inputs=1; max_dc_voltage=400; ac_out=240', ['ac-out']],
    ['inverter-charger; ac_in=120/240; ac_out=240', ['ac-in', 'ac-out']],
    ['battery; battery_voltage=48; battery_chemistry=lfp', ['battery']],
    ['control-circuit; control_voltage=24 V dc', ['terminals']],
  ])('yes on a %s: one at its main port', (row, ports) => {
    const plan = planOf('lowest_temp=0 C', `X ${row}; protect=yes`);
    const asked = plan.protectors
      .filter((p) => p.reasons.some((r) => r.rule === 'place/asked' && r.strength === 'recommended'))
      .flatMap((p) => p.ports.map((o) => o.port));
    expect(asked).toEqual(ports);
  });

  it.each(['yes', 'no'])('%s on a transfer switch changes nothing: to be confirmed', (word) => {
    for (const field of ['protect', 'worth_protecting']) {
      const plan = planOf('', `X transfer-switch; ${field}=${word}`);
      expect(items(plan, 'place/passes-through').map((i) => [i.severity, i.column])).toEqual([
        ['confirm', field],
      ]);
      expect(items(plan, 'place/no-main-port')).toEqual([]);
      expect(plan.protectors).toEqual([]);
    }
    expect(items(planOf('', 'X transfer-switch'), 'place/passes-through')).toEqual([]);
  });

  it.each(['signal-line', 'other'])('yes on a %s is a conflict', (kind) => {
    expect(faults(planOf('', `X ${kind}; protect=yes`))).toEqual(['place/no-main-port']);
  });

  it.each(['transfer-switch', 'disconnect'])('yes or no on a %s changes nothing: to be confirmed', (kind) => {
    const rows = (cells: string): string =>
      `SVC service; ac_in=120/240; place=House; fault_current=5 kA
       X ${kind}; connects_to=SVC; run_length=2 m; place=House${cells}
       L load; connects_to=X; run_length=2 m; place=House`;
    const plain = planOf('', rows(''));
    expect(items(plain, 'place/passes-through')).toEqual([]);
    for (const cell of ['protect=yes', 'protect=no', 'worth_protecting=no']) {
      const plan = planOf('', rows(`; ${cell}`));
      expect(items(plan, 'place/passes-through').map((i) => [i.severity, i.equipment])).toEqual([
        ['confirm', 'X'],
      ]);
      expect(plan.protectors).toEqual(plain.protectors);
      expect(faults(plan)).toEqual([]);
    }
  });

  it('yes where the list itself says that the port is unused is a conflict', () => {
    const plan = planOf(
      '',
      'X grid-tie-inverter; dc_inputs=1; max_dc_voltage=400; ac_out=unused; protect=yes; isolated=yes',
    );
    expect(faults(plan)).toEqual(['place/main-port-unused']);
  });

  it('no waives what isn’t required, and says so', () => {
    const plan = planOf('', 'CC charge-controller; dc_inputs=1; max_dc_voltage=150; protect=no');
    expect(plan.protectors).toEqual([]);
    expect(because(plan, 'CC:dc-in-1')).toContainEqual({
      rule: 'place/asked',
      because: 'the list says protect "no"',
    });
  });

  it('no doesn’t waive what a code requires: it stays, to be confirmed', () => {
    const plan = planOf(
      'basis=nec-2023; occupancy=dwelling',
      `SVC service; ac_in=120/240; place=House
       MP panel; connects_to=SVC; run_length=9 m; ac_in=120/240; place=House; protect=no`,
    );
    expect(strengthAt(plan, 'MP:feeder')).toBe('required');
    expect(items(plan, 'place/cannot-waive').map((i) => [i.line, i.column])).toEqual([[3, 'protect']]);
  });

  const twoPanels = (second: string): string =>
    `SVC service; ac_in=120/240; place=House; protect=no
     P1 panel; connects_to=SVC; run_length=9 m; ac_in=120/240; place=House; protect=yes
     P2 panel; connects_to=SVC; run_length=9 m; ac_in=120/240; place=House; ${second}`;

  it.each(['nec-2020', 'nec-2023'])(
    '%s: the service of 230.67 goes only where every next panel has one',
    (basis) => {
      const facts = `basis=${basis}; occupancy=dwelling`;
      const waived = planOf(facts, twoPanels('protect=yes'));
      expect(at(waived, 'SVC:service')).toEqual([]);
      expect(items(waived, 'place/waived-by-exception')).toHaveLength(1);
      const kept = planOf('basis=nec-2020; occupancy=dwelling', twoPanels(''));
      expect(strengthAt(kept, 'SVC:service')).toBe('required');
      expect(items(kept, 'place/cannot-waive')).toHaveLength(1);
    },
  );

  it('a service without a next panel stays; one that isn’t required goes', () => {
    const facts = 'basis=nec-2023; occupancy=';
    const row = 'SVC service; ac_in=120/240; protect=no';
    expect(at(planOf(`${facts}dwelling`, row), 'SVC:service')).toHaveLength(1);
    expect(at(planOf(`${facts}other`, row), 'SVC:service')).toEqual([]);
    expect(at(planOf('basis=nec-2017; occupancy=dwelling', row), 'SVC:service')).toEqual([]);
  });

  it('iec knows no such exception', () => {
    const plan = planOf(
      'basis=iec; earthing=TN; occupancy=other',
      twoPanels('protect=yes').replaceAll('120/240', '400Y/230'),
    );
    expect(strengthAt(plan, 'SVC:service')).toBe('required');
  });
});

describe('two rules that ask for one place', () => {
  it('make one placement with both reasons; its strength is the highest', () => {
    const plan = planOf(
      'basis=nec-2023; occupancy=dwelling',
      `SVC service; ac_in=120/240; place=House
       P panel; connects_to=SVC; run_length=60 m; ac_in=120/240; place=Annex; building_occupancy=dwelling; protect=yes`,
    );
    expect(rulesAt(plan, 'P:feeder')).toEqual([
      'place/asked',
      'place/feeder',
      'place/long-run',
      'place/outbuilding',
    ]);
    expect(one(plan, 'P:feeder').strength).toBe('required');
    expect(new Map(one(plan, 'P:feeder').reasons.map((r) => [r.rule, r.strength]))).toEqual(
      new Map([
        ['place/feeder', 'required'],
        ['place/long-run', 'recommended'],
        ['place/outbuilding', 'recommended'],
        ['place/asked', 'recommended'],
      ]),
    );
  });
});

describe('existing', () => {
  it('keeps the placement, marks it and orders nothing; unknown ratings are to be confirmed', () => {
    const plan = planOf('', 'SVC service; ac_in=120/240; existing=grey box by the meter');
    expect(one(plan, 'SVC:service')).toMatchObject({ existing: 'grey box by the meter', part: null });
    expect(plan.orders).toEqual([]);
    expect(items(plan, 'choose/existing-unknown').map((i) => [i.line, i.column, i.severity])).toEqual([
      [2, 'existing', 'confirm'],
    ]);
  });

  it('of a part of the catalogue is held against the place', () => {
    const fits = planOf('', 'SVC service; ac_in=120/240; existing=alder-2');
    expect(one(fits, 'SVC:service').part).toBe('ALDER-2');
    expect(faults(fits)).toEqual([]);
    expect(fits.orders).toEqual([]);
    const fails = planOf('', 'SVC service; ac_in=480Y/277; existing=ALDER-3');
    expect(faults(fails)).toEqual(['choose/existing-fails']);
  });

  it('without a rule that asks places nothing', () => {
    const plan = planOf('', 'L load; ac_in=120; existing=ALDER-2');
    expect(plan.protectors).toEqual([]);
  });

  it('of a row with several places is to be confirmed for each: a missing one would go unordered', () => {
    const plan = planOf('', 'INV inverter-charger; ac_in=120/240; ac_out=120/240; existing=ALDER-2');
    expect(plan.protectors.map((p) => p.existing)).toEqual(['ALDER-2', 'ALDER-2']);
    expect(items(plan, 'choose/existing-several').map((i) => i.message)).toEqual([
      expect.stringContaining('INV ac-in and INV ac-out'),
    ]);
  });
});

describe('out of scope', () => {
  it('bipolar arrays and the output of a variable-speed drive are said clearly', () => {
    const plan = planOf(
      'lowest_temp=0 C',
      `A array; ${ARRAY}; description=Bipolar array
       M load; ac_in=480Y/277; description=Pump on a variable speed drive`,
    );
    expect(items(plan, 'site/bipolar-array')).toHaveLength(1);
    expect(items(plan, 'site/variable-speed-drive')).toHaveLength(1);
  });
});
