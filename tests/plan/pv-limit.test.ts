import { expect, test } from 'vitest';
import { items, planOf } from './plan-of.js';

const CODE = 'rate/above-code-limit';

/** A string of 14 modules of 55 V: 770 V at 25 C; each list is an array A on the ground unless it says otherwise. */
const ARRAY = 'voc_stc=55; modules_in_series=14; strings_in_parallel=1; run_length=40 m; place=Field / frame';
const INVERTER = 'run_length=20 m; dc_inputs=1; ac_out=240; max_dc_voltage=1500';

// Expected: NEC 690.7 by what the circuit is on or in: 600 V a dwelling, 1000 V another building, 1500 V neither.
test.each<[string, string, string, number | undefined]>([
  [
    'the converter stands outdoors on a pole of its own: no building',
    'dwelling',
    `I grid-tie-inverter; ${INVERTER}; place=Pole / foot; outdoors=yes
     A array; connects_to=I; mounting=ground; ${ARRAY}`,
    undefined,
  ],
  [
    'the converter is in the house',
    'dwelling',
    `I grid-tie-inverter; ${INVERTER}; place=House / cellar
     A array; connects_to=I; mounting=ground; ${ARRAY}`,
    600,
  ],
  [
    'the converter hangs outdoors on the wall of a house',
    'dwelling',
    `I grid-tie-inverter; ${INVERTER}; place=House / wall; outdoors=yes
     L load; place=House / hall; ac_in=120
     A array; connects_to=I; mounting=ground; ${ARRAY}`,
    600,
  ],
  [
    'a disconnect on the way is in the house, the converter is not',
    'dwelling',
    `I grid-tie-inverter; ${INVERTER}; place=Pole / foot; outdoors=yes
     D disconnect; connects_to=I; place=House / cellar; run_length=20 m
     A array; connects_to=D; mounting=ground; ${ARRAY}`,
    600,
  ],
  [
    'a combiner on the way is in the house, the converter is not',
    'dwelling',
    `I grid-tie-inverter; ${INVERTER}; place=Pole / foot; outdoors=yes
     C combiner; connects_to=I; place=House / cellar; outdoors=no; run_length=20 m
     A array; connects_to=C; mounting=ground; ${ARRAY}`,
    600,
  ],
  [
    'a hut that is no dwelling',
    'other',
    `I grid-tie-inverter; ${INVERTER}; place=Hut / room
     A array; connects_to=I; mounting=ground; ${ARRAY}`,
    undefined,
  ],
  [
    'the farmhouse of a job that is no dwelling, as its panel says',
    'other',
    `I grid-tie-inverter; ${INVERTER}; place=Farmhouse / cellar
     P panel; place=Farmhouse / hall; building_occupancy=dwelling; ac_in=120/240
     A array; connects_to=I; mounting=ground; ${ARRAY}`,
    600,
  ],
  [
    'the roof of that farmhouse, with the converter in the barn',
    'other',
    `I grid-tie-inverter; ${INVERTER}; place=Barn / room
     P panel; place=Farmhouse / hall; building_occupancy=dwelling; ac_in=120/240
     A array; connects_to=I; mounting=roof; ${ARRAY.replace('Field / frame', 'Farmhouse / roof')}`,
    600,
  ],
  [
    'an array that leads nowhere on the list',
    'dwelling',
    `A array; protect=yes; mounting=ground; ${ARRAY}`,
    600,
  ],
])('%s', (_name, occupancy, list, limit) => {
  const plan = planOf(`lowest_temp=25 C; basis=nec-2023; occupancy=${occupancy}`, list);
  const found = items(plan, CODE).map(({ message }) => message);
  expect(found).toEqual(
    limit === undefined ? [] : [expect.stringContaining(`above the ${limit} V of NEC 690.7`)],
  );
});

// The same list with one module string more: 1100 V at 20 modules.
test.each([
  ['in a hut', 'place=Hut / room', 1],
  ['on a pole', 'place=Pole / foot; outdoors=yes', 0],
])('1100 V of an array on the ground, the converter %s', (_name, where, conflicts) => {
  const plan = planOf(
    'lowest_temp=25 C; basis=nec-2023; occupancy=other',
    `I grid-tie-inverter; ${INVERTER}; ${where}
     A array; connects_to=I; mounting=ground; ${ARRAY.replace('series=14', 'series=20')}`,
  );
  expect(items(plan, CODE)).toHaveLength(conflicts);
  // The working that the permit sheet prints says the same limit.
  const steps = plan.protectors.flatMap(({ calculations }) =>
    calculations.flatMap(({ steps: each }) => each),
  );
  const limits = steps.filter(({ symbol }) => symbol === 'Ulimit').map(({ value }) => value);
  expect(new Set(limits)).toEqual(new Set([conflicts === 1 ? 1000 : 1500]));
});
