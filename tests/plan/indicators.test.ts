import { describe, expect, it } from 'vitest';
import { catalogueOf, defaultsOf, faults, items, lightsOf, one, partLine, planOf } from './plan-of.js';

// rules.md section 4 and its table, and the lights of section 5, from the text of a list to its plan.

const CATALOGUE = catalogueOf(
  ...[2, 3, 4].map((n) =>
    partLine(`A${n}`, `channels=${n}; mcov_ac=640; up=900; listed_for=ungrounded|corner|impedance`),
  ),
  partLine('D', 'channels=2; mcov_dc=1000; up=900'),
);
const FOUR = catalogueOf(partLine('A4', 'channels=4; mcov_ac=640; up=900; listed_for=ungrounded|impedance'));
const lights = (
  facts: string,
  rows: string,
  where: string,
  conductor: string,
  catalogue = CATALOGUE,
): readonly string[] => lightsOf(planOf(facts, rows, { catalogue }), where, conductor);

describe('ungrounded AC of a solidly grounded system', () => {
  it('of the utility: lit while it is on, dark while nothing feeds it', () => {
    for (const conductor of ['L1', 'L2'])
      expect(lights('', 'S service; ac_in=120/240', 'S:service', conductor)).toEqual([
        'utility on: lit',
        'source off: dark',
      ]);
  });

  it('of an inverter or a generator: lit while the source is on', () => {
    const expected = ['source on: lit', 'source off: dark'];
    expect(lights('', 'I inverter-charger; ac_out=120/240', 'I:ac-out', 'L1')).toEqual(expected);
    expect(lights('', 'G generator; ac_out=120/240; protect=yes', 'G:output', 'L1')).toEqual(expected);
    expect(
      lights(
        '',
        'I inverter-charger; ac_out=120/240; place=House\nP panel; connects_to=I; ac_in=120/240; protect=yes',
        'P:feeder',
        'L1',
      ),
    ).toEqual(expected);
  });

  it('behind a transfer switch: by either', () => {
    const rows = `S service; ac_in=120/240; place=House
       T transfer-switch; connects_to=S
       G generator; connects_to=T; ac_out=120/240; place=House
       P panel; connects_to=T; ac_in=120/240; protect=yes`;
    expect(lights('', rows, 'P:feeder', 'L1')).toEqual([
      'utility on: lit',
      'source on: lit',
      'source off: dark',
    ]);
    const inverter = `S service; ac_in=120/240; place=House\nI inverter-charger; connects_to=S; ac_in=120/240; ac_out=120/240; place=House`;
    expect(lights('', inverter, 'I:ac-in', 'L1')).toEqual(['utility on: lit', 'source off: dark']);
  });

  it('a grid-tie inverter’s output is lit by the utility', () => {
    const rows = `S service; ac_in=120/240; place=House\nI grid-tie-inverter; connects_to=S; run_length=60 m; dc_inputs=1; max_dc_voltage=400; ac_out=240; place=House`;
    expect(lights('', rows, 'I:ac-out', 'L1')).toEqual(['utility on: lit', 'source off: dark']);
  });

  it('a high leg and a doubled channel are lit like the others', () => {
    const only2 = catalogueOf(partLine('A2', 'channels=2; mcov_ac=320; up=900'));
    expect(lights('', 'S service; ac_in=240/120 high-leg', 'S:service', 'L2', only2)).toEqual([
      'utility on: lit',
      'source off: dark',
    ]);
    expect(lights('', 'S service; ac_in=240/120 high-leg', 'S:service', 'L2 (doubled)', only2)).toEqual([
      'utility on: lit',
      'source off: dark',
    ]);
  });
});

