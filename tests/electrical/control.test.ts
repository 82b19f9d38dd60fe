import { describe, expect, test } from 'vitest';
import { controlCircuitVoltage, type ControlCircuitInput } from '../../src/electrical/control.js';
import { expectSound, symbols } from './evaluated.js';
import { englishSteps } from '../in-english.js';

const dc: ControlCircuitInput = {
  control: { volts: 24, current: 'dc' },
  regulated: false,
  continuousShare: 1.15,
  acShare: 1.25,
};

describe('DC', () => {
  test('24 V, temperature not known: a lead-acid battery charging, 32.4 V', () => {
    const found = controlCircuitVoltage(dc);
    expect(found).toMatchObject({ value: 32.4, share: 27.6, battery: 32.4, current: 'dc' });
    expectSound(found.working);
    expect(symbols(found.working)).toEqual(['U V', 'Us V', 'Ucharge V', 'MCOV V']);
    expect(englishSteps(found.working).map((s) => s.formula)).toEqual([
      '',
      '1.15 × U',
      'Ucell × U / 2 V',
      'max(Us, Ucharge)',
    ]);
    expect(englishSteps(found.working).map((s) => s.sure)).toEqual([
      'stated',
      'common practice',
      'memory',
      'common practice',
    ]);
    expect(englishSteps(found.working)[1]?.says).toContain('DC control circuit');
  });
  test('the temperature counts', () => {
    expect(controlCircuitVoltage({ ...dc, lowestTemp: 25 }).battery).toBeCloseTo(12 * 2.583, 9);
    expect(controlCircuitVoltage({ ...dc, lowestTemp: -40 }).battery).toBeCloseTo(12 * 2.792, 9);
  });
  test('a greater share than the battery', () => {
    expect(controlCircuitVoltage({ ...dc, continuousShare: 1.5 })).toMatchObject({
      value: 36,
      share: 36,
      battery: 32.4,
    });
  });
  test('regulated: no battery', () => {
    const found = controlCircuitVoltage({ ...dc, regulated: true });
    expect(found).toMatchObject({ value: 27.6, share: 27.6, battery: null });
    expectSound(found.working);
    expect(symbols(found.working)).toEqual(['U V', 'Us V']);
  });
  test('a nominal voltage that no battery has: by its cells of 2 V', () => {
    expect(controlCircuitVoltage({ ...dc, control: { volts: 5, current: 'dc' } }).value).toBe(6.75);
  });
});

describe('AC', () => {
  test.each([true, false])('24 V: 1.25 x, 30 V (regulated: %s)', (regulated) => {
    const found = controlCircuitVoltage({ ...dc, control: { volts: 24, current: 'ac' }, regulated });
    expect(found).toMatchObject({ value: 30, share: 30, battery: null, current: 'ac' });
    expectSound(found.working);
    expect(englishSteps(found.working)[1]).toMatchObject({ formula: '1.25 × U', sure: 'common practice' });
    expect(englishSteps(found.working)[1]?.says).toContain('AC control circuit');
  });
});
