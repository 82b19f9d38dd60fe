import { describe, expect, it } from 'vitest';
import type { EnglishPlan } from '../in-english.js';
import { at, catalogueOf, faults, items, one, partLine, planOf } from './plan-of.js';

// rules.md section 2, "Choice", from the text of a list and a catalogue to the plan. Cases are our own.

const LOAD = 'L load; ac_in=120; protect=yes; impulse_withstand=6 kV; fault_current=1 kA; place=House';
const A = (name: string, facts = ''): string => partLine(name, `channels=2; mcov_ac=150; up=600; ${facts}`);
const chosen = (rows: string, ...lines: readonly string[]): string | null =>
  one(planOf('', rows, { catalogue: catalogueOf(...lines) }), 'L:feeder').part;

describe('the order of choice', () => {
  it('first those without a shortfall', () => {
    const rows = LOAD.replace('6 kV', '1000');
    expect(chosen(rows, A('SHORT', 'mcov_ac=150; up=900'), A('GOOD', 'mcov_ac=320; up=500'))).toBe('GOOD');
  });

  it('then at an AC end of a run outdoors or between buildings 10 kA (common practice, no source)', () => {
    const lines = [
      A('X', 'mcov_ac=150; in_ka=5'),
      A('Y', 'mcov_ac=175; in_ka=10'),
      A('Z', 'mcov_ac=200; in_ka=20'),
    ];
    const rows = (load: string, panel: string): string =>
      `${LOAD.replace('; place=House', '')}; connects_to=P; run_length=5 m; ${load}\nP panel; ac_in=120; ${panel}`;
    const plan = (load: string, panel: string): EnglishPlan =>
      planOf('', rows(load, panel), { catalogue: catalogueOf(...lines) });
    const part = (load: string, panel: string): string | null => one(plan(load, panel), 'L:feeder').part;
    expect(part('place=House', 'place=House')).toBe('X');
    expect(part('place=House; outdoors=yes', 'place=House')).toBe('Y');
    expect(part('place=House', 'place=House; outdoors=yes')).toBe('Y');
    expect(part('place=Barn', 'place=House')).toBe('Y');
    const away = one(plan('place=Barn', 'place=House'), 'L:feeder');
    expect(away.rejected).toContainEqual({
      part: 'X',
      rule: 'choice',
      because:
        'Y goes before it: its In is as high as an AC end of a run outdoors or between buildings asks first (common practice)',
    });
    expect(away.rejected).toContainEqual({
      part: 'Z',
      rule: 'choice',
      because: 'Y goes before it: its MCOV is lower, so it clamps sooner',
    });
    // None of so much: the choice goes on without.
    expect(
      one(
        planOf('', rows('place=Barn', 'place=House'), { catalogue: catalogueOf(...lines.slice(0, 1)) }),
        'L:feeder',
      ).part,
    ).toBe('X');
  });

  it('where nobody says whether the run leaves the building the stronger is taken, and no place is asked for that', () => {
    const lines = catalogueOf(A('X', 'mcov_ac=150; in_ka=5'), A('Y', 'mcov_ac=175; in_ka=10'));
    const rows = (load: string, panel: string): string =>
      `L load; ac_in=120; protect=yes; impulse_withstand=6 kV; fault_current=1 kA; connects_to=P; run_length=50 m; ${load}
       P panel; ac_in=120; ${panel}`;
    const plan = (load: string, panel: string): EnglishPlan =>
      planOf('occupancy=other', rows(load, panel), { catalogue: lines });
    expect(one(plan('', 'building=House'), 'L:feeder').part).toBe('X');
    expect(one(plan('place=Shed', ''), 'L:feeder').part).toBe('Y');
    // Whether the choice turns on it or not, the places that are asked for are the same.
    const asked = (catalogue: string): readonly string[] =>
      items(planOf('occupancy=other', rows('place=Shed; outdoors=no', ''), { catalogue }), 'fact/place').map(
        (i) => i.message,
      );
    expect(asked(lines)).toEqual(asked(catalogueOf(A('X', 'mcov_ac=150; in_ka=5'))));
  });

  it('nor on DC, nor at a control circuit', () => {
    const dc = `BAT battery; battery_voltage=48; battery_chemistry=lfp; fault_current=1 kA; protect=yes; outdoors=yes
      CC charge-controller; connects_to=BAT; run_length=2 m; place=Hut`;
    const stock = catalogueOf(
      partLine('X', 'channels=2; mcov_dc=75; mcov_ac=75; up=400; in_ka=5'),
      partLine('Y', 'channels=2; mcov_dc=80; mcov_ac=80; up=400; in_ka=10'),
    );
    expect(one(planOf('', dc, { catalogue: stock }), 'BAT:battery').part).toBe('X');
    const control =
      'CTL control-circuit; control_voltage=24 V ac; outdoors=yes; protect=yes; run_length=50 m; connects_to=L\nL load; ac_in=120; place=House';
    expect(one(planOf('', control, { catalogue: stock }), 'CTL:terminals').part).toBe('X');
  });

  it('the figure is a setting', () => {
    const rows = `${LOAD}; outdoors=yes; connects_to=P; run_length=5 m\nP panel; ac_in=120; place=House`;
    const settings = { thresholds: { outdoorEndNominalCurrent: 5_000 } };
    const lines = catalogueOf(A('X', 'mcov_ac=150; in_ka=5'), A('Y', 'mcov_ac=175; in_ka=10'));
    expect(one(planOf('', rows, { catalogue: lines, settings }), 'L:feeder').part).toBe('X');
  });

  it('then the lowest MCOV, whatever its level', () => {
    expect(chosen(LOAD, A('X', 'mcov_ac=175; up=500'), A('Y', 'mcov_ac=150; up=800'))).toBe('Y');
  });

  it('outdoors then 4X; indoors not', () => {
    const lines = [A('X', 'enclosure=3R; up=500'), A('Y', 'enclosure=4X; up=800')];
    expect(chosen(`${LOAD}; outdoors=yes`, ...lines)).toBe('Y');
    expect(chosen(LOAD, ...lines)).toBe('X');
  });

  it('then the lowest Up', () => {
    expect(chosen(LOAD, A('X', 'up=700'), A('Y', 'up=600'))).toBe('Y');
  });

  it('then the highest In', () => {
    expect(chosen(LOAD, A('X', 'in_ka=10'), A('Y', 'in_ka=20'))).toBe('Y');
  });

  it('then the fewest housings', () => {
    const rows = LOAD.replace('ac_in=120', 'ac_in=208Y/120');
    expect(chosen(rows, A('X', 'channels=2'), A('Y', 'channels=3'))).toBe('Y');
  });

  it('then the lowest price, if given; then the part number in natural order', () => {
    expect(chosen(LOAD, A('X', 'price=90'), A('Y', 'price=80'))).toBe('Y');
    expect(chosen(LOAD, A('X', ''), A('Y', 'price=80'))).toBe('Y');
    expect(chosen(LOAD, A('X-10', ''), A('X-9', ''))).toBe('X-9');
    expect(chosen(LOAD, A('X-9', ''), A('X-10', ''))).toBe('X-9');
  });
});

