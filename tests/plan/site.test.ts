import { describe, expect, it } from 'vitest';
import {
  allPorts,
  at,
  because,
  defaultsOf,
  faults,
  items,
  listOf,
  one,
  planOf,
  planOfCsv,
  rulesAt,
  strengthAt,
} from './plan-of.js';

// rules.md section 0, sentence by sentence, from the text of a list to its plan. Cases are our own.

const ARRAY = 'voc_stc=40; modules_in_series=3; isc_stc=10; strings_in_parallel=1';
const run = (plan: ReturnType<typeof planOf>, from: string, to: string) =>
  plan.site.runs.find(
    (r) => `${r.from.equipment}:${r.from.port}` === from && `${r.to.equipment}:${r.to.port}` === to,
  );

describe('buildings', () => {
  it('default to the place up to " / "; a run between two of them is between buildings', () => {
    const plan = planOf(
      '',
      `SVC service; ac_in=120/240; place=House / wall
       MP panel; connects_to=SVC; run_length=20 m; ac_in=120/240; place=house / hall
       BARN panel; connects_to=MP; run_length=20 m; ac_in=120/240; place=Barn`,
    );
    expect(run(plan, 'SVC:service', 'MP:feeder')?.betweenBuildings).toBe(false);
    expect(run(plan, 'MP:feeder', 'BARN:feeder')?.betweenBuildings).toBe(true);
    expect(plan.site.equipments.map((e) => e.building)).toEqual(['Barn', 'house', 'House']);
  });

  it.each([
    ['array', 'yes'],
    ['combiner', 'yes'],
    ['wind-turbine', 'yes'],
    ['hydro-turbine', 'yes'],
    ['panel', 'no'],
    ['service', 'no'],
    ['generator', 'no'],
    ['battery', 'no'],
    ['control-circuit', 'no'],
  ])('outdoors defaults for a %s to %s', (kind, outdoors) => {
    const plan = planOf('', `X ${kind}`);
    expect(plan.site.equipments[0]?.outdoors).toBe(outdoors === 'yes');
  });

  it('a run is outdoors when either end is', () => {
    const rows = (out: string): string =>
      `SVC service; ac_in=120/240; place=House; outdoors=${out}
       MP panel; connects_to=SVC; run_length=40 m; ac_in=120/240; place=House`;
    expect(run(planOf('', rows('yes')), 'SVC:service', 'MP:feeder')?.outdoors).toBe(true);
    expect(run(planOf('', rows('no')), 'SVC:service', 'MP:feeder')?.outdoors).toBe(false);
  });

  it('a defaulted building that decides a placement is to be confirmed; a stated one not', () => {
    const rows = (more: string): string =>
      `SVC service; ac_in=120/240; place=House / wall${more.replace('X', 'Main')}
       BARN panel; connects_to=SVC; run_length=50 m; ac_in=120/240; place=Barn / wall${more.replace('X', 'Barn')}`;
    const byDefault = planOf('', rows(''));
    expect(rulesAt(byDefault, 'BARN:feeder')).toContain('place/long-run');
    expect(items(byDefault, 'default/building')).toHaveLength(1);
    const stated = planOf('', rows('; building=X'));
    expect(rulesAt(stated, 'BARN:feeder')).toContain('place/long-run');
    expect(items(stated, 'default/building')).toEqual([]);
  });

  it('a place that can’t be known isn’t between buildings', () => {
    const plan = planOf(
      '',
      `SVC service; ac_in=120/240; place=House
       MP panel; ac_in=120/240
       L load; connects_to=MP; ac_in=120; run_length=40 m; place=Barn`,
    );
    expect(run(plan, 'MP:feeder', 'L:feeder')?.betweenBuildings).toBe(false);
  });

  it('an empty place is that of the row it connects to', () => {
    const plan = planOf(
      '',
      `SVC service; ac_in=120/240; place=House / wall
       MP panel; connects_to=SVC; ac_in=120/240
       L load; connects_to=MP; ac_in=120`,
    );
    expect(plan.site.equipments.map((e) => e.place)).toEqual([
      'House / wall',
      'House / wall',
      'House / wall',
    ]);
    expect(plan.site.equipments.map((e) => e.building)).toEqual(['House', 'House', 'House']);
  });
});

