import { describe, expect, it } from 'vitest';
import type { EnglishPlan } from '../in-english.js';
import { items, one, planOf } from './plan-of.js';

const SITE = `SVC service; ac_in=120/240; place=House; fault_current=10 kA
  MP panel; connects_to=SVC; run_length=9 m; ac_in=120/240; place=House; protect=yes
  L load; connects_to=MP; run_length=9 m; ac_in=120; place=House
  GTI grid-tie-inverter; connects_to=MP; run_length=5 m; dc_inputs=1; ac_out=240; place=House; isolated=yes
  A array; connects_to=GTI; run_length=40 m; voc_stc=40; modules_in_series=4
  M ac-module-branch; connects_to=MP; run_length=9 m; ac_out=240; place=Roof
  INV inverter-charger; connects_to=MP; run_length=4 m; ac_in=120/240; ac_out=120/240; place=House
  GEN generator; connects_to=INV; run_length=40 m; ac_out=120/240; place=Shed
  BAT battery; connects_to=INV; run_length=1 m; battery_voltage=48; battery_chemistry=lfp; place=House; protect=yes
  CC charge-controller; connects_to=BAT; run_length=2 m; dc_inputs=1; max_dc_voltage=250; place=House
  W wind-turbine; connects_to=CC; run_length=60 m; output=three-phase; open_circuit_voltage=120; place=Tower
  H hydro-turbine; connects_to=CC2; run_length=60 m; output=dc; open_circuit_voltage=120; place=Weir
  CC2 charge-controller; connects_to=BAT; run_length=2 m; dc_inputs=1; max_dc_voltage=250; place=House
  DL diversion-load; connects_to=CC; place=House
  ST control-circuit; connects_to=GEN; control_voltage=12 V dc; run_length=40 m; place=House; outdoors=yes`;
const ALL = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10];

const plan = planOf('lowest_temp=25 C; occupancy=other', SITE);
const linesOf = (of: EnglishPlan, way: 'steps' | 'back'): string[] =>
  of.isolation.parts.flatMap((part) =>
    part[way].flatMap(({ number, acts }) =>
      acts.map(({ does, tags }) => `${number} ${does.split(/[,;:]/)[0] ?? ''}: ${tags.join(' ')}`),
    ),
  );

describe('the isolation of a site', () => {
  it('is its numbered steps, those that it has, each with what it is done to', () => {
    expect(linesOf(plan, 'steps')).toEqual([
      '1 Block the automatic start of the generator: GEN',
      '1 Block automatic start and transfer of the inverter-charger: INV',
      '1 Switch the supply of the control circuit off at its other end: ST',
      '2 Stop the wind turbine while its load is still on: W',
      '2 Stop the hydro turbine while its load is still on: H',
      '2 Leave the diversion load on until every turbine stands still: DL',
      '3 Switch the load off: L',
      '3 Switch the inverter off: GTI INV',
      '3 Switch the charge controller off as its maker says: CC CC2',
      '3 Switch the modules’ AC branch off at its breaker: M',
      '4 Stop the generator: GEN',
      '4 Open the main disconnect of the utility service: SVC',
      '5 Open the load-break disconnect of the array: A',
      '6 Open the turbine’s disconnect: W H',
      '7 Open the battery’s disconnect: BAT',
      '8 Wait as the makers say: CC CC2 GTI INV',
      '9 Lock and tag every device that was opened: ',
      '10 Prove dead: ',
    ]);
  });

  it('goes back from locks and tags over 7 to 1: turbines let go after all that loads them, automatic starts last', () => {
    const back = linesOf(plan, 'back');
    expect(back.map((line) => Number(line.split(' ')[0]))).toEqual([
      9, 7, 6, 5, 4, 4, 3, 3, 3, 3, 2, 2, 1, 1,
    ]);
    expect(back.slice(-4)).toEqual([
      '2 Let the wind turbine go: W',
      '2 Let the water onto the hydro turbine: H',
      '1 Switch the supply of the control circuit on at its other end: ST',
      '1 Free the automatic start: GEN INV',
    ]);
  });

  it('waits as long as the settings say', () => {
    const waits = (settings: object): string =>
      JSON.stringify(planOf('lowest_temp=25 C', SITE, { settings }).isolation.parts[0]?.steps[7]?.acts);
    expect(waits({})).toContain('5 minutes');
    expect(waits({ measuring: { waitMinutes: 15 } })).toContain('15 minutes');
    expect(waits({ measuring: { waitMinutes: 1 } })).toContain('1 minute"');
  });

  it('stops a pump drive before the switch of its motor, and closes that before it starts', () => {
    const pump = planOf(
      'occupancy=other; lowest_temp=25 C',
      `A array; connects_to=D; run_length=60 m; voc_stc=40; modules_in_series=4; place=Field
       D pump-drive; dc_inputs=1; place=Hut
       M disconnect; connects_to=D; run_length=60 m; place=Bore
       L load; connects_to=M; run_length=2 m; place=Bore`,
    );
    expect(linesOf(pump, 'steps').filter((line) => line.startsWith('3'))).toEqual([
      '3 Stop the pump drive before any switch behind it is opened: D',
      '3 Switch the load off: L',
    ]);
    expect(linesOf(pump, 'back').filter((line) => line.startsWith('3'))).toEqual([
      '3 Switch the load on: L',
      '3 Switch the pump drive on: D',
    ]);
  });

  it('has the utility’s part only where a protector is ahead of the main disconnect', () => {
    const parts = (facts: string): string =>
      linesOf(planOf('', `S service; ac_in=120/240; place=House; ${facts}`), 'steps').join();
    expect(parts('ahead_of_disconnect=yes')).toContain('4 For work ahead of its main disconnect: S');
    expect(parts('ahead_of_disconnect=no')).not.toContain('For work ahead');
    const waived = planOf(
      'basis=nec-2017',
      `S service; ac_in=120/240; place=House; ahead_of_disconnect=yes; protect=no
       P panel; connects_to=S; ac_in=120/240; run_length=9 m; place=House; protect=yes`,
    );
    expect(linesOf(waived, 'steps').join()).toContain('4 Open the main disconnect of the utility service: S');
    expect(linesOf(waived, 'steps').join()).not.toContain('For work ahead');
  });

  it('of a house with nothing but its service has no more than that', () => {
    const house = planOf('', 'S service; ac_in=120/240; place=House');
    expect(linesOf(house, 'steps').map((line) => line.split(' ')[0])).toEqual(['4', '9', '10']);
  });

  it('parts that nothing joins are apart; one without a protector isn’t there', () => {
    const two = planOf(
      'lowest_temp=25 C',
      `S service; ac_in=120/240; place=House
       T service; ac_in=120/240; place=Barn
       B battery; battery_voltage=48; battery_chemistry=lfp; place=Shed`,
    );
    expect(two.isolation.parts.map(({ number }) => number)).toEqual([1, 2]);
    expect(one(two, 'S:service').wiring.isolation.part).toBe(1);
    expect(one(two, 'T:service').wiring.isolation.part).toBe(2);
  });
});

