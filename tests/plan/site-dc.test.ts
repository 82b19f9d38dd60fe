import { describe, expect, it } from 'vitest';
import { at, because, conductorsAt, faults, items, lightsOf, one, planOf, rulesAt } from './plan-of.js';

// rules.md section 0 and 5, equipment on a DC bus, turbines and batteries, pump drives and AC batteries. Cases are our own.

type Plan = ReturnType<typeof planOf>;
const OTHER = 'occupancy=other; lowest_temp=-10 C';
const bank = (volts: string, more = ''): string =>
  `B battery; battery_voltage=${volts}; battery_chemistry=lead-acid; place=Hut; fault_current=3 kA${more}`;
const CONTROLLER = 'C charge-controller; dc_inputs=1; max_dc_voltage=150; place=Hut';

describe('DC equipment has the voltage and the grounding of its bus', () => {
  it.each([
    ['a DC load on a battery', 'X dc-load; connects_to=B', ''],
    ['a DC panel on a battery', 'X dc-panel; connects_to=B', ''],
    [
      'a DC load on a DC panel',
      'X dc-load; connects_to=D',
      'D dc-panel; connects_to=B; run_length=1 m; place=Hut',
    ],
    [
      'a DC load on a controller’s load side',
      'X dc-load; connects_to=C',
      `${CONTROLLER}; connects_to=B; run_length=1 m`,
    ],
  ])('%s', (_, row, more) => {
    const plan = planOf(
      OTHER,
      `${bank('48', '; dc_grounding=positive')}\n${row}; run_length=2 m; place=Hut; protect=yes\n${more}`,
    );
    const own = one(plan, 'X:dc-in');
    // 24 cells x 2.45 V + 0.005 V/C x 35 C a cell: check-values.md section 8 (values from memory).
    expect(own.required.mcov).toBe(
      one(planOf(OTHER, `${bank('48')}; protect=yes`), 'B:battery').required.mcov,
    );
    expect(own).toMatchObject({ grounding: 'positive grounded', required: { current: 'dc', sccr: 3000 } });
    expect(conductorsAt(plan, 'X:dc-in')).toEqual(['positive', 'negative']);
    expect(lightsOf(plan, 'X:dc-in', 'positive')[0]).toBe('always: dark');
    expect(faults(plan)).toEqual([]);
  });

  it('a radio on a mast far away: both ends', () => {
    const rows = (length: string, out: string): Plan =>
      planOf(
        OTHER,
        `${bank('48')}\nR dc-load; connects_to=B; run_length=${length}; place=Hut / mast; outdoors=${out}`,
      );
    const far = rows('40 m', 'yes');
    expect(rulesAt(far, 'R:dc-in')).toEqual(['place/long-run']);
    expect(rulesAt(far, 'B:battery')).toEqual(['place/battery', 'place/long-run']);
    const near = rows('4 m', 'yes');
    expect(rulesAt(near, 'R:dc-in')).toEqual([]);
    expect(rulesAt(near, 'B:battery')).toEqual(['place/battery']);
  });

  it('a cable that leaves the room asks at the DC panel that the load hangs on', () => {
    const rows = (place: string): Plan =>
      planOf(
        OTHER,
        `${bank('48')}\nD dc-panel; connects_to=B; run_length=1 m; place=Hut
         R dc-load; connects_to=D; run_length=4 m; place=${place}`,
      );
    expect(rulesAt(rows('Hut / loft'), 'D:dc-in')).toEqual(['place/battery']);
    expect(rulesAt(rows('Hut / loft'), 'R:dc-in')).toEqual([]);
    expect(rulesAt(rows('Hut'), 'D:dc-in')).toEqual([]);
  });

  it('a diversion load is exempt unless protect is yes', () => {
    const rows = (more: string): Plan =>
      planOf(OTHER, `${bank('24')}\nX diversion-load; connects_to=B; run_length=60 m; place=Shed${more}`);
    expect(at(rows(''), 'X:dc-in')).toEqual([]);
    expect(because(rows(''), 'X:dc-in')).not.toEqual([]);
    expect(rulesAt(rows('; protect=yes'), 'X:dc-in')).toContain('place/asked');
  });

  it.each(['B', 'C', 'W'])('a diversion load hangs on a battery, a controller or a turbine: %s', (on) => {
    const plan = planOf(
      OTHER,
      `${bank('24')}\n${CONTROLLER}; connects_to=B; run_length=1 m
       W wind-turbine; output=three-phase; open_circuit_voltage=90; connects_to=C; run_length=9 m; place=Hut
       A-1 diversion-load; connects_to=${on}; run_length=2 m; place=Hut`,
    );
    expect(faults(plan)).toEqual([]);
    expect(plan.site.runs.some((r) => r.to.equipment === 'A-1' && r.from.equipment === on)).toBe(true);
  });

  it('one that a DC turbine names before its controller doesn’t hide the turbine’s grounding', () => {
    const plan = planOf(
      OTHER,
      `${bank('24')}\n${CONTROLLER}; connects_to=B; run_length=1 m
       W wind-turbine; output=dc; open_circuit_voltage=90; dc_grounding=positive; connects_to=A-1|C; run_length=9 m; place=Hut
       A-1 diversion-load; place=Hut`,
    );
    expect(one(plan, 'C:dc-in-1').grounding).toBe('positive grounded');
    expect(one(plan, 'W:output').grounding).toBe('positive grounded');
  });

  it('a DC load on a bus without a battery: the battery is missing', () => {
    const plan = planOf(OTHER, 'X dc-load; battery_voltage=24; protect=yes; place=Hut');
    expect(faults(plan)).toEqual(['rate/battery-not-listed']);
  });
});