describe('quantity', () => {
  it('of 1 keeps its tag; of N makes TAG-1 to TAG-N, each with ports of its own', () => {
    const plan = planOf('', 'A load; quantity=1; ac_in=120\nB load; quantity=3; ac_in=120');
    expect(plan.site.equipments.map((e) => e.tag)).toEqual(['A', 'B-1', 'B-2', 'B-3']);
    expect(plan.site.equipments.map((e) => e.line)).toEqual([2, 3, 3, 3]);
  });

  it('a made tag that is typed too is one conflict that names both lines', () => {
    const plan = planOf(
      'lowest_temp=-10 C',
      `ARR array; quantity=2; connects_to=CC; run_length=5 m; ${ARRAY}
       CC charge-controller; quantity=2; dc_inputs=1; place=Hut
       CC-2 charge-controller; dc_inputs=1; place=Hut`,
    );
    const [item, ...others] = items(plan, 'conflict');
    expect(item?.message).toMatch(/CC-2.*line 4.*line 3/);
    expect(item).toMatchObject({ line: 3, column: 'quantity' });
    expect(others).toEqual([]);
    expect(items(plan, 'missing')).toEqual([]);
    // The second array goes to the row that has the number.
    expect(run(plan, 'ARR-2:output', 'CC-2:dc-in-1')).toBeDefined();
    expect(items(plan, 'site/inputs-without-source')).toEqual([]);
  });

  it('two groups of equal quantity connect pairwise by number', () => {
    const plan = planOf(
      'lowest_temp=-10 C',
      `ARR array; quantity=3; connects_to=CC; run_length=5 m; ${ARRAY}
       CC charge-controller; quantity=3; dc_inputs=1; place=Hut`,
    );
    expect(plan.site.runs.map((r) => [r.from.equipment, r.to.equipment])).toEqual([
      ['ARR-1', 'CC-1'],
      ['ARR-2', 'CC-2'],
      ['ARR-3', 'CC-3'],
    ]);
    expect(faults(plan)).toEqual([]);
  });

  it('a target of one takes all', () => {
    const plan = planOf(
      'lowest_temp=-10 C',
      `ARR array; quantity=2; connects_to=CC; run_length=5 m; ${ARRAY}
       CC charge-controller; dc_inputs=2; place=Hut`,
    );
    expect(plan.site.runs).toHaveLength(2);
  });

  it.each([
    [3, 2, ['site/arrays-or-modules', 'site/group-unclear']],
    [1, 2, ['site/group-unclear']],
  ])('%i onto %i is missing which goes where, said once', (from, to, said) => {
    const plan = planOf(
      'lowest_temp=-10 C',
      `ARR array; quantity=${from}; connects_to=CC; run_length=5 m; ${ARRAY}
       CC charge-controller; quantity=${to}; dc_inputs=1; max_dc_voltage=250; place=Hut`,
    );
    expect(faults(plan)).toEqual(said);
    expect(items(plan, 'site/group-unclear')[0]).toMatchObject({ line: 2, column: 'connects_to' });
    expect(items(plan, 'site/inputs-without-source')).toEqual([]);
    for (let i = 1; i <= to; i += 1) expect(strengthAt(plan, `CC-${i}:dc-in-1`)).toBe('recommended');
  });

  it('a member can be named by its made tag', () => {
    const plan = planOf(
      'lowest_temp=-10 C',
      `ARR array; connects_to=CC-2; run_length=5 m; ${ARRAY}
       CC charge-controller; quantity=2; dc_inputs=1; max_dc_voltage=250; place=Hut`,
    );
    expect(run(plan, 'ARR:output', 'CC-2:dc-in-1')).toBeDefined();
  });

  it('beyond any job is one item, and doesn’t stop the plan', () => {
    const plan = planOf('', 'L load; quantity=100000000; ac_in=120\nM load; ac_in=120');
    expect(faults(plan)).toEqual(['cell/wrong']);
    expect(plan.site.equipments.map((e) => e.tag)).toEqual(['L', 'M']);
  });
});

