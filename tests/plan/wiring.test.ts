import { describe, expect, it } from 'vitest';
import { channelText } from '../../src/words/conductors.js';
import {
  at,
  catalogueOf,
  conductorsAt,
  dataOf,
  defaultsOf,
  one,
  partLine,
  planOf,
  readingsOf,
  STOCK,
} from './plan-of.js';

// rules.md section 3, from the text of a list to its plan. Cases are our own.

const only = (n: number, facts = ''): string =>
  catalogueOf(partLine(`X${n}`, `channels=${n}; mcov_ac=640; up=900; ${facts}`));
const wired = (facts: string, row: string, where: string, catalogue: string): readonly string[] =>
  conductorsAt(planOf(facts, row, { catalogue }), where);
const load = (system: string, more = ''): string =>
  `L load; ac_in=${system}; protect=yes; place=House${more}`;

describe('DC', () => {
  it.each(['negative', 'positive', 'floating'])(
    'both poles get a channel, grounded pole %s: never doubled',
    (pole) => {
      const plan = planOf(
        'lowest_temp=25 C',
        `CC charge-controller; dc_inputs=1; place=Hut
       A array; connects_to=CC; run_length=4 m; voc_stc=40; modules_in_series=3; dc_grounding=${pole}`,
      );
      expect(conductorsAt(plan, 'CC:dc-in-1')).toEqual(['positive', 'negative']);
      expect(one(plan, 'CC:dc-in-1').channels.map((c) => c.to)).toEqual(['ground', 'ground']);
    },
  );

  it('DC never doubles: a part that leaves a channel unwired isn’t chosen, one of one channel makes two housings', () => {
    const row = 'A array; open_circuit_voltage=100; protect=yes';
    const dc = (n: number): string => catalogueOf(partLine('D', `channels=${n}; mcov_dc=150; up=600`));
    expect(one(planOf('', row, { catalogue: dc(3) }), 'A:output').part).toBeNull();
    expect(
      at(planOf('', row, { catalogue: dc(1) }), 'A:output').map((p) => p.channels.map((c) => c.conductor)),
    ).toEqual([['positive'], ['negative']]);
  });

  it('a control circuit: positive and negative; of AC L1 and N', () => {
    expect(
      wired('', 'C control-circuit; control_voltage=24 V dc; outdoors=yes', 'C:terminals', STOCK),
    ).toEqual(['positive', 'negative']);
    expect(
      wired('', 'C control-circuit; control_voltage=24 V ac; outdoors=yes', 'C:terminals', STOCK),
    ).toEqual(['L1', 'N']);
  });
});

