import { describe, expect, test } from 'vitest';
import { wireInductance } from '../../src/electrical/leads.js';
import { protectiveDistance } from '../../src/electrical/reach.js';
import { steepestCurrentRise } from '../../src/electrical/waves.js';
import { awgDiameter } from '../../src/electrical/wire-gauge.js';
import { defaultSettings } from '../../src/model/settings.js';
import { clause } from '../../src/rules/clauses.js';
import { neutralPath } from '../../src/rules/rate/neutral-path.js';
import { englishSteps } from '../in-english.js';
import { fitFacts, part } from '../rules/facts.js';

const t = defaultSettings().thresholds;

describe('IEC 60364-5-53 Table 534.4, connection 3+1, neutral to PE (value from memory)', () => {
  const held = (phases: 1 | 3, nominal: number, impulse: number): boolean =>
    neutralPath.accepts(
      fitFacts({
        basis: 'iec',
        earthing: 'TT',
        atService: true,
        lightning: 'isolated',
        phases,
        part: part({ connection: '3+1', neutralNominalCurrent: nominal, neutralImpulseCurrent: impulse }),
      }),
    ).fits;
  test('In 10 kA single phase, 20 kA three phase: settings', () => {
    expect(t.neutralPathCurrent).toEqual({ single: 10_000, three: 20_000 });
    expect([held(1, 10_000, 25_000), held(1, 9_999, 25_000)]).toEqual([true, false]);
    expect([held(3, 20_000, 50_000), held(3, 19_999, 50_000)]).toEqual([true, false]);
  });
  test('Iimp 25 kA single phase, 50 kA three phase, where class T1 is asked: settings', () => {
    expect(t.neutralPathImpulseCurrent).toEqual({ single: 25_000, three: 50_000 });
    expect([held(1, 10_000, 24_999), held(3, 20_000, 49_999)]).toEqual([false, false]);
  });
  test('the rulebook cites the table as from memory', () => {
    expect(clause('neutral-path-currents', 'iec')).toMatchObject({ clause: 'Table 534.4', sure: 'memory' });
    expect(clause('neutral-path-currents', 'nec-2023')).toBeUndefined();
  });
});

test('IEC 60364-5-53 cl. 534.4.8: leads 0.5 m (read in restatements), never over 1 m (value from memory): settings', () => {
  expect([t.longLead, t.longestLeadIec]).toEqual([0.5, 1]);
  expect(t.leadLength).toBeLessThanOrEqual(t.longLead);
});

describe('IEC 62305-4 Annex (value from memory): the effective level counts, Up plus leads', () => {
  const kind = (up: number, leads: number): string =>
    protectiveDistance({ up, leads, withstand: 2500, slope: t.reachSlope, leastReach: 10, limit: 100 }).kind;
  test('half the withstand is level and leads together', () => {
    expect([kind(1000, 250), kind(1000, 251), kind(1250, 0)]).toEqual(['unlimited', 'metres', 'unlimited']);
  });
  test('beyond 10 m also induction: the working says that it isn’t counted', () => {
    const { working } = protectiveDistance({
      up: 1000,
      leads: 0,
      withstand: 2500,
      slope: t.reachSlope,
      leastReach: t.leastReach,
      limit: 100,
    });
    expect(englishSteps(working).at(-1)?.says).toMatch(/induction along the run isn’t counted/);
  });
});

test('280 ft of ground lead, straight wire, 3 kA of 8/20 us: about 82 kV (computed)', () => {
  // Rosa 1908 and Grover as in section 4, 10 AWG.
  const inductance = wireInductance({ length: 280 * 0.3048, diameter: awgDiameter(10), frequency: 'high' });
  const kilovolts = (inductance * steepestCurrentRise(t.leadPeakNec)) / 1000;
  expect(kilovolts).toBeGreaterThan(81);
  expect(kilovolts).toBeLessThan(83);
});
