import { expect, test } from 'vitest';
import { standardName } from '../../src/words/standard.js';

test.each([
  [{ standard: 'NEC (NFPA 70)', edition: '2023' }, 'NEC (NFPA 70) 2023'],
  [{ standard: 'UL 1449', edition: '5th edition' }, 'UL 1449, 5th edition'],
  [{ standard: 'IEC 60445', edition: '' }, 'IEC 60445'],
  [{ standard: 'IEC 60364-7-712', edition: '2017' }, 'IEC 60364-7-712 2017 (for photovoltaic systems)'],
])('%o is named %s', (source, name) => {
  expect(standardName(source)).toBe(name);
});
