import { describe, expect, it } from 'vitest';
import { defaultSettings } from '../../../src/model/settings.js';
import type { Conductor } from '../../../src/model/words.js';
import { readAcConductors, type AcReadingFacts } from '../../../src/rules/measure/ac-conductors.js';
import { say } from '../../../src/words/reasons/say.js';
import { figuresOf, saidOf } from './told.js';

// Figures of range B: ANSI C84.1 (values from memory); 10 %: IEC 60038 (value from memory), of a source alone common practice.
const SETTINGS = defaultSettings().measuring;
const LINES: readonly Conductor[] = ['L1', 'L2', 'L3'];

const facts = (some: Partial<AcReadingFacts> = {}): AcReadingFacts => ({
  basis: 'nec-2023',
  earthing: 'TN',
  system: '120/240',
  whole: some.system ?? '120/240',
  grounding: 'solid',
  place: 'service',
  fedByUtility: true,
  fedBySource: false,
  threePlusOne: false,
  conductors: ['L1', 'L2'],
  mostToGround: undefined,
  settings: SETTINGS,
  ...some,
});
const figures = (some: Partial<AcReadingFacts>): readonly string[] =>
  figuresOf(readAcConductors(facts(some)));

describe('a system that is tied to ground', () => {
  it.each<[string, Partial<AcReadingFacts>, readonly string[]]>([
    ['split phase at a service', {}, ['L1>ground: 110 to 127', 'L2>ground: 110 to 127', 'N>ground: 0 to 5']],
    [
      'at a load',
      { place: 'utilization' },
      ['L1>ground: 104 to 127', 'L2>ground: 104 to 127', 'N>ground: 0 to 5'],
    ],
    [
      'on an inverter or a generator alone',
      { fedByUtility: false, fedBySource: true },
      ['L1>ground: 108 to 132', 'L2>ground: 108 to 132', 'N>ground: 0 to 5'],
    ],
    [
      'on either',
      { fedBySource: true, conductors: ['L1'] },
      ['L1>ground: 110 to 127', 'L1>ground: 108 to 132', 'N>ground: 0 to 5'],
    ],
    [
      'that nothing feeds, as the utility gives it',
      { fedByUtility: false, conductors: ['L2'] },
      ['L2>ground: 110 to 127', 'N>ground: 0 to 5'],
    ],
    [
      'never above the most that the plan expects',
      { fedByUtility: false, fedBySource: true, conductors: ['L1'], mostToGround: 127 },
      ['L1>ground: 108 to 127', 'N>ground: 0 to 5'],
    ],
    [
      'a high leg its own',
      { system: '240/120 high-leg', conductors: LINES },
      [
        'L1>ground: 110 to 127',
        'L2>ground: 191 to 220.133333333',
        'L3>ground: 110 to 127',
        'N>ground: 0 to 5',
      ],
    ],
    [
      'two lines of a high-leg system: either may be the high leg',
      { system: '240', whole: '240/120 high-leg' },
      ['L1>ground: 110 to 220.133333333', 'L2>ground: 110 to 220.133333333'],
    ],
    ['two lines without N', { system: '240' }, ['L1>ground: 110 to 127', 'L2>ground: 110 to 127']],
    [
      'a corner: L2 at ground, the others at line to line',
      { system: '240 delta', grounding: 'corner', conductors: LINES },
      ['L1>ground: 220 to 254', 'L2>ground: 0 to 5', 'L3>ground: 220 to 254'],
    ],
    [
      'iec TN, two lines of a high-leg system',
      { basis: 'iec', system: '240', whole: '240/120 high-leg', conductors: ['L1'] },
      ['L1>ground: 108 to 228.8'],
    ],
    [
      'two lines of a system whose corner is grounded',
      { system: '240', whole: '240/120 high-leg', grounding: 'corner' },
      ['L1>ground: 220 to 254', 'L2>ground: 0 to 5'],
    ],
    [
      'a corner of a system that has an N, which is at no ground then',
      { system: '240/120 high-leg', grounding: 'corner', conductors: ['L2', 'N'] },
      ['L2>ground: 0 to 5'],
    ],
    [
      'three lines of a solid wye',
      { system: '480 delta', whole: '480Y/277', conductors: ['L1'] },
      ['L1>ground: 254 to 293.158333333'],
    ],
    [
      'iec TN: nominal 10 % up and down, on whatever feeds it',
      { basis: 'iec', system: '400Y/230', conductors: ['L1', 'N'], fedBySource: true },
      ['L1>ground: 207 to 253', 'N>ground: 0 to 5'],
    ],
    [
      'iec TT: line to N, N to PE',
      { basis: 'iec', earthing: 'TT', system: '230', threePlusOne: true, conductors: ['L1', 'N'] },
      ['L1>N: 207 to 253', 'N>ground: 0 to 15'],
    ],
  ])('%s', (_, some, found) => {
    expect(figures(some)).toEqual(found);
  });

  it('says what is read, and what a reading outside means', () => {
    expect(saidOf(readAcConductors(facts({ fedBySource: true, conductors: ['L1'] })))).toEqual([
      'nominal 120 V, on the utility | A line below its figures: a line or N is open, another tap or system, too long a line. | A line above its figures: N is open, another tap or system, conductors swapped. | - | -',
      'nominal 120 V, on an inverter or a generator alone | A line on an inverter or a generator alone below its figures: overloaded, slow, a line or N open, another system. | A line above its figures: N is open, another tap or system, conductors swapped. | - | -',
      'N is grounded | - | N above its figures: its ground is lost, or conductors are swapped. | - | -',
    ]);
    const corner = readAcConductors(facts({ system: '240 delta', grounding: 'corner', conductors: ['L2'] }));
    expect(saidOf(corner)[0]).toMatch(/^this phase is grounded \|/);
    const either = readAcConductors(facts({ system: '240', whole: '240/120 high-leg' }));
    expect(saidOf(either)[0]).toMatch(/^nominal 120 V, or 208 V if it is the high leg, on the utility \|/);
    const iec = readAcConductors(facts({ basis: 'iec', system: '230', conductors: ['L1'] }));
    expect(saidOf(iec)[0]).toMatch(/^nominal 230 V \| A line below its figures: a line or N is open/);
    const tt = readAcConductors(
      facts({ basis: 'iec', earthing: 'TT', system: '230', threePlusOne: true, conductors: ['L1', 'N'] }),
    );
    expect(saidOf(tt)[1]).toMatch(/^N to PE of a TT system \| - \| N above its figures: its ground is lost/);
  });
});

