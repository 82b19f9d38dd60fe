import { describe, expect, it } from 'vitest';
import { items, one, planOf } from './plan-of.js';

// Section 2.4: what can feed a fault at a port. Currents are our own round figures; that sources which can feed together add, and
// that of those which exclude each other the highest counts, is common practice, no source.

const AC = 'ac_in=120/240; place=House';
const OUT = 'ac_out=120/240; place=House';

/** A known figure, or what is known with the tags that aren't; `null`: nothing is. */
function currents(rows: string, ...ports: string[]): unknown[] {
  const plan = planOf('', rows);
  return ports.map((port) => {
    const protector = one(plan, port);
    const open = items(plan, 'choose/fault-current-unknown').find((i) => {
      const { equipment, ports: names } = (
        i as unknown as { values: { at: { equipment: string; ports: string[] } } }
      ).values.at;
      return names.some((name) => `${equipment}:${name}` === port);
    });
    const { sccr, sccrAtLeast } = protector.required;
    if (!open) return sccr;
    // What isn't known wholly is no figure of the plan.
    expect(sccr).toBeNull();
    const unknown = [
      /fault current of (.*?) isn’t stated/.exec(open.message)?.[1],
      /what (.*?) can pass on/.exec(open.message)?.[1],
    ]
      .filter((tags) => tags !== undefined)
      .join(' + ');
    return sccrAtLeast === null ? null : [sccrAtLeast, unknown];
  });
}

describe('behind a transfer switch', () => {
  const rows = (service: string, generator: string): string =>
    `SVC service; ${AC}; ${service}
     TS transfer-switch; connects_to=SVC; place=House
     GEN generator; connects_to=TS; ${OUT}; ${generator}; protect=yes
     P panel; connects_to=TS; ${AC}; protect=yes
     SUB panel; connects_to=P; ${AC}; protect=yes`;
  const KA = 'fault_current=10 kA';

  it('the highest of its feeders counts, and the other is shown', () => {
    expect(currents(rows(KA, 'fault_current=2 kA'), 'P:feeder', 'SUB:feeder')).toEqual([10_000, 10_000]);
    expect(currents(rows(KA, 'fault_current=12 kA'), 'P:feeder', 'SUB:feeder')).toEqual([12_000, 12_000]);
    const plan = planOf('', rows(KA, 'fault_current=2 kA'));
    const steps = one(plan, 'P:feeder').calculations.find((c) => c.rule === 'rate/fault-current')?.steps;
    expect(steps?.map((s) => [s.says, s.value])).toEqual([
      ['Fault current from SVC', 10_000],
      ['Fault current from GEN', 2_000],
      ['Most that feeds a fault here at one time: SVC; GEN only in place of that', 10_000],
    ]);
  });

  it('one feeder that isn’t known: not known, whichever it is', () => {
    expect(currents(rows(KA, ''), 'P:feeder', 'SUB:feeder')).toEqual([
      [10_000, 'GEN'],
      [10_000, 'GEN'],
    ]);
    expect(currents(rows('', 'fault_current=2 kA'), 'P:feeder')).toEqual([[2_000, 'SVC']]);
    expect(currents(rows('', ''), 'P:feeder')).toEqual([null]);
  });

  it('a generator sees what it gives, not the supply that it stands in for', () => {
    expect(currents(rows(KA, 'fault_current=2 kA'), 'GEN:output', 'SVC:service')).toEqual([2_000, 10_000]);
    expect(currents(rows(KA, ''), 'GEN:output')).toEqual([null]);
  });

  it('an AC battery behind it adds to whichever feeds, and at the generator', () => {
    const battery = `\nACB ac-battery; connects_to=P; ${OUT}; fault_current=200 A; protect=yes`;
    expect(
      currents(
        `${rows(KA, 'fault_current=2 kA')}${battery}`,
        'P:feeder',
        'SUB:feeder',
        'GEN:output',
        'ACB:ac-out',
      ),
    ).toEqual([10_200, 10_200, 2_200, 10_200]);
  });

  it('of two switches in a row the highest of three', () => {
    const three = `SVC service; ${AC}; ${KA}
      T1 transfer-switch; connects_to=SVC| T2; place=House
      T2 transfer-switch; place=House
      G1 generator; connects_to=T2; ${OUT}; fault_current=2 kA
      G2 generator; connects_to=T2; ${OUT}; fault_current=3 kA; protect=yes
      P panel; connects_to=T1; ${AC}; protect=yes`;
    expect(currents(three, 'P:feeder', 'G2:output')).toEqual([10_000, 3_000]);
    expect(currents(three.replace('fault_current=2 kA', ''), 'P:feeder')).toEqual([[10_000, 'G1']]);
  });
});

