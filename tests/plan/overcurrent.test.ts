import { describe, expect, it, test } from 'vitest';
import type { EnglishPlan } from '../in-english.js';
import { at, catalogueOf, defaultsOf, items, one, partLine, planOf, type PlanOptions } from './plan-of.js';

// Rules.md 2.10 on whole sites; parts and sites are own cases. STOCK allows 30 A and takes 14 to 2 AWG Cu.

const WIDE = '14 to 2 AWG Cu';
/** Parts for 120 V, 48 V and 600 V DC with what the catalogue says of device and leads. */
function catalogue(says: string): PlanOptions {
  return {
    catalogue: catalogueOf(
      partLine('OAK', `channels=2; mcov_ac=150; up=600; ${says}`),
      partLine('REED', `channels=2; mcov_dc=75; up=400; ${says}`),
      partLine('RUSH', `channels=2; mcov_dc=600; up=2000; ${says}`),
    ),
  };
}

/** `either: 2 poles, 30 A, 240 V, breaks 10000 A` of each port. */
function devices(plan: EnglishPlan, where: string): readonly string[] {
  return at(plan, where).map((p) =>
    p.overcurrent
      .map((o) => {
        const or = (figure: number | null): string => (figure === null ? '-' : String(figure));
        const kind = `${o.straight ? ' straight' : ''}${o.dc ? ' dc' : ''}`;
        return `${o.port}: ${o.device}, ${or(o.poles)} poles, ${or(o.amps)} A, ${or(o.volts)} V${kind}, breaks ${or(o.interrupting)} A`;
      })
      .join(' | '),
  );
}
const why = (plan: EnglishPlan, where: string): string => one(plan, where).overcurrent[0]?.because ?? '';
const lead = (plan: EnglishPlan, where: string): string => {
  const { smallestLead, smallestGroundLead } = one(plan, where).figures ?? {};
  return `${smallestLead}, ground ${smallestGroundLead}`;
};