describe('nominal voltages on one bus', () => {
  it.each([
    ['48', '51.2', true],
    ['12', '12.8', true],
    ['24', '25.6', true],
    ['36', '38.4', true],
    ['48', '48', true],
    ['24', '48', false],
    ['36', '48', false],
    ['60', '48', false],
  ])('%s V and %s V', (battery, load, agree) => {
    for (const kind of ['dc-load', 'dc-panel', 'inverter-charger; ac_out=120; n_pe_link=yes']) {
      const plan = planOf(
        OTHER,
        `${bank(battery)}\nX ${kind}; battery_voltage=${load}; connects_to=B; run_length=2 m; place=Hut`,
      );
      expect(items(plan, 'site/dc-nominals-differ').map((i) => i.severity)).toEqual(
        agree ? [] : ['conflict'],
      );
    }
  });

  it('on two buses may differ', () => {
    const plan = planOf(
      OTHER,
      `${bank('24')}\n${CONTROLLER}; connects_to=B; run_length=1 m
       C2 charge-controller; dc_inputs=1; max_dc_voltage=150; connects_to=B2; run_length=1 m; place=Hut
       B2 battery; battery_voltage=48; battery_chemistry=lfp; place=Hut; fault_current=3 kA`,
    );
    expect(faults(plan)).toEqual([]);
  });
});

describe('grounding of batteries and of the arrays on them', () => {
  const rows = (battery: string, array = ''): Plan =>
    planOf(
      OTHER,
      `${battery}; protect=yes\n${CONTROLLER}; connects_to=B; run_length=1 m
       A array; voc_stc=40; modules_in_series=3; isc_stc=10; strings_in_parallel=1; connects_to=C; run_length=5 m${array}`,
    );

  it.each([
    ['48', '', 'negative grounded', 'negative grounded'],
    ['48', '; dc_grounding=positive', 'positive grounded', 'positive grounded'],
    ['48', '; dc_grounding=floating', 'floating', 'floating'],
    ['60', '; cells=30', 'negative grounded', 'negative grounded'],
    ['72', '; cells=36', 'floating', 'floating'],
  ])('a battery of %s V%s, and an array on its controller', (volts, cells, battery, array) => {
    const plan = rows(bank(volts, cells));
    expect(one(plan, 'B:battery').grounding).toBe(battery);
    expect(one(plan, 'C:dc-in-1').grounding).toBe(array);
  });

  it('what the array’s row states goes before', () => {
    expect(one(rows(bank('48'), '; dc_grounding=floating'), 'C:dc-in-1').grounding).toBe('floating');
  });

  it('a bank of 400 V isn’t called dark: its poles float, either may show', () => {
    const plan = planOf(
      OTHER,
      `${bank('400', '; cells=200; protect=yes')}; connects_to=I; run_length=2 m
       I inverter-charger; ac_out=120/240; n_pe_link=yes; place=Hut`,
    );
    for (const pole of ['positive', 'negative'])
      expect(lightsOf(plan, 'B:battery', pole)).toEqual(['always: either']);
    expect(faults(plan)).toEqual([]);
  });
});

describe('what stands straight on what', () => {
  it.each([
    [
      'wind-turbine; output=dc; open_circuit_voltage=90',
      'battery; battery_voltage=24',
      'site/listed-otherwise',
    ],
    [
      'hydro-turbine; output=dc; open_circuit_voltage=90',
      'battery; battery_voltage=24',
      'site/listed-otherwise',
    ],
    ['battery; battery_voltage=48', 'panel; ac_in=120/240', 'site/listed-otherwise'],
    ['battery; battery_voltage=48', 'service; ac_in=120/240', 'site/listed-otherwise'],
    ['array', 'battery; battery_voltage=24', 'site/unplanned-connection'],
    [
      'grid-tie-inverter; ac_out=240; dc_inputs=1; max_dc_voltage=600',
      'load; ac_in=240',
      'site/unplanned-connection',
    ],
    ['array', 'load; ac_in=120', 'site/senseless-connection'],
  ])('%s on %s: %s', (row, named, code) => {
    const plan = planOf(OTHER, `X ${row}; connects_to=Y; run_length=2 m; place=Hut\nY ${named}; place=Hut`);
    const connection = plan.openItems.filter((i) => i.code.startsWith('site/') && i.severity === 'conflict');
    expect(connection.map((i) => [i.code, i.equipment, i.column])).toEqual([[code, 'X', 'connects_to']]);
  });
});