describe('sources that can feed together', () => {
  const panel = (more: string): string =>
    `SVC service; ${AC}; fault_current=10 kA\nP panel; connects_to=SVC; ${AC}; protect=yes\n${more}`;

  it('AC batteries add, each once; without a figure of theirs it isn’t known', () => {
    const two = (second: string): string =>
      panel(`B1 ac-battery; connects_to=P; ${OUT}; fault_current=200 A; protect=yes
        B2 ac-battery; connects_to=P; ${OUT}; protect=yes${second}`);
    const ports = ['P:feeder', 'B1:ac-out', 'B2:ac-out', 'SVC:service'] as const;
    expect(currents(two('; fault_current=300 A'), ...ports)).toEqual([10_500, 10_500, 10_500, 10_000]);
    // At its own port its own share is left out.
    expect(currents(two(''), ...ports)).toEqual([[10_200, 'B2'], [10_200, 'B2'], 10_200, 10_000]);
  });

  it('grid-tie inverters and microinverters count at their own ports alone', () => {
    const rows =
      panel(`GT grid-tie-inverter; connects_to=P; ac_out=240; dc_inputs=1; max_dc_voltage=600; place=House; protect=yes; fault_current=60 A
      MB ac-module-branch; connects_to=P; ac_out=240; place=House; protect=yes; fault_current=30 A
      NO grid-tie-inverter; connects_to=P; ac_out=240; dc_inputs=1; max_dc_voltage=600; place=House; protect=yes`);
    expect(currents(rows, 'P:feeder', 'GT:ac-out', 'MB:output', 'NO:ac-out')).toEqual([
      10_000, 10_060, 10_030, 10_000,
    ]);
  });

  it('one that is joined to nothing: not known', () => {
    const alone = 'MB ac-module-branch; ac_out=240; place=House; protect=yes; fault_current=30 A';
    expect(currents(alone, 'MB:output')).toEqual([null]);
  });

  it('what a panel states takes in all ahead of it; what stands behind it feeds back', () => {
    const rows = `SVC service; ${AC}; fault_current=10 kA
      MP panel; connects_to=SVC; ${AC}; protect=yes
      SP panel; connects_to=MP; ${AC}; fault_current=5 kA; protect=yes
      B ac-battery; connects_to=SP; ${OUT}; fault_current=200 A; protect=yes
      L load; connects_to=SP; ${AC}; protect=yes`;
    expect(currents(rows, 'MP:feeder', 'SP:feeder', 'B:ac-out', 'L:feeder')).toEqual([
      10_200, 5_000, 5_200, 5_200,
    ]);
  });

  it('generators that run in parallel add, also at each other', () => {
    const rows = `G1 generator; ${OUT}; parallel=yes; fault_current=2 kA; connects_to=P; protect=yes
      G2 generator; ${OUT}; parallel=yes; fault_current=3 kA; connects_to=P
      P panel; ${AC}; protect=yes`;
    expect(currents(rows, 'P:feeder', 'G1:output')).toEqual([5_000, 5_000]);
    expect(currents(rows.replace('fault_current=3 kA; ', ''), 'P:feeder', 'G1:output')).toEqual([
      [2_000, 'G2'],
      [2_000, 'G2'],
    ]);
  });

  it('one that reaches a port over two paths counts once', () => {
    const rows = `SVC service; ${AC}; fault_current=10 kA
      MP panel; connects_to=SVC; ${AC}
      A inverter-charger; connects_to=MP; ac_in=120; ac_out=120; place=House; fault_current=100 A
      B inverter-charger; connects_to=MP; ac_in=120; ac_out=120; place=House; fault_current=100 A
      OUT panel; connects_to=A| B; ${AC}; protect=yes`;
    expect(currents(rows, 'OUT:feeder', 'MP:feeder')).toEqual([10_200, 10_000]);
  });
});

