import { describe, expect, test } from 'vitest';
import { leadFigures, leadVoltage, wireInductance } from '../../src/electrical/leads.js';
import { smallestLeads } from '../../src/rules/lead-size.js';
import {
  currentAt,
  currentWaveFigures,
  steepestCurrentRise,
  voltageAt,
  voltageWaveFigures,
} from '../../src/electrical/waves.js';
import { parseWireGauge } from '../../src/electrical/wire-gauge.js';
import { defaultSettings } from '../../src/model/settings.js';
import { clause } from '../../src/rules/clauses.js';

function diameter(gauge: string): number {
  const found = parseWireGauge(gauge);
  if (!found) throw new Error(gauge);
  return found.diameter;
}

describe('inductance of a straight round wire: Rosa 1908, p. 301; Grover (value from memory)', () => {
  const high = (length: number, gauge: string): number =>
    wireInductance({ length, diameter: diameter(gauge), frequency: 'high' }) * 1e6;
  test.each([
    [0.5, '10 AWG', 0.565],
    [1, '10 AWG', 1.269],
    [0.5, '6 AWG', 0.519],
  ] as const)('%d m of %s: %d uH (computed)', (length, gauge, microhenries) => {
    expect(high(length, gauge)).toBeCloseTo(microhenries, 3);
  });
  test('L = 2e-7 l (ln(2l/r) - 1) at high frequency, -0.75 at low', () => {
    const r = 1e-3;
    const l = 0.7;
    expect(wireInductance({ length: l, diameter: 2 * r, frequency: 'high' })).toBeCloseTo(
      2e-7 * l * (Math.log((2 * l) / r) - 1),
      15,
    );
    expect(wireInductance({ length: l, diameter: 2 * r, frequency: 'low' })).toBeCloseTo(
      2e-7 * l * (Math.log((2 * l) / r) - 0.75),
      15,
    );
  });
  test('1 uH/m is the rule of thumb (common practice, no source): right within a third at 0.5 and 1 m', () => {
    for (const length of [0.5, 1]) {
      const each = high(length, '10 AWG') / length;
      expect(each).toBeGreaterThan(1);
      expect(each).toBeLessThan(4 / 3);
    }
  });
});

describe('AWG diameter, ASTM B258 (read)', () => {
  test.each([
    ['14 AWG', 1.628],
    ['10 AWG', 2.588],
    ['6 AWG', 4.115],
    ['2/0 AWG', 9.266],
  ] as const)('%s: %d mm', (gauge, millimetres) => {
    expect(diameter(gauge) * 1e3).toBeCloseTo(millimetres, 3);
  });
  test('36 AWG is 0.005 in, 4/0 is 92 times that: the two gauges that the standard fixes', () => {
    expect(diameter('36 AWG')).toBeCloseTo(0.005 * 0.0254, 12);
    expect(diameter('4/0')).toBeCloseTo(0.46 * 0.0254, 9);
  });
});

describe('8/20 us wave, IEEE C62.41.2-2002 (constants read)', () => {
  const figures = currentWaveFigures(1);
  test('I(t) = A Ip t^3 exp(-t/tau), A = 0.01243 us^-3, tau = 3.911 us', () => {
    for (const us of [0.5, 4, 11.73, 20, 60]) {
      expect(currentAt(us * 1e-6, 3000)).toBeCloseTo(0.01243 * 3000 * us ** 3 * Math.exp(-us / 3.911), 6);
    }
  });
  test('peak 0.9996 Ip at 11.73 us (computed)', () => {
    expect(figures.peak).toBeCloseTo(0.9996, 4);
    expect(figures.peakTime * 1e6).toBeCloseTo(11.73, 2);
  });
  test('front 8.02 us; 50 % at 19.94 us after the virtual origin (computed)', () => {
    expect(figures.front * 1e6).toBeCloseTo(8.02, 2);
    expect(figures.tail * 1e6).toBeCloseTo(19.94, 2);
  });
  test('steepest di/dt 0.1490 Ip/us at 4.96 us (computed)', () => {
    expect(figures.steepest * 1e-6).toBeCloseTo(0.149, 4);
    expect(steepestCurrentRise(3000) * 1e-6).toBeCloseTo(447, 0);
    expect(figures.steepestTime * 1e6).toBeCloseTo(4.96, 2);
  });
  test('1 kV per metre is 8 kA/8 us at 1 uH/m (common practice, no source): peak over front of this wave', () => {
    const { peak, front } = currentWaveFigures(8000);
    expect(((peak / front) * 1e-6) / 1000).toBeCloseTo(1, 2);
  });
});