describe('lines of a system that isn’t solidly grounded', () => {
  it.each([
    ['S service; ac_in=480 delta', 'S:service'],
    ['S service; ac_in=480Y/277; system_grounding=impedance', 'S:service'],
    ['S service; ac_in=480Y/277; system_grounding=none', 'S:service'],
  ])('%s: either, and one dark with the others brighter is a reason to call', (row, where) => {
    expect(lights('', row, where, 'L1')).toEqual(['source on: either', 'source off: dark']);
    const indicator = one(planOf('', row, { catalogue: CATALOGUE }), where).channels[0]?.indicator[0];
    expect(indicator?.because).toMatch(
      /one dark and the others brighter: a ground fault may be on the line, call/,
    );
  });

  it('iec IT: the same, N too', () => {
    for (const conductor of ['L1', 'N'])
      expect(lights('basis=iec; earthing=IT', 'S service; ac_in=400Y/230', 'S:service', conductor)).toEqual([
        'source on: either',
        'source off: dark',
      ]);
  });

  it.each(['impedance', 'none'])(
    '%s: a light that a ground fault could light isn’t called dark because of the part',
    (grounding) => {
      const row = `S service; ac_in=480Y/277; system_grounding=${grounding}`;
      const dim = (least: number): string =>
        catalogueOf(
          partLine(
            'A4',
            `channels=4; mcov_ac=640; up=900; listed_for=ungrounded|impedance; indicator_min_v=${least}`,
          ),
        );
      const of = (conductor: string, least: number): readonly string[] =>
        lights('', row, 'S:service', conductor, dim(least));
      const EITHER = ['source on: either', 'source off: dark'];
      // In a ground fault lines reach line to line, N line to neutral.
      expect([of('L1', 480), of('L1', 481)]).toEqual([EITHER, ['always: dark']]);
      const ofNeutral = grounding === 'impedance' ? ['source on: dark', 'source off: dark'] : EITHER;
      expect([of('N', 277), of('N', 278)]).toEqual([ofNeutral, ['always: dark']]);
    },
  );

  it.each([
    ['impedance', '480Y/277', 'N', /^an impedance holds N near ground/],
    ['none', '120/240', 'N', /^nothing ties N to ground/],
    ['none', '277', 'N', /^nothing ties N to ground/],
    ['none', '120', 'N', /^the system isn’t solidly tied to ground/],
    ['impedance', '480Y/277', 'L1', /^the system isn’t solidly tied to ground/],
  ])('%s, %s: what the light of %s tells', (grounding, system, conductor, told) => {
    const plan = planOf('', `S service; ac_in=${system}; system_grounding=${grounding}`, {
      catalogue: FOUR,
    });
    const { channels } = one(plan, 'S:service');
    expect(channels.find((c) => c.conductor === conductor)?.indicator[0]?.because).toMatch(told);
  });

  it('N of an ungrounded service floats like the lines', () => {
    expect(lights('', 'S service; ac_in=480Y/277; system_grounding=none', 'S:service', 'N')).toEqual([
      'source on: either',
      'source off: dark',
    ]);
  });
});

describe('grounded conductors of AC', () => {
  it('the corner-grounded phase is L2: always dark; the others are lit', () => {
    const row = 'S service; ac_in=240 delta; system_grounding=corner';
    expect(lights('', row, 'S:service', 'L2')).toEqual(['always: dark']);
    for (const line of ['L1', 'L3'])
      expect(lights('', row, 'S:service', line)).toEqual(['utility on: lit', 'source off: dark']);
  });

  it('N in a solid system: always dark', () => {
    expect(lights('', 'L load; ac_in=120; protect=yes', 'L:feeder', 'N')).toEqual(['always: dark']);
    expect(lights('basis=iec; earthing=TN', 'L load; ac_in=400Y/230; protect=yes', 'L:feeder', 'N')).toEqual([
      'always: dark',
    ]);
  });
});

