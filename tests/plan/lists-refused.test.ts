import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { at, conductorsAt, faults, items, lightsOf, one, planOfCsv, rulesAt } from './plan-of.js';

// Lists as the trade really writes them, of which each once passed as complete and was wrong, or couldn't be listed at all: what a
// careful engineer would stop is asked about, and what he would let pass is complete. The lists are our own.

type Plan = ReturnType<typeof planOfCsv>;
const listed = (name: string): string => readFileSync(`fixtures/lists/${name}.csv`, 'utf8');
const planned = (name: string, change: (csv: string) => string = (csv) => csv): Plan =>
  planOfCsv(change(listed(name)));
const swap =
  (from: string, to: string) =>
  (csv: string): string => {
    expect(csv).toContain(from);
    return csv.replace(from, to);
  };

describe('what a careful engineer would stop is no complete plan', () => {
  it('a panel of 120/240 on a service of 480Y/277 without a transformer: conflict at both, and a part for 277 V', () => {
    const plan = planned('without-transformer');
    expect(plan.submittable).toBe(false);
    expect(items(plan, 'conflict').map((i) => [i.code, i.equipment, i.line])).toEqual([
      ['site/systems-disagree', 'PNL', 3],
      ['site/systems-disagree', 'SVC', 2],
    ]);
    expect(one(plan, 'SVC:service').required.mcov).toBe(318.55);
    // With the transformer it is complete.
    const with_ = planned('without-transformer', (csv) =>
      `${csv.replace('PNL,panel,SVC', 'PNL,panel,XF')}Kiln 3,,,XF,transformer,SVC,9 ft,Kiln house / office,480,\n`
        .split('\n')
        .map((line, i) =>
          line === ''
            ? ''
            : `${line},${i === 0 ? 'ac_out' : line.includes(',XF,transformer') ? '120/240' : ''}`,
        )
        .join('\n'),
    );
    expect(faults(with_)).toEqual([]);
  });

  it('a DC disconnect listed as other, 260 ft from its inverter: its kind is missing; as a disconnect the run is long', () => {
    const plan = planned('disconnect-as-other');
    expect(items(plan, 'missing').map((i) => [i.code, i.equipment, i.line])).toEqual([
      ['fact/kind-of-other', 'DSC', 3],
    ]);
    const said = planned('disconnect-as-other', swap('DSC,other', 'DSC,disconnect'));
    expect(faults(said)).toEqual([]);
    expect(rulesAt(said, 'ARR:output')).toEqual(['place/long-run']);
    expect(rulesAt(said, 'INV:dc-in-1')).toEqual(['place/dc-input', 'place/long-run']);
    // 10 modules x 41.6 V x 1.16 at -12 C (NEC Table 690.7(A)).
    expect(one(said, 'INV:dc-in-1').required.mcov).toBe(482.56);
  });

  it('sixteen modules as the quantity of an array: asked, one array is drafted, and no part too many is ordered', () => {
    const plan = planned('modules-as-quantity');
    expect(items(plan, 'conflict').map((i) => [i.code, i.line, i.column])).toEqual([
      ['site/arrays-or-modules', 2, 'quantity'],
    ]);
    const parts = (of: Plan): number => of.orders.reduce((sum, o) => sum + o.quantity, 0);
    const meant = planned('modules-as-quantity', swap('ARR,array,16', 'ARR,array,1'));
    expect(faults(meant)).toEqual([]);
    expect(parts(plan)).toBe(parts(meant));
  });

  it('a meter without a place beside a panel: its place is missing, and not a fact that it is elsewhere', () => {
    const plan = planned('meter-without-place');
    expect(items(plan, 'missing').map((i) => [i.code, i.equipment, i.column])).toEqual([
      ['fact/place', 'METER', 'place'],
    ]);
    const stated = planned(
      'meter-without-place',
      swap('METER,service,,,,', 'METER,service,,,Toll cottage / wall,'),
    );
    expect(faults(stated)).toEqual([]);
    expect(at(stated, 'MP:feeder')).toEqual([]);
  });

  it('a word of two kinds: which of them is missing', () => {
    const plan = planned('word-of-two-kinds');
    expect(plan.submittable).toBe(false);
    expect(items(plan, 'missing').map((i) => [i.line, i.column])).toEqual([[3, 'kind']]);
    expect(faults(planned('word-of-two-kinds', swap('INV,inverter', 'INV,grid-tie-inverter')))).toEqual([]);
  });
});