describe('an inverter', () => {
  const rows = (inverter: string, supply = 'fault_current=10 kA'): string =>
    `SVC service; ${AC}; ${supply}
     INV inverter-charger; ${inverter}; place=House
     OUT panel; connects_to=INV; ${AC}; protect=yes`;
  const BOTH = 'connects_to=SVC; ac_in=120/240; ac_out=120/240';
  const ports = ['INV:ac-in', 'INV:ac-out', 'OUT:feeder'] as const;

  it('sees what it gives and what its AC in is fed by, at both ports', () => {
    expect(currents(rows(`${BOTH}; fault_current=100 A`), ...ports, 'SVC:service')).toEqual([
      10_100, 10_100, 10_100, 10_000,
    ]);
  });

  it('without a figure passes on its AC in', () => {
    expect(currents(rows(BOTH), ...ports)).toEqual([10_000, 10_000, 10_000]);
    expect(currents(rows(`${BOTH}; fault_current=100 A`, ''), ...ports)).toEqual([
      [100, 'SVC'],
      [100, 'SVC'],
      [100, 'SVC'],
    ]);
  });

  it('with an AC in that nothing on the list feeds: not known, also where nobody says that there is one', () => {
    const own = 'ac_out=120/240; fault_current=100 A';
    expect(currents(rows(`${own}; ac_in=120/240`), ...ports)).toEqual([
      [100, 'INV'],
      [100, 'INV'],
      [100, 'INV'],
    ]);
    expect(currents(rows(own), 'INV:ac-out', 'OUT:feeder')).toEqual([
      [100, 'INV'],
      [100, 'INV'],
    ]);
    const plan = planOf('', rows(own));
    expect(
      items(plan, 'choose/fault-current-unknown')
        .filter((i) => i.equipment === 'OUT')
        .map((i) => [i.who, i.hint]),
    ).toEqual([['designer', 'List what feeds it, or say that its AC in is unused.']]);
    expect(currents(rows(`${own}; ac_in=unused`), 'INV:ac-out', 'OUT:feeder')).toEqual([100, 100]);
    expect(currents(rows('ac_out=120/240; ac_in=unused'), 'INV:ac-out', 'OUT:feeder')).toEqual([null, null]);
  });

  it('of two AC inputs passes on the one that drives more', () => {
    const two = (generator: string): string => `SVC service; ${AC}; fault_current=10 kA
      GEN generator; connects_to=INV; ${OUT}; ${generator}
      INV inverter-charger; connects_to=SVC; ac_in=120/240; ac_in_2=120/240; ac_out=120/240; place=House
      OUT panel; connects_to=INV; ${AC}; protect=yes`;
    expect(currents(two('fault_current=2 kA'), 'OUT:feeder', 'INV:ac-in', 'INV:ac-in-2')).toEqual([
      10_000, 10_000, 2_000,
    ]);
    expect(currents(two('fault_current=12 kA'), 'OUT:feeder')).toEqual([12_000]);
    expect(currents(two(''), 'OUT:feeder')).toEqual([[10_000, 'GEN']]);
  });

  it('stacked inverters that nothing feeds add', () => {
    const stack = (second: string): string =>
      `A inverter-charger; ac_in=unused; ac_out=120; place=House; fault_current=100 A
       B inverter-charger; ac_in=unused; ac_out=120; place=House; ${second}
       OUT panel; connects_to=A| B; ${AC}; protect=yes`;
    expect(currents(stack('fault_current=150 A'), 'OUT:feeder', 'A:ac-out')).toEqual([250, 250]);
    expect(currents(stack(''), 'OUT:feeder')).toEqual([[100, 'B']]);
  });
});

describe('a transformer', () => {
  const rows = (transformer: string, more = ''): string =>
    `SVC service; ac_in=480Y/277; place=House; fault_current=20 kA
     XF transformer; connects_to=SVC; ac_in=480 delta; ac_out=208Y/120; place=House; ${transformer}
     P panel; connects_to=XF; ac_in=208Y/120; place=House; protect=yes${more}`;

  it('begins a figure of its own: stated, or its bound, else not known', () => {
    expect(currents(rows('isolated=yes; fault_current=4 kA'), 'P:feeder')).toEqual([4_000]);
    // 30 kVA x 1000 / (sqrt 3 x 208 V x 3 %) = 2775.7 A (IEC 60076-1, value from memory; computed).
    expect(currents(rows('isolated=yes; kva=30; impedance_percent=3'), 'P:feeder')).toEqual([2775.72]);
    expect(currents(rows('isolated=yes'), 'P:feeder')).toEqual([null]);
  });

  it('with what feeds behind it adding to that', () => {
    const battery = '\nB ac-battery; connects_to=P; ac_out=208Y/120; place=House; fault_current=200 A';
    expect(currents(rows('isolated=yes; fault_current=4 kA', battery), 'P:feeder')).toEqual([4_200]);
    expect(currents(rows('isolated=yes', battery), 'P:feeder')).toEqual([[200, 'XF']]);
  });

  it('without windings apart passes it through, both ways', () => {
    expect(currents(rows('isolated=no'), 'P:feeder')).toEqual([20_000]);
    expect(currents(rows('isolated=no; fault_current=4 kA'), 'P:feeder')).toEqual([4_000]);
  });
});