describe('AC', () => {
  it('has a device for the voltage between lines and the fault current', () => {
    const plan = planOf('', 'S service; ac_in=120/240; fault_current=22 kA; rating_a=200 A');
    expect(devices(plan, 'S:service')).toEqual(['service: either, 2 poles, 30 A, 240 V, breaks 22000 A']);
    expect(why(plan, 'S:service')).toMatch(/own device of 200 A is larger than the 30 A/);
    expect(lead(plan, 'S:service')).toBe('10 AWG Cu, ground 10 AWG Cu');
  });

  it('has none of its own where the circuit’s will do, and that one sizes the leads', () => {
    const plan = planOf(
      '',
      `S service; ac_in=120/240; fault_current=10 kA
       P panel; ac_in=120/240; connects_to=S; run_length=60 ft; rating_a=20 A`,
    );
    expect(devices(plan, 'P:feeder')).toEqual(['feeder: none, - poles, 30 A, - V, breaks - A']);
    expect(why(plan, 'P:feeder')).toMatch(/own device of 20 A is no larger than the 30 A .* it will do/);
    expect(lead(plan, 'P:feeder')).toBe('12 AWG Cu, ground 12 AWG Cu');
    // The service states no rating: a device of its own.
    expect(devices(plan, 'S:service')).toEqual(['service: either, 2 poles, 30 A, 240 V, breaks 10000 A']);
  });

  it('has one for each housing of three phases on two channels', () => {
    const plan = planOf(
      '',
      'S service; ac_in=208Y/120',
      catalogue('overcurrent_a=20; overcurrent_device=breaker'),
    );
    expect(devices(plan, 'S:service')).toEqual([
      'service: breaker, 2 poles, 20 A, 208 V, breaks - A',
      'service: breaker, 2 poles, 20 A, 208 V, breaks - A',
    ]);
  });

  it('has a straight rating on a high leg, and two poles on a corner with L2 straight through', () => {
    const high = planOf('', 'S service; ac_in=240/120 high-leg');
    expect(devices(high, 'S:service')).toEqual([
      'service: either, 3 poles, 30 A, 240 V straight, breaks - A',
    ]);
    const part = planOf(
      '',
      'S service; ac_in=240/120 high-leg\n P panel; connects_to=S; ac_in=120/240; run_length=60 ft',
    );
    expect(devices(part, 'P:feeder')).toEqual(['feeder: either, 2 poles, 30 A, 240 V, breaks - A']);
    const corner = planOf('', 'S service; ac_in=480 delta; system_grounding=corner');
    expect(devices(corner, 'S:service')).toEqual([
      'service: either, 2 poles, 30 A, 480 V straight, breaks - A',
    ]);
    expect(one(corner, 'S:service').wiring.notes.join(' ')).toMatch(
      /L2 is grounded: it goes straight.*240\.22.*one and three phases/,
    );
  });

  it('ahead of the disconnect has none but what the part is listed with', () => {
    const plan = planOf('', 'S service; ac_in=120/240; ahead_of_disconnect=yes; rating_a=20 A');
    expect(devices(plan, 'S:service')).toEqual(['service: none, - poles, - A, - V, breaks - A']);
    expect(why(plan, 'S:service')).toMatch(/ahead of the first disconnect none .*230\.82\(4\), from memory/);
    expect(lead(plan, 'S:service')).toBe('14 AWG Cu, ground 14 AWG Cu');
  });

  it('two channels on one line part behind the device', () => {
    const plan = planOf('', 'S service; ac_in=120; n_pe_link=yes', catalogue('overcurrent_a=20'));
    expect(one(plan, 'S:service').channels.map((c) => c.conductor)).toEqual(['L1', 'L1 (doubled)']);
    expect(devices(plan, 'S:service')).toEqual(['service: either, 1 poles, 20 A, 120 V, breaks - A']);
    expect(one(plan, 'S:service').wiring.notes.join(' ')).toMatch(/Two channels are on L1: .*110\.14\(A\)/);
    const two = planOf('', 'S service; ac_in=120/240', catalogue('overcurrent_a=20'));
    expect(one(two, 'S:service').wiring.notes.join(' ')).not.toMatch(/110\.14\(A\)/);
  });

  it('a housing with N alone has none where N is grounded, and one where it floats', () => {
    const ones = {
      catalogue: catalogueOf(partLine('SEDGE', 'channels=1; mcov_ac=320; up=900; listed_for=ungrounded')),
    };
    const of = (earthing: string): readonly string[] =>
      devices(planOf(`basis=iec; earthing=${earthing}`, 'L load; ac_in=230; protect=yes', ones), 'L:feeder');
    expect(of('TN')).toEqual([
      'feeder: either, 1 poles, 30 A, 230 V, breaks - A',
      'feeder: none, - poles, - A, - V, breaks - A',
    ]);
    const high = {
      catalogue: catalogueOf(partLine('SEDGE', 'channels=1; mcov_ac=640; up=2000; listed_for=ungrounded')),
    };
    const floats = planOf('basis=iec; earthing=IT', 'L load; ac_in=230; protect=yes', high);
    expect(devices(floats, 'L:feeder')).toEqual([
      'feeder: either, 1 poles, 30 A, 400 V straight, breaks - A',
      'feeder: either, 1 poles, 30 A, 400 V straight, breaks - A',
    ]);
  });

  it('each port of a shared housing has its own, by its own fault current', () => {
    const plan = planOf(
      '',
      `S service; ac_in=120; fault_current=10 kA
       I inverter-charger; connects_to=S; ac_in=120; ac_out=120; rating_a=50 A
       B battery; connects_to=I; battery_voltage=48; battery_chemistry=lfp`,
      catalogue('overcurrent_a=20'),
    );
    expect(at(plan, 'I:ac-in').map((p) => p.ports.map((o) => o.port))).toEqual([['ac-in', 'ac-out']]);
    expect(devices(plan, 'I:ac-in')).toEqual([
      'ac-in: either, 1 poles, 20 A, 120 V, breaks 10000 A | ac-out: either, 1 poles, 20 A, 120 V, breaks 10000 A',
    ]);
    expect(one(plan, 'I:ac-in').wiring.notes.join(' ')).toMatch(/a device for each port/);
  });

  it('isn’t known without a part, and says what it must be all the same', () => {
    const plan = planOf('', 'S service; ac_in=120/240; fault_current=10 kA', { catalogue: null });
    expect(devices(plan, 'S:service')).toEqual(['service: unknown, 2 poles, - A, 240 V, breaks 10000 A']);
    expect(one(plan, 'S:service').figures).toBeNull();
  });

  it('asks once a part whose size the catalogue doesn’t state, with its words', () => {
    const rows = 'S service; ac_in=120/240\n P panel; connects_to=S; ac_in=120/240; run_length=60 ft';
    const plan = planOf('', rows, catalogue('overcurrent_a=; overcurrent=a breaker of twenty'));
    expect(items(plan, 'choose/overcurrent-size').map((i) => i.message)).toEqual([
      expect.stringMatching(/no overcurrent_a of OAK.*"a breaker of twenty".*P feeder and S service/),
    ]);
    expect(devices(plan, 'S:service')).toEqual(['service: either, 2 poles, - A, 240 V, breaks - A']);
    expect(items(planOf('', rows, catalogue('overcurrent_a=20')), 'choose/overcurrent-size')).toEqual([]);
    const none = planOf('', rows, catalogue('overcurrent_a=; overcurrent_device=none'));
    expect(items(none, 'choose/overcurrent-size')).toEqual([]);
  });

  it('asks where the circuit’s own device is smaller than the part’s least', () => {
    const of = (rating: string): number =>
      items(
        planOf(
          '',
          `S service; ac_in=120/240; rating_a=${rating} A`,
          catalogue('overcurrent_a=30; overcurrent_min_a=20'),
        ),
        'choose/overcurrent-below-least',
      ).length;
    expect([of('15'), of('20'), of('100')]).toEqual([1, 0, 0]);
  });
});