describe('AC lines', () => {
  it.each([
    ['120', 1, ['L1']],
    ['120/240', 2, ['L1', 'L2']],
    ['240', 2, ['L1', 'L2']],
    ['208', 2, ['L1', 'L2']],
    ['208Y/120', 3, ['L1', 'L2', 'L3']],
    ['480Y/277', 3, ['L1', 'L2', 'L3']],
    ['600Y/347', 3, ['L1', 'L2', 'L3']],
    ['240/120 high-leg', 3, ['L1', 'L2', 'L3']],
    ['240 delta', 3, ['L1', 'L2', 'L3']],
    ['480 delta; system_grounding=corner', 3, ['L1', 'L2', 'L3']],
  ])('%s: every ungrounded conductor, and a corner-grounded phase like the others', (system, n, lines) => {
    const catalogue = only(n, 'listed_for=ungrounded|corner');
    expect(wired('', load(system), 'L:feeder', catalogue)).toEqual(lines);
  });

  it('three phases on two-channel parts take two housings, four channels: N first where it isn’t bonded, else one phase doubled', () => {
    expect(wired('', load('208Y/120'), 'L:feeder', only(2))).toEqual(['L1', 'L2', 'L3', 'N']);
    expect(wired('', 'S service; ac_in=208Y/120', 'S:service', only(2))).toEqual([
      'L1',
      'L2',
      'L3',
      'L1 (doubled)',
    ]);
    expect(wired('', load('240 delta'), 'L:feeder', only(2, 'listed_for=ungrounded'))).toEqual([
      'L1',
      'L2',
      'L3',
      'L1 (doubled)',
    ]);
  });

  it('a high leg is doubled first; only the second channel is called doubled, and the note says which', () => {
    const plan = planOf('', 'S service; ac_in=240/120 high-leg', { catalogue: only(2) });
    expect(conductorsAt(plan, 'S:service')).toEqual(['L1', 'L2', 'L3', 'L2 (doubled)']);
    expect(at(plan, 'S:service')[1]?.wiring.notes.join()).toMatch(/Channel 2 is a second channel of L2/);
    // What is doubled there is measured there too, as in its other housing.
    const [first = [], second = []] = at(plan, 'S:service').map(readingsOf);
    expect(second.map((m) => m.conductor)).toEqual(['L2', 'L3', 'N']);
    expect(second[0]).toEqual(first.find((m) => m.conductor === 'L2'));
    const twice = one(planOf('', 'S service; ac_in=120', { catalogue: only(2) }), 'S:service');
    expect(readingsOf(twice).map((m) => m.conductor)).toEqual(['L1', 'N']);
  });

  it('a single line on a two-channel part: N takes the spare, at the service it doubles', () => {
    expect(wired('', load('120'), 'L:feeder', only(2))).toEqual(['L1', 'N']);
    expect(wired('', 'S service; ac_in=120', 'S:service', only(2))).toEqual(['L1', 'L1 (doubled)']);
  });

  it('no channel stays unwired: a part with more than N and one doubling each isn’t chosen', () => {
    expect(wired('', load('120'), 'L:feeder', only(3))).toEqual(['L1', 'N', 'L1 (doubled)']);
    expect(one(planOf('', load('120'), { catalogue: only(4) }), 'L:feeder').part).toBeNull();
  });

  it('a turbine’s three phases double L1', () => {
    expect(
      wired(
        '',
        'W wind-turbine; output=three-phase; open_circuit_voltage=100; place=Tower',
        'W:output',
        only(2),
      ),
    ).toEqual(['L1', 'L2', 'L3', 'L1 (doubled)']);
  });
});