describe('an array or a DC input', () => {
  const array = (converter: string, grounding: string): string =>
    `X ${converter}; dc_inputs=1; max_dc_voltage=400; ac_out=240; place=Hut; isolated=yes
     A array; connects_to=X; run_length=4 m; open_circuit_voltage=120${grounding}`;

  it.each([
    // Default on a charge controller: negative; on a grid-tie inverter or an inverter-charger: floating.
    ['charge-controller', '', 'negative'],
    ['charge-controller', '; dc_grounding=positive', 'positive'],
    ['charge-controller', '; dc_grounding=floating', 'floating'],
    ['grid-tie-inverter', '', 'floating'],
    ['grid-tie-inverter', '; dc_grounding=negative', 'negative'],
    ['inverter-charger', '', 'floating'],
  ])('on a %s%s: grounded pole %s', (converter, grounding, pole) => {
    const of = (conductor: string): readonly string[] =>
      lights('', array(converter, grounding), 'X:dc-in-1', conductor);
    const GROUNDED = ['always: dark', 'ground-fault device open: either'];
    const UNGROUNDED = ['sun: lit', 'night: dark'];
    const FLOATING = ['sun: either', 'night: dark'];
    const expected = {
      positive: [GROUNDED, UNGROUNDED],
      negative: [UNGROUNDED, GROUNDED],
      floating: [FLOATING, FLOATING],
    }[pole];
    expect([of('positive'), of('negative')]).toEqual(expected);
  });

  it('the grounded pole’s light can’t show whether the channel is used up', () => {
    const plan = planOf('', array('charge-controller', ''), { catalogue: CATALOGUE });
    const negative = one(plan, 'X:dc-in-1').channels.find((c) => c.conductor === 'negative');
    expect(negative?.indicator[0]?.because).toMatch(/can’t show whether the channel is used up/);
    expect(negative?.indicator[1]?.because).toMatch(/call and touch nothing/);
  });

  it('the same along the array’s run, at a combiner and at the array', () => {
    const rows = `X charge-controller; dc_inputs=1; place=Hut
       C combiner; connects_to=X; run_length=40 m
       A array; connects_to=C; run_length=40 m; open_circuit_voltage=120`;
    for (const where of ['A:output', 'C:output', 'X:dc-in-1']) {
      expect(lights('', rows, where, 'positive')).toEqual(['sun: lit', 'night: dark']);
      expect(lights('', rows, where, 'negative')).toEqual([
        'always: dark',
        'ground-fault device open: either',
      ]);
    }
  });

  const pair = (a: string, b: string): string =>
    `X charge-controller; dc_inputs=1; place=Hut
     A array; connects_to=X/1; run_length=40 m; open_circuit_voltage=120${a}
     B array; connects_to=X/1; run_length=40 m; open_circuit_voltage=120${b}`;

  it('sources on one input that are stated to disagree: a conflict, and recorded, not claimed', () => {
    const rows = pair('; dc_grounding=negative', '; dc_grounding=positive');
    const plan = planOf('', rows, { catalogue: CATALOGUE });
    expect(faults(plan)).toContain('site/grounding-differs');
    expect(items(plan, 'site/grounding-differs')[0]).toMatchObject({
      message:
        'A (negative) and B (positive) share the conductors of dc-in-1 of X, and the list grounds them differently.',
      equipment: 'B',
      column: 'dc_grounding',
    });
    for (const where of ['X:dc-in-1', 'A:output', 'B:output']) {
      expect(lights('', rows, where, 'negative')).toEqual(['sun: either', 'night: dark']);
      const { channels, grounding, wiring } = one(plan, where);
      expect(channels[0]?.indicator[0]?.because).toMatch(/^its grounding isn’t known: recorded/);
      expect(grounding).toBe('grounding not known');
      expect(wiring.measuring.bands[1]?.reads).toMatch(/which pole is grounded isn’t known/);
      expect(wiring.notes.some((n) => n.includes('is grounded'))).toBe(false);
    }
  });

  it('a source that states no grounding has that of what it is in parallel with', () => {
    const rows = pair('; dc_grounding=positive', '');
    for (const where of ['X:dc-in-1', 'A:output', 'B:output']) {
      expect(lights('', rows, where, 'negative')).toEqual(['sun: lit', 'night: dark']);
      expect(lights('', rows, where, 'positive')[0]).toBe('always: dark');
    }
    expect(defaultsOf(planOf('', rows, { catalogue: CATALOGUE }), 'dc_grounding')).toEqual([
      'dc_grounding isn’t stated for B: taken as positive, which decides which light is dark.',
    ]);
  });

  it('where it isn’t stated which of two sources feeds an input, each may, by its own grounding', () => {
    const rows = `X charge-controller; dc_inputs=2; place=Hut
       A array; connects_to=X; run_length=40 m; open_circuit_voltage=120; dc_grounding=positive
       B array; connects_to=X; run_length=40 m; open_circuit_voltage=120`;
    expect(lights('', rows, 'X:dc-in-1', 'negative')[0]).toBe('sun: either');
    // At its own port a source’s own row counts, whatever input it was given.
    expect(lights('', rows, 'A:output', 'negative')).toEqual(['sun: lit', 'night: dark']);
    expect(lights('', rows, 'A:output', 'positive')[0]).toBe('always: dark');
  });
});