describe('the title of its calculation', () => {
  const titles = (plan: EnglishPlan, where: string): readonly string[] =>
    one(plan, where)
      .calculations.filter(({ rule }) => rule.startsWith('wire/overcurrent'))
      .map(({ title }) => title);
  const service = 'S service; ac_in=120/240; rating_a=400 A';
  const array =
    'A array; connects_to=I/1; voc_stc=40; isc_stc=10; modules_in_series=10; run_length=10 ft; strings_in_parallel';
  const inverter =
    'I grid-tie-inverter; dc_inputs=1; ac_out=240; max_dc_voltage=600; isolated=yes; connects_to=S\nS service; ac_in=120/240';

  test.each([
    [
      'the largest that the part allows',
      service,
      'overcurrent_a=30',
      'S:service',
      'Largest overcurrent device that the part allows at service',
    ],
    ['the circuit’s own', service, 'overcurrent_a=', 'S:service', 'The circuit’s own device at service'],
    [
      'no device',
      `${array}=1\n${inverter}`,
      'overcurrent_a=30',
      'I:dc-in-1',
      'Least ampacity of the leads at dc-in-1, without a device',
    ],
    ['a sum', `${array}=1\n${inverter}`, 'overcurrent_a=', 'I:dc-in-1', 'All that can flow through dc-in-1'],
    [
      'a device for arrays',
      `${array}=3\n${inverter}`,
      'overcurrent_a=30',
      'I:dc-in-1',
      'Largest overcurrent device that the part allows at dc-in-1',
    ],
  ])('says what its last figure is of: %s', (_, rows, says, where, title) => {
    expect(titles(planOf('lowest_temp=0', rows, catalogue(says)), where)).toEqual([title]);
  });
});

