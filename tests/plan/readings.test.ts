import { describe, expect, it } from 'vitest';
import { bandsAt, catalogueOf, one, partLine, planOf } from './plan-of.js';

// What a meter should show before anybody connects (rules.md section 3), from the list to the plan.
const ARRAY = 'open_circuit_voltage=100; isc_stc=9; strings_in_parallel=1; protect=yes; connects_to=X';
const CONTROLLER = 'X charge-controller; max_dc_voltage=250; connects_to=B';
const BATTERY = 'B battery; battery_voltage=48; battery_chemistry=lfp; protect=yes';
const INVERTER = 'X grid-tie-inverter; max_dc_voltage=600';

const read = (where: string, ...rows: readonly string[]): readonly string[] =>
  bandsAt(planOf('occupancy=other; lowest_temp=-10 C', rows.join('\n')), where);

describe('an array', () => {
  const STRING = 'A array; voc_stc=40; modules_in_series=10; protect=yes; connects_to=X';

  it('on an inverter floats: 0.8 x Voc(STC) to its cold voltage pole to pole, and no low figure of a pole', () => {
    // 10 x 40 V x 0.8 (common practice) and x 1.14 (NEC Table 690.7(A), -6 to -10 C).
    expect(read('A:output', STRING, INVERTER)).toEqual([
      'positive>negative +: 320 to 456',
      'positive>ground +: - to 456',
      'negative>ground -: - to 456',
    ]);
  });

  it.each([
    ['negative by default', '', ['positive>ground +: 320 to 456', 'negative>ground: 0 to 5']],
    [
      'positive as stated',
      '; dc_grounding=positive',
      ['positive>ground: 0 to 5', 'negative>ground -: 320 to 456'],
    ],
  ])('on a charge controller, %s', (_, facts, poles) => {
    const rows = [`${STRING}${facts}`, 'X charge-controller; max_dc_voltage=600; connects_to=B', BATTERY];
    expect(read('A:output', ...rows)).toEqual(['positive>negative +: 320 to 456', ...poles]);
  });

  it('is stopped at what its converter bears, whatever the part bears', () => {
    const catalogue = catalogueOf(partLine('D', 'channels=2; mcov_dc=1000; up=1000'));
    const rows = [STRING, 'X charge-controller; max_dc_voltage=400; connects_to=B', BATTERY].join('\n');
    const plan = planOf('lowest_temp=-10 C', rows, { catalogue });
    expect(bandsAt(plan, 'A:output')[0]).toBe('positive>negative +: 320 to 400');
    expect(one(plan, 'A:output').wiring.measuring.bands[0]?.above).toBe(
      'What leads to X above its figures: more than X bears.',
    );
  });

  it('whose modules aren’t stated has no low figure', () => {
    expect(read('A:output', `A array; ${ARRAY}`, INVERTER)[0]).toBe('positive>negative +: - to 100');
  });

  it('behind a rapid-shutdown box is written down and due, on the converter’s side', () => {
    const rows = [
      'A array; voc_stc=40; modules_in_series=10; protect=yes; connects_to=R; run_length=9 m',
      'R disconnect; rapid_shutdown=yes; connects_to=X; run_length=1 m',
      'X grid-tie-inverter; max_dc_voltage=600; ac_out=240',
    ].join('\n');
    const plan = planOf('lowest_temp=-10 C; occupancy=other', rows);
    const due = (where: string): unknown => one(plan, where).wiring.measuring.bands[0]?.due;
    expect(due('X:dc-in-1')).toMatch(/rapid-shutdown box that is open: write it down/);
    expect(due('A:output')).toBe('In less sun: write it down, and measure again in full sun.');
  });

  it('of which no source is on the list has no figure: what the converter bears says nothing of the string', () => {
    expect(read('X:dc-in-1', 'X charge-controller; max_dc_voltage=250')[0]).toBe(
      'positive>negative +: - to -',
    );
  });

  describe('whose voltage is only a draft', () => {
    const highs = (
      facts: string,
      array: string,
      converter = INVERTER,
      where = 'A:output',
    ): readonly (number | null)[] => {
      const plan = planOf(`occupancy=other; ${facts}`, [array, converter].join('\n'));
      return one(plan, where).wiring.measuring.bands.map(({ high }) => high);
    };
    // 10 x 40 V x 1.25: the coldest row of NEC Table 690.7(A).
    it.each<[string, string, string, string, number | null]>([
      ['no temperature, a converter that bears more', '', STRING, INVERTER, 500],
      [
        'no temperature, a converter that bears less',
        '',
        STRING,
        'X grid-tie-inverter; max_dc_voltage=450',
        450,
      ],
      ['no temperature, nothing said of the converter', '', STRING, 'X grid-tie-inverter', 500],
      ['a temperature that nobody can read', 'lowest_temp=cold', STRING, INVERTER, 500],
      ['a coefficient asked for', 'lowest_temp=-10 C', `${STRING}; technology=thin film`, INVERTER, 500],
      [
        'a module that isn’t known',
        'lowest_temp=-10 C',
        'A array; modules_in_series=10; protect=yes; connects_to=X',
        INVERTER,
        null,
      ],
      [
        'modules that aren’t counted',
        'lowest_temp=-10 C',
        'A array; voc_stc=40; protect=yes; connects_to=X',
        INVERTER,
        null,
      ],
      ['optimizers', '', `${STRING}; optimizers=yes`, INVERTER, null],
      [
        'its voltage stated at what the converter bears',
        '',
        'A array; open_circuit_voltage=600; protect=yes; connects_to=X',
        INVERTER,
        600,
      ],
    ])('%s', (_, facts, array, converter, high) => {
      const found = highs(facts, array, converter);
      expect(found).toEqual(found.map(() => high));
    });

    it('two strings on one input: the higher of the drafts, and none where one isn’t known', () => {
      const other = (facts: string): string => `C array; ${facts}; connects_to=X/1`;
      const both = (facts: string): readonly (number | null)[] =>
        highs('', STRING.replace('=X', '=X/1'), `${INVERTER}; protect=yes\n${other(facts)}`, 'X:dc-in-1');
      expect(both('voc_stc=40; modules_in_series=9')[0]).toBe(500);
      expect(both('open_circuit_voltage=520')[0]).toBe(520);
      expect(both('modules_in_series=9')[0]).toBeNull();
    });
  });

  it('that isn’t isolated from its inverter is read without what that lifts it by, since the inverter is off', () => {
    // 277 V line to N: the inverter's link lifts the poles to 415 V (derived); the string gives 114 V.
    const rows = [
      'A array; voc_stc=10; modules_in_series=10; protect=yes; connects_to=X',
      'X grid-tie-inverter; max_dc_voltage=600; ac_out=480Y/277',
    ].join('\n');
    const plan = planOf('lowest_temp=-10 C; occupancy=other', rows);
    expect(one(plan, 'A:output').required.mcov).toBeGreaterThan(400);
    expect(bandsAt(plan, 'A:output')[0]).toBe('positive>negative +: 80 to 114');
  });

  it('beside a turbine on one input has no low figure', () => {
    const rows = [
      'A array; voc_stc=40; modules_in_series=2; connects_to=X/1',
      'H hydro-turbine; output=dc; open_circuit_voltage=90 V; connects_to=X/1',
      CONTROLLER,
      BATTERY,
    ];
    expect(read('X:dc-in-1', ...rows)[0]).toBe('positive>negative +: - to 91.2');
  });
});