describe('a panel that nothing on the list feeds', () => {
  it('is asked about, beside what is joined to it', () => {
    const rows = `MP panel; ${AC}
      SP panel; connects_to=MP; ${AC}; protect=yes
      G generator; connects_to=SP; ${OUT}; parallel=yes; fault_current=2 kA`;
    expect(currents(rows, 'SP:feeder')).toEqual([[2_000, 'MP']]);
  });
});

describe('DC: at a port that arrays reach', () => {
  // 1.25 x Isc x strings (NEC 690.8(A), value from memory): 1.25 x 10 A = 12.5 A a string.
  const ARRAY = 'run_length=50 m; voc_stc=40; modules_in_series=3; isc_stc=10';
  const dc = (rows: string, ...ports: string[]): unknown[] => {
    const plan = planOf('lowest_temp=25 C', rows);
    return ports.map((port) => one(plan, port).required.sccr);
  };

  it('all arrays on the circuit add, at each array too', () => {
    const rows = `CC charge-controller; dc_inputs=1; place=Hut
      C combiner; connects_to=CC; place=Roof; run_length=50 m
      A1 array; connects_to=C; ${ARRAY}; strings_in_parallel=1
      A2 array; connects_to=C; ${ARRAY}; strings_in_parallel=2`;
    expect(dc(rows, 'CC:dc-in-1', 'C:output', 'A1:output', 'A2:output')).toEqual([37.5, 37.5, 37.5, 37.5]);
    expect(
      dc(rows.replace('isc_stc=10; strings_in_parallel=2', 'strings_in_parallel=2'), 'A1:output'),
    ).toEqual([null]);
  });

  it('arrays on inputs of their own don’t reach each other', () => {
    const rows = `CC charge-controller; dc_inputs=2; place=Hut; backfeed_a=5
      A1 array; connects_to=CC/1; ${ARRAY}; strings_in_parallel=1
      A2 array; connects_to=CC/2; ${ARRAY}; strings_in_parallel=2`;
    expect(dc(rows, 'CC:dc-in-1', 'CC:dc-in-2', 'A1:output', 'A2:output')).toEqual([17.5, 30, 17.5, 30]);
  });

  it('what the converter sends back adds, twice where one array joins two inputs', () => {
    const rows = (back: string): string => `CC charge-controller; dc_inputs=2; place=Hut${back}
      A1 array; connects_to=CC/1+2; ${ARRAY}; strings_in_parallel=1`;
    const ports = ['CC:dc-in-1', 'CC:dc-in-2', 'A1:output'] as const;
    expect(dc(rows(''), ...ports)).toEqual([12.5, 12.5, 12.5]);
    expect(dc(rows('; backfeed_a=5'), ...ports)).toEqual([22.5, 22.5, 22.5]);
  });

  it('an array that reaches an input through another that joins both', () => {
    const rows = `CC charge-controller; dc_inputs=2; place=Hut
      A1 array; connects_to=CC/1+2; ${ARRAY}; strings_in_parallel=1
      A2 array; connects_to=CC/1; ${ARRAY}; strings_in_parallel=2`;
    expect(dc(rows, 'CC:dc-in-1', 'CC:dc-in-2', 'A2:output')).toEqual([37.5, 37.5, 37.5]);
  });

  it('where the list doesn’t say which input is whose: at an input the largest, at an array its own', () => {
    const rows = `CC charge-controller; dc_inputs=2; place=Hut; backfeed_a=5
      A1 array; connects_to=CC; ${ARRAY}; strings_in_parallel=1
      A2 array; connects_to=CC; ${ARRAY}; strings_in_parallel=2`;
    expect(dc(rows, 'CC:dc-in-1', 'CC:dc-in-2', 'A1:output', 'A2:output')).toEqual([30, 30, 17.5, 30]);
  });
});