describe('a battery bus', () => {
  const battery = (more: string): string =>
    `B battery; battery_voltage=48; battery_chemistry=lfp; protect=yes${more}`;

  it('the ungrounded pole is always lit, the grounded one (negative by default) always dark', () => {
    expect(lights('', battery(''), 'B:battery', 'positive')).toEqual(['always: lit']);
    expect(lights('', battery(''), 'B:battery', 'negative')).toEqual(['always: dark']);
    expect(lights('', battery('; dc_grounding=positive'), 'B:battery', 'positive')).toEqual(['always: dark']);
    expect(lights('', battery('; dc_grounding=positive'), 'B:battery', 'negative')).toEqual(['always: lit']);
  });

  it('batteries of one bus that disagree are a conflict; one that says nothing has the other’s', () => {
    const bus = (a: string, b: string): string =>
      `X charge-controller; max_dc_voltage=250; place=Hut; connects_to=B1
       B1 battery; battery_voltage=48; battery_chemistry=lfp; protect=yes; place=Hut${a}
       B2 battery; battery_voltage=48; battery_chemistry=lfp; connects_to=X; place=Hut${b}`;
    const differ = bus('; dc_grounding=negative', '; dc_grounding=floating');
    expect(items(planOf('', differ, { catalogue: CATALOGUE }), 'site/grounding-differs')).toHaveLength(1);
    expect(lights('', differ, 'B1:battery', 'positive')).toEqual(['always: either']);
    expect(lights('', bus('; dc_grounding=positive', ''), 'B1:battery', 'negative')).toEqual(['always: lit']);
    expect(lights('', bus('', '; dc_grounding=positive'), 'B1:battery', 'negative')).toEqual(['always: lit']);
  });

  it('floating: either, recorded at commissioning', () => {
    for (const pole of ['positive', 'negative'])
      expect(lights('', battery('; dc_grounding=floating'), 'B:battery', pole)).toEqual(['always: either']);
  });
});

describe('a turbine', () => {
  const turbine = (more: string): string =>
    `W wind-turbine; connects_to=X; run_length=4 m; place=Tower; ${more}
     X charge-controller; dc_inputs=1; max_dc_voltage=400; place=Hut`;

  it('its phases flicker at the generator’s frequency (12 poles, 300 rpm: 30 Hz) and are dark while it stands still', () => {
    const rows = turbine('output=three-phase; open_circuit_voltage=100; poles=12; rpm=300');
    for (const where of ['W:output', 'X:dc-in-1'])
      for (const phase of ['L1', 'L2', 'L3'])
        expect(lights('', rows, where, phase)).toEqual(['turning: flickers', 'still: dark']);
    expect(
      one(planOf('', rows, { catalogue: CATALOGUE }), 'W:output').channels[0]?.indicator[0]?.because,
    ).toMatch(/30 Hz/);
  });

  it('a DC turbine’s are as an array’s on that converter, by the wind', () => {
    const rows = turbine('output=dc; open_circuit_voltage=100');
    expect(lights('', rows, 'X:dc-in-1', 'positive')).toEqual(['turning: lit', 'still: dark']);
    expect(lights('', rows, 'X:dc-in-1', 'negative')).toEqual([
      'always: dark',
      'ground-fault device open: either',
    ]);
    expect(
      lights('', rows.replace('output=dc', 'output=dc; dc_grounding=floating'), 'X:dc-in-1', 'positive'),
    ).toEqual(['turning: either', 'still: dark']);
  });

  it('sun and wind on one input: neither night nor still air makes it dark', () => {
    const rows = `${turbine('output=dc; open_circuit_voltage=100').replace('connects_to=X', 'connects_to=X/1')}
       A array; connects_to=X/1; run_length=4 m; open_circuit_voltage=120`;
    expect(lights('', rows, 'X:dc-in-1', 'positive')).toEqual(['sun: lit', 'turning: lit']);
  });
});