describe('DC inputs', () => {
  const gti = (inputs: string, ...sources: readonly string[]): string =>
    [
      `INV grid-tie-inverter; connects_to=MP; run_length=3 m; ${inputs}; ac_out=240; place=House; isolated=yes`,
      'MP panel; ac_in=120/240; place=House',
      ...sources.map(
        (s, i) => `A${i + 1} array; connects_to=${s}; run_length=5 m; ${ARRAY.replace('=3', `=${i + 3}`)}`,
      ),
    ].join('\n');

  it('TAG/N names an input; the others are spare and stay bare, with that reason', () => {
    const plan = planOf('lowest_temp=25 C', gti('dc_inputs=3; max_dc_voltage=600', 'INV/2'));
    expect(at(plan, 'INV:dc-in-2')).toHaveLength(1);
    for (const spare of ['INV:dc-in-1', 'INV:dc-in-3']) {
      expect(at(plan, spare)).toEqual([]);
      expect(because(plan, spare).map((n) => n.because)).toContain(
        'no source on the list uses this input: it is spare',
      );
    }
  });

  it('two sources on one input are in parallel, the highest voltage counts, to be confirmed', () => {
    const plan = planOf('lowest_temp=25 C', gti('dc_inputs=2; max_dc_voltage=600', 'INV/1', 'INV/1'));
    expect(one(plan, 'INV:dc-in-1').required.mcov).toBe(160);
    expect(items(plan, 'site/sources-in-parallel')).toHaveLength(1);
    // Their short-circuit currents add: 2 x 1.25 x 10 A (NEC 690.8(A), value from memory).
    expect(one(plan, 'INV:dc-in-1').required.sccr).toBe(25);
  });

  it('without /N a converter with one input takes it', () => {
    const plan = planOf('lowest_temp=25 C', gti('dc_inputs=1; max_dc_voltage=600', 'INV'));
    expect(run(plan, 'A1:output', 'INV:dc-in-1')).toBeDefined();
    expect(items(plan, 'site/inputs-by-order')).toEqual([]);
  });

  it('as many sources as inputs go by order of tags, every input rated at the highest, to be confirmed', () => {
    const plan = planOf('lowest_temp=25 C', gti('dc_inputs=2; max_dc_voltage=600', 'INV', 'INV'));
    expect(
      plan.site.runs
        .filter((r) => r.to.equipment === 'INV' && r.to.port.startsWith('dc'))
        .map((r) => [r.from.equipment, r.to.port]),
    ).toEqual([
      ['A1', 'dc-in-1'],
      ['A2', 'dc-in-2'],
    ]);
    for (const input of ['INV:dc-in-1', 'INV:dc-in-2']) {
      expect(one(plan, input).required.mcov).toBe(160);
      // One of the two feeds it, not both: 1.25 x 10 A.
      expect(one(plan, input).required.sccr).toBe(12.5);
    }
    expect(items(plan, 'site/inputs-by-order')).toHaveLength(1);
    expect(items(plan, 'site/sources-in-parallel')).toEqual([]);
  });

  it('else it is missing which goes where: one item, and every input that might be fed is protected', () => {
    const plan = planOf('lowest_temp=25 C', gti('dc_inputs=3; max_dc_voltage=600', 'INV', 'INV'));
    expect(faults(plan)).toEqual(['site/inputs-unclear']);
    expect(items(plan, 'site/sources-in-parallel')).toEqual([]);
    for (const input of ['INV:dc-in-1', 'INV:dc-in-2', 'INV:dc-in-3'])
      expect(one(plan, input).required.mcov).toBe(160);
  });

  it('a named and an unnamed source: the parallel pair is confirmed, and the order of the other too', () => {
    const plan = planOf('lowest_temp=25 C', gti('dc_inputs=2; max_dc_voltage=600', 'INV/1', 'INV/1', 'INV'));
    expect(items(plan, 'site/sources-in-parallel').map((i) => i.message)).toEqual([
      expect.stringMatching(/A1, A2 share dc-in-1/),
    ]);
    expect(items(plan, 'site/inputs-by-order')).toHaveLength(1);
    expect(one(plan, 'INV:dc-in-1').required.mcov).toBe(160);
    expect(one(plan, 'INV:dc-in-2').required.mcov).toBe(200);
  });

  it('TAG/1+2 is one source on both inputs', () => {
    const plan = planOf('lowest_temp=25 C', gti('dc_inputs=2; max_dc_voltage=600', 'INV/1+2'));
    expect(plan.site.runs.filter((r) => r.from.equipment === 'A1').map((r) => r.to.port)).toEqual([
      'dc-in-1',
      'dc-in-2',
    ]);
    expect(at(plan, 'INV:dc-in-1')).toHaveLength(1);
    expect(at(plan, 'INV:dc-in-2')).toHaveLength(1);
  });

  it('dc_inputs blank is 1 for a charge controller, printed', () => {
    const plan = planOf(
      'lowest_temp=25 C',
      `A array; connects_to=CC; run_length=5 m; ${ARRAY}\nCC charge-controller; place=Hut`,
    );
    expect(plan.site.equipments.find((e) => e.tag === 'CC')?.ports).toEqual(['dc-in-1']);
    expect(items(plan, 'default/dc-inputs')).toHaveLength(1);
  });

  it('dc_inputs blank is the highest that is named, printed: a further input would go bare', () => {
    const plan = planOf('lowest_temp=25 C', gti('max_dc_voltage=600', 'INV/2'));
    expect(plan.site.equipments.find((e) => e.tag === 'INV')?.ports).toEqual([
      'dc-in-1',
      'dc-in-2',
      'ac-out',
    ]);
    expect(items(plan, 'default/dc-inputs-named').map((i) => i.severity)).toEqual(['confirm']);
    expect(faults(plan)).toEqual([]);
  });

  it('dc_inputs blank with nothing named is missing, and nothing else is said of it', () => {
    const plan = planOf('lowest_temp=25 C', gti('max_dc_voltage=600', 'INV', 'INV'));
    expect(faults(plan)).toEqual(['fact/dc-inputs']);
    expect(items(plan, 'site/sources-in-parallel')).toEqual([]);
    expect(one(plan, 'INV:dc-in-1').required.mcov).toBe(160);
  });

  it('an input that the converter doesn’t have is a conflict on the row that names it', () => {
    const plan = planOf('lowest_temp=25 C', gti('dc_inputs=1; max_dc_voltage=600', 'INV/3'));
    expect(items(plan, 'conflict').map((i) => [i.code, i.line, i.column])).toEqual([
      ['site/input-number', 4, 'connects_to'],
    ]);
  });

  it('no source names the converter: all inputs count as fed, rated by max_dc_voltage, to be confirmed', () => {
    const plan = planOf('', gti('dc_inputs=2; max_dc_voltage=480'));
    for (const input of ['INV:dc-in-1', 'INV:dc-in-2']) {
      expect(strengthAt(plan, input)).toBe('recommended');
      expect(one(plan, input).required.mcov).toBe(480);
    }
    expect(items(plan, 'site/inputs-without-source')).toHaveLength(1);
    expect(faults(plan)).toEqual([]);
  });

  it('no source and no max_dc_voltage: that is what is missing', () => {
    const plan = planOf('', gti('dc_inputs=2'));
    expect(faults(plan)).toEqual(['fact/max-dc-voltage']);
  });

  it.each(['array', 'combiner', 'wind-turbine', 'hydro-turbine'])(
    'a %s that connects to nothing is missing its connects_to in any case',
    (kind) => {
      const plan = planOf(
        'lowest_temp=25 C',
        `X ${kind}; voc_stc=40; modules_in_series=3; output=dc; open_circuit_voltage=100
         A array; connects_to=CC; run_length=5 m; ${ARRAY}
         CC charge-controller; dc_inputs=1; place=Hut`,
      );
      expect(items(plan, 'fact/connects-to').map((i) => [i.equipment, i.line])).toEqual([['X', 2]]);
    },
  );

  it('a source that its converter names is connected, whichever row states it', () => {
    const plan = planOf(
      'lowest_temp=25 C',
      `A array; ${ARRAY}
       CC charge-controller; dc_inputs=1; place=Hut; connects_to=A; run_length=7 m`,
    );
    expect(run(plan, 'A:output', 'CC:dc-in-1')).toMatchObject({ length: 7, row: 'CC' });
    expect(faults(plan)).toEqual([]);
  });

  it('an impossible number of inputs is one item, and doesn’t stop the plan', () => {
    const plan = planOf('', gti('dc_inputs=99999999; max_dc_voltage=480'));
    expect(faults(plan)).toEqual(['cell/wrong']);
  });
});

