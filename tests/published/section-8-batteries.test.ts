import { describe, expect, test } from 'vitest';
import {
  batteryChargeVoltage,
  coldCompensatedAbsorb,
  LEAD_ACID_ABSORB,
  LEAD_ACID_EQUALISE,
  type BatteryInput,
} from '../../src/electrical/battery.js';

function charge(input: BatteryInput): number {
  const found = batteryChargeVoltage(input);
  if (!found.ok) throw new Error(found.reason);
  return found.value;
}

describe('highest charge voltage', () => {
  test.each([
    [12, 14.8],
    [24, 29.6],
    [48, 59.2],
  ])('lead-acid %d V: absorb up to %d V (read)', (nominal, volts) => {
    expect(LEAD_ACID_ABSORB * (nominal / 2)).toBeCloseTo(volts, 1);
  });
  test.each([
    [12, 15.5],
    [24, 31],
    [48, 62],
  ])('lead-acid %d V: equalise %d V, 2.583 V/cell (value from memory)', (nominal, volts) => {
    expect(LEAD_ACID_EQUALISE).toBe(2.583);
    // Warm enough that no compensation exceeds it.
    expect(charge({ chemistry: 'lead-acid', nominal, lowestTemp: 25 })).toBeCloseTo(volts, 1);
  });
  test.each([
    [12, 16.05],
    [24, 32.1],
    [48, 64.2],
  ])(
    'lead-acid %d V: cold-compensated absorb at -20 °C %d V, 2.45 V/cell + 5 mV/cell/C (computed)',
    (nominal, volts) => {
      expect(coldCompensatedAbsorb({ cells: nominal / 2, temperature: -20 })).toBeCloseTo(volts, 9);
    },
  );
  test.each([
    [12, 16.2],
    [24, 32.4],
    [48, 64.8],
  ])('lead-acid %d V without a temperature: 2.70 V/cell, %d V (value from memory)', (nominal, volts) => {
    expect(charge({ chemistry: 'lead-acid', nominal })).toBeCloseTo(volts, 9);
  });
  test('lead-acid at -20 °C: max(2.583, 2.467 + 0.005 x 45) V/cell (value from memory)', () => {
    expect(charge({ chemistry: 'lead-acid', nominal: 48, lowestTemp: -20 })).toBeCloseTo(24 * 2.692, 9);
  });
  test.each([
    [12, 14.6],
    [24, 29.2],
    [36, 43.8],
    [48, 58.4],
  ])(
    'lithium iron phosphate %d V: 3.65 V/cell, 4/8/12/16 cells: %d V (value from memory)',
    (nominal, volts) => {
      expect(charge({ chemistry: 'lfp', nominal })).toBeCloseTo(volts, 9);
    },
  );
  test.each([
    [12, 17],
    [24, 34],
    [48, 68],
  ])('nickel-cadmium %d V: 1.70 V/cell, 10/20/40 cells: %d V (value from memory)', (nominal, volts) => {
    expect(charge({ chemistry: 'nicd', nominal })).toBeCloseTo(volts, 9);
  });
});