describe('every rejected part keeps its reason', () => {
  it('names the figure and what is asked', () => {
    const plan = planOf(
      'occupancy=other',
      'A array; open_circuit_voltage=187; protect=yes; isc_stc=10; strings_in_parallel=1',
      {
        catalogue: catalogueOf(
          partLine('SWIFT', 'channels=2; mcov_dc=150; up=600'),
          partLine('THRUSH', 'channels=2; mcov_dc=190; up=700'),
          partLine('ROOK', 'channels=2; mcov_dc=350; up=1200'),
          partLine('ROOK-ROOM', 'channels=2; mcov_dc=350; up=1200; enclosure=1; in_ka=1'),
          partLine('THRUSH-3', 'channels=3; mcov_dc=190; up=700'),
        ),
      },
    );
    expect(one(plan, 'A:output').part).toBe('THRUSH');
    expect(one(plan, 'A:output').rejected).toEqual([
      { part: 'SWIFT', rule: 'rate/mcov', because: 'MCOV 150 V < 187 V' },
      {
        part: 'ROOK',
        rule: 'choice',
        because: 'THRUSH goes before it: its MCOV is lower, so it clamps sooner',
      },
      { part: 'ROOK-ROOM', rule: 'rate/discharge', because: 'In 1 kA < 3 kA' },
      { part: 'ROOK-ROOM', rule: 'rate/enclosure', because: 'enclosure 1 isn’t for outdoors' },
      { part: 'THRUSH-3', rule: 'rate/channels', because: '3 channels for 2 conductors leave 1 unwired' },
    ]);
  });

  it('none left: one conflict with the nearest miss, which misses the fewest rules by the least', () => {
    const plan = planOf('', LOAD.replace('fault_current=1 kA', 'fault_current=60 kA'), {
      catalogue: catalogueOf(
        A('FAR', 'sccr_ka=10'),
        A('NEAR', 'sccr_ka=50'),
        A('WORSE', 'sccr_ka=55; in_ka=1'),
      ),
    });
    expect(one(plan, 'L:feeder')).toMatchObject({ part: null, figures: null, partDetails: null });
    expect(items(plan, 'conflict').map((i) => [i.code, i.message])).toEqual([
      [
        'choose/none-fits',
        'No part of the catalogue fits L feeder, which asks for MCOV 138 V ac, In 3 kA, SCCR 60 kA. The nearest miss: NEAR (SCCR 50 kA < 60 kA).',
      ],
    ]);
    expect(plan.orders).toEqual([]);
  });

  it('removing every fitting part gives an open item, not a crash; so does an empty catalogue', () => {
    for (const lines of [[A('D', 'mcov_ac=; mcov_dc=20')], []]) {
      const plan = planOf('', LOAD, {
        catalogue: catalogueOf(...lines, ...(lines.length === 0 ? [A('', '')] : [])),
      });
      expect(faults(plan)).toEqual(['choose/none-fits']);
    }
  });
});