describe('what a port carries is what feeds it', () => {
  it('a controller’s input fed by a three-phase turbine is AC, three conductors', () => {
    const plan = planOf(
      '',
      `WT wind-turbine; connects_to=CC; run_length=10 m; output=three-phase; open_circuit_voltage=100
       CC charge-controller; dc_inputs=1; max_dc_voltage=250; place=Hut`,
    );
    expect(one(plan, 'CC:dc-in-1').required).toMatchObject({ current: 'ac', mcov: 100, conductors: 3 });
  });

  it('a combiner passes on the highest voltage that feeds it', () => {
    const plan = planOf(
      'lowest_temp=25 C',
      `A1 array; connects_to=C1; run_length=2 m; voc_stc=40; modules_in_series=3
       A2 array; connects_to=C1; run_length=2 m; voc_stc=40; modules_in_series=5
       C1 combiner; connects_to=C2; run_length=2 m
       C2 combiner; connects_to=CC; run_length=40 m
       CC charge-controller; dc_inputs=1; place=Hut`,
    );
    expect(one(plan, 'CC:dc-in-1').required.mcov).toBe(200);
    expect(one(plan, 'C2:output').required.mcov).toBe(200);
  });

  it('a combiner that nothing feeds is rated by what the converter bears, and what feeds it is missing', () => {
    const plan = planOf(
      'lowest_temp=25 C',
      `C combiner; connects_to=CC; run_length=40 m
       CC charge-controller; dc_inputs=1; max_dc_voltage=250; place=Hut`,
    );
    expect(items(plan, 'site/combiner-without-source')).toHaveLength(1);
    expect(one(plan, 'CC:dc-in-1').required.mcov).toBe(250);
    expect(one(plan, 'C:output').required.mcov).toBe(250);
    expect(faults(plan)).toEqual(['site/combiner-without-source']);
  });

  it('and where neither is known, max_dc_voltage is missing', () => {
    const plan = planOf(
      'lowest_temp=25 C',
      `C combiner; connects_to=CC; run_length=4 m
       CC charge-controller; dc_inputs=1; place=Hut`,
    );
    expect(faults(plan)).toEqual(['fact/max-dc-voltage', 'site/combiner-without-source']);
    expect(one(plan, 'CC:dc-in-1').part).toBeNull();
  });

  it('AC and DC on one input is one conflict, and no part is chosen there', () => {
    const plan = planOf(
      'lowest_temp=25 C',
      `A array; connects_to=CC/1; run_length=5 m; ${ARRAY}
       WT wind-turbine; connects_to=CC/1; run_length=5 m; output=three-phase; open_circuit_voltage=100
       CC charge-controller; dc_inputs=1; max_dc_voltage=250; place=Hut`,
    );
    expect(faults(plan)).toEqual(['site/mixed-sources']);
    expect(one(plan, 'CC:dc-in-1').part).toBeNull();
  });

  it('AC and DC sources without numbers don’t go by order: which is which is missing', () => {
    const plan = planOf(
      'lowest_temp=25 C',
      `A array; connects_to=CC; run_length=5 m; ${ARRAY}
       WT wind-turbine; connects_to=CC; run_length=5 m; output=three-phase; open_circuit_voltage=100
       CC charge-controller; dc_inputs=2; max_dc_voltage=250; place=Hut`,
    );
    expect(faults(plan)).toEqual(['site/inputs-unclear']);
    expect(one(plan, 'CC:dc-in-1').part).toBeNull();
  });
});