describe('a battery', () => {
  it.each([
    ['lfp', 48, '40 to 58.4'],
    ['lead-acid', 24, '21 to 31.7'],
    ['nicd', 12, '10 to 17'],
  ])('%s, %d V: %s V (cells: common practice, no source)', (chemistry, nominal, band) => {
    const battery = `B battery; battery_voltage=${nominal}; battery_chemistry=${chemistry}; protect=yes`;
    const found = read('B:battery', 'X charge-controller; max_dc_voltage=250; connects_to=B', battery);
    expect(found[0]).toBe(`positive>negative +: ${band}`);
    expect(found[2]).toBe('negative>ground: 0 to 5');
  });

  it('of an unknown chemistry has no figures', () => {
    const found = read('B:battery', CONTROLLER, 'B battery; battery_voltage=48; protect=yes');
    expect(found[0]).toBe('positive>negative +: - to -');
  });

  it('on a bus with another has the low figure of the lower', () => {
    const two = 'C battery; battery_chemistry=lfp; cells=15; connects_to=B';
    expect(read('B:battery', CONTROLLER, BATTERY, two)[0]).toBe('positive>negative +: 37.5 to 58.4');
  });
});

describe('an AC place', () => {
  it('a service, a panel and a load of one system: the low of the service, and that of utilization', () => {
    const rows = `S service; ac_in=120/240; place=House
      P panel; ac_in=120/240; connects_to=S; run_length=5 m; protect=yes
      L load; ac_in=120; connects_to=P; run_length=5 m; protect=yes`;
    const plan = planOf('', rows);
    expect(bandsAt(plan, 'S:service')).toEqual([
      'L1>ground: 110 to 127',
      'L2>ground: 110 to 127',
      'N>ground: 0 to 5',
    ]);
    expect(bandsAt(plan, 'P:feeder')[0]).toBe('L1>ground: 110 to 127');
    expect(bandsAt(plan, 'L:feeder')[0]).toBe('L1>ground: 104 to 127');
  });

  it('behind a transfer switch: on the utility, and on the generator alone', () => {
    const rows = `S service; ac_in=120/240; place=House
      G generator; ac_out=120/240; connects_to=T; run_length=5 m; place=House
      T transfer-switch; connects_to=S; run_length=1 m; place=House
      P panel; ac_in=120/240; connects_to=T; run_length=5 m; protect=yes; place=House`;
    const plan = planOf('', rows);
    expect(bandsAt(plan, 'P:feeder').filter((band) => band.startsWith('L1'))).toEqual([
      'L1>ground: 110 to 127',
      'L1>ground: 108 to 132',
    ]);
  });

  it('behind an inverter-charger that passes the utility through: on that, and on the inverter alone', () => {
    const site = (acIn: string, acOut: string): readonly string[] =>
      bandsAt(
        planOf(
          '',
          `S service; ac_in=120/240; place=House
           I inverter-charger; ac_in=${acIn}; ac_out=${acOut}; connects_to=S; run_length=5 m; place=House
           P panel; ac_in=120; connects_to=I; run_length=5 m; protect=yes; place=House`,
        ),
        'P:feeder',
      ).filter((band) => band.startsWith('L1'));
    expect(site('120/240', '120/240')).toEqual(['L1>ground: 110 to 127', 'L1>ground: 108 to 132']);
    // Another system isn't passed through.
    expect(site('120/240', '120')).toEqual(['L1>ground: 108 to 132']);
  });

  it('a transformer’s own side as a service, what feeds it as one that uses it', () => {
    const rows = `S service; ac_in=480Y/277; place=Mill
      T transformer; ac_in=480 delta; ac_out=208Y/120; isolated=yes; connects_to=S; run_length=5 m; protect=yes; place=Mill`;
    const plan = planOf('occupancy=other', rows);
    expect(bandsAt(plan, 'T:ac-out')[0]).toBe('L1>ground: 110 to 127');
  });

  it('TT: line to N, and N to PE; the most from N to PE is a setting', () => {
    const plan = (settings: object): readonly string[] =>
      bandsAt(
        planOf('basis=iec; earthing=TT', 'S service; ac_in=230; place=House', { settings }),
        'S:service',
      );
    expect(plan({})).toEqual(['L1>N: 207 to 253', 'N>ground: 0 to 15']);
    expect(plan({ measuring: { neutralToEarthTt: 30, aroundNominal: 0.05 } })).toEqual([
      'L1>N: 218.5 to 241.5',
      'N>ground: 0 to 30',
    ]);
  });
});