describe('a control circuit', () => {
  const circuit = (more: string): string => `C control-circuit; outdoors=yes; ${more}`;

  it.each([
    ['control_voltage=24 V dc; dc_grounding=negative', 'positive', ['source on: lit', 'source off: dark']],
    ['control_voltage=24 V dc; dc_grounding=negative', 'negative', ['always: dark']],
    ['control_voltage=24 V dc; dc_grounding=positive', 'negative', ['source on: lit', 'source off: dark']],
    ['control_voltage=24 V dc; dc_grounding=floating', 'positive', ['source on: either', 'source off: dark']],
    ['control_voltage=24 V dc', 'positive', ['source on: either', 'source off: dark']],
    ['control_voltage=24 V ac', 'L1', ['source on: either', 'source off: dark']],
    ['control_voltage=24 V ac; dc_grounding=negative', 'N', ['always: dark']],
  ])('%s: %s', (more, conductor, expected) => {
    expect(lights('', circuit(more), 'C:terminals', conductor)).toEqual(expected);
  });
});

describe('the part itself', () => {
  it('a flag needs no voltage; its wording is the catalogue’s', () => {
    const flag = (more: string): string =>
      catalogueOf(partLine('F', `channels=2; mcov_ac=150; up=600; indicator=flag${more}`));
    const service = 'S service; ac_in=120/240';
    const told = flag('; good_flag=green; used_flag=red');
    expect(lights('', service, 'S:service', 'L1', told)).toEqual(['always: good']);
    const plan = planOf('', service, { catalogue: told });
    expect(one(plan, 'S:service').partDetails).toMatchObject({ goodFlag: 'green', usedFlag: 'red' });
    expect(items(plan, 'choose/flag-not-told')).toEqual([]);
    // Nobody could tell a used-up flag from a good one.
    for (const more of ['', '; good_flag=green', '; used_flag=red'])
      expect(items(planOf('', service, { catalogue: flag(more) }), 'choose/flag-not-told')).toMatchObject([
        { severity: 'confirm', who: 'office' },
      ]);
  });

  it('no indicator shows nothing, where the basis allows one', () => {
    const none = catalogueOf(partLine('N', 'channels=2; mcov_ac=150; up=600; indicator=none'));
    expect(lights('basis=nec-2020', 'S service; ac_in=120/240', 'S:service', 'L1', none)).toEqual([
      'always: dark',
    ]);
  });

  it('a light below its least voltage is dark because of the part', () => {
    const dim = (least: number): string =>
      catalogueOf(
        partLine('D', `channels=2; mcov_dc=75; up=400; indicator_min_v=${least}`),
        partLine('A', `channels=2; mcov_ac=150; up=600; indicator_min_v=${least}`),
      );
    const battery = 'B battery; battery_voltage=48; battery_chemistry=lfp; protect=yes';
    expect(lights('', battery, 'B:battery', 'positive', dim(48))).toEqual(['always: lit']);
    expect(lights('', battery, 'B:battery', 'positive', dim(49))).toEqual(['always: dark']);
    expect(
      one(planOf('', battery, { catalogue: dim(49) }), 'B:battery').channels[0]?.indicator[0],
    ).toMatchObject({
      cause: 'below-indicator-voltage',
    });
    // The grounded pole is dark anyway, and says why.
    expect(
      one(planOf('', battery, { catalogue: dim(49) }), 'B:battery').channels[1]?.indicator[0],
    ).toMatchObject({
      cause: 'grounded-conductor',
    });
    expect(lights('', 'S service; ac_in=120/240', 'S:service', 'L1', dim(120))).toEqual([
      'utility on: lit',
      'source off: dark',
    ]);
    expect(lights('', 'S service; ac_in=120/240', 'S:service', 'L1', dim(121))).toEqual(['always: dark']);
  });
});
