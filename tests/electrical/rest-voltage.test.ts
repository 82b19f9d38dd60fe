import { describe, expect, it } from 'vitest';
import { leastBatteryVoltage, leastInFullSun } from '../../src/electrical/rest-voltage.js';

// 1.75, 2.5 and 1.00 V a cell, and 0.8 x Voc(STC): common practice, no source.
describe('the least that a battery shows', () => {
  it.each([
    ['lead-acid', 12, undefined, 10.5],
    ['lead-acid', 48, undefined, 42],
    ['lfp', 48, undefined, 40],
    ['lfp', undefined, 15, 37.5],
    ['lfp', 48, 15, 37.5],
    ['nicd', 24, undefined, 20],
    ['lfp', 50, undefined, undefined],
    ['zinc', 48, 24, undefined],
    ['lfp', undefined, undefined, undefined],
  ])('%s, %s V, %s cells: %s V', (chemistry, nominal, cells, least) => {
    expect(leastBatteryVoltage({ chemistry, nominal, cells })).toBe(least);
  });
});

describe('the least that strings give in full sun', () => {
  const string = (
    vocStc: number | undefined,
    modulesInSeries: number | undefined,
    optimizers = false,
  ): object => ({ vocStc, modulesInSeries, optimizers });

  it.each([
    ['one', [string(40, 10)], 320],
    ['the weaker of two', [string(40, 10), string(38, 10)], 304],
    ['the weaker first', [string(38, 10), string(40, 10)], 304],
    ['none', [], undefined],
    ['a module that isn’t known', [string(undefined, 10)], undefined],
    ['a number of modules that isn’t known', [string(40, 10), string(40, undefined)], undefined],
    ['optimizers', [string(40, 10, true)], undefined],
  ])('%s', (_, strings, least) => {
    expect(leastInFullSun(strings as Parameters<typeof leastInFullSun>[0], 0.8)).toBe(least);
  });

  it('by the share that is handed in', () => {
    expect(leastInFullSun([{ vocStc: 50, modulesInSeries: 2, optimizers: false }], 0.7)).toBe(70);
  });
});
