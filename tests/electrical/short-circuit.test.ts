import { expect, test } from 'vitest';
import { arrayShortCircuitCurrent } from '../../src/electrical/short-circuit.js';
import { expectSound, symbols } from './evaluated.js';
import { englishSteps } from '../in-english.js';

test('1.25 x Isc x strings', () => {
  const found = arrayShortCircuitCurrent({ iscStc: 11.2, stringsInParallel: 3, share: 1.25 });
  expect(found.value).toBe(42);
  expectSound(found.working);
  expect(symbols(found.working)).toEqual(['Isc A', 'p', 'Isc,max A']);
  expect(englishSteps(found.working)[2]).toMatchObject({ formula: '1.25 × Isc × p', sure: 'memory' });
  expect(englishSteps(found.working)[2]?.source).toContain('690.8(A)');
});

test('iec: Annex B of IEC 60364-7-712 (value from memory), and no clause of the NEC', () => {
  const found = arrayShortCircuitCurrent({ iscStc: 11.2, stringsInParallel: 3, share: 1.25, basis: 'iec' });
  expect(found.value).toBe(42);
  expect(englishSteps(found.working)[2]?.source).toBe('IEC 60364-7-712:2017 Annex B, value from memory');
});

test('the share is a parameter', () => {
  expect(arrayShortCircuitCurrent({ iscStc: 10, stringsInParallel: 2, share: 1.56 }).value).toBe(31.2);
});