describe('arrays', () => {
  const array = (tag: string, to: string, more = ''): string =>
    `${tag} array; connects_to=${to}; voc_stc=40; isc_stc=10; modules_in_series=10; strings_in_parallel=1; run_length=10 ft; ${more}`;
  const inverter = (more = ''): string =>
    `I grid-tie-inverter; ac_out=240; max_dc_voltage=600; isolated=yes; connects_to=S; ${more}\nS service; ac_in=120/240`;
  const sum = (plan: EnglishPlan, where: string): number | undefined =>
    one(plan, where)
      .calculations.flatMap((c) => c.steps)
      .find((s) => s.symbol === 'Isum')?.value;

  it('have none where all that can flow is no more than the part allows, and leads that carry 1.25 of it', () => {
    const plan = planOf(
      'lowest_temp=0',
      `${array('A', 'I/1', 'strings_in_parallel=2')}\n${inverter('dc_inputs=1')}`,
    );
    // 2 x 1.25 x 10 A, and nothing back from a grid-tie inverter without a battery.
    expect(sum(plan, 'I:dc-in-1')).toBe(25);
    expect(devices(plan, 'I:dc-in-1')).toEqual(['dc-in-1: none, - poles, 30 A, - V dc, breaks - A']);
    // 31.25 A: 8 AWG (Table 310.16, value from memory).
    expect(lead(plan, 'I:dc-in-1')).toBe('8 AWG Cu, ground 8 AWG Cu');
    expect(one(plan, 'I:dc-in-1').wiring.leadGauge).toBe('8 AWG');
    expect(defaultsOf(plan, 'backfeed_a')).toHaveLength(1);
  });

  it('have one where more can flow, for DC, both poles and the cold voltage', () => {
    const plan = planOf(
      'lowest_temp=0',
      `${array('A', 'I/1', 'strings_in_parallel=3')}\n${inverter('dc_inputs=1')}`,
    );
    expect(sum(plan, 'I:dc-in-1')).toBe(37.5);
    // 400 V x 1.10 (NEC Table 690.7(A)).
    expect(devices(plan, 'I:dc-in-1')).toEqual(['dc-in-1: either, 2 poles, 30 A, 440 V dc, breaks 37.5 A']);
    expect(lead(plan, 'I:dc-in-1')).toBe('10 AWG Cu, ground 10 AWG Cu');
  });

  test.each([
    ['what it sends back counts', 'dc_inputs=1; backfeed_a=5 A', 17.5],
    ['nothing is sent back', 'dc_inputs=1; backfeed_a=0 A', 12.5],
  ])('%s, and is no default', (_, more, amperes) => {
    const plan = planOf('lowest_temp=0', `${array('A', 'I/1')}\n${inverter(more)}`);
    expect(sum(plan, 'I:dc-in-1')).toBe(amperes);
    expect(defaultsOf(plan, 'backfeed_a')).toEqual([]);
  });

  it('aren’t known where another converter doesn’t say what it sends back', () => {
    const rows = `${array('A', 'C', 'modules_in_series=3')}\nC charge-controller; max_dc_voltage=150; connects_to=B\nB battery; battery_voltage=48; battery_chemistry=lfp`;
    const plan = planOf('lowest_temp=0', rows);
    expect(devices(plan, 'C:dc-in-1')).toEqual(['dc-in-1: either, 2 poles, 30 A, 132 V dc, breaks - A']);
    expect(why(plan, 'C:dc-in-1')).toMatch(/isn’t known, so that it may be more than the 30 A/);
    const stated = planOf('lowest_temp=0', rows.replace('max_dc', 'backfeed_a=3 A; max_dc'));
    expect(sum(stated, 'C:dc-in-1')).toBe(15.5);
  });

  it('with a battery behind it a grid-tie inverter may send back', () => {
    const rows = `${array('A', 'I/1')}\n${inverter('dc_inputs=1')}\nB battery; battery_voltage=48; battery_chemistry=lfp; connects_to=I`;
    const plan = planOf('lowest_temp=0', rows);
    expect(one(plan, 'I:dc-in-1').overcurrent).toMatchObject([{ device: 'either', interrupting: null }]);
    expect(defaultsOf(plan, 'backfeed_a')).toEqual([]);
  });

  it('add up at all that is joined: behind a combiner, ahead of it and at the input', () => {
    const plan = planOf(
      'lowest_temp=0',
      `${array('A1', 'K', 'outdoors=yes; run_length=200 ft')}
       ${array('A2', 'K', 'outdoors=yes; run_length=200 ft')}
       K combiner; connects_to=I/1; run_length=200 ft
       ${inverter('dc_inputs=2')}
       ${array('A3', 'I/2')}`,
    );
    // 2 x 12.5 A: a string of one row can be fed back by the other.
    for (const where of ['A1:output', 'A2:output', 'K:output', 'I:dc-in-1'])
      expect([where, sum(plan, where)]).toEqual([where, 25]);
    expect(sum(plan, 'I:dc-in-2')).toBe(12.5);
  });

  it('one source on two inputs is fed back by both', () => {
    const plan = planOf(
      'lowest_temp=0',
      `${array('A', 'I/1+2')}\n${inverter('dc_inputs=2; backfeed_a=4 A')}`,
    );
    expect(sum(plan, 'I:dc-in-1')).toBe(20.5);
    expect(sum(plan, 'I:dc-in-2')).toBe(20.5);
  });

  it('the largest of several counts where which one feeds an input isn’t stated', () => {
    const plan = planOf(
      'lowest_temp=0',
      `${array('A1', 'I')}\n${array('A2', 'I', 'strings_in_parallel=2')}\n${inverter('dc_inputs=2')}`,
    );
    expect([sum(plan, 'I:dc-in-1'), sum(plan, 'I:dc-in-2')]).toEqual([25, 25]);
  });

  it.each([
    ['no current of the module', array('A', 'I/1').replace('isc_stc=10;', '')],
    ['no number of strings', array('A', 'I/1').replace('strings_in_parallel=1;', '')],
    ['no source on the list', ''],
    [
      'a combiner of which nobody says what feeds it',
      `${array('A', 'I/1')}\nK combiner; connects_to=I/1; run_length=5 ft`,
    ],
  ])('aren’t known: %s', (_, row) => {
    const plan = planOf('lowest_temp=0', `${row}\n${inverter('dc_inputs=1')}`);
    expect(one(plan, 'I:dc-in-1').overcurrent).toMatchObject([{ device: 'either', interrupting: null }]);
    expect(sum(plan, 'I:dc-in-1')).toBeUndefined();
  });

  it('names the sum alone where many are joined', () => {
    const rows = Array.from({ length: 14 }, (_, i) => array(`A${i + 1}`, 'K')).join('\n');
    const plan = planOf(
      'lowest_temp=0',
      `${rows}\nK combiner; connects_to=I/1; run_length=5 ft\n${inverter('dc_inputs=1')}`,
    );
    const steps =
      one(plan, 'I:dc-in-1').calculations.find((c) => /^Largest overcurrent device/.test(c.title))?.steps ??
      [];
    expect(steps.map((s) => `${s.symbol} ${s.value}`)).toEqual(['Isum 175', 'Idevice 30']);
    expect(steps[0]?.says).toMatch(/from 14 arrays and back from 1 DC inputs/);
  });
});

