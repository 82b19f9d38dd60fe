import { expect, it } from 'vitest';
import { one, planOf } from './plan-of.js';

// What an installer is to read to ground before he connects: which pole is grounded decides it (rules.md section 4).
const ARRAY = 'open_circuit_voltage=100; isc_stc=9; strings_in_parallel=1; protect=yes; connects_to=X';
const CONTROLLER = 'X charge-controller; max_dc_voltage=250; connects_to=B';
const BATTERY = 'B battery; battery_voltage=48; battery_chemistry=lfp; protect=yes';
const INVERTER = 'X grid-tie-inverter; max_dc_voltage=600';

const readings = (rows: readonly string[], key: string): Record<string, string> => {
  const plan = planOf('occupancy=other; lowest_temp=-10 C', rows.join('\n'));
  return Object.fromEntries(one(plan, key).wiring.measurements.map((m) => [m.conductor, m.expected]));
};

const GROUNDED = 'near 0 V: this pole is grounded';
const FLOATING = 'not fixed, since no pole is grounded: from near 0 V to ';

it.each([
  ['a charge controller: negative by default', '', 'positive', 'negative'],
  ['positive as stated', '; dc_grounding=positive', 'negative', 'positive'],
  ['negative as stated', '; dc_grounding=negative', 'positive', 'negative'],
])('an array on %s', (_name, facts, whole, grounded) => {
  const read = readings([`A array; ${ARRAY}${facts}`, CONTROLLER, BATTERY], 'A:output');
  expect(read[grounded]).toBe(GROUNDED);
  expect(read[whole]).toMatch(/^the voltage of the string, which changes with the sun, at most \d/);
});

it('an array on an inverter: no pole is grounded', () => {
  const read = readings([`A array; ${ARRAY}`, INVERTER], 'A:output');
  expect(Object.keys(read)).toEqual(['positive', 'negative']);
  for (const told of Object.values(read))
    expect(told.startsWith(`${FLOATING}the voltage of the string`)).toBe(true);
});

it.each([
  ['negative by default', '', 'positive', 'negative'],
  ['positive as stated', '; dc_grounding=positive', 'negative', 'positive'],
])('a battery, %s', (_name, facts, whole, grounded) => {
  const read = readings([`A array; ${ARRAY}`, CONTROLLER, `${BATTERY}${facts}`], 'B:battery');
  expect(read[grounded]).toBe(GROUNDED);
  expect(read[whole]).toMatch(/^the voltage of the battery, at most \d/);
});

it('a direct-current turbine is no string', () => {
  const rows = [
    'W wind-turbine; output=dc; open_circuit_voltage=170 V; protect=yes; connects_to=X',
    CONTROLLER,
    BATTERY,
  ];
  expect(readings(rows, 'W:output')['positive']).toMatch(
    /^the voltage of the turbine, which changes with its speed, at most \d/,
  );
});

it('a hydro turbine beside an array changes with its own speed, not with the wind', () => {
  const rows = [
    `A array; ${ARRAY.replace('connects_to=X', 'connects_to=X/1')}`,
    'H hydro-turbine; output=dc; open_circuit_voltage=90 V; connects_to=X/1',
    CONTROLLER,
    BATTERY,
  ];
  expect(readings(rows, 'X:dc-in-1')['positive']).toMatch(
    /^the voltage of the array and the turbine, which changes with the sun and the turbine’s speed, at most \d/,
  );
});

it.each([
  ['nec-2023', 'dc_grounding=negative', ['negative']],
  ['nec-2023', 'dc_grounding=positive', ['positive']],
  ['nec-2023', 'dc_grounding=floating', []],
  ['iec', 'dc_grounding=negative', []],
])(
  '%s, %s: a grounded pole has a colour of its own (NEC 200.6, value from memory)',
  (basis, facts, poles) => {
    const rows = [`A array; ${ARRAY}; ${facts}`, CONTROLLER, BATTERY];
    const plan = planOf(`occupancy=other; lowest_temp=-10 C; basis=${basis}; earthing=TN`, rows.join('\n'));
    const told = one(plan, 'A:output').wiring.notes.filter((n) => n.includes('white or gray'));
    expect(told.map((n) => n.split(' ')[1])).toEqual(poles);
  },
);
