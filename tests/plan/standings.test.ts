import { describe, expect, it } from 'vitest';
import type { EnglishPlan } from '../in-english.js';
import { catalogueOf, items, partLine, planOf, type PlanOptions } from './plan-of.js';

// How a job stands to the rules of its basis, from the text of a list to the plan. Cases are our own.

/** `standing at PLACES: because`, one line an entry, of one rule. */
function said(plan: EnglishPlan, rule: string): readonly string[] {
  return plan.standings
    .filter((s) => s.rule === rule)
    .map(({ standing, at, because }) => {
      const where = at.length === 0 ? standing : `${standing} at ${at.join(', ')}`;
      return because === null ? where : `${where}: ${because}`;
    });
}

const SVC = 'SVC service; ac_in=120/240; place=House';
const PARTS = catalogueOf(
  partLine('FIT', 'channels=2; mcov_ac=150; up=600'),
  partLine('LOW', 'channels=2; mcov_ac=120; up=600'),
  partLine('DIM', 'channels=2; mcov_ac=150; up=700; indicator='),
  partLine('PAIR', 'channels=2; mcov_dc=600; up=2000; sccr_dc_ka=20'),
);
const under = (facts: string, rows: string, options: PlanOptions = { catalogue: PARTS }): EnglishPlan =>
  planOf(facts, rows, options);
const settled = `${SVC}; fault_current=10 kA`;

describe('placement rules', () => {
  it.each([
    [
      'one on which a protector rests',
      'occupancy=dwelling',
      settled,
      'place/service',
      ['met at P-1: required'],
    ],
    [
      'one that finds nothing that it looks at',
      'basis=nec-2023',
      'L load; ac_in=120; place=House; protect=yes',
      'place/service',
      ['does not apply: no service is on the list'],
    ],
    [
      'one that finds none of several kinds',
      'basis=iec; earthing=TN',
      'L load; ac_in=230; place=House; protect=yes',
      'place/dc-input',
      [
        'does not apply: no charge controller, grid tie inverter, inverter charger or pump drive is on the list',
      ],
    ],
    [
      'one that finds the kind without the port',
      'basis=iec; earthing=TN',
      'I inverter-charger; ac_out=230; place=House',
      'place/dc-input',
      [
        'does not apply: no charge controller, grid tie inverter, inverter charger or pump drive on the list has a port that it looks at',
      ],
    ],
    [
      'one that says no at a port that another rule protects',
      'occupancy=other',
      `${settled}; connects_to=\nMP panel; ac_in=120/240; connects_to=SVC; run_length=10 m; place=House; protect=yes`,
      'place/feeder',
      ['does not apply at MP feeder: its building holds no dwelling or sleeping unit, so 215.18 doesn’t ask'],
    ],
    [
      'one that can’t tell, as a fact isn’t known',
      'occupancy=other',
      `${settled}\nBARN panel; ac_in=120/240; connects_to=SVC; place=Barn`,
      'place/outbuilding',
      ['open at BARN feeder: the length of the feeder from SVC in another building isn’t stated'],
    ],
    [
      'one that put nothing, by common practice, where nothing is looked at: no clause of the code cycle',
      '',
      settled,
      'place/battery',
      [],
    ],
  ])('%s', (_, facts, rows, rule, expected) => {
    expect(said(under(facts, rows), rule)).toEqual(expected);
  });

  it.each([
    ['protect=no', 'place/asked', 'met at CC dc-in-1: the list says protect "no"'],
    [
      'worth_protecting=no',
      'place/far-end-exempt',
      'met at CC dc-in-1: the list says that nothing here is worth protecting',
    ],
  ])('%s: the rule that waives is met where nothing is placed', (cell, rule, expected) => {
    const rows = `CC charge-controller; dc_inputs=1; max_dc_voltage=250; place=Hut; ${cell}
       A array; connects_to=CC; run_length=4 m; open_circuit_voltage=120`;
    expect(said(under('', rows), rule)).toContain(expected);
  });

  it('is open where a row that a connection names can’t be planned: a run may be missing', () => {
    const rows = `${settled}
       MP -; connects_to=SVC; run_length=3 m; ac_in=120/240; place=House
       P2 panel; connects_to=MP; run_length=60 m; ac_in=120/240; place=Shed`;
    const plan = under('occupancy=other', rows);
    const open = 'open at P2 feeder: a connection of it can’t be used as it stands on the list';
    expect(said(plan, 'place/long-run')).toContain(open);
    expect(said(plan, 'place/outbuilding')).toContain(open);
  });

  it('a rule that asked is open until a part is chosen', () => {
    const plan = under('', settled, { catalogue: null });
    expect(said(plan, 'place/service')).toEqual(['open at P-1: no part is chosen']);
    expect(said(plan, 'rate/mcov')).toEqual(['open at P-1: no part is chosen']);
    expect(said(plan, 'wire/conductors')).toEqual(['open at P-1: no part is chosen']);
  });
});

