import { describe, expect, it, test } from 'vitest';
import { parseWireGauge } from '../../src/electrical/wire-gauge.js';
import type { WireRange, WireSize } from '../../src/model/catalogue.js';
import type { Lead } from '../../src/model/lead.js';
import {
  isDeviceUnknown,
  isWithin,
  leadsByMetal,
  leadsToPlan,
  type LeadFacts,
  type LeadPart,
} from '../../src/rules/smallest-lead.js';
import { leadPlace } from './facts.js';

function size(gauge: string): WireSize {
  const found = parseWireGauge(gauge);
  if (!found) throw new Error(gauge);
  return found;
}
const range = (metal: Lead['metal'], least: string, most: string): WireRange => ({
  metal,
  least: size(least),
  most: size(most),
});
const COPPER = range('copper', '14 AWG', '6 AWG');
const ALUMINIUM = range('aluminium', '12 AWG', '6 AWG');

function facts(part: Partial<LeadPart> = {}, some: Partial<Omit<LeadFacts, 'part'>> = {}): LeadFacts {
  return {
    basis: 'nec-2023',
    classOneAsked: false,
    places: [leadPlace()],
    ...some,
    part: {
      overcurrentMost: 15,
      overcurrentDevice: null,
      wireRanges: [COPPER],
      leadByInstructions: null,
      iecClass: null,
      ...part,
    },
  };
}
/** `copper: 12 AWG, ground 12 AWG, fits`. */
const told = (of: LeadFacts): string =>
  leadsByMetal(of)
    .map(({ metal, line, ground, fits, beyond }) => {
      const how = fits ? 'fits' : beyond === undefined ? 'too thick' : `beyond ${beyond} A`;
      return `${metal}: ${line.name}, ground ${ground.name}, ${how}`;
    })
    .join('; ');

describe('nec', () => {
  test.each([
    ['242.28 alone', facts({ overcurrentDevice: 'none' }), 'copper: 14 AWG, ground 14 AWG, fits'],
    ['a device of 15 A', facts(), 'copper: 14 AWG, ground 14 AWG, fits'],
    ['a device of 20 A', facts({ overcurrentMost: 20 }), 'copper: 12 AWG, ground 12 AWG, fits'],
    [
      'the terminals take no thinner one',
      facts({ wireRanges: [range('copper', '10 AWG', '4 AWG')] }),
      'copper: 10 AWG, ground 10 AWG, fits',
    ],
    [
      'terminals in mm2',
      facts({ wireRanges: [range('copper', '4 mm2', '16 mm2')] }),
      'copper: 4 mm2, ground 4 mm2, fits',
    ],
    [
      'both metals',
      facts({ overcurrentMost: 20, wireRanges: [ALUMINIUM, COPPER] }),
      'aluminium: 10 AWG, ground 10 AWG, fits; copper: 12 AWG, ground 12 AWG, fits',
    ],
    [
      '12 AWG Al at least (242.28)',
      facts({ overcurrentDevice: 'none', wireRanges: [ALUMINIUM] }),
      'aluminium: 12 AWG, ground 12 AWG, fits',
    ],
    ['no range: copper', facts({ overcurrentMost: 40, wireRanges: [] }), 'copper: 8 AWG, ground 8 AWG, fits'],
    ['as thick as the terminals take', facts({ overcurrentMost: 60 }), 'copper: 6 AWG, ground 6 AWG, fits'],
    ['thicker', facts({ overcurrentMost: 61 }), 'copper: 4 AWG, ground 4 AWG, too thick'],
    [
      'a device beyond the table',
      facts({ overcurrentMost: 201 }),
      'copper: 14 AWG, ground 14 AWG, beyond 201 A',
    ],
    [
      'instructions of its own',
      facts({ overcurrentMost: 201, leadByInstructions: true }),
      'copper: 14 AWG, ground 14 AWG, fits',
    ],
    [
      'no instructions of its own',
      facts({ overcurrentMost: 20, leadByInstructions: false }),
      'copper: 12 AWG, ground 12 AWG, fits',
    ],
    [
      'the circuit’s own device sizes them',
      facts({ overcurrentMost: 60 }, { places: [leadPlace({ ownDevice: 20 })] }),
      'copper: 12 AWG, ground 12 AWG, fits',
    ],
    [
      'of two ports the thicker, whichever stands first',
      facts(
        { overcurrentMost: 40 },
        { places: [leadPlace({ ownDevice: 35 }), leadPlace({ ownDevice: 20 })] },
      ),
      'copper: 8 AWG, ground 8 AWG, fits',
    ],
    [
      'of two ports the thicker, the last',
      facts(
        { overcurrentMost: 40 },
        { places: [leadPlace({ ownDevice: 20 }), leadPlace({ ownDevice: 35 })] },
      ),
      'copper: 8 AWG, ground 8 AWG, fits',
    ],
    [
      'an array without a device: 1.25 of 24 A',
      facts({ overcurrentMost: 30 }, { places: [leadPlace({ circuit: 'array', arrayCurrent: 24 })] }),
      'copper: 10 AWG, ground 10 AWG, fits',
    ],
    [
      'an array without a device: 1.25 of 24.1 A',
      facts({ overcurrentMost: 30 }, { places: [leadPlace({ circuit: 'array', arrayCurrent: 24.1 })] }),
      'copper: 8 AWG, ground 8 AWG, fits',
    ],
    ['the size isn’t stated', facts({ overcurrentMost: null }), 'copper: 14 AWG, ground 14 AWG, fits'],
    [
      'class T1 is no matter',
      facts({ iecClass: 'T1' }, { classOneAsked: true }),
      'copper: 14 AWG, ground 14 AWG, fits',
    ],
  ])('%s', (_, of, then) => {
    expect(told(of)).toBe(then);
  });
});