describe('what a box needs of it', () => {
  it('all steps: over one path or another every source can feed it, also through inverters', () => {
    for (const where of ['SVC:service', 'MP:feeder', 'A:output', 'W:output', 'INV:ac-out', 'BAT:battery'])
      expect([where, one(plan, where).wiring.isolation.steps]).toEqual([where, ALL]);
  });

  it('at a control circuit’s own end its supply and what it starts; at the generator’s end all', () => {
    expect(one(plan, 'ST:terminals').wiring.isolation.steps).toEqual([1, 9, 10]);
    expect(one(plan, 'GEN:terminals').wiring.isolation.steps).toEqual(ALL);
  });
});

describe('what stays live', () => {
  const live = (of: EnglishPlan, where: string): string[] =>
    one(of, where).wiring.isolation.live.map(({ what, who, here }) => `${what}; ${who}; ${String(here)}`);

  it.each([
    ['SVC:service', [/^The line side of the service.*only the utility can make it dead; false$/]],
    ['BAT:battery', [/^The battery’s terminals, up to its first device; nobody can/]],
    ['A:output', [/^In daylight, the conductors here themselves.*no switch.*true$/]],
    ['GTI:dc-in-1', [/^In daylight, all between the modules and the opened disconnect.*false$/]],
    [
      'W:output',
      [/^The turbine’s conductors here, whenever it turns.*only its locked short or brake.*true$/],
    ],
    [
      'H:output',
      [/^The turbine’s conductors here, whenever it turns.*only its shut and locked water.*true$/],
    ],
    ['MP:feeder', []],
    ['CC:dc-in-1', [/^Whenever the turbine turns, all between it and its.*locked short or brake.*false$/]],
    ['CC2:dc-in-1', [/^Whenever the turbine turns, all between it and its.*locked water.*false$/]],
    ['GEN:output', []],
    ['GEN:terminals', []],
  ])('%s', (where, says) => {
    const found = live(plan, where);
    expect(found).toHaveLength(says.length);
    says.forEach((one, i) => {
      expect(found[i]).toMatch(one);
    });
  });

  describe('and what stays charged, belongs to the enclosure', () => {
    const made = planOf(
      'lowest_temp=25 C; occupancy=other',
      `S service; ac_in=120/240; place=House; ahead_of_disconnect=yes
       G grid-tie-inverter; connects_to=S; run_length=60 m; dc_inputs=2; ac_out=240; place=Barn; outdoors=yes
       A array; connects_to=G/1; run_length=40 m; voc_stc=40; modules_in_series=4; place=Field
       B array; connects_to=G/2; run_length=40 m; voc_stc=40; modules_in_series=4; place=Field
       T control-circuit; connects_to=A; control_voltage=12 V dc; run_length=40 m; place=Gate; outdoors=yes
       U control-circuit; connects_to=S; control_voltage=12 V dc; run_length=40 m; place=Gate; outdoors=yes
       I inverter-charger; ac_in=unused; ac_out=120; place=Hut
       C battery; connects_to=I; run_length=1 m; battery_voltage=48; battery_chemistry=lfp; place=Hut
       P panel; connects_to=I; run_length=60 m; ac_in=120; place=Shed
       W wind-turbine; connects_to=X; run_length=60 m; output=three-phase; open_circuit_voltage=120; place=Tower
       X charge-controller; connects_to=C; run_length=2 m; dc_inputs=1; max_dc_voltage=250; place=Hut`,
    );
    const charged = (where: string): readonly string[] =>
      one(made, where).wiring.notes.filter((note) => note.includes('can stay charged'));
    const SIDE =
      'In daylight, all between the modules and the opened disconnect; no switch makes it dead: cover the modules, or work in the dark; false';

    it.each(['G:ac-out', 'G:dc-in-1', 'G:dc-in-2'])(
      'at %s of an inverter what its inputs have, once',
      (at) => {
        expect(live(made, at)).toEqual([SIDE]);
        expect(charged(at)).toEqual([expect.stringContaining('The DC terminals of G can')]);
      },
    );

    it('of the conductors here only at the protector’s own port', () => {
      expect(live(made, 'A:terminals')).toEqual([SIDE]);
      expect(live(made, 'A:output')).toEqual([
        expect.stringMatching(/^In daylight, the conductors here.*true$/),
      ]);
      expect(live(made, 'S:terminals')).toEqual([
        expect.stringMatching(/^The line side of the service.*false$/),
      ]);
      expect(charged('T:terminals')).toEqual([]);
    });

    it.each([
      ['I:ac-out', 'I'],
      ['X:dc-in-1', 'X'],
    ])('at %s of %s', (at, tag) => {
      expect(charged(at)).toEqual([expect.stringContaining(`The DC terminals of ${tag} can`)]);
    });
  });

  it('ahead of the main disconnect the place itself', () => {
    const ahead = planOf('', 'S service; ac_in=120/240; place=House; ahead_of_disconnect=yes');
    expect(live(ahead, 'S:service')).toEqual([
      'This place is ahead of the main disconnect: opening that makes nothing dead here; the utility makes the service dead first and the crew proves it; until then do not connect; true',
    ]);
  });
});

