import { expect, test } from 'vitest';
import { KINDS, type Kind, type PortClass } from '../../src/model/words.js';
import { KINDS_WITH_MAIN_PORT, mainPortsOf, PROTECTABLE_PORTS } from '../../src/rules/main-ports.js';

// Section 1 of the rules, under the table.
test.each<[Kind, readonly PortClass[], readonly PortClass[]]>([
  ['service', ['service'], ['service']],
  ['inverter-charger', ['dc-in', 'ac-in', 'ac-out'], ['ac-in', 'ac-in-2', 'ac-out']],
  ['transformer', ['ac-in', 'ac-out'], ['ac-out']],
  ['dc-load', ['dc-bus'], ['dc-bus']],
  ['dc-panel', ['dc-bus', 'terminals'], ['dc-bus']],
  ['diversion-load', ['dc-bus'], ['dc-bus']],
  ['ac-battery', ['ac-out'], ['ac-out']],
  ['pump-drive', ['dc-in', 'ac-out'], ['dc-in']],
  ['pump-drive', ['ac-in', 'ac-out'], ['ac-in']],
  ['pump-drive', ['dc-in', 'ac-in', 'ac-out'], ['dc-in']],
  ['disconnect', ['terminals'], []],
  ['transfer-switch', ['terminals'], []],
  ['signal-line', ['terminals'], []],
])('%s with %j: %j', (kind, has, main) => {
  expect(mainPortsOf(kind, has)).toEqual(main);
});

test('every kind has a main port, or is one that takes no protector of its own', () => {
  expect(KINDS.filter((kind) => !KINDS_WITH_MAIN_PORT.includes(kind))).toEqual([
    'transfer-switch',
    'signal-line',
    'other',
    'disconnect',
  ]);
  for (const kind of KINDS_WITH_MAIN_PORT)
    for (const cls of mainPortsOf(kind, PROTECTABLE_PORTS)) expect(PROTECTABLE_PORTS).toContain(cls);
});