// IEC 60364-5-53 cl. 534.4.10, values from memory.
describe('iec', () => {
  const iec = { basis: 'iec' } as const;
  const wide = { wireRanges: [range('copper', '1.5 mm2', '16 mm2')] };
  test.each([
    ['class II', facts({ ...wide, iecClass: 'T2' }, iec), 'copper: 2.5 mm2, ground 6 mm2, fits'],
    ['not stated, as class II', facts(wide, iec), 'copper: 2.5 mm2, ground 6 mm2, fits'],
    ['class I', facts({ ...wide, iecClass: 'T1' }, iec), 'copper: 6 mm2, ground 16 mm2, fits'],
    [
      'class I is asked',
      facts({ ...wide, iecClass: 'T2' }, { ...iec, classOneAsked: true }),
      'copper: 6 mm2, ground 16 mm2, fits',
    ],
    [
      'a device is no matter',
      facts({ ...wide, overcurrentMost: 63 }, iec),
      'copper: 2.5 mm2, ground 6 mm2, fits',
    ],
    [
      'the ground lead is too thick',
      facts({ wireRanges: [range('copper', '1.5 mm2', '4 mm2')] }, iec),
      'copper: 2.5 mm2, ground 6 mm2, too thick',
    ],
    [
      'the terminals take no thinner one',
      facts({ wireRanges: [range('copper', '4 mm2', '16 mm2')] }, iec),
      'copper: 4 mm2, ground 6 mm2, fits',
    ],
    ['aluminium: no figure is known', facts({ wireRanges: [ALUMINIUM] }, iec), ''],
  ])('%s', (_, of, then) => {
    expect(told(of)).toBe(then);
  });
});

describe('the leads to plan with', () => {
  it('are of copper where both metals fit, else of what fits', () => {
    const both = leadsByMetal(facts({ wireRanges: [ALUMINIUM, COPPER] }));
    expect(leadsToPlan(both)?.metal).toBe('copper');
    const one = leadsByMetal(
      facts({ overcurrentMost: 40, wireRanges: [range('copper', '14 AWG', '10 AWG'), ALUMINIUM] }),
    );
    expect(leadsToPlan(one)?.metal).toBe('aluminium');
    expect(leadsToPlan(leadsByMetal(facts({ overcurrentMost: 201 })))).toBeUndefined();
    expect(leadsToPlan([])).toBeUndefined();
  });

  it('say what each floor is of', () => {
    const [of] = leadsByMetal(facts({ overcurrentMost: 20 }));
    expect(of?.floors.map(({ by, size: { name }, amperes }) => `${by} ${name} ${amperes}`)).toEqual([
      'code 14 AWG 0',
      'terminals 14 AWG 0',
      'device 12 AWG 20',
    ]);
    // 12 AWG aluminium of 242.28 is of either lead; the leads of 534.4.10 differ.
    const codes = (from: LeadFacts): readonly string[] =>
      leadsByMetal(from)
        .flatMap(({ floors }) => floors.filter(({ by }) => by === 'code'))
        .map(({ lead, size: { name } }) => `${lead ?? 'both'} ${name}`);
    expect(codes(facts({ wireRanges: [ALUMINIUM] }))).toEqual(['both 12 AWG']);
    const iec = { basis: 'iec', places: [] } as const;
    expect(codes(facts({ wireRanges: [] }, iec))).toEqual(['line 2.5 mm2', 'ground 6 mm2']);
    const places = [leadPlace({ circuit: 'array', arrayCurrent: 8 })];
    const [array] = leadsByMetal(facts({ overcurrentMost: 20 }, { places }));
    expect(array?.floors.at(-1)).toMatchObject({ by: 'current', amperes: 10 });
  });
});