describe('batteries, DC loads, turbines, control circuits', () => {
  const battery =
    'B battery; battery_voltage=48; battery_chemistry=lfp; fault_current=5 kA; place=H / b; connects_to=C; run_length=60 ft';
  it('a battery bus has its own, in the pole that isn’t grounded', () => {
    const plan = planOf('', `${battery}\nC charge-controller; place=H / c; rating_a=20 A`);
    expect(devices(plan, 'B:battery')).toEqual(['battery: either, 1 poles, 30 A, 58.4 V dc, breaks 5000 A']);
    const floats = planOf('', `${battery}; dc_grounding=floating\nC charge-controller; place=H / c`);
    expect(devices(floats, 'B:battery')).toEqual([
      'battery: either, 2 poles, 30 A, 58.4 V dc, breaks 5000 A',
    ]);
  });

  it('a housing with its grounded pole alone has none', () => {
    const plan = planOf('', `${battery}\nC charge-controller; place=H / c`, {
      catalogue: catalogueOf(partLine('SEDGE', 'channels=1; mcov_dc=75; up=400')),
    });
    expect(devices(plan, 'B:battery')).toEqual([
      'battery: either, 1 poles, 30 A, 58.4 V dc, breaks 5000 A',
      'battery: none, - poles, - A, - V dc, breaks - A',
    ]);
    expect(at(plan, 'B:battery')[1]?.overcurrent[0]?.because).toMatch(/grounded conductor alone.*240\.22/);
  });

  it('a DC load on a mast has its own', () => {
    const plan = planOf(
      '',
      `${battery.replace('connects_to=C; run_length=60 ft', '')}\nR dc-load; connects_to=B; run_length=150 ft; outdoors=yes; place=mast`,
    );
    expect(devices(plan, 'R:dc-in')).toEqual(['dc-in: either, 1 poles, 30 A, 58.4 V dc, breaks 5000 A']);
  });

  it('a turbine’s is for its maker to say, and an item asks once a place', () => {
    const rows =
      'W wind-turbine; connects_to=C; output=three-phase; open_circuit_voltage=100; run_length=300 ft\nC charge-controller';
    const plan = planOf('', rows, {
      catalogue: catalogueOf(partLine('OAK', 'channels=2; mcov_ac=150; up=600')),
    });
    expect(devices(plan, 'W:output')).toEqual([
      'output: unknown, - poles, 30 A, - V, breaks - A',
      'output: unknown, - poles, 30 A, - V, breaks - A',
    ]);
    expect(items(plan, 'choose/overcurrent-turbine').map((i) => i.equipment)).toEqual(['C', 'W']);
    expect(lead(plan, 'W:output')).toBe('10 AWG Cu, ground 10 AWG Cu');
  });

  it('a turbine of direct current is one all the same, and beside an array the device is that of the array', () => {
    const turbine = 'W wind-turbine; connects_to=C/1; output=dc; open_circuit_voltage=100; run_length=300 ft';
    const controller = 'C charge-controller; max_dc_voltage=150; backfeed_a=0 A';
    const alone = planOf('', `${turbine}\n${controller}`);
    for (const where of ['W:output', 'C:dc-in-1'])
      expect(one(alone, where).overcurrent).toMatchObject([{ device: 'unknown', amps: 30, dc: true }]);
    const array =
      'A array; connects_to=C/1; voc_stc=40; isc_stc=10; modules_in_series=2; strings_in_parallel=1; run_length=10 ft';
    const both = planOf('lowest_temp=0', `${turbine}\n${array}\n${controller}`);
    expect(one(both, 'C:dc-in-1').overcurrent).toMatchObject([
      { device: 'either', poles: 2, interrupting: null },
    ]);
    const arrayAlone = planOf('lowest_temp=0', `${array}\n${controller}`);
    expect(one(arrayAlone, 'C:dc-in-1').overcurrent).toMatchObject([{ device: 'none' }]);
  });

  it('a control circuit’s is its supply’s limit, and no device sizes its leads', () => {
    const rows = 'K control-circuit; control_voltage=24 V dc; outdoors=yes; run_length=150 ft';
    const plan = planOf('', rows);
    expect(devices(plan, 'K:terminals')).toEqual([
      'terminals: unknown, - poles, 30 A, 32.4 V dc, breaks - A',
    ]);
    expect(items(plan, 'choose/overcurrent-control')).toHaveLength(1);
    expect(lead(plan, 'K:terminals')).toBe('14 AWG Cu, ground 14 AWG Cu');
    expect(items(planOf('', rows, { catalogue: null }), 'choose/overcurrent-control')).toEqual([]);
  });
});

