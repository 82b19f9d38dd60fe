import { expect, test } from 'vitest';
import { mayLeaveBuilding, placesAsked } from '../../src/rules/unknown-place.js';
import { run } from './facts.js';

test('a run may leave its building where a place isn’t known, and it isn’t known to', () => {
  expect(mayLeaveBuilding(run({ unplaced: ['SVC'] }))).toBe(true);
  expect(mayLeaveBuilding(run({ unplaced: ['SVC'], betweenBuildings: true }))).toBe(false);
  expect(mayLeaveBuilding(run({ unplaced: [] }))).toBe(false);
});

test('each place is asked for at its row', () => {
  expect(placesAsked(['SVC', 'MP']).map((n) => [n.code, n.severity, n.tag, n.field])).toEqual([
    ['fact/place', 'missing', 'SVC', 'place'],
    ['fact/place', 'missing', 'MP', 'place'],
  ]);
  expect(placesAsked(['SVC'])[0]?.values).toEqual({ tag: 'SVC' });
  expect(placesAsked([])).toEqual([]);
});
