import { overcurrentAc } from '../../../src/rules/wire/overcurrent-ac.js';
import type { SystemBorne } from '../../../src/rules/overcurrent-facts.js';
import { overcurrentTable } from '../table.js';

// A part that allows 30 A, own case; the clauses are those of check-values.md section 10.
const part = { overcurrentMost: 30, overcurrentLeast: 15, overcurrentDevice: 'breaker' } as const;
const system = (some: SystemBorne): readonly SystemBorne[] => [some];
const three = ['L1', 'L2', 'L3'] as const;
const corner = {
  lines: three,
  groundedConductor: 'L2',
  systems: system({ system: '480 delta', whole: '480 delta', grounding: 'corner' }),
} as const;
const through =
  'L2 is grounded: it goes straight to the protector, without a fuse or a breaker (NEC 240.22).';
const marked =
  'A two-pole breaker on this system is marked for one and three phases (see NEC 240.85, from memory).';

export const table = overcurrentTable(import.meta.url, overcurrentAc, [
  {
    name: 'nobody states the circuit’s own device: one of its own, a pole for each line',
    given: { part, faultCurrent: 10_000 },
    then: 'breaker: 2 poles, 15 to 30 A, 240 V, breaks 10000 A',
    because:
      'the circuit’s own device isn’t stated (rating_a), so that it can’t stand for the 30 A that the part allows',
  },
  {
    name: 'the fault current isn’t known: a blank to fill',
    given: { part },
    then: 'breaker: 2 poles, 15 to 30 A, 240 V, breaks - A',
  },
  {
    name: 'which device isn’t stated: either',
    given: { part: { ...part, overcurrentDevice: null, overcurrentLeast: null } },
    then: 'either: 2 poles, - to 30 A, 240 V, breaks - A',
  },
  {
    name: 'a fuse',
    given: { part: { ...part, overcurrentDevice: 'fuse' } },
    then: 'fuse: 2 poles, 15 to 30 A, 240 V, breaks - A',
  },
  {
    name: 'the size isn’t stated: its instructions say it',
    given: {
      ownDevice: 20,
      part: { overcurrentMost: null, overcurrentLeast: null, overcurrentDevice: null },
    },
    then: 'either: 2 poles, - to - A, 240 V, breaks - A',
    because: 'the catalogue doesn’t state how large a device the part allows: as its instructions say',
  },
  {
    name: 'the circuit’s own device is as large as the part allows: it will do',
    given: { part, ownDevice: 30, faultCurrent: 10_000 },
    then: 'none: - poles, - to 30 A, - V, breaks - A',
    because: 'the circuit’s own device of 30 A is no larger than the 30 A that the part allows: it will do',
  },
  {
    name: 'the circuit’s own device is larger',
    given: { part, ownDevice: 30.1 },
    then: 'breaker: 2 poles, 15 to 30 A, 240 V, breaks - A',
    because: 'the circuit’s own device of 30.1 A is larger than the 30 A that the part allows',
  },
  {
    name: 'the part needs none',
    given: { part: { ...part, overcurrentDevice: 'none' }, ownDevice: 200 },
    then: 'none: - poles, - to - A, - V, breaks - A',
    because: 'the part needs none of its own',
  },
  {
    name: 'ahead of the first disconnect (230.82(4), value from memory)',
    given: { part, aheadOfDisconnect: true, ownDevice: 20 },
    then: 'none: - poles, - to - A, - V, breaks - A',
    because:
      'ahead of the first disconnect none but what the part is listed with (see NEC 230.82(4), from memory)',
  },
  {
    name: 'iec, ahead of the first disconnect: no clause of the NEC',
    given: { basis: 'iec', part, aheadOfDisconnect: true },
    then: 'none: - poles, - to - A, - V, breaks - A',
    because: 'ahead of the first disconnect none but what the part is listed with',
  },
  {
    name: 'no part: what a device there must be',
    given: { part: undefined, faultCurrent: 10_000 },
    then: 'unknown: 2 poles, - to - A, 240 V, breaks 10000 A',
    because: 'no part is chosen',
  },
  {
    name: 'one line and a neutral: 120 V',
    given: { part, lines: ['L1'], systems: system({ system: '120', whole: '120/240', grounding: 'solid' }) },
    then: 'breaker: 1 poles, 15 to 30 A, 120 V, breaks - A',
  },
  {
    name: 'one line of a system that floats: line to line of the whole, straight (240.85)',
    given: { part, lines: ['L1'], systems: system({ system: '277', whole: '480Y/277', grounding: 'none' }) },
    then: 'breaker: 1 poles, 15 to 30 A, 480 V straight, breaks - A',
  },
  {
    name: 'one line of a solidly grounded wye: 277 V',
    given: { part, lines: ['L1'], systems: system({ system: '277', whole: '480Y/277', grounding: 'solid' }) },
    then: 'breaker: 1 poles, 15 to 30 A, 277 V, breaks - A',
  },
  {
    name: 'a solidly grounded wye may have a slash rating (240.85)',
    given: {
      part,
      lines: three,
      systems: system({ system: '480Y/277', whole: '480Y/277', grounding: 'solid' }),
    },
    then: 'breaker: 3 poles, 15 to 30 A, 480 V, breaks - A',
  },
  ...(['none', 'impedance'] as const).map((grounding) => ({
    name: `${grounding}: straight (240.85)`,
    given: { part, lines: three, systems: system({ system: '480Y/277', whole: undefined, grounding }) },
    then: 'breaker: 3 poles, 15 to 30 A, 480 V straight, breaks - A',
  })),
  ...(['240 delta', '480 delta'] as const).map((delta) => ({
    name: `${delta} behind a solidly grounded wye: straight all the same (240.85)`,
    given: { part, lines: three, systems: system({ system: delta, whole: '480Y/277', grounding: 'solid' }) },
    then: `breaker: 3 poles, 15 to 30 A, ${delta.slice(0, 3)} V straight, breaks - A`,
  })),
  {
    name: 'a high leg: straight (240.85)',
    given: {
      part,
      lines: three,
      highLeg: true,
      systems: system({ system: '240/120 high-leg', whole: '240/120 high-leg', grounding: 'solid' }),
    },
    then: 'breaker: 3 poles, 15 to 30 A, 240 V straight, breaks - A',
  },
  {
    name: 'a corner: L2 straight through, and two poles (240.22, 240.85)',
    given: { part, ...corner },
    then: 'breaker: 2 poles in L1+L3 not L2, 15 to 30 A, 480 V straight, breaks - A',
    notes: [through, marked],
  },
  {
    name: 'iec, a corner: no clause of the NEC',
    given: { basis: 'iec', part, ...corner },
    then: 'breaker: 2 poles in L1+L3 not L2, 15 to 30 A, 480 V straight, breaks - A',
    notes: ['L2 is grounded: it goes straight to the protector, without a fuse or a breaker.'],
  },
  {
    name: 'iec, a corner, L2 alone: no clause of the NEC',
    given: { basis: 'iec', part, ...corner, lines: ['L2'] },
    then: 'none: - poles, - to - A, - V, breaks - A',
    because: 'this housing takes a grounded conductor alone, in which no device stands',
  },
  {
    name: 'a corner, a housing with one line of it beside L2',
    given: { part, ...corner, lines: ['L2', 'L3'] },
    then: 'breaker: 1 poles in L3 not L2, 15 to 30 A, 480 V straight, breaks - A',
    notes: [through],
  },
  {
    name: 'a corner, a housing without L2',
    given: { part, ...corner, lines: ['L1', 'L3'] },
    then: 'breaker: 2 poles, 15 to 30 A, 480 V straight, breaks - A',
  },
  {
    name: 'a corner, L2 alone: no device in it (240.22)',
    given: { part, ...corner, lines: ['L2'] },
    then: 'none: - poles, - to - A, - V, breaks - A',
    because: 'this housing takes a grounded conductor alone, in which no device stands (NEC 240.22)',
  },
  {
    name: 'systems that can’t be joined: the higher, and straight where one of them asks',
    given: {
      part,
      systems: [
        { system: '120/240', whole: '120/240', grounding: 'solid' },
        { system: '480', whole: '480', grounding: 'none' },
      ],
    },
    then: 'breaker: 2 poles, 15 to 30 A, 480 V straight, breaks - A',
  },
  {
    name: 'nothing is known of the system, nor which lines the housing takes',
    given: { part, systems: [], lines: [] },
    then: 'breaker: - poles, 15 to 30 A, - V, breaks - A',
  },
  {
    name: 'an array',
    given: { circuit: 'array' },
    outside: 'no AC circuit of the site',
  },
]);
