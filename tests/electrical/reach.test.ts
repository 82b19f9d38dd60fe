import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { protectiveDistance, reachFigures, type ReachInput } from '../../src/electrical/reach.js';
import { expectSound, symbols } from './evaluated.js';
import { englishSteps } from '../in-english.js';

const usual: ReachInput = { up: 1500, leads: 200, withstand: 2500, slope: 25, leastReach: 10, limit: 30.48 };

describe('cases', () => {
  test('metres: margin over slope', () => {
    const found = protectiveDistance(usual);
    expect(found).toMatchObject({ kind: 'metres', distance: 30.48, margin: 800 });
    expect(protectiveDistance({ ...usual, limit: 100 }).distance).toBe(32);
    expect(protectiveDistance({ ...usual, up: 1700 }).distance).toBe(24);
    expect(symbols(found.working)).toEqual(['Up V', 'Ul V', 'Uw V', 'lp m']);
  });
  test('working of metres', () => {
    const found = protectiveDistance({ ...usual, up: 1700 });
    expectSound(found.working);
    expect(englishSteps(found.working).map((s) => s.sure)).toEqual([
      'stated',
      'computed',
      'stated',
      'published',
    ]);
    expect(englishSteps(found.working)[3]).toMatchObject({
      formula: 'min(max((Uw - Up - Ul) / (25 V/m), 10 m), 30.48 m)',
      value: 24,
    });
    expect(englishSteps(found.working)[3]?.says).toBe(
      'Reach along the cable, at least 10 m, at most 30.48 m',
    );
    expect(englishSteps(found.working)[3]?.source).toContain('E09:2022');
  });
  test('a withstand that is assumed is never said to be stated', () => {
    const uw = (withstandAssumed: boolean) =>
      englishSteps(protectiveDistance({ ...usual, withstandAssumed }).working).find((s) => s.symbol === 'Uw');
    expect(uw(false)).toMatchObject({ value: 2500, sure: 'stated', source: 'as stated' });
    expect(uw(true)).toMatchObject({ value: 2500, sure: 'assumption', source: 'assumption on these pages' });
  });
  test('at a service or panel it is that of what it feeds, and says by which voltage', () => {
    const { working } = protectiveDistance({ ...usual, withstand: 1500, withstandAssumed: true, fedAt: 120 });
    expect(englishSteps(working).find((s) => s.symbol === 'Uw')).toMatchObject({
      value: 1500,
      sure: 'assumption',
      says: 'Impulse withstand assumed of what is fed from here: overvoltage category II at 120 V to neutral',
      source: 'IEC 60664-1:2020 Table F.1',
    });
    const delta = { ...usual, withstand: 4000, withstandAssumed: true, fedAt: 480 };
    const said = (fedLineToLine: boolean): unknown =>
      englishSteps(protectiveDistance({ ...delta, fedLineToLine }).working).find((s) => s.symbol === 'Uw')
        ?.says;
    expect(said(true)).toMatch(/category II at 480 V line to line$/);
    expect(said(false)).toMatch(/category II at 480 V to neutral$/);
  });
  test('the least reach', () => {
    expect(reachFigures({ ...usual, up: 2050 })).toEqual({ kind: 'metres', distance: 10 });
    expect(reachFigures({ ...usual, up: 2050, leastReach: 5 })).toEqual({ kind: 'metres', distance: 10 });
    expect(reachFigures({ ...usual, up: 2050, leastReach: 12 })).toEqual({ kind: 'metres', distance: 12 });
    expect(reachFigures({ ...usual, up: 2300, leastReach: 0 })).toEqual({ kind: 'metres', distance: 0 });
  });
  test.each([1300, 1500, 1700, 2050, 2290, 2300])(
    'the working of %d V is right as printed, at the least and at the limit too',
    (up) => {
      for (const limit of [8, 30.48, 100]) expectSound(protectiveDistance({ ...usual, up, limit }).working);
    },
  );
  test('never past the limit, even where the least reach is longer', () => {
    expect(reachFigures({ ...usual, up: 2050, limit: 8 })).toEqual({ kind: 'metres', distance: 8 });
  });
  test('none: level and leads above the withstand; exactly at it there is the least reach', () => {
    const found = protectiveDistance({ ...usual, up: 2301 });
    expect(found).toMatchObject({ kind: 'none', distance: 0, margin: -1 });
    expectSound(found.working);
    expect(englishSteps(found.working)[3]).toMatchObject({
      value: 0,
      unit: 'm',
      formula: '0 m where Up + Ul > Uw',
    });
    expect(englishSteps(found.working)[3]?.says).toContain('none');
    expect(reachFigures({ ...usual, up: 2300 })).toEqual({ kind: 'metres', distance: 10 });
  });
  test('long leads: the level counts with them', () => {
    expect(reachFigures({ ...usual, up: 1000, leads: 1600 })).toEqual({ kind: 'none', distance: 0 });
    expect(reachFigures({ ...usual, up: 1000, leads: 250 }).kind).toBe('unlimited');
    expect(reachFigures({ ...usual, up: 1000, leads: 250.1 }).kind).toBe('metres');
  });
  test('not limited: level and leads at most half the withstand', () => {
    const found = protectiveDistance({ ...usual, up: 1050 });
    expect(found).toMatchObject({ kind: 'unlimited', distance: 30.48, margin: 1250 });
    expectSound(found.working);
    expect(englishSteps(found.working)[3]).toMatchObject({
      formula: 'no limit where Up + Ul <= Uw / 2',
      sure: 'memory',
    });
    expect(englishSteps(found.working)[3]?.says).toContain('not limited');
    expect(englishSteps(found.working)[3]?.source).toContain('IEC 62305-4');
    expect(reachFigures({ ...usual, up: 1050.1 }).kind).toBe('metres');
  });
  test('figures with and without the working are the same', () => {
    for (const up of [1000, 1700, 2400])
      expect(protectiveDistance({ ...usual, up })).toMatchObject(reachFigures({ ...usual, up }));
  });
});

describe('properties', () => {
  const volts = fc.double({ min: 1, max: 10_000, noNaN: true });
  const input = fc.record({
    up: volts,
    leads: fc.double({ min: 0, max: 3000, noNaN: true }),
    withstand: volts,
    slope: fc.double({ min: 1, max: 100, noNaN: true }),
    leastReach: fc.double({ min: 0, max: 20, noNaN: true }),
    limit: fc.double({ min: 1, max: 200, noNaN: true }),
  });
  test('never negative, never past the limit, 0 only where there is none or the least is 0', () => {
    fc.assert(
      fc.property(input, (i) => {
        const { kind, distance } = reachFigures(i);
        expect(distance).toBeGreaterThanOrEqual(0);
        expect(distance).toBeLessThanOrEqual(i.limit);
        if (kind === 'metres') expect(distance).toBeGreaterThanOrEqual(Math.min(i.leastReach, i.limit));
      }),
    );
  });
  test('a lower level or shorter leads never shorten the reach', () => {
    fc.assert(
      fc.property(input, fc.double({ min: 0.1, max: 1, noNaN: true }), (i, share) => {
        expect(reachFigures({ ...i, up: i.up * share }).distance).toBeGreaterThanOrEqual(
          reachFigures(i).distance,
        );
        expect(reachFigures({ ...i, leads: i.leads * share }).distance).toBeGreaterThanOrEqual(
          reachFigures(i).distance,
        );
      }),
    );
  });
});
