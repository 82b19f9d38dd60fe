import { describe, expect, it } from 'vitest';
import { defaultsOf, faults, items, one, planOf, rulesAt } from './plan-of.js';

// rules.md section 0, the transformer. Cases are our own.

const OTHER = 'occupancy=other';
const SERVICE = 'S service; ac_in=480Y/277; place=Works; fault_current=14 kA';
type Plan = ReturnType<typeof planOf>;

/** A transformer on the service with a panel behind it. */
function behind(transformer: string, service = SERVICE, panel = ''): Plan {
  return planOf(
    OTHER,
    `${service}\nT transformer; connects_to=S; run_length=8 m; place=Works; ${transformer}
     P panel; connects_to=T; run_length=9 m; place=Works; protect=yes${panel}`,
  );
}

describe('a transformer', () => {
  it('states both its sides, else each is missing', () => {
    const asked = (cells: string): readonly string[] =>
      items(behind(cells), 'fact/transformer-system').map((i) => i.message);
    expect(asked('isolated=yes')).toHaveLength(2);
    expect(asked('isolated=yes; ac_in=480')).toEqual([expect.stringContaining('ac-out of T')]);
    expect(asked('isolated=yes; ac_in=480; ac_out=208Y/120')).toEqual([]);
  });

  it.each([
    ['yes', '; isolated=yes', 'solid', 0, 138],
    ['blank: taken as yes, to be confirmed', '', 'solid', 1, 138],
    // One system: 208 V line to line x 1.15.
    ['no', '; isolated=no', 'impedance', 0, 239.2],
  ])('isolated %s, behind an impedance-grounded service', (_, cell, grounding, asked, mcov) => {
    const plan = behind(`ac_in=480Y/277; ac_out=208Y/120${cell}`, `${SERVICE}; system_grounding=impedance`);
    expect(one(plan, 'P:feeder').grounding).toBe(grounding);
    expect(one(plan, 'P:feeder').required.mcov).toBe(mcov);
    expect(items(plan, 'default/isolated').map((i) => i.severity)).toEqual(asked === 1 ? ['confirm'] : []);
    expect(faults(plan)).toEqual([]);
  });

  it.each([
    ['208Y/120', 'solid'],
    ['120/240', 'solid'],
    ['240', 'none'],
    ['480', 'none'],
    ['240 delta', 'none'],
  ])('grounding behind one of %s is %s by default, to be confirmed', (system, grounding) => {
    const plan = behind(`isolated=yes; ac_in=480; ac_out=${system}`);
    expect(one(plan, 'P:feeder').grounding).toBe(grounding);
    expect(items(plan, 'default/transformer-grounding').map((i) => [i.severity, i.equipment])).toEqual([
      ['confirm', 'T'],
    ]);
    const other = grounding === 'solid' ? 'none' : 'solid';
    const stated = behind(`isolated=yes; ac_in=480; ac_out=${system}; system_grounding=${other}`);
    expect(one(stated, 'P:feeder').grounding).toBe(other);
    expect(items(stated, 'default/transformer-grounding')).toEqual([]);
  });

  it('what it states of its grounding speaks of what it feeds, not of the service', () => {
    const plan = behind('isolated=yes; ac_in=480; ac_out=240 delta; system_grounding=corner');
    expect(one(plan, 'P:feeder').grounding).toBe('corner');
    expect(one(plan, 'S:service').grounding).toBe('solid');
  });

  it.each([
    ['its own figure', '; fault_current=5 kA; kva=75; impedance_percent=3', 5000],
    // 25 kVA x 1000 / (1 x 240 V x 0.025): an upper bound (derived).
    ['kVA and impedance', '; kva=25; impedance_percent=2.5', 4166.67],
    ['kVA alone', '; kva=25', null],
    ['nothing', '', null],
  ])('fault current behind it is that of %s; what is ahead of it is no bound', (_, cells, sccr) => {
    const plan = behind(`isolated=yes; ac_in=480; ac_out=120/240${cells}`);
    expect(one(plan, 'P:feeder').required.sccr).toBe(sccr);
    expect(one(plan, 'S:service').required.sccr).toBe(14_000);
  });

  it('three phases: kVA x 1000 / (root 3 x V x Z)', () => {
    const plan = behind('isolated=yes; ac_in=480 delta; ac_out=208Y/120; kva=75; impedance_percent=3');
    // 75 000 / (1.732 x 208 x 0.03).
    expect(one(plan, 'P:feeder').required.sccr).toBeCloseTo(6939.5, 0);
  });

  it('of one system passes fault current on', () => {
    const plan = behind('isolated=no; ac_in=480Y/277; ac_out=208Y/120');
    expect(one(plan, 'P:feeder').required.sccr).toBe(14_000);
  });

  it('N is linked to ground behind one of its own system by default, not behind an autotransformer', () => {
    const rows = (cells: string): Plan =>
      planOf(
        OTHER,
        `${SERVICE}\nT transformer; connects_to=S; run_length=8 m; place=Works; outdoors=yes; ${cells}; protect=yes
         P panel; connects_to=T; run_length=80 m; place=Shed`,
      );
    const derived = rows('isolated=yes; ac_in=480; ac_out=208Y/120');
    expect(defaultsOf(derived, 'n_pe_link').filter((m) => m.includes('T:'))).toEqual([
      expect.stringMatching(/taken as yes/),
    ]);
    const auto = rows('isolated=no; ac_in=480Y/277; ac_out=208Y/120');
    expect(defaultsOf(auto, 'n_pe_link').filter((m) => /taken as yes/.test(m) && /\bT\b/.test(m))).toEqual(
      [],
    );
  });

  it('what names it sits on its ac-out; a service or a generator feeds its ac-in', () => {
    const ends = (rows: string): readonly string[] =>
      planOf(OTHER, rows).site.runs.map(
        (r) => `${r.from.equipment}:${r.from.port} > ${r.to.equipment}:${r.to.port}`,
      );
    const T = 'T transformer; isolated=yes; ac_in=480; ac_out=208Y/120; place=Works';
    expect(ends(`${SERVICE}; connects_to=T; run_length=3 m\n${T}`)).toEqual(['S:service > T:ac-in']);
    expect(ends(`G generator; ac_out=480Y/277; connects_to=T; run_length=3 m; place=Works\n${T}`)).toEqual([
      'G:output > T:ac-in',
    ]);
    expect(
      ends(
        `X grid-tie-inverter; ac_out=208; dc_inputs=1; max_dc_voltage=600; connects_to=T; run_length=3 m; place=Works\n${T}`,
      ),
    ).toEqual(['T:ac-out > X:ac-out']);
    expect(ends(`P panel; ac_in=480Y/277; place=Works\n${T}; connects_to=P; run_length=3 m`)).toEqual([
      'P:feeder > T:ac-in',
    ]);
  });

  it('each side must agree with what is joined to it', () => {
    expect(faults(behind('isolated=yes; ac_in=480; ac_out=120/240'))).toEqual([]);
    const primary = behind('isolated=yes; ac_in=208; ac_out=120/240');
    expect(items(primary, 'site/systems-disagree').map((i) => i.equipment)).toEqual(['S', 'T']);
    const secondary = behind('isolated=yes; ac_in=480; ac_out=120/240', SERVICE, '; ac_in=208Y/120');
    expect(items(secondary, 'site/systems-disagree').map((i) => i.equipment)).toEqual(['P', 'T']);
  });

  it('no reach passes through one: a grid-tie inverter behind it doesn’t lean on the service', () => {
    const rows = (panel: string): Plan =>
      planOf(
        OTHER,
        `${SERVICE}\nT transformer; isolated=yes; ac_in=480; ac_out=208Y/120; connects_to=S; run_length=2 m; place=Works
         P panel; connects_to=T; run_length=2 m; place=Works${panel}
         X grid-tie-inverter; ac_out=208; isolated=yes; dc_inputs=1; max_dc_voltage=600; connects_to=P; run_length=2 m; place=Works`,
      );
    expect(rulesAt(rows(''), 'X:ac-out')).toEqual(['place/grid-tie-ac']);
    expect(rulesAt(rows('; protect=yes'), 'X:ac-out')).toEqual([]);
  });
});