describe('what instructions of its own go before', () => {
  const spared = (part: Partial<LeadPart>, some: Partial<Omit<LeadFacts, 'part'>> = {}): string =>
    leadsByMetal(facts({ leadByInstructions: true, ...part }, some))
      .map((one) => String(one.spared))
      .join('; ');
  test.each([
    ['a device that asks for no more', { overcurrentMost: 15 }, 'undefined'],
    ['a device that asks for more', { overcurrentMost: 15.1 }, '15.1'],
    [
      'terminals that ask for as much',
      { overcurrentMost: 30, wireRanges: [range('copper', '10 AWG', '4 AWG')] },
      'undefined',
    ],
    [
      'terminals that ask for less',
      { overcurrentMost: 30.1, wireRanges: [range('copper', '10 AWG', '4 AWG')] },
      '30.1',
    ],
    ['a device beyond the table', { overcurrentMost: 201 }, '201'],
    ['no instructions', { overcurrentMost: 20, leadByInstructions: false }, 'undefined'],
    ['a device of unknown size', { overcurrentMost: null }, 'undefined'],
    [
      'each metal by itself',
      { overcurrentMost: 15, wireRanges: [COPPER, range('aluminium', '10 AWG', '6 AWG')] },
      'undefined; undefined',
    ],
    [
      'each metal by itself, more',
      { overcurrentMost: 25, wireRanges: [COPPER, range('aluminium', '10 AWG', '6 AWG')] },
      '25; undefined',
    ],
  ] as const)('%s', (_, part, then) => {
    expect(spared(part)).toBe(then);
  });

  it('is the largest of several, and nothing under iec', () => {
    const places = [leadPlace({ ownDevice: 20 }), leadPlace({ ownDevice: 25 }), leadPlace({ ownDevice: 15 })];
    expect(spared({ overcurrentMost: 40 }, { places })).toBe('25');
    expect(spared({ overcurrentMost: 40 }, { places, basis: 'iec' })).toBe('undefined');
  });

  it('is held against the thinner of both leads', () => {
    const classOne = { classOneAsked: true };
    expect(spared({ overcurrentMost: 30 }, classOne)).toBe(spared({ overcurrentMost: 30 }));
  });
});

test('a device whose size nobody states decides the leads of nec alone, and not by instructions', () => {
  expect(isDeviceUnknown(facts({ overcurrentMost: null }))).toBe(true);
  expect(isDeviceUnknown(facts())).toBe(false);
  expect(isDeviceUnknown(facts({ overcurrentMost: null, leadByInstructions: true }))).toBe(false);
  expect(isDeviceUnknown(facts({ overcurrentMost: null }, { basis: 'iec' }))).toBe(false);
  expect(isDeviceUnknown(facts({ overcurrentMost: null, overcurrentDevice: 'none' }))).toBe(false);
  const places = [leadPlace({ circuit: 'control' }), leadPlace({ circuit: 'battery' })];
  expect(isDeviceUnknown(facts({ overcurrentMost: null }, { places }))).toBe(true);
});

test('a size that was computed from a gauge is within itself', () => {
  const six = size('6 AWG');
  expect(isWithin(six, six)).toBe(true);
  expect(isWithin({ ...six, area: six.area * (1 + 1e-12) }, six)).toBe(true);
  expect(isWithin({ ...six, area: six.area * (1 + 1e-6) }, six)).toBe(false);
  expect(isWithin(size('8 AWG'), six)).toBe(true);
});
