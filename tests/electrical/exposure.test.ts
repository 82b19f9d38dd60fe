import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  calculatedRiskLevel,
  countedLines,
  criticalLength,
  type ExposedSite,
  type FeedingLines,
} from '../../src/electrical/exposure.js';
import { expectSound, symbols } from './evaluated.js';
import { englishSteps } from '../in-english.js';

describe('critical length', () => {
  test.each([
    ['dwelling', 115, 'published', false],
    ['ground-mounted', 200, 'memory', true],
    ['other', 450, 'memory', true],
  ] as const)('%s: %d / Ng, %s', (site, k, sure, fromMemory) => {
    const found = criticalLength({ site, flashDensity: 2 });
    if (!found.ok) throw new Error(found.reason);
    expect(found.value).toBe(k / 2);
    expectSound(found.working);
    expect(symbols(found.working)).toEqual(['Ng 1/(km² a)', 'Lcrit m']);
    expect(englishSteps(found.working)[1]).toMatchObject({
      formula: `${k} / Ng`,
      substituted: `${k} / 2`,
      sure,
    });
    expect(englishSteps(found.working)[1]?.source).toContain('712.443');
    expect(englishSteps(found.working)[1]?.source.includes('from memory')).toBe(fromMemory);
  });
  test.each([0, -1, Number.NaN])('a flash density of %d: none', (flashDensity) => {
    expect(criticalLength({ site: 'dwelling', flashDensity })).toEqual({
      ok: false,
      reason: 'no-flash-density',
    });
  });
});

describe('lines that count', () => {
  const of = (
    lvOverhead?: number,
    lvUnderground?: number,
    hvOverhead?: number,
    hvUnderground?: number,
  ): FeedingLines => ({
    lvOverhead,
    lvUnderground,
    hvOverhead,
    hvUnderground,
  });
  test.each([
    ['all known and short', of(0.1, 0.2, 0.3, 0.1), [0.1, 0.2, 0.3, 0.1, 0]],
    ['cut from the end: HV cable first', of(0.2, 0.3, 0.4, 0.5), [0.2, 0.3, 0.4, 0.1, 0]],
    ['then HV overhead', of(0.2, 0.5, 0.7, 0.5), [0.2, 0.5, 0.3, 0, 0]],
    ['then LV cable', of(0.6, 0.9, 0.7, 0.5), [0.6, 0.4, 0, 0, 0]],
    ['LV overhead last', of(3, 0.9, 0.7, 0.5), [1, 0, 0, 0, 0]],
    ['nothing known: 1 km of LV overhead', of(), [1, 0, 0, 0, 1]],
    ['partly known: what lacks is LV overhead', of(undefined, 0.4), [0.6, 0.4, 0, 0, 0.6]],
    ['partly known, overhead too', of(0.25, 0.25), [0.75, 0.25, 0, 0, 0.5]],
    ['partly known and 1 km full: nothing is assumed', of(undefined, 0.4, 0.6), [0, 0.4, 0.6, 0, 0]],
    ['all known, none there', of(0, 0, 0, 0), [0, 0, 0, 0, 0]],
  ] as const)('%s', (_name, lines, [lvOverhead, lvUnderground, hvOverhead, hvUnderground, assumed]) => {
    const found = countedLines(lines);
    expect(found.lvOverhead).toBeCloseTo(lvOverhead, 9);
    expect(found.lvUnderground).toBeCloseTo(lvUnderground, 9);
    expect(found.hvOverhead).toBeCloseTo(hvOverhead, 9);
    expect(found.hvUnderground).toBeCloseTo(hvUnderground, 9);
    expect(found.assumed).toBeCloseTo(assumed, 9);
  });
  test('sums of decimal km leave no dust that counts as assumed', () => {
    expect(countedLines(of(undefined, 0.1, 0.2, 0.7)).assumed).toBe(0);
    expect(countedLines(of(undefined, 0.7, 0.2, 0.1)).assumed).toBe(0);
  });
  test('one unknown is enough to assume', () => {
    expect(countedLines(of(undefined, 0, 0, 0)).assumed).toBe(1);
    expect(countedLines(of(0, undefined, 0, 0)).assumed).toBe(1);
    expect(countedLines(of(0, 0, undefined, 0)).assumed).toBe(1);
    expect(countedLines(of(0, 0, 0, undefined)).assumed).toBe(1);
  });
  const km = fc.option(fc.double({ min: 0, max: 3, noNaN: true }), { nil: undefined });
  test('never more than 1 km', () => {
    fc.assert(
      fc.property(km, km, km, km, (a, b, c, d) => {
        const { lvOverhead, lvUnderground, hvOverhead, hvUnderground } = countedLines(of(a, b, c, d));
        expect(lvOverhead + lvUnderground + hvOverhead + hvUnderground).toBeLessThanOrEqual(1 + 1e-9);
      }),
    );
  });
  test('not knowing a length is never safer than any length it may have', () => {
    const known = fc.double({ min: 0, max: 2, noNaN: true });
    fc.assert(
      fc.property(known, known, known, known, fc.integer({ min: 0, max: 3 }), (a, b, c, d, which) => {
        const all = [a, b, c, d];
        const some = all.map((x, i) => (i === which ? undefined : x));
        const level = (v: readonly (number | undefined)[]): number => {
          const found = calculatedRiskLevel({
            surroundings: 'rural',
            flashDensity: 1,
            lines: of(v[0], v[1], v[2], v[3]),
          });
          return found.ok ? found.value : Infinity;
        };
        // A length that lies nearer to the site than a known one may push the known one out of the km.
        if (a + b + c + d <= 1) expect(level(some)).toBeLessThanOrEqual(level(all) + 1e-6);
      }),
    );
  });
});