describe('near end of a run', () => {
  it('is the port that carries it', () => {
    const plan = planOf(
      'lowest_temp=25 C',
      `SVC service; ac_in=120/240; place=House
       MP panel; connects_to=SVC; run_length=9 m; ac_in=120/240; place=House
       INV inverter-charger; connects_to=MP; run_length=4 m; ac_in=120/240; ac_in_2=120/240; ac_out=120/240; dc_inputs=1; place=House
       SUB panel; connects_to=INV; run_length=3 m; ac_in=120/240; place=House
       GEN generator; connects_to=INV; run_length=20 m; ac_out=120/240; place=House
       BAT battery; connects_to=INV; run_length=1 m; battery_voltage=48; battery_chemistry=lfp; place=House
       CC charge-controller; connects_to=BAT; run_length=1 m; dc_inputs=1; place=House
       A array; connects_to=CC; run_length=5 m; ${ARRAY}
       B array; connects_to=INV; run_length=6 m; ${ARRAY}
       GTI grid-tie-inverter; connects_to=INV; run_length=2 m; dc_inputs=1; ac_out=240; place=House; isolated=yes
       C array; connects_to=GTI; run_length=6 m; ${ARRAY}
       AM ac-module-branch; connects_to=SUB; run_length=8 m; ac_out=240
       L load; connects_to=SUB; run_length=8 m; ac_in=120`,
    );
    const ends = plan.site.runs.map(
      (r) => `${r.from.equipment}:${r.from.port} > ${r.to.equipment}:${r.to.port}`,
    );
    expect(ends.toSorted()).toEqual(
      [
        'SVC:service > MP:feeder',
        'MP:feeder > INV:ac-in',
        'INV:ac-out > SUB:feeder',
        'GEN:output > INV:ac-in-2',
        'BAT:battery > INV:battery',
        'BAT:battery > CC:battery',
        'A:output > CC:dc-in-1',
        'B:output > INV:dc-in-1',
        'INV:ac-out > GTI:ac-out',
        'C:output > GTI:dc-in-1',
        'SUB:feeder > AM:output',
        'SUB:feeder > L:feeder',
      ].toSorted(),
    );
    expect(items(plan, 'conflict')).toEqual([]);
  });

  it('the run belongs to the row that states the connection, whichever end that is', () => {
    const plan = planOf(
      '',
      `SVC service; ac_in=120/240; place=House; connects_to=MP; run_length=12 m
       MP panel; ac_in=120/240; place=House`,
    );
    expect(run(plan, 'SVC:service', 'MP:feeder')).toMatchObject({ length: 12, row: 'SVC' });
  });

  it('a panel that names an inverter is fed by its AC out, unless something else feeds the panel', () => {
    const alone = planOf(
      '',
      `INV inverter-charger; ac_out=120/240; place=House
       P panel; connects_to=INV; run_length=4 m; ac_in=120/240`,
    );
    expect(run(alone, 'INV:ac-out', 'P:feeder')).toBeDefined();
    const fed = planOf(
      '',
      `INV inverter-charger; ac_in=120/240; ac_out=120/240; place=House
       P panel; connects_to=INV; run_length=4 m; ac_in=120/240
       SVC service; ac_in=120/240; connects_to=P; run_length=9 m; place=House`,
    );
    expect(run(fed, 'P:feeder', 'INV:ac-in')).toBeDefined();
  });

  it('a generator takes ac-in-2 where that is stated and ac-in is taken, or said to be unused', () => {
    const rows = (acIn: string, service: string): string =>
      `INV inverter-charger; ac_in=${acIn}; ac_in_2=120/240; ac_out=120/240; place=House
       GEN generator; connects_to=INV; run_length=4 m; ac_out=120/240
       ${service}`;
    const service = 'SVC service; ac_in=120/240; connects_to=INV; run_length=9 m';
    expect(run(planOf('', rows('120/240', service)), 'GEN:output', 'INV:ac-in-2')).toBeDefined();
    expect(run(planOf('', rows('120/240', '')), 'GEN:output', 'INV:ac-in')).toBeDefined();
    expect(run(planOf('', rows('unused', '')), 'GEN:output', 'INV:ac-in-2')).toBeDefined();
  });

  it('a port that is said to be unused and has a connection is a conflict on its cell', () => {
    const plan = planOf(
      '',
      `INV inverter-charger; ac_in=unused; ac_out=120/240; place=House
       GEN generator; connects_to=INV; run_length=4 m; ac_out=120/240`,
    );
    expect(items(plan, 'conflict').map((i) => [i.code, i.line, i.column])).toEqual([
      ['site/unused-port-in-use', 2, 'ac_in'],
    ]);
  });

  it('two supplies on one AC input are to be confirmed', () => {
    const plan = planOf(
      '',
      `INV inverter-charger; ac_in=120/240; ac_out=120/240; place=House
       GEN generator; connects_to=INV; run_length=4 m; ac_out=120/240
       SVC service; ac_in=120/240; connects_to=INV; run_length=9 m`,
    );
    expect(items(plan, 'site/two-feeds-on-one-ac-input')).toHaveLength(1);
  });

  it('a control circuit ends at the terminals of what it connects to, of kind other too', () => {
    const plan = planOf(
      '',
      `X other; place=Shed
       CTL control-circuit; control_voltage=24 V dc; connects_to=X; run_length=10 m; outdoors=yes; place=Yard`,
    );
    expect(run(plan, 'X:terminals', 'CTL:terminals')).toBeDefined();
    expect(items(plan, 'place/control-other-end')).toEqual([]);
    expect(rulesAt(plan, 'X:terminals')).toEqual(['place/control']);
  });

  it('the cable of an array to equipment of kind other still has its own end', () => {
    const plan = planOf(
      'lowest_temp=25 C',
      `A array; connects_to=X; run_length=80 m; ${ARRAY}
       X other; place=Shed`,
    );
    expect(rulesAt(plan, 'A:output')).toContain('place/long-run');
    expect(allPorts(plan)).toContain('X:terminals');
    expect(because(plan, 'X:terminals')).not.toEqual([]);
  });
});

describe('the service’s place', () => {
  const rows = (length: string, place = 'House / hall'): string =>
    `SVC service; ac_in=120/240; place=House / wall
     MP panel; connects_to=SVC; run_length=${length}; ac_in=120/240; place=${place}`;

  it('is a panel that it feeds in the same building over at most 3 m', () => {
    const plan = planOf('basis=nec-2023; occupancy=dwelling', rows('3 m'));
    expect(at(plan, 'MP:feeder')).toEqual([]);
    expect(because(plan, 'MP:feeder').map((n) => n.because)).toContain(
      'it stands at the service SVC, whose protector is its protector',
    );
  });

  it.each([
    ['3.01 m', 'House / hall'],
    ['2 m', 'Annex / hall'],
  ])('isn’t one %s away in %s', (length, place) => {
    const plan = planOf(
      'basis=nec-2023; occupancy=dwelling',
      `${rows(length, place)}; building_occupancy=dwelling`,
    );
    expect(rulesAt(plan, 'MP:feeder')).toContain('place/feeder');
  });

  it('isn’t one whose run has no length: that is said once', () => {
    const plan = planOf('basis=nec-2023; occupancy=dwelling', rows(''));
    expect(rulesAt(plan, 'MP:feeder')).toEqual(['place/feeder']);
    expect(items(plan, 'place/service-place-unknown').map((i) => [i.line, i.column])).toEqual([
      [3, 'run_length'],
    ]);
  });

  it('what a rule asks for at such a panel is asked of the service', () => {
    const plan = planOf(
      'basis=nec-2023; occupancy=dwelling',
      `${rows('2 m')}
       BARN load; connects_to=MP; run_length=60 m; ac_in=120/240; place=Barn`,
    );
    expect(at(plan, 'MP:feeder')).toEqual([]);
    expect(rulesAt(plan, 'SVC:service')).toEqual(['place/long-run', 'place/service']);
    expect(one(plan, 'SVC:service').reasons.find((r) => r.rule === 'place/long-run')?.because).toMatch(
      /at MP, which stands at this service/,
    );
  });

  it('isn’t behind a transfer switch that can put a generator on the panel: the service is cut off just then', () => {
    const plan = planOf(
      'basis=nec-2023; occupancy=dwelling',
      `SVC service; ac_in=120/240; place=House / wall
       TS transfer-switch; connects_to=SVC; run_length=1 m; place=House / wall
       GEN generator; connects_to=TS; run_length=50 m; ac_out=120/240; place=Shed
       MP panel; connects_to=TS; run_length=1 m; ac_in=120/240; place=House / hall`,
    );
    expect(rulesAt(plan, 'MP:feeder')).toEqual(['place/feeder', 'place/long-run', 'place/outbuilding']);
  });

  it('is one behind a switch that nothing else feeds: it passes the connection through', () => {
    const plan = planOf(
      'basis=nec-2023; occupancy=dwelling',
      `SVC service; ac_in=120/240; place=House / wall
       TS transfer-switch; connects_to=SVC; run_length=1 m; place=House / wall
       MP panel; connects_to=TS; run_length=1 m; ac_in=120/240; place=House / hall`,
    );
    expect(at(plan, 'MP:feeder')).toEqual([]);
  });
});