describe('a system that isn’t', () => {
  const BETWEEN = ['L1>L2: 440 to 508', 'L1>L3: 440 to 508', 'L2>L3: 440 to 508'];
  const TO_GROUND = ['L1>ground: - to 508', 'L2>ground: - to 508', 'L3>ground: - to 508'];

  it.each<[string, Partial<AcReadingFacts>, readonly string[]]>([
    ['a delta', { system: '480 delta', grounding: 'none', conductors: LINES }, [...BETWEEN, ...TO_GROUND]],
    [
      'a resistance-grounded wye',
      { system: '480Y/277', grounding: 'impedance', conductors: LINES },
      [...BETWEEN, ...TO_GROUND],
    ],
    [
      'an unbonded N, which has a channel: at most as a ground fault of a line lifts it',
      { system: '480Y/277', grounding: 'none', conductors: [...LINES, 'N'] },
      [...BETWEEN, ...TO_GROUND, 'N>ground: - to 293.158333333'],
    ],
    [
      'N of one line of a wye',
      { system: '277', grounding: 'impedance', conductors: ['L1', 'N'] },
      ['L1>N: 254 to 293.158333333', 'L1>ground: - to 508', 'N>ground: - to 293.158333333'],
    ],
    [
      'N of two wires alone is as a line',
      { system: '120', grounding: 'none', conductors: ['L1', 'N'] },
      ['L1>N: 110 to 127', 'L1>ground: - to 127', 'N>ground: - to 127'],
    ],
    [
      'N of a high-leg delta: the high leg’s fault lifts it most',
      { system: '240/120 high-leg', grounding: 'none', conductors: ['N'] },
      ['N>ground: - to 220.133333333'],
    ],
    [
      'N never above the most that the plan expects',
      { system: '480Y/277', grounding: 'none', mostToGround: 280, conductors: ['N'] },
      ['N>ground: - to 280'],
    ],
    [
      'a delta that is said to be solid: nobody knows at which point',
      { system: '480 delta', grounding: 'solid', conductors: LINES },
      [...BETWEEN, ...TO_GROUND],
    ],
    [
      'a housing with one of the lines: the pairs that it is in',
      { system: '480 delta', grounding: 'none', conductors: ['L3'] },
      ['L1>L3: 440 to 508', 'L2>L3: 440 to 508', 'L3>ground: - to 508'],
    ],
    [
      'at a load',
      { system: '480', grounding: 'none', place: 'utilization', conductors: ['L1', 'L2'] },
      ['L1>L2: 416 to 508', 'L1>ground: - to 508', 'L2>ground: - to 508'],
    ],
    [
      'a single line: to N, and to ground up to line to line of the whole',
      { system: '277', whole: '480Y/277', grounding: 'impedance', conductors: ['L1'] },
      ['L1>N: 254 to 293.158333333', 'L1>ground: - to 508'],
    ],
    [
      'iec IT: line to line 10 % up and down, N to ground line to N',
      { basis: 'iec', earthing: 'IT', grounding: 'none', system: '400Y/230', conductors: ['L1', 'N'] },
      ['L1>L2: 360 to 440', 'L1>L3: 360 to 440', 'L1>ground: - to 440', 'N>ground: - to 253'],
    ],
    [
      'iec IT, two lines of a high-leg system',
      { basis: 'iec', earthing: 'IT', system: '240', whole: '240/120 high-leg' },
      ['L1>L2: 216 to 264', 'L1>ground: - to 264', 'L2>ground: - to 264'],
    ],
    [
      'IT of a job under nec says nothing',
      { earthing: 'IT', system: '240', whole: '240/120 high-leg', conductors: ['L1'] },
      ['L1>ground: 110 to 220.133333333'],
    ],
    [
      'on the utility and on a generator alone',
      { system: '240', grounding: 'none', fedBySource: true, conductors: ['L1'] },
      ['L1>L2: 220 to 254', 'L1>L2: 216 to 264', 'L1>ground: - to 264'],
    ],
    [
      'never above the most that the plan expects of a conductor to ground',
      { system: '240', grounding: 'none', mostToGround: 250, conductors: ['L1'] },
      ['L1>L2: 220 to 254', 'L1>ground: - to 250'],
    ],
  ])('%s', (_, some, found) => {
    expect(figures(some)).toEqual(found);
  });

  it('says how a ground fault shows, to ground alone', () => {
    expect(saidOf(readAcConductors(facts({ system: '480', grounding: 'none', conductors: ['L1'] })))).toEqual(
      [
        'nominal 480 V, on the utility | A line below its figures: a line or N is open, another tap or system, too long a line. | A line above its figures: N is open, another tap or system, conductors swapped. | - | -',
        'no low figure: the system isn’t solidly tied to ground | - | A line above its figures: N is open, another tap or system, conductors swapped. | Lines of a system that isn’t solidly grounded: one near 0 V to ground and the others near line to line: ground fault, stop. | -',
      ],
    );
    const own = facts({
      system: '480',
      grounding: 'none',
      conductors: ['L1'],
      fedByUtility: false,
      fedBySource: true,
    });
    expect(saidOf(readAcConductors(own))[0]).toMatch(
      /alone \| A line on an inverter or a generator alone below its figures: overloaded/,
    );
  });
});