describe('225.42 at the workshop of a house', () => {
  const rows = `${settled}
    MP panel; ac_in=120/240; connects_to=SVC; run_length=34 ft; place=House
    WP panel; ac_in=120/240; connects_to=MP; run_length=130 ft; place=Workshop`;
  const NOT =
    'does not apply at WP feeder: its building holds no dwelling or sleeping unit, so 225.42 doesn’t ask';
  const apart = (plan: EnglishPlan): readonly string[] =>
    plan.otherClauses.filter(({ rule }) => rule === 'place/feeder').map(({ clause }) => clause);

  it('doesn’t apply beside 215.18, which asks in the house, where common practice puts a protector', () => {
    const plan = under('occupancy=dwelling', rows);
    expect(plan.protectors.flatMap(({ ports }) => ports.map((p) => p.equipment))).toContain('WP');
    expect(said(plan, 'place/feeder')).toEqual([expect.stringMatching(/^met at P-\d: required$/), NOT]);
    expect(apart(plan)).toEqual(['225.42']);
  });

  it('nor where nothing is put at the workshop', () => {
    const plan = under('occupancy=dwelling', rows.replace('130 ft', '20 ft'));
    expect(said(plan, 'place/feeder')).toEqual([expect.stringMatching(/^met at P-\d: required$/), NOT]);
    expect(apart(plan)).toEqual(['225.42']);
  });

  it('is met where the other building holds a dwelling unit', () => {
    const plan = under('occupancy=dwelling', `${rows}; building_occupancy=dwelling`);
    expect(said(plan, 'place/feeder')).toEqual([expect.stringMatching(/^met at P-\d, P-\d: required$/)]);
    expect(apart(plan)).toEqual([]);
  });
});

describe('230.67 at a workshop', () => {
  const NOT =
    '230.67 doesn’t ask at the service of a building that holds no dwelling or sleeping unit: one there is common practice';
  it('doesn’t apply, with its reason, whether a part is chosen or not', () => {
    for (const basis of ['nec-2020', 'nec-2023'])
      for (const catalogue of [PARTS, null]) {
        const plan = under(`basis=${basis}; occupancy=other`, settled, { catalogue });
        expect(said(plan, 'place/service')).toEqual([`does not apply at P-1: ${NOT}`]);
        const cited = plan.clauses.filter((c) => c.rule === 'place/service');
        expect(cited.map((c) => c.clause)).toEqual(['230.67', '']);
        const [protector] = plan.protectors;
        expect(protector?.strength).toBe('recommended');
        expect(JSON.stringify(protector?.reasons)).not.toContain('230.67');
        expect(JSON.stringify(protector?.calculations)).not.toContain('230.67');
      }
  });

  it('doesn’t apply where the list waives the protector either', () => {
    const plan = under('occupancy=other', `${settled}; protect=no`);
    expect(plan.protectors).toEqual([]);
    expect(said(plan, 'place/service')).toEqual([
      'does not apply at SVC service: the list says protect "no"',
    ]);
  });

  it.each([
    ['nec-2020', 'dwelling', ['HP']],
    ['nec-2023', 'dwelling', ['HP']],
    ['nec-2023', 'sleeping', ['HP']],
    ['nec-2020', 'sleeping', []],
    ['nec-2023', 'other', []],
  ])('%s, a building that holds %s fed through the barn: the authority is named', (basis, unit, units) => {
    const rows = `${settled}
      MSB panel; ac_in=120/240; connects_to=SVC; run_length=30 ft; place=Barn
      HP panel; ac_in=120/240; connects_to=MSB; run_length=160 ft; place=Farmhouse; building_occupancy=${unit}`;
    const plan = under(`basis=${basis}; occupancy=other`, rows);
    const [only, ...more] = said(plan, 'place/service');
    expect(more).toEqual([]);
    expect(only).toMatch(/^does not apply at P-\d: /);
    if (units.length === 0) expect(only).toContain('230.67 doesn’t ask');
    else expect(only).toMatch(/feeds such a unit through HP: the authority having jurisdiction says/);
    // What is taken for granted is asked for: a sentence alone would pass for a decision.
    const asked = items(plan, 'place/service-of-unit-elsewhere');
    expect(asked.map(({ severity, equipment, who }) => [severity, equipment, who])).toEqual(
      units.length === 0 ? [] : [['confirm', 'SVC', 'office']],
    );
  });

  it('is met at a dwelling, and there is none of it before 2020', () => {
    expect(said(under('occupancy=dwelling', settled), 'place/service')).toEqual(['met at P-1: required']);
    const before = under('basis=nec-2017; occupancy=other', settled);
    expect(said(before, 'place/service')).toEqual(['met at P-1: recommended, not required']);
    expect(JSON.stringify(before)).not.toContain('230.67');
  });
});