describe('transfer switches', () => {
  const rows = `SVC service; ac_in=120/240; place=House
     TS transfer-switch; connects_to=SVC; run_length=10 m; place=House
     GEN generator; connects_to=TS; run_length=25 m; ac_out=120/240; place=Shed
     P1 panel; connects_to=TS; run_length=8 m; ac_in=120/240; place=House
     P2 panel; connects_to=TS; run_length=5 m; ac_in=120/240; place=House`;

  it('have no protector of their own and pass the connection through; lengths add', () => {
    const plan = planOf('', rows);
    expect(at(plan, 'TS:terminals')).toEqual([]);
    expect(because(plan, 'TS:terminals').map((n) => n.because)).toEqual([
      'a transfer switch has no protector of its own: what it connects is protected at its ends',
    ]);
    expect(plan.site.runs.map((r) => [r.from.equipment, r.to.equipment, r.length, r.through])).toEqual([
      ['GEN', 'P1', 33, ['TS']],
      ['GEN', 'P2', 30, ['TS']],
      ['SVC', 'P1', 18, ['TS']],
      ['SVC', 'P2', 15, ['TS']],
    ]);
  });

  it('a generator behind one feeds the panels behind it', () => {
    const plan = planOf('', rows);
    expect(rulesAt(plan, 'GEN:output')).toEqual(['place/generator', 'place/long-run']);
    expect(rulesAt(plan, 'P1:feeder')).toContain('place/long-run');
    expect(rulesAt(plan, 'P2:feeder')).not.toContain('place/long-run');
  });

  it('one length that isn’t stated leaves the sum unknown, and its own row is asked', () => {
    const plan = planOf('', rows.replace('run_length=25 m; ', ''));
    expect(items(plan, 'fact/run-length').map((i) => [i.line])).toEqual([[4]]);
  });

  it('keep two services apart', () => {
    const two = (more: string): string =>
      `S1 service; ac_in=120/240
       S2 service; ac_in=120/240; connects_to=${more === '' ? 'P' : 'TS'}
       P panel; connects_to=${more === '' ? 'S1' : 'TS'}; ac_in=120/240
       SUB panel; connects_to=P; ac_in=120/240
       ${more}`;
    const plan = planOf('', two(''));
    expect(items(plan, 'conflict').map((i) => i.message)).toEqual([
      'P (line 4) is fed by S1 (line 2) and S2 (line 3) and no transfer switch stands between.',
    ]);
    expect(items(planOf('', two('TS transfer-switch; connects_to=S1')), 'conflict')).toEqual([]);
  });

  it('that names a panel fed by the service puts its generator on that panel', () => {
    const plan = planOf(
      '',
      `SVC service; ac_in=120/240; place=House
       MP panel; connects_to=SVC; run_length=9 m; ac_in=120/240; place=House
       GEN generator; connects_to=TS; run_length=50 m; ac_out=120/240; place=Shed
       TS transfer-switch; connects_to=MP; run_length=2 m; place=House`,
    );
    expect(run(plan, 'GEN:output', 'MP:feeder')).toMatchObject({ length: 52 });
    expect(rulesAt(plan, 'GEN:output')).toContain('place/generator');
  });

  it('that names a fed panel and has panels behind it is fed by that panel', () => {
    const plan = planOf(
      '',
      `SVC service; ac_in=120/240; place=House
       MP panel; connects_to=SVC; run_length=9 m; ac_in=120/240; place=House
       GEN generator; connects_to=TS; run_length=50 m; ac_out=120/240; place=Shed
       TS transfer-switch; connects_to=MP; run_length=2 m; place=House
       SUB panel; connects_to=TS; run_length=3 m; ac_in=120/240; place=House`,
    );
    expect(run(plan, 'GEN:output', 'SUB:feeder')).toMatchObject({ length: 53 });
    expect(run(plan, 'MP:feeder', 'SUB:feeder')).toMatchObject({ length: 5 });
    expect(run(plan, 'GEN:output', 'MP:feeder')).toBeUndefined();
  });

  it('whose place isn’t known doesn’t hide that the run is between buildings', () => {
    const plan = planOf(
      '',
      `SVC service; ac_in=120/240; place=House; connects_to=TS; run_length=30 m
       TS transfer-switch
       P panel; connects_to=TS; run_length=8 m; ac_in=120/240; place=Barn`,
    );
    expect(run(plan, 'SVC:service', 'P:feeder')).toMatchObject({ betweenBuildings: true, long: true });
  });
});