describe('a part chosen by hand', () => {
  const stock = catalogueOf(A('ALDER'), A('ELM', 'mcov_ac=320'), A('ASH', 'mcov_ac=100'));
  const byHand = (part: string): ReturnType<typeof planOf> =>
    planOf('', `${LOAD}; protector=${part}`, { catalogue: stock });

  it('passes the same rules, and goes before the best', () => {
    const plan = byHand('ELM');
    expect(one(plan, 'L:feeder')).toMatchObject({ part: 'ELM', byHand: true });
    expect(faults(plan)).toEqual([]);
    expect(plan.orders).toEqual([{ part: 'ELM', quantity: 1 }]);
  });

  it('that fails is kept with a conflict that says on what', () => {
    const plan = byHand('ASH');
    expect(one(plan, 'L:feeder').part).toBe('ASH');
    expect(items(plan, 'conflict').map((i) => [i.code, i.line, i.column])).toEqual([
      ['choose/by-hand-fails', 2, 'protector'],
    ]);
    expect(items(plan, 'conflict')[0]?.message).toMatch(/ASH.*MCOV 100 V < 138 V/);
  });

  it('that isn’t in the catalogue is a conflict', () => {
    expect(faults(byHand('NOPE'))).toEqual(['choose/by-hand-unknown']);
  });

  it('counts for every placement of its row', () => {
    const plan = planOf('', 'INV inverter-charger; ac_in=120/240; ac_out=120/240; protector=ELM', {
      catalogue: stock,
    });
    expect(plan.protectors.map((p) => p.part)).toEqual(['ELM', 'ELM']);
  });

  it('is named in any case; of two names that differ in case the one as typed', () => {
    const two = catalogueOf(A('elm', 'up=900'), A('ELM', 'mcov_ac=320'));
    expect(one(planOf('', `${LOAD}; protector=ELM`, { catalogue: two }), 'L:feeder').part).toBe('ELM');
    expect(one(byHand('elm'), 'L:feeder').part).toBe('ELM');
  });
});

