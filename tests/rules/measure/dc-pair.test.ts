import { describe, expect, it } from 'vitest';
import { defaultSettings } from '../../../src/model/settings.js';
import { readDcPair, type DcPairFacts } from '../../../src/rules/measure/dc-pair.js';
import { figuresOf, saidOf } from './told.js';

const facts = (some: Partial<DcPairFacts> = {}): DcPairFacts => ({
  of: 'sun',
  poles: 'floating',
  low: 320,
  high: 456,
  bears: [],
  behindBox: false,
  settings: defaultSettings().measuring,
  ...some,
});
const figures = (some: Partial<DcPairFacts>): readonly string[] => figuresOf(readDcPair(facts(some)));

describe('a DC pair', () => {
  const FLOATS = ['positive>ground +: - to 456', 'negative>ground -: - to 456'];

  it.each<[string, Partial<DcPairFacts>, readonly string[]]>([
    ['floating', {}, ['positive>negative +: 320 to 456', ...FLOATS]],
    ['grounded as nobody knows', { poles: 'unknown' }, ['positive>negative +: 320 to 456', ...FLOATS]],
    [
      'its negative grounded',
      { poles: 'negative' },
      ['positive>negative +: 320 to 456', 'positive>ground +: 320 to 456', 'negative>ground: 0 to 5'],
    ],
    [
      'its positive grounded',
      { poles: 'positive' },
      ['positive>negative +: 320 to 456', 'positive>ground: 0 to 5', 'negative>ground -: 320 to 456'],
    ],
    [
      'a converter that bears less',
      { bears: [{ tag: 'X', volts: 400 }] },
      ['positive>negative +: 320 to 400', 'positive>ground +: - to 400', 'negative>ground -: - to 400'],
    ],
    [
      'the weaker of two converters',
      {
        poles: 'negative',
        bears: [
          { tag: 'X', volts: 400 },
          { tag: 'Y', volts: 350 },
          { tag: 'Z', volts: 360 },
        ],
      },
      ['positive>negative +: 320 to 350', 'positive>ground +: 320 to 350', 'negative>ground: 0 to 5'],
    ],
    [
      'a converter that bears just as much',
      { bears: [{ tag: 'X', volts: 456 }] },
      ['positive>negative +: 320 to 456', ...FLOATS],
    ],
    [
      'of which only what the converter bears is known: that is no figure of the string',
      { low: undefined, high: undefined, bears: [{ tag: 'X', volts: 250 }] },
      ['positive>negative +: - to -', 'positive>ground +: - to -', 'negative>ground -: - to -'],
    ],
    [
      'a converter that bears less than the low figure: nothing is low enough to be told from it',
      { bears: [{ tag: 'X', volts: 300 }] },
      ['positive>negative +: - to 300', 'positive>ground +: - to 300', 'negative>ground -: - to 300'],
    ],
    ['a low figure just at the high one', { low: 456 }, ['positive>negative +: 456 to 456', ...FLOATS]],
    [
      'nothing known but a low figure',
      { high: undefined },
      ['positive>negative +: 320 to -', 'positive>ground +: - to -', 'negative>ground -: - to -'],
    ],
  ])('%s', (_, some, found) => {
    expect(figures(some)).toEqual(found);
  });

  it('says of a floating one how a ground fault shows, by the shares of the settings', () => {
    const said = saidOf(readDcPair(facts()));
    expect(said).toEqual([
      'the string in full sun | An array below its figures: less than full sun, a string that is open or shaded, fewer modules, a shorted module. | An array above its figures: more modules in series, other modules or a colder day than the plan knows. | - | In less sun: write it down, and measure again in full sun.',
      ...Array<string>(2).fill(
        'no low figure: no pole is grounded | - | An array above its figures: more modules in series, other modules or a colder day than the plan knows. | A floating pair: one pole under 5 % and the other over 90 % of pole to pole: ground fault, stop; both sinking to nothing is the meter. | -',
      ),
    ]);
    const settings = { ...defaultSettings().measuring, faultedPoleShare: 0.1, otherPoleShare: 0.8 };
    expect(saidOf(readDcPair(facts({ settings })))[1]).toContain('under 10 % and the other over 80 %');
  });

  it('says of one that is grounded as nobody knows that this isn’t known, and of no fault', () => {
    expect(saidOf(readDcPair(facts({ poles: 'unknown' })))[1]).toBe(
      'no low figure: which pole is grounded isn’t known | - | An array above its figures: more modules in series, other modules or a colder day than the plan knows. | - | -',
    );
  });

  it.each<[string, Partial<DcPairFacts>, string]>([
    [
      'a battery',
      { of: 'battery', low: 40, high: 58.4 },
      'the battery | A battery below its figures: discharged too far, a failed cell, a battery of a lower voltage, its switch open. | A battery above its figures: more cells, or a higher charge than the plan knows. | - | -',
    ],
    [
      'a turbine',
      { of: 'turbine', low: undefined },
      'the turbine, which changes with its speed | - | A turbine above its figures: more speed, or another turbine than the plan knows. | - | Standing still: write it down, and measure again while it turns.',
    ],
    [
      'both',
      { of: 'both', low: undefined },
      'the array and the turbine, which change with the sun and the speed | - | An array beside a turbine above its figures: more modules in series or more speed than the plan knows. | - | In less sun: write it down, and measure again in full sun.',
    ],
    [
      'behind a rapid-shutdown box',
      { behindBox: true, high: undefined, low: undefined },
      'the string in full sun | - | - | - | In less sun, or behind a rapid-shutdown box that is open: write it down, and measure again in full sun with the box closed.',
    ],
    [
      'a converter that bears less',
      { bears: [{ tag: 'X', volts: 400 }], low: undefined },
      'the string in full sun | - | What leads to X above its figures: more than X bears. | - | In less sun: write it down, and measure again in full sun.',
    ],
  ])('says what is read of %s', (_, some, said) => {
    expect(saidOf(readDcPair(facts(some)))[0]).toBe(said);
  });

  it('names a converter only where it bears less', () => {
    const above = (volts: number): unknown =>
      readDcPair(facts({ bears: [{ tag: 'X', volts }] }))[0]?.above?.code;
    expect(above(455)).toBe('reading-above/converter-bears');
    expect(above(456)).toBe('reading-above/source');
  });

  it('says of a grounded pole that it is one', () => {
    expect(saidOf(readDcPair(facts({ poles: 'negative' })))[2]).toBe(
      'this pole is grounded | - | A grounded pole above its figures: its ground is lost, or conductors are swapped. | - | -',
    );
  });
});