describe('system grounding', () => {
  const grounding = (rows: string, where: string, facts = ''): string =>
    one(planOf(facts, rows), where).grounding;

  it('is that of the service or panel that feeds it at the same voltage', () => {
    const rows = `SVC service; ac_in=480Y/277; system_grounding=impedance; place=Works
       MP panel; connects_to=SVC; run_length=9 m; ac_in=480Y/277; place=Works; protect=yes
       SUB panel; connects_to=MP; run_length=9 m; ac_in=480Y/277; place=Works; protect=yes
       SMALL panel; connects_to=MP; run_length=9 m; ac_in=208Y/120; place=Works; protect=yes`;
    expect(grounding(rows, 'SUB:feeder')).toBe('impedance');
    expect(grounding(rows, 'SMALL:feeder')).toBe('solid');
  });

  it('of a two-wire circuit is that of the delta that feeds it: 240 V to ground, not 120', () => {
    const plan = planOf(
      '',
      `SVC service; ac_in=240 delta; place=Works
       L load; connects_to=SVC; run_length=9 m; ac_in=240; place=Works; protect=yes`,
    );
    expect(one(plan, 'L:feeder').grounding).toBe('none');
    expect(one(plan, 'L:feeder').required).toMatchObject({ mcov: 276, listedFor: 'ungrounded' });
  });

  it.each([
    ['120/240', 'solid'],
    ['240', 'solid'],
    ['208', 'solid'],
    ['240/120 high-leg', 'solid'],
    ['240 delta', 'none'],
    ['480 delta', 'none'],
    ['480Y/277', 'solid'],
  ])('of %s is by default %s, printed', (system, expected) => {
    const plan = planOf('', `SVC service; ac_in=${system}`);
    expect(one(plan, 'SVC:service').grounding).toBe(expected);
    expect(defaultsOf(plan, 'system_grounding')).toEqual([expect.stringContaining(`taken as ${expected}`)]);
  });

  it('is none with iec IT, and that is no default', () => {
    const plan = planOf('basis=iec; earthing=IT', 'SVC service; ac_in=400Y/230');
    expect(one(plan, 'SVC:service').grounding).toBe('none');
    expect(defaultsOf(plan, 'system_grounding')).toEqual([]);
  });

  it.each(['solid', 'none', 'corner', 'impedance'])('stated as %s counts', (value) => {
    expect(grounding(`SVC service; ac_in=480 delta; system_grounding=${value}`, 'SVC:service')).toBe(value);
  });

  it.each([
    ['INV inverter-charger; ac_out=120/240', 1],
    ['GTI grid-tie-inverter; dc_inputs=1; max_dc_voltage=600; ac_out=240', 1],
    ['GEN generator; ac_out=120/240', 1],
    ['INV inverter-charger; ac_out=120/240; n_pe_link=yes', 0],
    ['SVC service; ac_in=120/240', 0],
    ['CC charge-controller; dc_inputs=1; max_dc_voltage=150', 0],
    ['P panel; ac_in=480 delta', 0],
  ])('a site without a service asks where the neutral is bonded: %s', (row, count) => {
    expect(items(planOf('', row), 'site/neutral-bond')).toHaveLength(count);
  });
});

describe('run length', () => {
  it('is missing where the ends are in different buildings, asked for once', () => {
    const plan = planOf(
      '',
      `SVC service; ac_in=120/240; place=House
       BARN panel; connects_to=SVC; ac_in=120/240; place=Barn`,
    );
    expect(items(plan, 'fact/run-length').map((i) => [i.line, i.severity])).toEqual([[3, 'missing']]);
  });

  it('is missing where one end is outdoors', () => {
    const plan = planOf(
      'lowest_temp=25 C',
      `A array; connects_to=CC; ${ARRAY}
       CC charge-controller; dc_inputs=1; place=Hut`,
    );
    expect(faults(plan)).toEqual(['fact/run-length']);
  });

  it('isn’t missing indoors in one building, nor where no rule asks', () => {
    const plan = planOf(
      '',
      `SVC service; ac_in=120/240; place=House
       MP panel; connects_to=SVC; ac_in=120/240; place=House
       SIG signal-line; connects_to=MP; place=Barn; outdoors=yes`,
    );
    expect(items(plan, 'fact/run-length')).toEqual([]);
  });

  it('isn’t asked for at a far end that holds nothing worth protecting', () => {
    const plan = planOf(
      '',
      `SVC service; ac_in=120/240; place=House
       BARN panel; connects_to=SVC; ac_in=120/240; place=Barn; worth_protecting=no`,
    );
    expect(items(plan, 'fact/run-length')).toEqual([]);
  });

  it('whose cell can’t be read is one item', () => {
    const plan = planOf(
      '',
      `SVC service; ac_in=120/240; place=House
       BARN panel; connects_to=SVC; ac_in=120/240; place=Barn; run_length=far`,
    );
    expect(plan.openItems.filter((i) => i.severity !== 'confirm').map((i) => [i.line, i.column])).toEqual([
      [3, 'run_length'],
    ]);
  });
});