describe('without a catalogue', () => {
  it('everything is placed and rated, without parts: one missing item', () => {
    const plan = planOf('', `${LOAD}\nSVC service; ac_in=120/240; place=House`, { catalogue: null });
    expect(plan.protectors.map((p) => [p.part, p.required.mcov])).toEqual([
      [null, 138],
      [null, 138],
    ]);
    expect(faults(plan)).toEqual(['choose/no-catalogue']);
    expect(one(plan, 'SVC:service').channels.map((c) => c.conductor)).toEqual(['L1', 'L2']);
    expect(one(plan, 'SVC:service').wiring.measuring.bands[0]?.high).toBe(127);
  });

  it('and where nothing is placed nothing is missing', () => {
    expect(faults(planOf('', 'L load; ac_in=120', { catalogue: null }))).toEqual([]);
  });
});

describe('housings and orders', () => {
  it('a placement that needs two housings makes two with the same ports and part, and the order counts both', () => {
    const plan = planOf('', LOAD.replace('ac_in=120', 'ac_in=208Y/120'), {
      catalogue: catalogueOf(A('DUO')),
    });
    expect(at(plan, 'L:feeder').map((p) => [p.tag, p.part, p.housing])).toEqual([
      ['P-1', 'DUO', { number: 1, of: 2 }],
      ['P-2', 'DUO', { number: 2, of: 2 }],
    ]);
    expect(at(plan, 'L:feeder').map((p) => p.required)).toEqual([
      at(plan, 'L:feeder')[0]?.required,
      at(plan, 'L:feeder')[0]?.required,
    ]);
    expect(plan.orders).toEqual([{ part: 'DUO', quantity: 2 }]);
  });

  it('orders are in natural order of parts', () => {
    const plan = planOf(
      'lowest_temp=25 C',
      `${LOAD}\nB battery; battery_voltage=48; battery_chemistry=lfp; protect=yes`,
      {
        catalogue: catalogueOf(A('P-10'), partLine('P-9', 'channels=2; mcov_dc=75; up=400')),
      },
    );
    expect(plan.orders.map((o) => o.part)).toEqual(['P-9', 'P-10']);
  });
});

describe('the lead as planned against the smallest earth lead', () => {
  const IEC = 'basis=iec; earthing=TN; lightning_protection=none';
  const load = (basis: string): string => (basis === 'iec' ? LOAD.replace('ac_in=120', 'ac_in=230') : LOAD);
  // IEC 60364-5-53:2019 cl. 534.4.10 (value from memory); NEC 242.28; 10 AWG is 5.26 mm2 (ASTM B258-18).
  it.each([
    ['iec', '', 'T2', '10 AWG (5.26 mm2)', '6 mm2'],
    ['iec', '10 AWG', 'T2', '10 AWG (5.26 mm2)', '6 mm2'],
    ['iec', '4 mm2', 'T2', '4 mm2', '6 mm2'],
    ['iec', '6 mm2', 'T2', undefined, ''],
    ['iec', '8 AWG', 'T2', undefined, ''],
    ['iec', '10 mm2', 'T1', '10 mm2', '16 mm2'],
    ['iec', '16 mm2', 'T1', undefined, ''],
    ['nec-2023', '', '', undefined, ''],
    ['nec-2023', '14 AWG', '', undefined, ''],
    // A line lead that is thicker is planned in its stead.
    ['nec-2023', '16 AWG', '', undefined, ''],
  ])('%s, lead %s, class %s', (basis, gauge, iecClass, planned, least) => {
    const facts = basis === 'iec' ? IEC : `basis=${basis}`;
    const line = partLine('P', `channels=2; mcov_ac=320; up=900; lead_gauge=${gauge}; iec_class=${iecClass}`);
    const plan = planOf(facts, load(basis), { catalogue: catalogueOf(line) });
    const thin = items(plan, 'choose/lead-thin');
    const notes = one(plan, 'L:feeder').wiring.notes.filter((n) => n.startsWith('Earth lead of at least'));
    expect(one(plan, 'L:feeder').part).toBe('P');
    expect(thin.map((i) => i.found)).toEqual(planned === undefined ? [] : [planned]);
    expect(notes).toEqual(
      planned === undefined ? [] : [`Earth lead of at least ${least}, not the ${planned} that is planned.`],
    );
  });

  it('asks for the lead of class T1 where lightning protection asks it of every part', () => {
    const line = partLine('P', 'channels=2; mcov_ac=320; up=900; lead_gauge=6 mm2; iec_class=T2');
    const plan = planOf(IEC.replace('=none', '=attached'), load('iec'), { catalogue: catalogueOf(line) });
    expect(items(plan, 'choose/lead-thin').map((i) => i.expected)).toEqual(['16 mm2 or more']);
  });
});

