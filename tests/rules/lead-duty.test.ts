import { expect, test } from 'vitest';
import { leadDuty, overcurrentWay, type OvercurrentPart } from '../../src/rules/lead-duty.js';
import { leadPlace } from './facts.js';

const allows = (
  most: number | null,
  device: OvercurrentPart['overcurrentDevice'] = null,
): OvercurrentPart => ({
  overcurrentMost: most,
  overcurrentDevice: device,
});
const nothing = { of: 'nothing' };
const device = (amperes: number | undefined): object => ({ of: 'device', amperes });

test.each([
  ['a control circuit', leadPlace({ circuit: 'control' }), allows(30), 'control', nothing],
  ['a turbine', leadPlace({ circuit: 'turbine' }), allows(30, 'none'), 'turbine', device(30)],
  ['a turbine, no size', leadPlace({ circuit: 'turbine' }), allows(null), 'turbine', device(undefined)],
  ['ahead', leadPlace({ aheadOfDisconnect: true, ownDevice: 20 }), allows(30), 'ahead', nothing],
  ['ahead, none needed', leadPlace({ aheadOfDisconnect: true }), allows(30, 'none'), 'ahead', nothing],
  ['none needed', leadPlace({ ownDevice: 20 }), allows(30, 'none'), 'not-needed', nothing],
  ['AC, not stated', leadPlace(), allows(30), 'own', device(30)],
  ['AC, no size', leadPlace({ ownDevice: 20 }), allows(null), 'own', device(undefined)],
  ['AC, at most', leadPlace({ ownDevice: 30 }), allows(30), 'circuit', device(30)],
  ['AC, less', leadPlace({ ownDevice: 15 }), allows(30, 'fuse'), 'circuit', device(15)],
  ['AC, more', leadPlace({ ownDevice: 30.1 }), allows(30), 'own', device(30)],
  [
    'AC, what an array sends is no matter',
    leadPlace({ ownDevice: 200, arrayCurrent: 1 }),
    allows(30),
    'own',
    device(30),
  ],
  [
    'an array, at most',
    leadPlace({ circuit: 'array', arrayCurrent: 30 }),
    allows(30),
    'array',
    // 1.25 of it, 690.8(B), value from memory.
    { of: 'current', amperes: 37.5 },
  ],
  ['an array, more', leadPlace({ circuit: 'array', arrayCurrent: 30.1 }), allows(30), 'own', device(30)],
  ['an array, not known', leadPlace({ circuit: 'array', ownDevice: 1 }), allows(30), 'own', device(30)],
  [
    'a battery bus',
    leadPlace({ circuit: 'battery', ownDevice: 1, arrayCurrent: 1 }),
    allows(30),
    'own',
    device(30),
  ],
])('%s', (_, place, part, way, duty) => {
  expect(overcurrentWay(place, part)).toBe(way);
  expect(leadDuty(place, part)).toEqual(duty);
});