describe('to ground of a system that isn’t solidly tied to it', () => {
  const said = (grounding: 'impedance' | 'none'): readonly string[] =>
    saidOf(readAcConductors(facts({ system: '480Y/277', grounding, conductors: ['L1', 'N'] })))
      .slice(-2)
      .map((one) => one.replace(/ \| - \| A line above[^|]*\|/, ' |'));

  it.each<['impedance' | 'none', string, string]>([
    [
      'impedance',
      'no low figure: the system is tied to ground through an impedance, not solidly',
      'N is tied to ground through an impedance: near 0 V in a sound system',
    ],
    [
      'none',
      'no low figure: the system isn’t solidly tied to ground',
      'no low figure: N isn’t tied to ground',
    ],
  ])('%s: lines and N apart, each with what a ground fault shows there', (grounding, line, neutral) => {
    expect(said(grounding)).toEqual([
      `${line} | Lines of a system that isn’t solidly grounded: one near 0 V to ground and the others near line to line: ground fault, stop. | -`,
      `${neutral} | N of a system that isn’t solidly grounded: to ground near the voltage of a line to N: ground fault on a line, stop. | -`,
    ]);
  });
});

it('a system that isn’t stated has no figures', () => {
  const none = facts({ system: undefined, whole: undefined });
  expect(figuresOf(readAcConductors(none))).toEqual(['L1>ground: - to -', 'L2>ground: - to -']);
  expect(saidOf(readAcConductors(none))[0]).toMatch(/^not known: the AC system isn’t stated/);
});

it.each<[string, Partial<AcReadingFacts>, boolean]>([
  [
    'a delta has no N that could be open',
    { system: '480 delta', grounding: 'none', conductors: LINES },
    false,
  ],
  ['nor has a corner-grounded one', { system: '480 delta', grounding: 'corner', conductors: LINES }, false],
  [
    'three lines of a wye stand by its N',
    { system: '480 delta', whole: '480Y/277', grounding: 'solid', conductors: LINES },
    true,
  ],
  ['split phase', {}, true],
])('%s: what a reading outside its band may mean', (_, some, isNamed) => {
  for (const sources of [{}, { fedByUtility: false, fedBySource: true }]) {
    const told = readAcConductors(facts({ ...some, ...sources })).flatMap(({ below, above }) =>
      [below, above].flatMap((one) => (one === null ? [] : [say(one)])),
    );
    const ofLines = told.filter((text) => text.startsWith('A line'));
    expect(ofLines.length).toBeGreaterThan(0);
    expect(ofLines.filter((text) => /\bN\b/.test(text))).toHaveLength(isNamed ? ofLines.length : 0);
  }
});