describe('turbines and control circuits', () => {
  it('a turbine’s phases, line to line up to its highest voltage', () => {
    const rows = [
      'W wind-turbine; output=three-phase; open_circuit_voltage=120; connects_to=X; place=Tower',
      CONTROLLER,
      BATTERY,
    ];
    expect(read('W:output', ...rows)).toEqual([
      'L1>L2: - to 120',
      'L1>L3: - to 120',
      'L2>L3: - to 120',
      'L1>ground: - to 120',
      'L2>ground: - to 120',
      'L3>ground: - to 120',
    ]);
  });

  it('a direct-current turbine is no string', () => {
    const rows = [
      'W wind-turbine; output=dc; open_circuit_voltage=170 V; protect=yes; connects_to=X',
      CONTROLLER,
      BATTERY,
    ];
    const plan = planOf('occupancy=other', rows.join('\n'));
    expect(bandsAt(plan, 'W:output')[0]).toBe('positive>negative +: - to 170');
    expect(one(plan, 'W:output').wiring.measuring.bands[0]).toMatchObject({
      reads: 'the turbine, which changes with its speed',
      due: 'Standing still: write it down, and measure again while it turns.',
    });
  });

  it('a control circuit, by its own current', () => {
    const circuit = (voltage: string): readonly string[] =>
      read(
        'C:terminals',
        `C control-circuit; control_voltage=${voltage}; protect=yes; outdoors=yes; dc_grounding=negative`,
      );
    expect(circuit('24 V dc')).toEqual([
      'positive>negative +: - to 31.7',
      'positive>ground +: - to 31.7',
      'negative>ground: 0 to 5',
    ]);
    expect(circuit('24 V ac')).toEqual(['L1>N: - to 30', 'L1>ground: - to 30', 'N>ground: 0 to 5']);
  });
});