describe('a pump drive', () => {
  const ARRAY =
    'A array; voc_stc=40; modules_in_series=8; isc_stc=10; strings_in_parallel=1; connects_to=X; run_length=40 m';
  const UTILITY = 'S service; ac_in=208Y/120; place=Hut; fault_current=5 kA';
  const MOTOR = 'M load; connects_to=X; run_length=420 ft; place=Bore';

  it.each([
    ['an array', ARRAY, 'X pump-drive; max_dc_voltage=800; ac_out=208', ['dc-in-1', 'ac-out']],
    [
      'the utility',
      UTILITY,
      'X pump-drive; ac_in=208; ac_out=208; connects_to=S; run_length=2 m',
      ['ac-in', 'ac-out'],
    ],
    [
      'both',
      `${ARRAY}\n${UTILITY}`,
      'X pump-drive; max_dc_voltage=800; ac_in=208; ac_out=208; connects_to=S; run_length=2 m',
      ['dc-in-1', 'ac-in', 'ac-out'],
    ],
  ])('fed by %s: a port for each, none at its output nor at the motor', (_, supply, drive, ports) => {
    const plan = planOf(OTHER, `${supply}\n${drive}; place=Hut\n${MOTOR}`);
    expect(plan.site.equipments.find((e) => e.tag === 'X')?.ports).toEqual(ports);
    for (const where of ['X:ac-out', 'M:feeder']) {
      expect(at(plan, where)).toEqual([]);
      expect(
        because(plan, where)
          .map((n) => n.because)
          .join(),
      ).toMatch(/pulses/);
    }
    expect(items(plan, 'place/drive-output').map((i) => [i.severity, i.equipment])).toEqual([
      ['confirm', 'X'],
    ]);
    expect(items(plan, 'site/neutral-bond')).toEqual([]);
    expect(items(plan, 'fact/run-length')).toEqual([]);
    expect(faults(plan)).toEqual([]);
    if (ports.includes('dc-in-1')) {
      expect(rulesAt(plan, 'X:dc-in-1')).toEqual(['place/dc-input', 'place/long-run']);
      expect(one(plan, 'X:dc-in-1').grounding).toBe('floating');
    }
    if (ports.includes('ac-in')) expect(at(plan, 'X:ac-in')).toEqual([]);
  });

  it('its ac-in at the end of a long run has one', () => {
    const plan = planOf(
      OTHER,
      `${UTILITY.replace('Hut', 'House')}\nX pump-drive; ac_in=208; ac_out=208; connects_to=S; run_length=80 m; place=Hut`,
    );
    expect(rulesAt(plan, 'X:ac-in')).toEqual(['place/long-run']);
  });

  it('fed by nothing: what feeds it is missing; protect yes at its motor is a conflict', () => {
    expect(items(planOf(OTHER, 'X pump-drive; ac_out=208; place=Hut'), 'fact/drive-supply')).toHaveLength(1);
    const asked = planOf(
      OTHER,
      `${ARRAY}\nX pump-drive; max_dc_voltage=800; ac_out=208; place=Hut\n${MOTOR}; protect=yes`,
    );
    expect(faults(asked)).toEqual(['place/asked-at-motor']);
  });
});

describe('an AC battery', () => {
  const UTILITY = 'S service; ac_in=120/240; place=House; fault_current=5 kA';
  it('has one port, ac-out, protected as an inverter-charger’s', () => {
    const plan = planOf(
      OTHER,
      `${UTILITY}\nP panel; connects_to=S; run_length=2 m; place=House
       X ac-battery; ac_out=240; connects_to=P; run_length=3 m; place=House`,
    );
    expect(plan.site.equipments.find((e) => e.tag === 'X')?.ports).toEqual(['ac-out']);
    expect(rulesAt(plan, 'X:ac-out')).toEqual(['place/inverter-ac']);
    expect(plan.site.runs.map((r) => `${r.from.equipment} > ${r.to.equipment}`)).toContain('P > X');
    expect(faults(plan)).toEqual([]);
  });

  it('alone on a panel feeds it', () => {
    const plan = planOf(
      OTHER,
      `P panel; place=House; n_pe_link=yes; protect=yes
       X ac-battery; ac_out=120/240; connects_to=P; run_length=3 m; place=House`,
    );
    expect(plan.site.runs.map((r) => `${r.from.equipment} > ${r.to.equipment}`)).toEqual(['X > P']);
    expect(one(plan, 'P:feeder').system).toBe('120/240');
  });
});