describe('what a careful engineer would let pass is complete', () => {
  it('two inverters on one battery and one panel', () => {
    const plan = planned('two-inverters');
    expect(faults(plan)).toEqual([]);
    expect(plan.site.runs.map((r) => `${r.from.equipment} > ${r.to.equipment}`)).toEqual([
      'BANK > INV-A',
      'BANK > INV-B',
      'INV-A > PNL',
      'INV-B > PNL',
      'PNL > STOVE',
    ]);
    expect(plan.site.runs.map((r) => r.length).slice(0, 2)).toEqual([1.52, 2.74]);
    for (const where of ['INV-A:ac-out', 'INV-B:ac-out']) expect(one(plan, where).required.mcov).toBe(138);
  });

  it('a transformer, 277 V lighting, an AC battery, a -48 V radio, a diversion load and a pump drive', () => {
    const plan = planned('whole-trade');
    expect(faults(plan)).toEqual([]);
    const grounding = (where: string): readonly [string, number | null] => {
      const { grounding: of, required } = one(plan, where);
      return [of, required.mcov];
    };
    // 277 V x 1.15; 120 V x 1.15.
    expect(grounding('SVC:service')).toEqual(['solid', 318.55]);
    expect(grounding('XF:ac-in')).toEqual(['solid', 318.55]);
    expect(grounding('ACB:ac-out')).toEqual(['solid', 138]);
    // 25 kVA / (240 V x 2.5 %).
    expect(one(plan, 'ACB:ac-out').required.sccr).toBe(4166.67);
    expect(rulesAt(plan, 'RADIO:dc-in')).toEqual(['place/long-run']);
    expect(one(plan, 'RADIO:dc-in').grounding).toBe('positive grounded');
    expect(lightsOf(plan, 'RADIO:dc-in', 'positive')[0]).toBe('always: dark');
    expect(lightsOf(plan, 'RADIO:dc-in', 'negative')[0]).toBe('always: lit');
    expect(one(plan, 'CTL:dc-in-1').grounding).toBe('positive grounded');
    expect(one(plan, 'DRV:dc-in-1').grounding).toBe('floating');
    for (const where of ['DUMP:dc-in', 'DRV:ac-out', 'PUMP:feeder', 'LAMPS:feeder'])
      expect(at(plan, where)).toEqual([]);
  });

  it('a battery of 400 V, whose poles float: no light of it is always dark', () => {
    const plan = planned('battery-of-400-volts');
    expect(faults(plan)).toEqual([]);
    expect(conductorsAt(plan, 'BANK:battery')).toEqual(['positive', 'negative']);
    for (const pole of ['positive', 'negative'])
      expect(lightsOf(plan, 'BANK:battery', pole)).toEqual(['always: either']);
  });

  it('kinds by the words of the trade', () => {
    const plan = planned('words-of-kinds');
    expect(faults(plan)).toEqual([]);
    expect(Object.fromEntries(plan.site.equipments.map((e) => [e.tag, e.kind]))).toEqual({
      A1: 'array',
      A2: 'array',
      B1: 'battery',
      C1: 'charge-controller',
      D1: 'disconnect',
      E1: 'load',
      G1: 'generator',
      I1: 'grid-tie-inverter',
      M1: 'ac-module-branch',
      P1: 'panel',
      P2: 'panel',
      R1: 'disconnect',
      T1: 'transfer-switch',
      U1: 'service',
    });
    expect(lightsOf(plan, 'I1:dc-in-1', 'positive')[0]).toMatch(/^sun, inverter on: /);
  });

  it('one row a string is one array, its strings added up', () => {
    const plan = planned('strings-by-row');
    const arrays = plan.site.equipments.filter((e) => e.kind === 'array').map((e) => e.tag);
    expect(arrays).toEqual(['ARR-E', 'ARR-W']);
    // Two strings of 11.2 A each x 1.25 (NEC 690.8(A)).
    expect(one(plan, 'INV:dc-in-1').required.sccr).toBe(28);
  });
});