describe('the neutral', () => {
  const catalogue = catalogueOf(
    ...[1, 2, 3, 4].map((n) =>
      partLine(`X${n}`, `channels=${n}; mcov_ac=640; up=900; listed_for=ungrounded`),
    ),
  );

  it.each([
    ['basis=iec; earthing=TN', 'L load; ac_in=400Y/230; protect=yes', 'L:feeder', true],
    ['basis=iec; earthing=TN', 'L service; ac_in=400Y/230', 'L:service', false],
    ['basis=iec; earthing=TN', 'L service; ac_in=400Y/230; n_pe_link=no', 'L:service', true],
    // Every port but a service: a panel's own link doesn't count.
    ['basis=iec; earthing=TN', 'L panel; ac_in=400Y/230; protect=yes; n_pe_link=yes', 'L:feeder', true],
    ['basis=iec; earthing=IT', 'L service; ac_in=400Y/230', 'L:service', true],
    ['basis=iec; earthing=IT', 'L load; ac_in=230; protect=yes', 'L:feeder', true],
    ['basis=nec-2023', 'L service; ac_in=480Y/277; system_grounding=none', 'L:service', true],
    ['basis=nec-2023', 'L load; ac_in=208Y/120; protect=yes', 'L:feeder', false],
  ])('%s, %s: N asked %s %s', (facts, row, where, asked) => {
    const p = one(planOf(facts, row, { catalogue }), where);
    const lines = row.includes('230;') || row.includes('ac_in=230') ? 1 : 3;
    expect(p.required.conductors).toBe(
      (row.includes('400Y') || row.includes('480Y') || row.includes('208Y') ? 3 : lines) + (asked ? 1 : 0),
    );
    expect(conductorsAt(planOf(facts, row, { catalogue }), where).includes('N')).toBe(asked);
  });

  it('nec elsewhere: optional; where no channel takes it the note says that N isn’t protected there', () => {
    const plan = planOf('', load('120/240'));
    expect(conductorsAt(plan, 'L:feeder')).toEqual(['L1', 'L2']);
    expect(one(plan, 'L:feeder').wiring.unprotected).toMatchObject([
      { conductor: 'N', because: expect.stringMatching(/no channel is left/) as string },
    ]);
    expect(one(planOf('', 'S service; ac_in=120/240'), 'S:service').wiring.unprotected).toMatchObject([
      { conductor: 'N', because: 'N is bonded to ground here' },
    ]);
    expect(one(planOf('', load('240')), 'L:feeder').wiring.unprotected).toEqual([]);
  });

  it('a service of an ungrounded system has no link to ground by default', () => {
    const plan = planOf('', 'S service; ac_in=480Y/277; system_grounding=none', {
      catalogue: only(4, 'listed_for=ungrounded'),
    });
    expect(conductorsAt(plan, 'S:service')).toEqual(['L1', 'L2', 'L3', 'N']);
    expect(defaultsOf(plan, 'n_pe_link').join()).not.toMatch(/taken as yes/);
  });

  it('whether N is bonded is printed where a default decides it', () => {
    const plan = planOf('', `S service; ac_in=120; place=House\n${load('120')}`);
    expect(defaultsOf(plan, 'n_pe_link')).toEqual([
      expect.stringMatching(/for L: taken as no/),
      expect.stringMatching(/for S: taken as yes/),
    ]);
    const stated = planOf('', 'S service; ac_in=120; n_pe_link=no', { catalogue: only(2) });
    expect(defaultsOf(stated, 'n_pe_link')).toEqual([]);
    expect(conductorsAt(stated, 'S:service')).toEqual(['L1', 'N']);
  });
});

describe('iec TT', () => {
  it('lines go to N and N goes to ground', () => {
    const p = one(planOf('basis=iec; earthing=TT', 'S service; ac_in=400Y/230'), 'S:service');
    expect(p.channels.map((c) => `${c.conductor} to ${c.to}`)).toEqual([
      'L1 to N',
      'L2 to N',
      'L3 to N',
      'N to ground',
    ]);
  });

  it('no service is taken as the place where N meets earth, and its earth lead goes to no bonded bar', () => {
    const plan = planOf('basis=iec; earthing=TT', 'S service; ac_in=400Y/230');
    expect(defaultsOf(plan, 'n_pe_link')).toEqual([]);
    expect(one(plan, 'S:service').wiring.groundTo).toMatch(/main earthing terminal.*not its neutral bar/);
    const nec = planOf('', 'S service; ac_in=120/240; outdoors=no', { catalogue: only(3) });
    expect(one(nec, 'S:service').wiring.groundTo).toMatch(/bonded bar/);
  });
});

describe('ports that share a protector', () => {
  it('name the port before the conductor, in notes and measurements too', () => {
    const plan = planOf('', 'I inverter-charger; ac_in=120; ac_out=120', { catalogue: only(4) });
    const p = one(plan, 'I:ac-in');
    expect(p.channels.map((c) => c.conductor)).toEqual(['ac-in L1', 'ac-out L1', 'ac-in N', 'ac-out N']);
    expect(readingsOf(p).map((m) => m.conductor)).toEqual(['ac-in L1', 'ac-in N', 'ac-out N', 'ac-out L1']);
    expect(p.wiring.unprotected).toEqual([]);
  });

  it('spare channels: the N of each port first, then a doubled L1; N without one is said to have none (section 5)', () => {
    const rows = 'I inverter-charger; ac_in=120; ac_out=120';
    const five = one(planOf('', rows, { catalogue: only(5) }), 'I:ac-in');
    expect(five.channels.map((c) => c.conductor)).toEqual([
      'ac-in L1',
      'ac-out L1',
      'ac-in N',
      'ac-out N',
      'ac-in L1 (doubled)',
    ]);
    expect(readingsOf(five).map((m) => m.conductor)).toEqual([
      'ac-in L1',
      'ac-in N',
      'ac-out N',
      'ac-out L1',
    ]);
    expect(five.wiring.notes.join()).toMatch(/second channel of ac-in L1/);
    const three = one(planOf('', rows, { catalogue: only(3) }), 'I:ac-in');
    expect(three.channels.map((c) => c.conductor)).toEqual(['ac-in L1', 'ac-out L1', 'ac-in N']);
    expect(three.wiring.unprotected.map((u) => u.conductor)).toEqual(['ac-out N']);
  });
});