describe('1.2/50 us wave, IEEE C62.41.2-2002 (read)', () => {
  test('V(t) = A Vp (1 - exp(-t/tau1)) exp(-t/tau2), A = 1.037, tau1 = 0.4074 us, tau2 = 68.22 us', () => {
    for (const us of [0.1, 0.4, 2, 10, 80]) {
      const expected = 1.037 * 6000 * (1 - Math.exp(-us / 0.4074)) * Math.exp(-us / 68.22);
      expect(voltageAt(us * 1e-6, 6000)).toBeCloseTo(expected, 6);
    }
  });
  test('front 1.200 us, tail 50.00 us', () => {
    const { front, tail } = voltageWaveFigures(1);
    expect(front * 1e6).toBeCloseTo(1.2, 3);
    expect(tail * 1e6).toBeCloseTo(50, 2);
  });
});

describe('the 6 in of a VPR (value from memory)', () => {
  test('6 in are taken off, not the 12 in that the loop may hold: the safe side', () => {
    const d = diameter('10 AWG');
    const input = { length: 0.5, diameter: d, peak: 3000 };
    const whole = leadFigures({ ...input, upBasis: 'Up' });
    const vpr = leadFigures({ ...input, upBasis: 'VPR' });
    const six = wireInductance({ length: 0.1524, diameter: d, frequency: 'high' });
    expect(whole.value).toBeCloseTo(0.565e-6 * 447e6, 0);
    expect(whole.inductance - vpr.inductanceAdded).toBeCloseTo(six, 15);
    expect(vpr.value).toBeCloseTo((whole.inductance - six) * steepestCurrentRise(3000), 9);
  });
  test('leads of 6 in add nothing', () => {
    expect(
      leadVoltage({ length: 0.1524, diameter: diameter('10 AWG'), peak: 3000, upBasis: 'VPR' }).value,
    ).toBe(0);
  });
});

describe('lengths and sizes of leads', () => {
  test('at most 0.5 m in all (IEC 60364-5-53 cl. 534.4.8, read)', () => {
    expect(defaultSettings().thresholds.leadLength).toBe(0.5);
    expect(clause('lead-routing', 'iec')).toMatchObject({ standard: 'IEC 60364-5-53', clause: '534.4.8' });
  });
  test('NEC: no longer than necessary, no needless bends', () => {
    for (const basis of ['nec-2017', 'nec-2020', 'nec-2023'] as const) {
      expect(clause('lead-routing', basis)?.says).toMatch(/no longer than necessary.*bends/);
    }
  });
  test('smallest lead 14 AWG Cu / 12 AWG Al (read)', () => {
    for (const basis of ['nec-2017', 'nec-2020', 'nec-2023'] as const) {
      expect(smallestLeads(basis, null)).toMatchObject({
        live: '14 AWG',
        earth: '14 AWG',
        aluminum: '12 AWG',
      });
    }
  });
  test('IEC earth lead 6 mm2 class II, 16 mm2 class I; live leads 2.5 and 6 mm2 (value from memory)', () => {
    expect(smallestLeads('iec', 'T2')).toMatchObject({ live: '2.5 mm2', earth: '6 mm2', aluminum: null });
    expect(smallestLeads('iec', 'T1')).toMatchObject({ live: '6 mm2', earth: '16 mm2', aluminum: null });
  });
});

test.each([
  [
    'lead-inductance',
    'iec',
    'Rosa, Bulletin of the Bureau of Standards 4(2)',
    '1908',
    'p. 301',
    /round wire/,
  ],
  ['wire-gauge', 'nec-2023', 'ASTM B258', '2018', 'scope', /American wire gauge/],
  ['surge-waves', 'iec', 'IEEE C62.41.2', '2002', 'Annex A', /8\/20 us current.*1\.2\/50 us voltage/],
  ['lead-routing', 'iec', 'IEC 60364-5-53', '2019', '534.4.8', /0\.5 m/],
  ['smallest-lead', 'nec-2017', 'NEC (NFPA 70)', '2017', '285.26', /14 AWG copper or 12 AWG aluminum/],
  [
    'smallest-lead',
    'iec',
    'IEC 60364-5-53',
    '2019',
    '534.4.10',
    /6 mm2 for class II and 16 mm2 for class I; live leads at least 2\.5 and 6 mm2/,
  ],
] as const)(
  'the rulebook cites %s under %s as %s (%s) %s',
  (subject, basis, standard, edition, number, says) => {
    const found = clause(subject, basis);
    expect(found).toMatchObject({ standard, edition, clause: number });
    expect(found?.says).toMatch(says);
  },
);