describe('connections that make no sense', () => {
  it.each([
    ['array', 'panel'],
    ['load', 'array'],
    ['charge-controller', 'panel'],
  ])('%s to %s is one conflict that names both lines', (from, to) => {
    const plan = planOf(
      'lowest_temp=25 C',
      `X ${from}; connects_to=Y; dc_inputs=1; max_dc_voltage=150\nY ${to}`,
    );
    const [item, ...others] = items(plan, 'site/senseless-connection');
    expect(others).toEqual([]);
    expect(item?.message).toBe(
      `X (${from}, line 2) connects to Y (${to}, line 3), which such equipment doesn’t do.`,
    );
    expect(item).toMatchObject({ severity: 'conflict', line: 2, column: 'connects_to' });
    expect(items(plan, 'fact/connects-to').filter((i) => i.equipment === 'X')).toEqual([]);
  });

  it.each([
    ['array', 'battery'],
    ['service', 'service'],
    ['grid-tie-inverter', 'load'],
  ])('%s to %s is made by the trade and not planned: one conflict that names both lines', (from, to) => {
    const plan = planOf(
      'lowest_temp=25 C',
      `X ${from}; connects_to=Y; dc_inputs=1; max_dc_voltage=150\nY ${to}`,
    );
    const [item, ...others] = items(plan, 'site/unplanned-connection');
    expect(others).toEqual([]);
    expect(item?.message).toContain(`X (${from}, line 2) connects to Y (${to}, line 3)`);
    expect(item).toMatchObject({ severity: 'conflict', line: 2, column: 'connects_to' });
    expect(items(plan, 'site/senseless-connection')).toEqual([]);
  });

  it.each([
    ['battery', 'panel', /ac-battery/],
    ['wind-turbine', 'battery', /rectifier or controller/],
  ])('%s to %s is a conflict that says what to list instead', (from, to, instead) => {
    const plan = planOf('lowest_temp=25 C', `X ${from}; connects_to=Y\nY ${to}`);
    const [item, ...others] = items(plan, 'site/listed-otherwise');
    expect(others).toEqual([]);
    expect(item?.message).toContain(`X (${from}, line 2) connects straight to Y (${to}, line 3)`);
    expect(item?.hint).toMatch(instead);
    expect(item).toMatchObject({ severity: 'conflict', line: 2, column: 'connects_to' });
  });

  it('a circle is one conflict that names all lines', () => {
    const plan = planOf(
      '',
      `P1 panel; connects_to=P2; ac_in=120
       P2 panel; connects_to=P3; ac_in=120
       P3 panel; connects_to=P1; ac_in=120`,
    );
    expect(plan.openItems.filter((i) => i.severity !== 'confirm').map((i) => i.message)).toEqual([
      'Connections run in a circle: P1 (line 2) to P2, P2 (line 3) to P3, P3 (line 4) to P1; none of them is used until that is mended.',
    ]);
    expect(items(plan, 'place/feed-unknown')).toEqual([]);
  });

  it('a row that connects to itself, or to nothing on the list, is one conflict', () => {
    const plan = planOf('', 'P panel; connects_to=P; ac_in=120\nQ panel; connects_to=NOWHERE; ac_in=120');
    expect(faults(plan)).toEqual(['site/connection-to-itself', 'site/connection-to-nothing']);
    expect(items(plan, 'place/feed-unknown')).toEqual([]);
  });

  it('a converter whose source has a faulty connection isn’t said to have none', () => {
    const plan = planOf(
      'lowest_temp=25 C',
      `A array; connects_to=CC; ${ARRAY}
       CC charge-controller; dc_inputs=1; max_dc_voltage=250; connects_to=A`,
    );
    expect(faults(plan)).toEqual(['site/circle']);
    expect(items(plan, 'site/inputs-without-source')).toEqual([]);
  });

  it('two rows with one tag are one conflict that names both lines', () => {
    const plan = planOf('', 'L load; ac_in=120\nL load; ac_in=240');
    expect(plan.openItems.filter((i) => i.severity !== 'confirm').map((i) => i.message)).toEqual([
      'Two rows have the tag L: line 2 and line 3; the second is left out.',
    ]);
    expect(plan.site.equipments).toHaveLength(1);
  });

  it('a row without a kind is left out, and what names it is no second fault', () => {
    const plan = planOf('', `P panel; connects_to=S; ac_in=120\nS -; ac_in=120`);
    expect(faults(plan)).toHaveLength(1);
    expect(items(plan, 'place/feed-unknown')).toEqual([]);
  });

  it('a row on a line that a quote made unreadable is lost, and what names it is no second fault', () => {
    const loads = ['L1', 'L2', 'L3'].map((tag) => `J,${tag},load,MP,20 m,Barn,120,`).join('\n');
    const heading = 'job,tag,kind,connects_to,run_length,place,ac_in,description';
    const plan = planOfCsv(`${heading}\nJ,MP,panel,,,House,120/240,"so\n${loads}\n`);
    expect(plan.submittable).toBe(false);
    expect(plan.openItems.filter((i) => i.severity !== 'confirm').map((i) => [i.code, i.line])).toEqual([
      ['file/quote-open', 2],
    ]);
    // A tag that stands nowhere still is one.
    const elsewhere = planOfCsv(
      `${heading}\nJ,MP,panel,,,House,120/240,"so\nJ,L1,load,XX,20 m,Barn,120,\nJ,L2,load,,,Barn,120,\n`,
    );
    expect(items(elsewhere, 'site/connection-to-nothing').map((i) => i.equipment)).toEqual(['L1']);
  });
});

describe('the order of rows', () => {
  it('changes nothing but line numbers', () => {
    const csv = listOf(
      'lowest_temp=-10 C; occupancy=dwelling; basis=nec-2023',
      `SVC service; ac_in=120/240; place=House
       MP panel; connects_to=SVC; run_length=2 m; ac_in=120/240; place=House
       TS transfer-switch; connects_to=MP; run_length=1 m; place=House
       GEN generator; connects_to=TS; run_length=40 m; ac_out=120/240; place=Shed
       CC charge-controller; quantity=2; dc_inputs=1; place=Hut; connects_to=BAT
       ARR array; quantity=2; connects_to=CC; run_length=50 m; ${ARRAY}
       BAT battery; battery_voltage=48; battery_chemistry=lfp; place=Hut`,
    );
    const [heading = '', first = '', ...rest] = csv.trimEnd().split('\n');
    const turned = [heading, ...rest.toReversed(), first].join('\n');
    const plain = (text: string): string =>
      JSON.stringify(planOfCsv(text))
        .replace(/"line":\d+/g, '"line":0')
        .replace(/line \d+/g, 'line 0');
    expect(plain(turned)).toBe(plain(csv));
  });
});