describe('colours, leads and instructions', () => {
  it.each([
    ['', 'S service; ac_in=240/120 high-leg', ['black', 'orange', 'blue']],
    ['', 'S service; ac_in=120/240', ['black', 'red']],
    ['', 'S service; ac_in=480Y/277; n_pe_link=no', ['brown', 'orange', 'yellow', 'gray']],
    ['', 'S service; ac_in=600Y/347', ['brown', 'orange', 'yellow']],
    ['', 'S service; ac_in=208Y/120', ['black', 'red', 'blue']],
    ['', 'S service; ac_in=240 delta; system_grounding=corner', ['black', 'white or gray', 'blue']],
    ['basis=iec; earthing=IT', 'S service; ac_in=400Y/230', ['brown', 'black', 'grey', 'blue']],
  ])('%s %s: %s, as settings', (facts, row, colours) => {
    const channels = colours.length;
    expect(
      one(planOf(facts, row, { catalogue: only(channels) }), 'S:service').channels.map((c) => c.colour),
    ).toEqual(colours);
  });

  const named = (rows: string, where: string, facts = '', settings = {}): readonly string[] =>
    dataOf(facts, rows, { settings })
      .protectors.filter((p) => p.ports.some((o) => `${o.equipment}:${o.port}` === where))
      .flatMap((p) => p.channels.map((c) => `${channelText(c)}: ${c.colour}`));

  it('a part of a 480Y/277 system has its colours, and a grounded phase and a high leg are named', () => {
    const rows = `S service; ac_in=480Y/277; place=House\nL load; connects_to=S; ac_in=480 delta; protect=yes`;
    expect(named(rows, 'L:feeder')).toEqual(['L1: brown', 'L2: orange', 'L3: yellow']);
    expect(named('S service; ac_in=240/120 high-leg', 'S:service')[1]).toBe('L2, high leg: orange');
    expect(named('S service; ac_in=240 delta; system_grounding=corner', 'S:service')[1]).toBe(
      'L2, grounded phase: white or gray',
    );
  });

  const notesOf = (rows: string, where: string): readonly string[] =>
    one(planOf('', rows), where).wiring.notes;
  const battery = 'B battery; battery_voltage=48; battery_chemistry=lfp; protect=yes; dc_grounding=';

  it('the grounded negative of a battery’s bus is white or gray, and no note says otherwise; an array’s may float up', () => {
    expect(named(`${battery}negative`, 'B:battery')).toEqual(['positive: red', 'negative: white or gray']);
    expect(named(`${battery}floating`, 'B:battery')).toEqual(['positive: red', 'negative: black']);
    expect(named(`${battery}negative`, 'B:battery', 'basis=iec; earthing=TN')[1]).toBe('negative, L-: white');
    expect(notesOf(`${battery}negative`, 'B:battery').join('\n')).not.toMatch(/white or gray/);
    const array = `X charge-controller; dc_inputs=1; max_dc_voltage=250; place=Hut
      A array; connects_to=X; run_length=4 m; open_circuit_voltage=200; dc_grounding=negative`;
    expect(named(array, 'X:dc-in-1')).toEqual(['positive: red', 'negative: black']);
    expect(notesOf(array, 'X:dc-in-1').join('\n')).toMatch(
      /negative is grounded: where solidly, it is white/,
    );
  });

  it.each([
    ['lead-acid', 'Hut', true],
    ['nicd', 'Hut', true],
    ['', 'Hut', true],
    ['lfp', 'Hut', false],
  ])(
    'where gas of a %s battery can gather, its device says where it may stand',
    (chemistry, place, warned) => {
      const bus = (load: string): string =>
        `B battery; battery_voltage=48; cells=24; battery_chemistry=${chemistry}; protect=yes; place=${place}
       R dc-load; connects_to=B; protect=yes; run_length=4 m; place=${load}; building=${place}; outdoors=no`;
      const says = (load: string, where: string): boolean =>
        notesOf(bus(load), where).some((n) => n.includes('can gather in this room'));
      expect(says('Hut', 'B:battery')).toBe(warned);
      expect(says('Hut', 'R:dc-in')).toBe(warned);
      expect(says('Loft', 'R:dc-in')).toBe(false);
    },
  );

  it('a plant with its positive grounded: poles by voltage and use, no colour unless the settings give one', () => {
    expect(named(`${battery}positive`, 'B:battery')).toEqual([
      'positive, return (+): ',
      'negative, -48\u00a0V: ',
    ]);
    const settings = { conductorColours: { positiveGround: { negative: 'blue' } } };
    expect(named(`${battery}positive`, 'B:battery', '', settings)).toEqual([
      'positive, return (+): ',
      'negative, -48\u00a0V: blue',
    ]);
    expect(named(`${battery}floating`, 'B:battery')).toEqual(['positive: red', 'negative: black']);
  });

  it('loads and panels of such a plant, and a control circuit of its own, are named alike; an array is not', () => {
    const rows = `A array; connects_to=C; run_length=40 m; open_circuit_voltage=120; outdoors=yes; place=Yard
       C charge-controller; connects_to=B; max_dc_voltage=150; dc_inputs=1; place=Hut
       B battery; battery_voltage=24; battery_chemistry=lfp; dc_grounding=positive; place=Hut
       D dc-panel; connects_to=B; place=Hut; run_length=2 m; protect=yes
       R dc-load; connects_to=D; place=Mast; outdoors=yes; run_length=60 m
       K control-circuit; connects_to=D; control_voltage=12 V dc; dc_grounding=positive; outdoors=yes; place=Yard; run_length=50 m`;
    for (const where of ['D:dc-in', 'R:dc-in'])
      expect(named(rows, where)).toEqual(['positive, return (+): ', 'negative, -24\u00a0V: ']);
    expect(named(rows, 'K:terminals')).toEqual(['positive, return (+): ', 'negative, -12\u00a0V: ']);
    expect(named(rows, 'C:dc-in-1')).toEqual(['positive: red', 'negative: black']);
  });

  it('iec names the poles as IEC 60445 does (value from memory); the settings name any conductor', () => {
    expect(named(`${battery}negative`, 'B:battery', 'basis=iec; earthing=TN')).toEqual([
      'positive, L+: red',
      'negative, L-: white',
    ]);
    const settings = { conductorNames: { nec: { L1: 'phase A' } } };
    expect(named('S service; ac_in=120/240', 'S:service', '', settings)).toEqual([
      'L1, phase A: black',
      'L2: red',
    ]);
  });

  it('ground goes to the bonded bar at the service, elsewhere to the equipment-ground bar', () => {
    expect(one(planOf('', 'S service; ac_in=120/240'), 'S:service').wiring.groundTo).toMatch(/bonded bar/);
    expect(one(planOf('', load('120/240')), 'L:feeder').wiring.groundTo).toMatch(
      /equipment-ground bar.*not its neutral bar/,
    );
  });

  it('smallest leads by basis: 14 AWG copper or 12 AWG aluminium; 534.4.10', () => {
    expect(one(planOf('', load('120')), 'L:feeder').wiring.smallestLead).toMatch(
      /14 AWG copper or 12 AWG aluminium/,
    );
    expect(one(planOf('basis=iec; earthing=TN', load('230')), 'L:feeder').wiring.smallestLead).toMatch(
      /6 mm2.*2\.5 mm2/,
    );
  });

  it('short, straight, tied together, no coils; disconnected before an insulation test', () => {
    const notes = one(planOf('', load('120')), 'L:feeder').wiring.notes.join(' ');
    expect(notes).toMatch(/short, straight and tied together; no coils/);
    expect(notes).toMatch(/before an insulation test/);
  });

  it('overcurrent, torque and wire range as the catalogue says, else by the part’s instructions', () => {
    const p = one(planOf('', load('120')), 'L:feeder').wiring;
    expect([p.overcurrent, p.torque, p.wireRange]).toEqual([
      'by the part’s instructions',
      'by the part’s instructions',
      '14 to 2 AWG Cu',
    ]);
  });

  const STRING = `X charge-controller; dc_inputs=1; max_dc_voltage=250; place=Hut
    A array; connects_to=X; run_length=4 m; open_circuit_voltage=200`;

  it('warns of the charge that a converter keeps, at its DC input and on its battery bus', () => {
    const warned = (rows: string, where: string): readonly string[] =>
      one(planOf('', rows), where).wiring.notes.filter((n) => n.includes('stay charged'));
    const note =
      'The DC terminals of X can stay charged after every source is open: wait as the instructions say, then measure.';
    expect(warned(STRING, 'X:dc-in-1')).toEqual([note]);
    const bus = `${STRING}\nB battery; battery_voltage=48; battery_chemistry=lfp; protect=yes; place=Hut; connects_to=X`;
    expect(warned(bus, 'B:battery')).toEqual([note]);
    expect(warned('S service; ac_in=120/240', 'S:service')).toEqual([]);
  });

  it('doesn’t say alternating or direct where that isn’t known', () => {
    const rows = `WT wind-turbine; place=Hill; connects_to=X; run_length=4 m
      X charge-controller; dc_inputs=1; max_dc_voltage=250; place=Hut`;
    const { measuring, notes } = one(planOf('', rows), 'WT:output').wiring;
    expect(new Set(measuring.bands.map((m) => m.current))).toEqual(new Set([null]));
    expect(
      notes.some((n) => n.startsWith('Whether alternating or direct current comes here isn’t known')),
    ).toBe(true);
  });
});

