import { describe, expect, it } from 'vitest';
import { defaultSettings } from '../../../src/model/settings.js';
import { clothingNeeded } from '../../../src/rules/measure/clothing.js';
import { readControlCircuit, type ControlReadingFacts } from '../../../src/rules/measure/control-circuit.js';
import { meterNeeded } from '../../../src/rules/measure/meter.js';
import { readTurbinePhases } from '../../../src/rules/measure/turbine-phases.js';
import { say } from '../../../src/words/reasons/say.js';
import { figuresOf, saidOf } from './told.js';

describe('the phases of a turbine', () => {
  it('line to line up to the highest voltage, those that the housing holds to ground', () => {
    const found = readTurbinePhases({ conductors: ['L1', 'L2'], most: 120 });
    expect(figuresOf(found)).toEqual([
      'L1>L2: - to 120',
      'L1>L3: - to 120',
      'L2>L3: - to 120',
      'L1>ground: - to 120',
      'L2>ground: - to 120',
    ]);
    const due = 'Standing still: write it down, and measure again while it turns.';
    const above = 'A turbine above its figures: more speed, or another turbine than the plan knows.';
    expect(saidOf(found)[0]).toBe(`the turbine under its load, by its speed | - | ${above} | - | ${due}`);
    expect(saidOf(found)[3]).toBe(`no low figure: its phases float | - | ${above} | - | ${due}`);
  });

  it('one phase alone: the pairs that it is in', () => {
    expect(figuresOf(readTurbinePhases({ conductors: ['L3'], most: 9 }))).toEqual([
      'L1>L3: - to 9',
      'L2>L3: - to 9',
      'L3>ground: - to 9',
    ]);
  });

  it('of which the voltage isn’t known have no figure, nor a meaning above it', () => {
    const found = readTurbinePhases({ conductors: ['L1'], most: undefined });
    expect(figuresOf(found)[0]).toBe('L1>L2: - to -');
    expect(found[0]?.above).toBeNull();
  });
});

describe('a control circuit', () => {
  const facts = (some: Partial<ControlReadingFacts>): ControlReadingFacts => ({
    current: 'dc',
    nominal: 24,
    most: 31.7,
    grounding: 'negative',
    wires: ['positive', 'negative'],
    settings: defaultSettings().measuring,
    ...some,
  });

  it.each<[string, Partial<ControlReadingFacts>, readonly string[]]>([
    ['negative grounded', {}, ['positive>ground +: - to 31.7', 'negative>ground: 0 to 5']],
    [
      'positive grounded',
      { grounding: 'positive' },
      ['positive>ground: 0 to 5', 'negative>ground -: - to 31.7'],
    ],
    ['floating', { grounding: 'floating' }, ['positive>ground +: - to 31.7', 'negative>ground -: - to 31.7']],
    ['not known', { grounding: undefined }, ['positive>ground +: - to 31.7', 'negative>ground -: - to 31.7']],
    ['no voltage known', { most: undefined }, ['positive>ground +: - to -', 'negative>ground: 0 to 5']],
  ])('%s', (_, some, poles) => {
    const most = 'most' in some ? '-' : '31.7';
    expect(figuresOf(readControlCircuit(facts(some)))).toEqual([
      `positive>negative +: - to ${most}`,
      ...poles,
    ]);
  });

  it('of alternating current: N stands for the negative, and no line for the positive', () => {
    const ac = { current: 'ac', wires: ['L1', 'N'], most: 30 } as const;
    expect(figuresOf(readControlCircuit(facts(ac)))).toEqual([
      'L1>N: - to 30',
      'L1>ground: - to 30',
      'N>ground: 0 to 5',
    ]);
    expect(figuresOf(readControlCircuit(facts({ ...ac, grounding: 'positive' })))).toEqual([
      'L1>N: - to 30',
      'L1>ground: - to 30',
      'N>ground: - to 30',
    ]);
  });

  it('says what is read', () => {
    const above = 'A control circuit above its figures: another supply than the plan knows.';
    expect(saidOf(readControlCircuit(facts({})))).toEqual([
      `24 V nominal, or nothing where it is switched off | - | ${above} | - | -`,
      `24 V nominal, or nothing where it is switched off | - | ${above} | - | -`,
      'this wire is grounded | - | The grounded wire of a control circuit above its figures: its ground is lost, or conductors are swapped. | - | -',
    ]);
    expect(saidOf(readControlCircuit(facts({ grounding: 'floating' })))[1]).toMatch(
      /^no low figure: no pole is grounded/,
    );
    expect(saidOf(readControlCircuit(facts({ grounding: undefined })))[2]).toMatch(
      /^no low figure: which pole is grounded isn’t/,
    );
    expect(saidOf(readControlCircuit(facts({ nominal: undefined, most: undefined })))[0]).toBe(
      'the control voltage, or nothing where it is switched off | - | - | - | -',
    );
  });
});