describe('calculated risk level', () => {
  test('working with lines that are known', () => {
    const found = calculatedRiskLevel({
      surroundings: 'urban',
      flashDensity: 2,
      lines: { lvOverhead: 0.1, lvUnderground: 0.2, hvOverhead: 0.3, hvUnderground: 0.4 },
    });
    if (!found.ok) throw new Error(found.reason);
    expect(found.weightedLength).toBeCloseTo(0.2 + 0.2 + 0.12 + 0.08, 12);
    expect(found.value).toBeCloseTo(850 / (0.6 * 2), 6);
    expect(found).toMatchObject({ environment: 850 });
    expectSound(found.working);
    expect(symbols(found.working)).toEqual(['Ng 1/(km² a)', 'fenv', 'LP km', 'CRL']);
    expect(englishSteps(found.working).map((s) => s.formula)).toEqual([
      '',
      '',
      '2 × LPAL + 1 × LPCL + 0.4 × LPAH + 0.2 × LPCH',
      'fenv / (LP × Ng)',
    ]);
    expect(englishSteps(found.working).map((s) => s.sure)).toEqual([
      'stated',
      'memory',
      'published',
      'published',
    ]);
    expect(englishSteps(found.working)[1]?.says).toContain('urban');
    expect(englishSteps(found.working)[2]?.says).toBe('Weighted length of the lines');
    expect(englishSteps(found.working)[3]?.says).toContain('below 1000');
    expect(englishSteps(found.working)[3]?.source).toContain('443.5');
  });
  test('what is assumed says so', () => {
    const found = calculatedRiskLevel({
      surroundings: 'rural',
      flashDensity: 1,
      lines: { lvUnderground: 0.25 },
    });
    if (!found.ok) throw new Error(found.reason);
    expect(englishSteps(found.working)[2]).toMatchObject({
      sure: 'assumption',
      says: 'Weighted length of the lines; 0.75 km overhead assumed',
    });
    expect(found.lines.assumed).toBe(0.75);
    expectSound(found.working);
  });
  test('exactly 1000 is not below', () => {
    const lines = { lvOverhead: 0, lvUnderground: 0.85, hvOverhead: 0, hvUnderground: 0 };
    expect(calculatedRiskLevel({ surroundings: 'urban', flashDensity: 1, lines })).toMatchObject({
      value: 1000,
    });
  });
  test.each([0, -2, Number.NaN])('a flash density of %d: none', (flashDensity) => {
    expect(calculatedRiskLevel({ surroundings: 'rural', flashDensity, lines: {} })).toEqual({
      ok: false,
      reason: 'no-flash-density',
    });
  });
  test('no lines at all: none', () => {
    const lines = { lvOverhead: 0, lvUnderground: 0, hvOverhead: 0, hvUnderground: 0 };
    expect(calculatedRiskLevel({ surroundings: 'rural', flashDensity: 1, lines })).toEqual({
      ok: false,
      reason: 'no-lines',
    });
  });
});

test('more flashes never lengthen Lcrit nor raise CRL', () => {
  const ng = fc.double({ min: 0.01, max: 50, noNaN: true });
  const sites: readonly ExposedSite[] = ['dwelling', 'ground-mounted', 'other'];
  fc.assert(
    fc.property(ng, ng, fc.constantFrom(...sites), (a, b, site) => {
      const [few, many] = [Math.min(a, b), Math.max(a, b)];
      const lcrit = (flashDensity: number): number => {
        const found = criticalLength({ site, flashDensity });
        return found.ok ? found.value : NaN;
      };
      const crl = (flashDensity: number): number => {
        const found = calculatedRiskLevel({ surroundings: 'rural', flashDensity, lines: {} });
        return found.ok ? found.value : NaN;
      };
      expect(lcrit(many)).toBeLessThanOrEqual(lcrit(few));
      expect(crl(many)).toBeLessThanOrEqual(crl(few));
    }),
  );
});
