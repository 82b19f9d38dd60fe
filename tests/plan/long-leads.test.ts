import { describe, expect, it } from 'vitest';
import { catalogueOf, faults, items, one, partLine, planOf } from './plan-of.js';

// 2.11: total lead length, IEC 60364-5-53 cl. 534.4.8: 0.5 m (read in restatements), never over 1 m (value from memory).

const part = (more = ''): string =>
  catalogueOf(partLine('A', `channels=2; mcov_ac=275; up=1000; up_basis=Up; ${more}`));
const load = (facts: string, length: string, more = ''): ReturnType<typeof planOf> => {
  const system = facts.startsWith('basis=iec') ? '230' : '120';
  const stated = length === '' ? '' : `; lead_length=${length}`;
  const rows = `L load; ac_in=${system}; protect=yes; impulse_withstand=2500; fault_current=1 kA${stated}`;
  return planOf(facts, rows, { catalogue: part(more) });
};
const IEC = 'basis=iec; earthing=TN';
const codes = (plan: ReturnType<typeof planOf>): readonly string[] =>
  plan.openItems.map((i) => i.code).filter((code) => code.startsWith('choose/lead-'));

describe('leads that are too long', () => {
  it.each([
    ['', '0.5 m', []],
    ['', '0.51 m', ['choose/lead-long']],
    ['', '1.01 m', ['choose/lead-long']],
    [IEC, '0.5 m', ['choose/lead-thin']],
    [IEC, '0.51 m', ['choose/lead-long', 'choose/lead-thin']],
    [IEC, '1 m', ['choose/lead-long', 'choose/lead-thin']],
    [IEC, '1.01 m', ['choose/lead-too-long', 'choose/lead-thin']],
  ])('%s, %s: %s', (facts, length, expected) => {
    expect(codes(load(facts, length))).toEqual(expected);
  });

  it('the catalogue’s length counts where the list states none, and neither is asked for the usual one', () => {
    expect(codes(load('', '', 'lead_length=0.6 m'))).toEqual(['choose/lead-long']);
    expect(codes(load('', '0.4 m', 'lead_length=0.6 m'))).toEqual([]);
    expect(codes(load('', ''))).toEqual([]);
  });

  it('says the level at that length and at 0.5 m, and the reach that is lost', () => {
    // 10 AWG, 3 kA: 447 A/us x 1.269 uH at 1 m and x 0.565 uH at 0.5 m (check-values.md section 4): 567 V and 253 V. At 0.5 m the
    // level of 1253 V is above half of 2500 V: 49.9 m, cut at 100 ft; at 1 m 37.3 m, cut as well.
    const plan = load('', '1 m');
    const [item] = items(plan, 'choose/lead-long');
    expect(item?.message).toMatch(
      /^The leads of A at L feeder are long: 39\.4 in \(1 m\) make 1567\.\d+ V and a reach of 100 ft \(30\.48 m\), where 19\.7 in \(0\.5 m\) would make 1252\.\d+ V and a reach of 100 ft \(30\.48 m\)\.$/,
    );
    expect([item?.severity, item?.who, item?.found]).toEqual(['confirm', 'installer', '39.4 in (1 m)']);
    const short = planOf('', 'L load; ac_in=120; protect=yes; impulse_withstand=2500; lead_length=2 m', {
      catalogue: part('lead_gauge=10 AWG'),
    });
    // At 2 m: 447 A/us x 2.816 uH = 1259 V (computed): (2500 - 1000 - 1259) / 25 = 9.6 m, at least 10 m.
    expect(items(short, 'choose/lead-long')[0]?.message).toMatch(/a reach of 32\.8 ft \(10 m\), where/);
    const low = planOf('', 'L load; ac_in=120; protect=yes; impulse_withstand=6000; lead_length=1 m', {
      catalogue: part(),
    });
    expect(items(low, 'choose/lead-long')[0]?.message).toMatch(/a reach that oscillation doesn’t limit/);
  });

  it('under iec above 1 m it is a conflict in metres', () => {
    const plan = load(IEC, '1.2 m');
    expect(faults(plan)).toEqual(['choose/lead-too-long']);
    expect(items(plan, 'choose/lead-too-long')[0]?.message).toMatch(
      /are longer than the 1 m of 534\.4\.8 \(value from memory\): 1\.2 m make .* where 0\.5 m would make /,
    );
  });

  it('where the withstand isn’t known the reach isn’t either', () => {
    const plan = planOf(
      '',
      'A array; open_circuit_voltage=1600; protect=yes; mounting=ground; lead_length=1 m',
      {
        catalogue: catalogueOf(partLine('CRANE', 'channels=2; mcov_dc=2000; up=6000')),
      },
    );
    expect(items(plan, 'choose/lead-long')[0]?.message).toMatch(/and a reach that isn’t known/);
  });

  it('both lengths are settings', () => {
    const settings = { thresholds: { longLead: 0.8, longestLeadIec: 2 } };
    const rows = (length: string): string => `L load; ac_in=230; protect=yes; lead_length=${length}`;
    const at = (length: string): readonly string[] =>
      codes(planOf(IEC, rows(length), { catalogue: part('lead_gauge=6 mm2'), settings }));
    expect([at('0.8 m'), at('1.5 m'), at('2.5 m')]).toEqual([
      [],
      ['choose/lead-long'],
      ['choose/lead-too-long'],
    ]);
  });

  it('what is there already is asked about too', () => {
    const plan = planOf('', 'L load; ac_in=120; protect=yes; existing=A; lead_length=0.7 m', {
      catalogue: part(),
    });
    expect(codes(plan)).toEqual(['choose/lead-long']);
    expect(one(plan, 'L:feeder').existing).toBe('A');
  });
});

describe('where the length and the wire of the leads come from', () => {
  /** How sure `l` and `d` of the lead voltage are, and their sources. */
  const sourcesOf = (length: string, more: string, facts = ''): readonly string[] => {
    const steps = one(load(facts, length, more), 'L:feeder').calculations.flatMap((c) => c.steps);
    return ['l', 'd'].map((symbol) => {
      const step = steps.find((s) => s.symbol === symbol);
      return `${step?.sure}: ${step?.source}`;
    });
  };

  it.each([
    [
      'nobody states either',
      '',
      '',
      ['assumption: default of lead_length', 'common practice: common practice, no source'],
    ],
    [
      'the catalogue does',
      '',
      'lead_length=0.3 m; lead_gauge=10 AWG',
      [
        expect.stringMatching(/^stated: catalogue .*, line 2$/),
        expect.stringMatching(/^stated: catalogue .*, line 2$/),
      ],
    ],
    [
      'the list states the length, and the device of 30 A asks for thicker wire than the catalogue has (240.4(D))',
      '0.4 m',
      'lead_gauge=14 AWG',
      [expect.stringMatching(/^stated: .*lead_length$/), 'computed: computed on this page'],
    ],
  ] as const)('%s', (_, length, more, expected) => {
    expect(sourcesOf(length, more)).toEqual(expected);
  });
});