describe('the meter and the clothing', () => {
  const measuring = (rows: string, where: string): object =>
    one(planOf('occupancy=other; lowest_temp=-10 C', rows), where).wiring.measuring;

  it('CAT IV at a service, for at least its highest voltage; first of all where the fault current is over 10 kA', () => {
    expect(measuring('S service; ac_in=480Y/277; fault_current=12 kA', 'S:service')).toMatchObject({
      meter: { category: 'CAT IV', volts: 528, current: 'ac' },
      clothing: { faultCurrent: 12000, first: true },
    });
  });

  it('CAT III elsewhere, for DC pole to pole; not first of all where the fault current is small', () => {
    const rows = `A array; voc_stc=40; modules_in_series=10; isc_stc=10; strings_in_parallel=2; protect=yes; connects_to=X\n${INVERTER}; isolated=yes`;
    expect(measuring(rows, 'A:output')).toMatchObject({
      meter: { category: 'CAT III', volts: 456, current: 'dc' },
      clothing: { faultCurrent: 25, first: false },
    });
  });

  describe('go by all ports of the equipment', () => {
    const rows = (fault: string): string =>
      `S service; ac_in=480Y/277; place=House; fault_current=${fault}
       G grid-tie-inverter; connects_to=S; run_length=60 m; dc_inputs=1; ac_out=480Y/277; place=Barn; isolated=yes
       A array; connects_to=G; run_length=40 m; voc_stc=40; modules_in_series=10; isc_stc=10; strings_in_parallel=2`;

    it.each([
      ['G:dc-in-1', '12 kA', 12000, true, 'CAT III, rated for at least 456 V DC and 528 V AC'],
      ['G:ac-out', '12 kA', 12000, true, 'CAT III, rated for at least 528 V AC and 456 V DC'],
      ['G:dc-in-1', '9 kA', 9000, false, 'CAT III, rated for at least 456 V DC and 528 V AC'],
      ['A:output', '12 kA', 25, false, 'CAT III, rated for at least 456 V DC'],
    ])('%s, %s', (where, fault, faultCurrent, first, meter) => {
      const found = one(planOf('occupancy=other; lowest_temp=-10 C', rows(fault)), where).wiring.measuring;
      expect(found.clothing).toMatchObject({ faultCurrent, first });
      expect(found.meter?.says).toBe(`Meter and leads: ${meter}`);
    });

    it('also those without a protector: a drive that the utility feeds too', () => {
      const drive = `S service; ac_in=480Y/277; place=House; fault_current=18 kA
       P panel; connects_to=S; run_length=9 m; ac_in=480Y/277; place=House
       D pump-drive; connects_to=P; run_length=9 m; dc_inputs=1; ac_in=480 delta; place=House
       A array; connects_to=D; run_length=40 m; voc_stc=40; modules_in_series=10; isc_stc=10; strings_in_parallel=2
       L load; connects_to=D; run_length=9 m; place=House; ac_in=480 delta`;
      const found = one(planOf('occupancy=other; lowest_temp=-10 C', drive), 'D:dc-in-1').wiring.measuring;
      expect(found.clothing).toMatchObject({ faultCurrent: 18000, first: true });
      expect(found.meter?.says).toBe('Meter and leads: CAT III, rated for at least 456 V DC and 528 V AC');
    });

    it('at the end of a control circuit those of what it ends at', () => {
      const circuit = (end: string): object =>
        measuring(
          `S service; ac_in=480Y/277; place=House; fault_current=12 kA
           B other; place=House
           T control-circuit; connects_to=${end}; control_voltage=12 V dc; run_length=40 m; place=Gate; outdoors=yes`,
          `${end}:terminals`,
        );
      expect(circuit('S')).toMatchObject({
        meter: { category: 'CAT IV' },
        clothing: { faultCurrent: 12000, first: true },
      });
      // The list knows nothing else of it.
      expect(circuit('B')).toMatchObject({
        meter: {
          category: 'CAT III',
          says: expect.stringMatching(/ and the most AC that may stand there/) as string,
        },
        clothing: { faultCurrent: null, first: true },
      });
    });

    it('names what is known beside one that isn’t: the utility at an inverter of a turbine', () => {
      const wind = (where: string): string => {
        const list = `S service; ac_in=240; place=House; fault_current=6 kA
          G grid-tie-inverter; connects_to=S; run_length=9 m; dc_inputs=1; ac_out=240; max_dc_voltage=300; place=House
          W wind-turbine; connects_to=G; run_length=40 m; output=three-phase; open_circuit_voltage=140; place=Tower`;
        return JSON.stringify(measuring(list, where));
      };
      expect(wind('G:dc-in-1')).toMatch(
        /the fault current here is at least 6000 A: not all that feeds this enclosure is known/,
      );
      expect(wind('W:output')).toMatch(/the fault current here isn’t known/);
    });

    it('names what is known behind a transfer switch one of whose feeders isn’t', () => {
      const list = `S service; ac_in=480Y/277; place=House; fault_current=35 kA
        T transfer-switch; connects_to=S; run_length=4 m; place=House
        G generator; connects_to=T; run_length=4 m; ac_out=480Y/277; place=House
        P panel; connects_to=T; run_length=4 m; ac_in=480Y/277; place=House; protect=yes`;
      expect(JSON.stringify(measuring(list, 'P:feeder'))).toMatch(
        /the fault current here is at least 35000 A/,
      );
    });

    it('a turbine beside an array in one enclosure: its fault current isn’t known, whatever it gives', () => {
      const hybrid = (output: string): string =>
        JSON.stringify(
          measuring(
            `S service; ac_in=240; place=House; fault_current=9 kA
             G grid-tie-inverter; connects_to=S; run_length=9 m; dc_inputs=2; ac_out=240; max_dc_voltage=600; isolated=yes; place=House
             A array; connects_to=G/1; run_length=4 m; voc_stc=40; isc_stc=10; strings_in_parallel=1; modules_in_series=8; place=House
             W wind-turbine; connects_to=G/2; run_length=40 m; ${output}; open_circuit_voltage=140; place=Tower`,
            'G:dc-in-1',
          ),
        );
      for (const output of ['output=dc', 'output=three-phase', 'maker=nobody'])
        expect(hybrid(output)).toMatch(/the fault current here is at least 9000 A: not all that feeds/);
    });

    it('not of a control circuit’s own end', () => {
      const circuit = `S service; ac_in=480Y/277; place=House; fault_current=12 kA
         T control-circuit; connects_to=S; control_voltage=12 V dc; run_length=40 m; place=Gate; outdoors=yes`;
      expect(measuring(circuit, 'T:terminals')).toMatchObject({
        meter: { category: 'CAT III' },
        clothing: { first: false },
      });
    });
  });

  it('first of all where the fault current isn’t known', () => {
    expect(measuring('S service; ac_in=120', 'S:service')).toMatchObject({
      clothing: { faultCurrent: null, first: true },
    });
  });
});

it.each([
  ['nec-2023', 'dc_grounding=negative', ['negative']],
  ['nec-2023', 'dc_grounding=positive', ['positive']],
  ['nec-2023', 'dc_grounding=floating', []],
  ['iec', 'dc_grounding=negative', []],
])(
  '%s, %s: a grounded pole has a colour of its own (NEC 200.6, value from memory)',
  (basis, facts, poles) => {
    const rows = [`A array; ${ARRAY}; ${facts}`, CONTROLLER, BATTERY];
    const plan = planOf(`occupancy=other; lowest_temp=-10 C; basis=${basis}; earthing=TN`, rows.join('\n'));
    const told = one(plan, 'A:output').wiring.notes.filter((n) => n.includes('white or gray'));
    expect(told.map((n) => n.split(' ')[1])).toEqual(poles);
  },
);