describe('the system of a place and its grounding', () => {
  const told = (rows: string, where: string): string[] => {
    const { system, grounding } = one(planOf('lowest_temp=25 C; occupancy=other', rows), where);
    return [system, grounding];
  };
  const pv = (converter: string, more = ''): string =>
    `A array; connects_to=X; run_length=4 m; voc_stc=40; modules_in_series=15; ${more}\nX ${converter}; dc_inputs=1`;
  const wind = (output: string): string =>
    `W wind-turbine; connects_to=X; run_length=4 m; ${output}; place=Tower\nX charge-controller; dc_inputs=1`;

  it.each([
    [
      'a stated pole',
      pv('charge-controller', 'dc_grounding=positive'),
      'X:dc-in-1',
      'dc',
      'positive grounded',
    ],
    ['an array on a controller', pv('charge-controller'), 'X:dc-in-1', 'dc', 'negative grounded'],
    [
      'an array on an inverter',
      pv('grid-tie-inverter; ac_out=240; isolated=yes'),
      'X:dc-in-1',
      'dc',
      'floating',
    ],
    [
      'three phases',
      wind('output=three-phase; open_circuit_voltage=100'),
      'W:output',
      'three-phase',
      'floating',
    ],
    ['an output that isn’t stated', wind('open_circuit_voltage=100'), 'W:output', 'not stated', ''],
    ['a delta', 'S service; ac_in=480 delta', 'S:service', '480 delta', 'none'],
  ])('%s', (_, rows, where, system, grounding) => {
    expect(told(rows, where)).toEqual([system, grounding]);
  });
});
