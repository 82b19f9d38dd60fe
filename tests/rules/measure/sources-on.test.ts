import { describe, expect, it } from 'vitest';
import {
  sourcesOn,
  type ConverterAround,
  type SourcesOnFacts,
} from '../../../src/rules/measure/sources-on.js';
import { say } from '../../../src/words/reasons/say.js';

const converter = (tag: string, more: Partial<ConverterAround> = {}): ConverterAround => ({
  tag,
  takes: false,
  feeds: false,
  turbines: [],
  needs: [],
  ...more,
});
const state = (some: Partial<SourcesOnFacts>): string =>
  say(
    sourcesOn({
      of: 'ac',
      sources: [],
      converters: [],
      diversions: [],
      more: { loads: false, off: false },
      unknown: [],
      ...some,
    }),
  );

const LOADING = converter('CC-W', { turbines: ['WT'] });

describe('in which state a place is measured', () => {
  it.each<[string, Partial<SourcesOnFacts>, string]>([
    ['nothing known', {}, 'what feeds this place on'],
    ['a service, nothing else', { sources: ['SVC'] }, 'SVC on'],
    [
      'two supplies',
      { sources: ['SVC', 'INV'], converters: [converter('INV', { feeds: true }), converter('CC')] },
      'SVC and INV on, as each reading says; CC off',
    ],
    [
      'an inverter that feeds it, and a controller that loads a turbine',
      { sources: ['INV'], converters: [converter('INV', { feeds: true }), LOADING], diversions: ['DL'] },
      'INV on; CC-W and DL left on, since they load a turbine',
    ],
    [
      'what feeds it and loads a turbine is named once',
      {
        sources: ['INV'],
        converters: [converter('INV', { feeds: true, turbines: ['WT'] })],
        diversions: ['DL'],
      },
      'INV on',
    ],
    [
      'an array: its own converter is off',
      { of: 'sun', sources: ['ARR'], converters: [converter('INV'), converter('CC', { takes: true })] },
      'ARR in the sun and connected; CC and INV off',
    ],
    [
      'an array beside a turbine on another controller',
      {
        of: 'sun',
        sources: ['ARR'],
        converters: [converter('CC', { takes: true }), LOADING],
        diversions: ['DL'],
      },
      'ARR in the sun and connected; CC-W and DL left on, since they load a turbine; CC off',
    ],
    [
      'an array on what loads a turbine: that is stopped before it would be unloaded',
      {
        of: 'sun',
        sources: ['ARR'],
        converters: [
          converter('CC', { takes: true, turbines: ['WT'] }),
          converter('INV', { turbines: ['WT'] }),
        ],
        diversions: ['DL'],
      },
      'first stop WT (section 1), since what loads it goes off; ARR in the sun and connected; INV and DL left on, since they load a turbine; CC off',
    ],
    ['an array that isn’t on the list', { of: 'sun' }, 'the array in the sun and connected'],
    [
      'a turbine: what loads it stays on, with what that needs',
      {
        of: 'turbine',
        sources: ['WT'],
        converters: [converter('CC', { takes: true, turbines: ['WT'], needs: ['BAT'] }), converter('INV')],
        diversions: ['DL'],
      },
      'WT turning under load: CC and BAT on; DL left on, since it loads a turbine; INV off',
    ],
    ['a turbine that nothing of the list loads', { of: 'turbine', sources: ['WT'] }, 'WT turning under load'],
    [
      'a turbine on a diversion load alone',
      { of: 'turbine', sources: ['WT'], diversions: ['DL'] },
      'WT turning under load; DL left on, since it loads a turbine',
    ],
    [
      'an array and a turbine on one input',
      {
        of: 'both',
        sources: ['ARR', 'WT'],
        converters: [converter('CC', { takes: true, turbines: ['WT'], needs: ['BAT'] }), converter('INV')],
      },
      'ARR and WT connected, in the sun and turning under load: CC and BAT on; INV off',
    ],
    [
      'a battery: what charges it is off, but for what loads a turbine',
      {
        of: 'battery',
        sources: ['BAT'],
        converters: [LOADING, converter('CC'), converter('INV')],
      },
      'BAT connected; CC-W left on, since it loads a turbine; CC and INV off',
    ],
    [
      'what loads a turbine needs its battery or its supply, which stays on too, each named once',
      {
        of: 'sun',
        sources: ['ARR'],
        converters: [
          converter('INV', { takes: true }),
          converter('WINV', { turbines: ['WT'], needs: ['SVC'] }),
          converter('VINV', { turbines: ['VT'], needs: ['SVC'] }),
        ],
      },
      'ARR in the sun and connected; WINV and VINV left on, since they load a turbine, and so SVC, which they need; INV off',
    ],
    [
      'a supply that is a converter itself isn’t off',
      {
        of: 'battery',
        sources: ['BAT'],
        converters: [
          converter('WINV', { turbines: ['WT'], needs: ['INV', 'BAT'] }),
          converter('INV'),
          converter('CC'),
        ],
      },
      'BAT connected; WINV left on, since it loads a turbine, and so INV, which it needs; CC off',
    ],
    [
      'nor is one that what loads the turbine of this place needs',
      {
        of: 'turbine',
        sources: ['WT'],
        converters: [
          converter('WINV', { takes: true, turbines: ['WT'], needs: ['INV', 'BAT'] }),
          converter('INV'),
        ],
      },
      'WT turning under load: WINV, INV and BAT on',
    ],
    [
      'an array on the inverter that what loads a turbine keeps step with: the turbine is stopped first',
      {
        of: 'sun',
        sources: ['ARR'],
        converters: [
          converter('INV', { takes: true }),
          converter('WINV', { turbines: ['WT'], needs: ['INV'] }),
        ],
      },
      'first stop WT (section 1), since what loads it goes off; ARR in the sun and connected; INV and WINV off',
    ],
    ['a battery without a turbine', { of: 'battery', diversions: ['DL'] }, 'the battery connected'],
    [
      'a control circuit',
      { of: 'control', converters: [converter('CC')] },
      'the supply of the control circuit on',
    ],
    [
      'more of them than one sentence names',
      { sources: ['SVC'], more: { loads: true, off: true } },
      'SVC on; every other converter that loads a turbine, with its battery or its supply left on, since it loads a turbine; every other converter off',
    ],
    [
      'a turbine whose voltage isn’t known',
      { of: 'turbine', sources: ['WT'], unknown: ['WT'] },
      'Do not open or measure here until the maker’s voltage of WT is known: no figure can be told before, and no meter chosen.',
    ],
  ])('%s', (_, some, told) => {
    expect(state(some)).toBe(told);
  });
});