describe('a part whose level is above the withstand', () => {
  // IEC 60664-1 Table F.1, category II, up to 150 V line to neutral: 1500 V, so that 80 % of it are 1200 V (IEC 60364-5-53 cl. 534.4.4.2).
  const load = (own: string): string =>
    `L load; ac_in=120; protect=yes; fault_current=1 kA; place=House; lead_length=0.01 m${own}`;
  const shop = (up: number): string => catalogueOf(partLine('ONLY', `channels=2; mcov_ac=150; up=${up}`));
  const codes = (plan: EnglishPlan): readonly string[] =>
    plan.openItems.map((i) => i.code).filter((code) => /shortfall|may-not-protect|none-fits/.test(code));

  it.each([
    ['within the aim', '', 1000, []],
    ['above 80 % of an assumed one: an aim is missed', '', 1400, ['choose/shortfall']],
    ['above all of an assumed one: it may not protect', '', 1800, ['choose/may-not-protect']],
    ['above 80 % of a stated one', '; impulse_withstand=1500 V', 1400, ['choose/shortfall']],
    ['above a stated one: it is no choice', '; impulse_withstand=1500 V', 1800, ['choose/none-fits']],
  ] as const)('%s', (_, own, up, expected) => {
    expect(codes(planOf('', load(own), { catalogue: shop(up) }))).toEqual(expected);
  });

  it('that may not protect stands before every default, and says so', () => {
    const plan = planOf('', load(''), { catalogue: shop(1800) });
    const [feed, first] = plan.openItems.filter((i) => i.severity === 'confirm');
    expect(feed?.code).toBe('place/feed-unknown');
    expect(first?.code).toBe('choose/may-not-protect');
    expect(first?.message).toMatch(/may not protect: .*> the whole assumed withstand of 1500 V/);
    expect(plan.openItems.some((i) => i.code.startsWith('default/'))).toBe(true);
  });

  it('says whether shorter leads would do, and how short they have to be', () => {
    const said = (up: number, length: string): string => {
      const plan = planOf('', load('').replace('0.01 m', length), { catalogue: shop(up) });
      const [item] = items(plan, 'choose/may-not-protect');
      const limit = one(plan, 'L:feeder').wiring.leadLengthLimit;
      // A whole number of inches, never above the limit of the plan.
      const inches = /at most (\d+)\sin,/.exec(item?.message ?? '')?.[1];
      expect(inches === undefined).toBe(limit === 0);
      expect(Number(inches ?? 0) * 0.0254).toBeLessThanOrEqual(limit);
      return item?.message ?? '';
    };
    expect(said(1800, '0.3 m')).toMatch(/The level alone is above it/);
    // 1400 V bear leads of 100 V: own case, worked out by `longestLead`.
    expect(said(1400, '0.5 m')).toMatch(/With leads of at most .* it isn’t above it\.$/);
  });
});
