import { expect, test } from 'vitest';
import { say } from '../../src/words/reasons/say.js';
import { smallestLeads } from '../../src/rules/lead-size.js';
import { parseWireGauge } from '../../src/electrical/wire-gauge.js';
import { BASES } from '../../src/model/editions.js';

test.each([
  ['T1', '6 mm2', '16 mm2'],
  ['T2', '2.5 mm2', '6 mm2'],
  ['T3', '2.5 mm2', '6 mm2'],
  // Not stated: the larger leads.
  [null, '6 mm2', '16 mm2'],
] as const)('iec, class %s: %s live, %s earth', (iecClass, live, earth) => {
  expect(smallestLeads('iec', iecClass)).toMatchObject({ live, earth, aluminum: null });
  expect(say(smallestLeads('iec', iecClass).source)).toMatch(/534\.4\.10.*from memory/);
});

test('nec: the class does not count', () => {
  for (const iecClass of ['T1', 'T2', 'T3', null] as const) {
    const found = smallestLeads('nec-2017', iecClass);
    expect(found).toMatchObject({ live: '14 AWG', earth: '14 AWG', aluminum: '12 AWG' });
    expect(say(found.source)).toMatch(/242\.28.*285\.26/);
  }
});

test('every size is a gauge', () => {
  for (const basis of BASES)
    for (const iecClass of ['T1', 'T2', null] as const) {
      const { live, earth, aluminum } = smallestLeads(basis, iecClass);
      for (const size of [live, earth, aluminum ?? live]) expect(parseWireGauge(size)?.name).toBe(size);
    }
});