describe('sources that aren’t all known', () => {
  const found = (rows: string): { unknown: readonly string[]; asked: readonly string[] } => {
    const made = planOf('lowest_temp=25 C; occupancy=other', rows);
    return {
      unknown: made.isolation.parts.flatMap((part) => part.unknown),
      asked: items(made, 'place/feed-unknown').map((i) => `${i.equipment} ${i.severity}`),
    };
  };

  it.each([
    ['a panel that nothing feeds', 'P panel; ac_in=120/240; protect=yes', ['P'], ['P confirm']],
    ['a load that nothing feeds', 'L load; ac_in=120; protect=yes', ['L'], ['L confirm']],
    [
      'an inverter-charger of whose AC input nothing is said',
      'I inverter-charger; ac_out=120',
      ['I'],
      ['I confirm'],
    ],
    [
      'one whose AC input has a system and no feed',
      'I inverter-charger; ac_in=120; ac_out=120',
      ['I'],
      ['I confirm'],
    ],
    ['one whose AC input is unused', 'I inverter-charger; ac_in=unused; ac_out=120', [], []],
    [
      'one whose second input has a system and no feed',
      'I inverter-charger; ac_in=unused; ac_in_2=120; ac_out=120',
      ['I'],
      ['I confirm'],
    ],
    [
      'a drive on an AC supply that isn’t there',
      'D pump-drive; ac_in=240; protect=yes',
      ['D'],
      ['D confirm'],
    ],
    [
      'an inverter in step with nothing',
      'G grid-tie-inverter; ac_out=240; dc_inputs=1; max_dc_voltage=400',
      ['G'],
      ['G confirm'],
    ],
    ['DC inputs that are taken as fed', 'X charge-controller; max_dc_voltage=250', ['X'], []],
    [
      'a controller without a battery',
      'A array; voc_stc=40; modules_in_series=2; connects_to=X; protect=yes\nX charge-controller; max_dc_voltage=250',
      ['X'],
      [],
    ],
    ['a service', 'S service; ac_in=120/240', [], []],
    ['a generator', 'G generator; ac_out=120/240; protect=yes', [], []],
    ['a battery', 'B battery; battery_voltage=48; battery_chemistry=lfp; protect=yes', [], []],
  ])('%s', (_, rows, unknown, asked) => {
    expect(found(rows)).toEqual({ unknown, asked });
  });

  it('are told at every box of that part, and at no other', () => {
    const made = planOf(
      'occupancy=other',
      `S service; ac_in=120/240; place=House
       I inverter-charger; ac_in=120; ac_out=120; place=Barn
       P panel; connects_to=I; run_length=5 m; ac_in=120; place=Barn; protect=yes`,
    );
    expect(one(made, 'P:feeder').wiring.isolation.unknown).toBe(true);
    expect(one(made, 'I:ac-in').wiring.isolation.unknown).toBe(true);
    expect(one(made, 'S:service').wiring.isolation.unknown).toBe(false);
  });

  it('stand before every other confirm; then what may not protect', () => {
    const made = planOf(
      'occupancy=other',
      `P panel; ac_in=120/240; protect=yes; place=House
       ST control-circuit; control_voltage=12 V dc; run_length=40 m; place=House; outdoors=yes`,
    );
    const confirms = items(made, 'confirm').map((i) => i.code);
    expect(confirms[0]).toBe('place/feed-unknown');
    expect(confirms[1]).toBe('choose/may-not-protect');
  });

  it('stand before other sources that have to be confirmed, whatever their tags', () => {
    const made = planOf(
      'occupancy=other',
      `A charge-controller; max_dc_voltage=250; place=House
       P panel; ac_in=120/240; protect=yes; place=House`,
    );
    expect(
      items(made, 'confirm')
        .slice(0, 2)
        .map((i) => `${i.code} ${i.equipment}`),
    ).toEqual(['place/feed-unknown P', 'site/inputs-without-source A']);
  });

  it('are told at both ends of a control circuit that a box of no known kind supplies, first of all', () => {
    const made = planOf(
      'occupancy=other',
      `B other; place=Hall
       A control-circuit; connects_to=B; control_voltage=12 V dc; run_length=40 m; place=Tank; outdoors=yes
       S service; ac_in=120/240; place=House`,
    );
    expect(made.isolation.parts.map(({ unknown }) => unknown)).toEqual([['B'], []]);
    for (const where of ['A:terminals', 'B:terminals'])
      expect(one(made, where).wiring.isolation.unknown).toBe(true);
    expect(one(made, 'S:service').wiring.isolation.unknown).toBe(false);
    const [first] = items(made, 'confirm');
    expect([first?.code, first?.equipment]).toEqual(['place/feed-unknown', 'B']);
    expect(first?.message).toMatch(/^What feeds B, where a control circuit ends, isn’t known/);
  });

  it('is no matter of a control circuit that ends at what the list feeds', () => {
    const rows = (end: string): string =>
      `S service; ac_in=120/240; place=House
       P panel; ac_in=120/240; connects_to=S; run_length=9 m; place=House
       B other; place=House
       A control-circuit; connects_to=${end}; control_voltage=12 V dc; run_length=40 m; place=Tank; outdoors=yes`;
    expect(found(rows('P'))).toEqual({ unknown: [], asked: [] });
    expect(found(rows('B'))).toEqual({ unknown: ['B'], asked: ['B confirm'] });
  });

  it('are told where a connection can’t be understood, which is an item of its own', () => {
    expect(found('P panel; ac_in=120/240; protect=yes; connects_to=NOBODY')).toEqual({
      unknown: ['P'],
      asked: [],
    });
  });

  it('are asked under every basis', () => {
    for (const basis of ['nec-2017', 'nec-2020', 'nec-2023', 'iec; earthing=TN']) {
      const made = planOf(`basis=${basis}`, 'P panel; ac_in=120; protect=yes');
      expect(items(made, 'place/feed-unknown')).toHaveLength(1);
    }
  });
});

describe('where an enclosure has no ground bar', () => {
  const terminal = (where: string): string => JSON.stringify(one(plan, where).wiring.groundTerminal);

  it('a terminal is fitted, on which the cable’s conductor lands', () => {
    expect(terminal('W:output')).toMatch(/tower’s own electrode.*equipment grounding conductor/);
    expect(terminal('ST:terminals')).toMatch(/Never an electrode alone/);
    expect(terminal('A:output')).toMatch(/frame’s own electrode.*Look whether the cable brings/);
  });

  it('elsewhere there is a bar', () => {
    for (const where of ['SVC:service', 'MP:feeder', 'BAT:battery', 'CC:dc-in-1'])
      expect(terminal(where)).toBe('null');
  });
});