const LEAST = 'Meter and leads: CAT III, rated for at least';
const NOT_KNOWN = (current: string): string => `the most ${current} that may stand there, which isn’t known`;

describe('the meter', () => {
  it.each([
    [
      { atService: true, current: 'ac', volts: [127, 138, 5] },
      'CAT IV',
      138,
      'Meter and leads: CAT IV, rated for at least 138 V AC',
    ],
    [
      { atService: false, current: 'dc', volts: [456, 320] },
      'CAT III',
      456,
      'Meter and leads: CAT III, rated for at least 456 V DC',
    ],
    [
      { atService: false, current: null, volts: [5, undefined] },
      'CAT III',
      undefined,
      'Meter and leads: CAT III, rated for at least the most that may stand there, which isn’t known',
    ],
    [
      { atService: false, current: null, volts: [7] },
      'CAT III',
      7,
      'Meter and leads: CAT III, rated for at least 7 V',
    ],
    [{ atService: false, current: 'dc', volts: [] }, 'CAT III', undefined, `${LEAST} ${NOT_KNOWN('DC')}`],
  ] as const)('%o: %s, %s V (IEC 61010-2-033, value from memory)', (given, category, volts, says) => {
    const found = meterNeeded({ ...given, beside: [] });
    expect([found.category, found.volts, say(found.says)]).toEqual([category, volts, says]);
  });

  it.each([
    [[{ current: 'dc', value: 400 }], 400, '400 V DC'],
    [[{ current: 'dc', value: 200 }], 300, '300 V DC'],
    [[{ current: 'dc', value: undefined }], undefined, NOT_KNOWN('DC')],
    [
      [
        { current: 'ac', value: 127 },
        { current: 'ac', value: 528 },
      ],
      300,
      '300 V DC and 528 V AC',
    ],
    [
      [
        { current: 'ac', value: 528 },
        { current: 'ac', value: undefined },
      ],
      300,
      `300 V DC and ${NOT_KNOWN('AC')}`,
    ],
    [
      [
        { current: null, value: 60 },
        { current: 'ac', value: 90 },
      ],
      300,
      '300 V DC, 90 V AC and 60 V',
    ],
  ] as const)('beside 300 V DC %j: %s V, %s', (beside, volts, says) => {
    const found = meterNeeded({ atService: false, current: 'dc', volts: [300], beside });
    expect([found.volts, say(found.says)]).toEqual([volts, `${LEAST} ${says}`]);
  });
});

describe('the clothing (NFPA 70E, values from memory)', () => {
  it.each([
    ['not over the limit', { faultCurrent: 10_000, isControl: false }, false],
    ['over it', { faultCurrent: 10_001, isControl: false }, true],
    ['not known', { faultCurrent: undefined, isControl: false }, true],
    ['a control circuit', { faultCurrent: undefined, isControl: true }, false],
    ['a control circuit, whatever is stated', { faultCurrent: 20_000, isControl: true }, false],
  ])('%s', (_, given, first) => {
    expect(clothingNeeded({ ...given, basis: 'nec-2023', limit: 10_000 }).first).toBe(first);
  });

  it('says what is known of the fault current', () => {
    const says = (faultCurrent: number | undefined, isControl = false): string =>
      say(clothingNeeded({ basis: 'nec-2020', faultCurrent, isControl, limit: 10_000 }).says);
    expect(says(12_000)).toMatch(
      /^First of all settle .*: the fault current here is 12000 A, over 10000 A\. Never/,
    );
    expect(says(undefined)).toMatch(/^First of all settle .*: the fault current here isn’t known\. Never/);
    expect(says(5)).toBe(
      'Never open the enclosure live without shock and arc-flash protection (NFPA 70E or local rules).',
    );
    expect(says(12_000, true)).toBe(says(5));
    const beside = { basis: 'nec-2020', faultCurrent: undefined, known: 6000, isControl: false } as const;
    expect(say(clothingNeeded({ ...beside, limit: 10_000 }).says)).toMatch(
      /the fault current here is at least 6000 A: not all that feeds this enclosure is known\. Never/,
    );
    const iec = { basis: 'iec', isControl: false, limit: 10_000 } as const;
    for (const faultCurrent of [5, 12_000])
      expect(say(clothingNeeded({ ...iec, faultCurrent }).says)).toMatch(/\(local rules for live work\)/);
  });
});