describe('rules about ratings and parts', () => {
  const standing = (row: string, rule: string, facts = 'occupancy=other'): readonly string[] =>
    said(under(facts, row), rule);

  it('calls no short-circuit rating met where the fault current isn’t known', () => {
    expect(standing(settled, 'rate/short-circuit')).toEqual(['met at P-1']);
    const unknown = ['to confirm at P-1: the available fault current isn’t stated'];
    expect(standing(SVC, 'rate/short-circuit')).toEqual(unknown);
    expect(standing(SVC, 'rate/fault-current')).toEqual(unknown);
    expect(standing(SVC, 'rate/mcov')).toEqual(['met at P-1']);
  });

  it('calls every rule met that the part was held against, also where no part was ever rejected for it', () => {
    for (const rule of ['rate/type', 'rate/indication', 'rate/channels', 'rate/connection', 'rate/listing'])
      expect(standing(settled, rule), rule).toEqual(['met at P-1']);
  });

  it('calls no rule met that a part chosen by hand or there already fails, nor one that an unknown part may fail', () => {
    const failing = ['not met at P-1: MCOV 120 V < 138 V'];
    for (const how of ['protector', 'existing']) {
      const row = `${settled}; ${how}=LOW`;
      expect(standing(row, 'rate/mcov')).toEqual(failing);
      expect(standing(row, 'rate/ac-voltage')).toEqual(failing);
      expect(standing(row, 'rate/discharge')).toEqual(['met at P-1']);
    }
    const unknown = ['to confirm at P-1: the ratings of what is there aren’t known'];
    const row = `${settled}; existing=old box`;
    for (const rule of ['rate/ac-voltage', 'rate/nominal-current', 'rate/type', 'wire/leads'])
      expect(standing(row, rule), rule).toEqual(unknown);
    expect(said(under('', row), 'place/service')).toEqual(['met at P-1: required']);
  });

  it('calls nothing met of a part chosen by hand where what the place asks for isn’t known', () => {
    const unknown = ['to confirm at P-1: what this place asks for isn’t known'];
    const row = 'L load; protect=yes; place=House; fault_current=1 kA; protector=FIT';
    expect(standing(row, 'rate/mcov')).toEqual(unknown);
    expect(standing(row, 'rate/ac-voltage')[0]).toMatch(/^to confirm at P-1: /);
    expect(standing(row, 'wire/leads')).toEqual(['met at P-1']);
  });

  it('asks to confirm what the catalogue doesn’t say of a part', () => {
    expect(standing(`${settled}; protector=DIM`, 'rate/indication')).toEqual([
      'to confirm at P-1: its indicator isn’t stated',
    ]);
    expect(
      standing(`${settled}; protector=DIM`, 'rate/indication', 'basis=nec-2020; occupancy=other'),
    ).toEqual([]);
  });

  it('with iec calls listing and class of a part that states no IEC class to be confirmed', () => {
    const listing = (iecClass: string, rule: string): readonly string[] =>
      said(
        under('basis=iec; earthing=TN; occupancy=other', 'S service; ac_in=230; fault_current=6 kA', {
          catalogue: catalogueOf(partLine('X', `channels=1; mcov_ac=275; up=900; iec_class=${iecClass}`)),
        }),
        rule,
      );
    for (const rule of ['rate/listing', 'rate/type']) {
      expect(listing('T2', rule)).toEqual(['met at P-1']);
      expect(listing('', rule)).toEqual(['to confirm at P-1: its part states no IEC class']);
    }
    expect(listing('T2', 'rate/lightning')).toEqual([
      'does not apply at P-1: the list states no lightning protection system',
    ]);
  });

  it('says of a place out of doors alone that its enclosure is met', () => {
    const two = `${settled}; outdoors=yes; place=Pole\nL load; ac_in=120/240; place=House; protect=yes; fault_current=1 kA`;
    const parts = catalogueOf(partLine('FIT', 'channels=2; mcov_ac=150; up=600; enclosure=4X'));
    const plan = under('occupancy=other', two, { catalogue: parts });
    const atService = plan.protectors.find((p) => p.ports.some((port) => port.equipment === 'SVC'));
    expect(plan.protectors).toHaveLength(2);
    expect(said(plan, 'rate/enclosure')).toEqual([`met at ${atService?.tag ?? ''}`]);
  });

  it('asks no type and no fault current of a control circuit', () => {
    const control = 'C control-circuit; control_voltage=24 V dc; outdoors=yes; place=Yard';
    const rows = `${settled}\n${control}`;
    const parts = catalogueOf(
      partLine('FIT', 'channels=2; mcov_ac=150; up=600'),
      partLine('CTL', 'channels=2; mcov_dc=40; up=200; enclosure=4X'),
    );
    const plan = under('occupancy=other', rows, { catalogue: parts });
    expect(plan.protectors.map((p) => [p.tag, p.part])).toEqual([
      ['P-1', 'CTL'],
      ['P-2', 'FIT'],
    ]);
    for (const rule of ['rate/type', 'rate/short-circuit', 'rate/fault-current'])
      expect(said(plan, rule), rule).toEqual(['met at P-2']);
    expect(said(plan, 'indicate/control-circuit')).toEqual(['met at P-1']);
    expect(said(plan, 'indicate/grounded-system-line')).toEqual(['met at P-2']);
  });

  it('says open, with the reason, where the voltage that a part is chosen by isn’t known', () => {
    const rows =
      'WT wind-turbine; place=Hill; output=three-phase; connects_to=I\nI charge-controller; place=House';
    const plan = under('occupancy=other', rows);
    expect(plan.protectors.every((p) => p.part === null)).toBe(true);
    expect(said(plan, 'rate/turbine-voltage')).toEqual([
      `open at ${plan.protectors.map((p) => p.tag).join(', ')}: the voltage of a turbine isn’t known`,
    ]);
    expect(said(plan, 'rate/array-voltage')).toEqual([
      `does not apply at ${plan.protectors.map((p) => p.tag).join(', ')}: no array on the list is behind this port`,
    ]);
  });

  it('asks to confirm what rests on a bound: the real voltage of the array isn’t known', () => {
    const rows = `I grid-tie-inverter; dc_inputs=1; max_dc_voltage=600; isolated=yes; ac_out=240; place=House
       A array; connects_to=I; run_length=4 m; voc_stc=40; modules_in_series=5; isc_stc=9; strings_in_parallel=1`;
    const parts = catalogueOf(partLine('PAIR', 'channels=2; mcov_dc=1000; up=2000'));
    const standing = said(under('', rows, { catalogue: parts }), 'rate/array-voltage');
    expect(standing).toEqual([
      'to confirm at P-1: a figure of the draft stands in for facts of A that aren’t stated',
    ]);
    const known = said(under('lowest_temp=-10 C', rows, { catalogue: parts }), 'rate/array-voltage');
    expect(known).toEqual(['met at P-1']);
  });

  it('asks to confirm whether a part of a turbine’s floating phases must be listed for them', () => {
    const rows = `WT wind-turbine; place=Hut; output=three-phase; open_circuit_voltage=60; connects_to=I; run_length=4 m
       I charge-controller; place=Hut; dc_inputs=1; max_dc_voltage=150`;
    const parts = catalogueOf(partLine('A', 'channels=3; mcov_ac=320; up=900'));
    const [standing] = said(under('', rows, { catalogue: parts }), 'rate/listing');
    expect(standing).toMatch(/^to confirm at P-1(, P-2)?: the phases of a turbine float/);
  });

  it('names rules about lights that no channel rests on, and a plan without a protector', () => {
    expect(said(under('', settled), 'indicate/ungrounded-system-line')).toEqual([
      'does not apply: no channel of this plan is of that kind',
    ]);
    const bare = under('', 'L load; ac_in=120; place=House');
    expect(bare.protectors).toEqual([]);
    for (const rule of ['rate/mcov', 'rate/array-voltage', 'wire/leads'])
      expect(said(bare, rule), rule).toEqual(['does not apply: no protector is planned']);
  });
});

describe('the clauses beside them', () => {
  const plan = under(
    'occupancy=other',
    `${settled}\nMP panel; ac_in=120/240; connects_to=SVC; run_length=10 m`,
  );

  it('stand once for each rule that has a standing, with those that fired kept apart', () => {
    const fired = new Set(plan.clauses.map((c) => c.rule));
    const others = new Set(plan.otherClauses.map((c) => c.rule));
    expect([...fired].filter((rule) => others.has(rule))).toEqual([]);
    expect(new Set(plan.standings.map((s) => s.rule))).toEqual(new Set([...fired, ...others]));
    const feeder = plan.otherClauses.filter((c) => c.rule === 'place/feeder');
    expect(feeder.map((c) => c.clause)).toEqual(['215.18']);
  });

  it('say of a rule that did not fire that it does not apply, or is open', () => {
    const others = new Set(plan.otherClauses.map((c) => c.rule));
    const standings = plan.standings.filter((s) => others.has(s.rule));
    expect(standings.length).toBeGreaterThan(5);
    for (const s of standings) {
      expect(['does not apply', 'open'], s.rule).toContain(s.standing);
      expect(s.because, s.rule).not.toBe('');
    }
  });
});