describe('the smallest lead', () => {
  const service = 'S service; ac_in=120/240';
  it('is said for each metal that the terminals are for', () => {
    const both = planOf(
      '',
      service,
      catalogue('overcurrent_a=20; wire_range=14 to 6 AWG Cu| 12 to 6 AWG Al'),
    );
    expect(lead(both, 'S:service')).toBe('12 AWG Cu; 10 AWG Al, ground 12 AWG Cu; 10 AWG Al');
    const one = planOf('', service, catalogue('overcurrent_a=20; wire_range=12 to 6 AWG Al'));
    expect(lead(one, 'S:service')).toBe('10 AWG Al, ground 10 AWG Al');
    const narrow = planOf(
      '',
      service,
      catalogue('overcurrent_a=40; wire_range=14 to 10 AWG Cu| 12 to 4 AWG Al'),
    );
    expect(lead(narrow, 'S:service')).toBe('6 AWG Al, ground 6 AWG Al');
  });

  it('rejects a part whose terminals don’t take it, unless the circuit’s own device is small', () => {
    const says = catalogue('overcurrent_a=60; wire_range=14 to 10 AWG Cu');
    const plan = planOf('', service, says);
    expect(items(plan, 'choose/none-fits')[0]?.message).toMatch(
      /OAK.*line lead of at least 6 AWG Cu, and its terminals take no more than 10 AWG Cu/,
    );
    expect(one(planOf('', `${service}; rating_a=30 A`, says), 'S:service').part).toBe('OAK');
    const byHand = planOf('', `${service}; protector=OAK`, says);
    expect(items(byHand, 'choose/by-hand-fails')).toHaveLength(1);
    expect(lead(byHand, 'S:service')).toBe('6 AWG Cu, ground 6 AWG Cu');
  });

  it('is what the voltage of the leads is worked out for, where it is thicker than lead_gauge', () => {
    const volts = (says: string): number | null | undefined =>
      one(planOf('', service, catalogue(says)), 'S:service').figures?.leadVoltage;
    const gauge = (says: string): string =>
      one(planOf('', service, catalogue(says)), 'S:service').wiring.leadGauge;
    const six = volts(`lead_gauge=6 AWG; overcurrent_a=15; wire_range=${WIDE}`);
    expect(volts(`lead_gauge=12 AWG; overcurrent_a=60; wire_range=${WIDE}`)).toBe(six);
    expect(gauge(`lead_gauge=12 AWG; overcurrent_a=60; wire_range=${WIDE}`)).toBe('6 AWG');
    expect(gauge(`lead_gauge=6 AWG; overcurrent_a=30; wire_range=${WIDE}`)).toBe('6 AWG');
    expect(gauge(`overcurrent_a=30; wire_range=${WIDE}`)).toBe('10 AWG');
    expect(volts(`overcurrent_a=30; wire_range=${WIDE}`)).toBeGreaterThan(six ?? Infinity);
    // Of both metals the copper one counts.
    expect(gauge('overcurrent_a=40; wire_range=14 to 4 AWG Cu| 12 to 4 AWG Al')).toBe('8 AWG');
  });

  it('is that of iec 534.4.10 by class (value from memory), line and ground', () => {
    const of = (says: string, facts = ''): string =>
      lead(
        planOf(
          `basis=iec; earthing=TN; ${facts}`,
          'S service; ac_in=230',
          catalogue(`mcov_ac=275; up=900; ${says}`),
        ),
        'S:service',
      );
    expect(of('overcurrent_a=63; wire_range=1.5 to 16 mm2 Cu')).toBe('2.5 mm2 Cu, ground 6 mm2 Cu');
    expect(of('overcurrent_a=63; iec_class=T1; iimp_ka=25; wire_range=1.5 to 16 mm2 Cu')).toBe(
      '6 mm2 Cu, ground 16 mm2 Cu',
    );
    // No table at hand says what they bear, so that is asked for and told, once a part and size.
    const asked = (rows: string, says: string): readonly string[] =>
      items(
        planOf('basis=iec; earthing=TN', rows, catalogue(`mcov_ac=275; up=900; ${says}`)),
        'choose/leads-by-class',
      ).map(({ severity, message }) => `${severity}: ${message}`);
    const rows =
      'S service; ac_in=230; place=H\nL load; ac_in=230; protect=yes; place=H; connects_to=S; run_length=2 m; rating_a=16 A';
    expect(asked(rows, 'overcurrent_a=63; wire_range=1.5 to 16 mm2 Cu')).toEqual([
      expect.stringMatching(
        /^confirm: The smallest leads of \S+ at L feeder and S service \(line 2\.5 mm2 Cu, ground 6 mm2 Cu\) are those of 534\.4\.10 \(value from memory\).* whether they bear 63 A,/,
      ),
    ]);
    expect(asked(rows, 'overcurrent_a=63; lead_by_instructions=yes')).toEqual([]);
    expect(asked(rows, 'overcurrent_device=none')).toEqual([]);
    expect(asked('S service; ac_in=230; place=H', 'overcurrent_a=')).toEqual([]);
    const narrow = planOf(
      'basis=iec; earthing=TN',
      'S service; ac_in=230',
      catalogue('mcov_ac=275; up=900; wire_range=1.5 to 4 mm2 Cu'),
    );
    expect(one(narrow, 'S:service').part).toBeNull();
  });

  it('is shown step by step for iec, ground and line by themselves', () => {
    const of = catalogue('mcov_ac=275; up=900; overcurrent_a=63; wire_range=4 to 16 mm2 Cu');
    const plan = planOf('basis=iec; earthing=TN', 'S service; ac_in=230', of);
    const steps = one(plan, 'S:service').calculations.find(
      (c) => c.title === 'Smallest leads of copper',
    )?.steps;
    expect(steps?.map((s) => `${s.symbol} ${s.value}: ${s.says} [${s.sure}]`)).toEqual([
      'Scode 2.5: Least that is allowed of the line lead [memory]',
      'Scode 6: Least that is allowed of the ground lead [memory]',
      'Sterm 4: Smallest wire that the terminals of the part take [stated]',
      'Sground 6: Smallest ground lead: 6 mm2 Cu [computed]',
      'Sline 4: Smallest line lead: 4 mm2 Cu [computed]',
    ]);
  });

  it('is shown step by step', () => {
    const plan = planOf('', service, catalogue(`overcurrent_a=20; wire_range=${WIDE}`));
    const steps = one(plan, 'S:service').calculations.find(
      (c) => c.title === 'Smallest leads of copper',
    )?.steps;
    expect(steps?.map((s) => `${s.symbol} ${s.value}: ${s.says} [${s.source}]`)).toEqual([
      'Scode 2.081: Least that is allowed of either lead [NEC 242.28 (285.26 in 2017)]',
      'Sterm 2.081: Smallest wire that the terminals of the part take [catalogue catalogue.csv, line 2]',
      'Sdev 3.309: Least behind a device of 20 A: 12 AWG [NEC 240.4(D); above 10 AWG Table 310.16 at 60 °C and 240.4(B), value from memory]',
      'Slead 3.309: Smallest lead, line and ground: 12 AWG Cu [NEC 242.28 (285.26 in 2017)]',
    ]);
  });
});
