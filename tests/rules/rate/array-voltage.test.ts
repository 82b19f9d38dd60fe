import type { ArrayFacts } from '../../../src/rules/rating-facts.js';
import { arrayVoltage } from '../../../src/rules/rate/array-voltage.js';
import { array, converter, stated } from '../facts.js';
import { ratingTable } from '../table.js';

const cold = stated(-8, 'lowest_temp');
const bears = (volts: number, tag = 'CC-1'): ReturnType<typeof converter> =>
  converter({ tag, maxDcVoltage: stated(volts, 'max_dc_voltage') });
/** 12 modules of 37 V: the string-sizing test of check-values 1. */
const string = (some: Partial<ArrayFacts> = {}): ArrayFacts =>
  array({ vocStc: stated(37, 'Voc'), modulesInSeries: stated(12, 'Modules'), ...some });
const optimizers = string({ optimizers: true });
const thinFilm = string({ technology: stated('CdTe thin film') });
const perCell = string({ coefficient: stated({ value: -2.1, unit: 'mV/cell/C' }, 'Coefficient') });

const lowestTempMissing =
  'fact/lowest-temp job.lowest_temp: lowest_temp isn’t stated: the open-circuit voltage of ARR-1 depends on it; the draft takes the safe side.';
const umax = (volts: number, tag = 'CC-1'): string =>
  `Umax: Highest DC voltage that ${tag} bears: in the draft for what isn’t stated, no bound = ${volts} V [stated; jobs.csv, line 3, max_dc_voltage]`;

const BOUND = 'a figure of the draft stands in for facts of ARR-1 that aren’t stated';

export const table = ratingTable(import.meta.url, arrayVoltage, [
  {
    name: 'no array behind the port',
    given: {},
    outside: 'no array on the list is behind this port',
  },
  ...(['nec-2017', 'nec-2020', 'nec-2023', 'iec'] as const).map((basis) => ({
    name: `${basis}: 37 V, 12 modules, -8 C, by the table: 506.16 V (a published string-sizing test)`,
    given: { basis, arrays: [string()], lowestTemp: cold },
    asks: 506.16,
    places: {
      Voc: 'jobs.csv, line 3, Voc',
      n: 'jobs.csv, line 3, Modules',
      T: 'jobs.csv, line 3, lowest_temp',
    },
  })),
  {
    name: '22.60 V, -0.075 V/C, -7 C: 25.00 V (NEC handbook-style example for the 2011 cycle)',
    given: {
      arrays: [
        array({
          vocStc: stated(22.6, 'Voc'),
          modulesInSeries: stated(1, 'Modules'),
          coefficient: stated({ value: -0.075, unit: 'V/C' }, 'Coefficient'),
        }),
      ],
      lowestTemp: stated(-7, 'lowest_temp'),
    },
    asks: 25,
    places: {
      Voc: 'jobs.csv, line 3, Voc',
      n: 'jobs.csv, line 3, Modules',
      T: 'jobs.csv, line 3, lowest_temp',
      'dV/dT': 'jobs.csv, line 3, Coefficient',
    },
  },
  {
    name: '22.60 V, 23 modules, -7 C, by the table: 592.57 V, below the 600 V of a dwelling (check-values 1, computed)',
    given: {
      arrays: [array({ vocStc: stated(22.6), modulesInSeries: stated(23) })],
      lowestTemp: stated(-7),
    },
    asks: 592.57,
  },
  {
    name: 'a coefficient of one cell: -2.1 mV x 72 x 33 C lift 37 V to 41.99 V (computed)',
    given: {
      arrays: [{ ...perCell, cells: stated(72, 'cells'), modulesInSeries: stated(1, 'Modules') }],
      lowestTemp: cold,
    },
    asks: 41.99,
    places: {
      Voc: 'jobs.csv, line 3, Voc',
      n: 'jobs.csv, line 3, Modules',
      T: 'jobs.csv, line 3, lowest_temp',
      'dV/dT': 'jobs.csv, line 3, Coefficient; jobs.csv, line 3, cells',
    },
  },
  {
    name: 'cells beside a coefficient of the module aren’t looked at',
    given: {
      arrays: [
        string({ coefficient: stated({ value: -0.3, unit: '%/C' }, 'Coefficient'), cells: stated(60) }),
      ],
      lowestTemp: cold,
    },
    asks: 487.96,
    places: {
      Voc: 'jobs.csv, line 3, Voc',
      n: 'jobs.csv, line 3, Modules',
      T: 'jobs.csv, line 3, lowest_temp',
      'dV/dT': 'jobs.csv, line 3, Coefficient',
    },
  },
  {
    name: 'the open-circuit voltage of the string as stated goes before the modules',
    given: {
      arrays: [string({ openCircuitVoltage: stated(480, 'open_circuit_voltage') })],
      lowestTemp: cold,
    },
    asks: 480,
    steps: [
      'Voc: Open-circuit voltage of the string of ARR-1 = 480 V [stated; jobs.csv, line 3, open_circuit_voltage]',
    ],
  },
  {
    name: 'optimizers with the voltage of the string: nothing is missing',
    given: { arrays: [{ ...optimizers, openCircuitVoltage: stated(400, 'open_circuit_voltage') }] },
    asks: 400,
  },
  {
    name: 'optimizers without it: missing, and the draft rates by the converter',
    given: { arrays: [optimizers], lowestTemp: cold, converters: [bears(450)] },
    asks: 450,
    bound: BOUND,
    steps: [umax(450)],
    notes: [
      'fact/open-circuit-voltage ARR-1.open_circuit_voltage: open_circuit_voltage of ARR-1 isn’t stated: the voltage of a string behind DC optimizers is set by them.',
    ],
  },
  {
    name: 'optimizers, and nothing bounds them',
    given: { arrays: [optimizers], converters: [converter()] },
    unknown: 'the open-circuit voltage of an array isn’t known',
    notes: ['fact/open-circuit-voltage ARR-1.open_circuit_voltage'],
  },
  {
    name: 'optimizers, no converter at all',
    given: { arrays: [optimizers] },
    unknown: 'the open-circuit voltage of an array isn’t known',
    notes: ['fact/open-circuit-voltage ARR-1.open_circuit_voltage'],
  },
  {
    name: 'optimizers, the cell is unreadable: its own item asks already',
    given: { arrays: [{ ...optimizers, unreadable: new Set(['open_circuit_voltage']) }] },
    unknown: 'the open-circuit voltage of an array isn’t known',
  },
  {
    name: 'Voc not stated: missing, and the draft rates by the converter, which bounds nothing',
    given: { arrays: [string({ vocStc: undefined })], lowestTemp: cold, converters: [bears(550)] },
    asks: 550,
    bound: BOUND,
    steps: [umax(550)],
    notes: [
      'fact/voc-stc ARR-1.voc_stc: voc_stc of ARR-1 isn’t stated: its open-circuit voltage can’t be worked out; the draft takes the 550 V that CC-1 bears, which is no bound, since a design may break it.',
    ],
  },
  {
    name: 'Voc unreadable: its own item asks, and the draft stands on the converter alone',
    given: {
      arrays: [string({ vocStc: undefined, unreadable: new Set(['voc_stc']) })],
      converters: [bears(550)],
    },
    asks: 550,
    bound: BOUND,
  },
  {
    name: 'the modules in series not stated',
    given: { arrays: [string({ modulesInSeries: undefined })], converters: [bears(550)] },
    asks: 550,
    bound: BOUND,
    notes: ['fact/modules-in-series ARR-1.modules_in_series'],
  },
  {
    name: 'neither stated',
    given: {
      arrays: [string({ vocStc: undefined, modulesInSeries: undefined })],
      converters: [bears(550)],
    },
    asks: 550,
    bound: BOUND,
    notes: ['fact/voc-stc ARR-1.voc_stc', 'fact/modules-in-series ARR-1.modules_in_series'],
  },
  {
    name: 'a converter that bears 1000 V says nothing about the string: no conflict with the 600 V of a dwelling',
    given: { arrays: [string({ vocStc: undefined })], converters: [bears(1000)] },
    asks: 1000,
    bound: BOUND,
    notes: ['fact/voc-stc ARR-1.voc_stc'],
  },
  {
    name: 'of several converters the one that bears most bounds, whichever comes first',
    given: {
      arrays: [string({ vocStc: undefined })],
      converters: [converter(), bears(450), bears(550, 'CC-2'), bears(500, 'CC-3')],
    },
    asks: 550,
    bound: BOUND,
    steps: [umax(550, 'CC-2')],
    notes: ['fact/voc-stc ARR-1.voc_stc'],
  },
  {
    name: 'of converters that bear the same the first bounds',
    given: { arrays: [optimizers], converters: [bears(550), bears(550, 'CC-2')] },
    asks: 550,
    bound: BOUND,
    steps: [umax(550)],
    notes: ['fact/open-circuit-voltage ARR-1.open_circuit_voltage'],
  },
  {
    name: 'neither stated, and nothing bounds it: both are missing',
    given: { arrays: [string({ vocStc: undefined, modulesInSeries: undefined })], converters: [converter()] },
    unknown: 'the open-circuit voltage of an array isn’t known',
    notes: [
      'fact/voc-stc ARR-1.voc_stc: voc_stc of ARR-1 isn’t stated: its open-circuit voltage can’t be worked out, and the list doesn’t say what a converter on it bears.',
      'fact/modules-in-series ARR-1.modules_in_series',
    ],
  },
  {
    name: 'one of them unreadable: only the other is asked for',
    given: {
      arrays: [string({ vocStc: undefined, modulesInSeries: undefined, unreadable: new Set(['voc_stc']) })],
    },
    unknown: 'the open-circuit voltage of an array isn’t known',
    notes: ['fact/modules-in-series ARR-1.modules_in_series'],
  },
  {
    name: 'iec without a temperature: 49.5 V x 14 x 1.2 = 831.6 V (IEC 60364-7-712 Annex B, value from memory)',
    given: {
      basis: 'iec',
      arrays: [array({ vocStc: stated(49.5, 'Voc'), modulesInSeries: stated(14, 'Modules') })],
      converters: [bears(1000)],
    },
    asks: 831.6,
    bound: BOUND,
    notes: [
      'rate/cold-factor-assumed job.lowest_temp: The lowest temperature isn’t stated: the open-circuit voltage at STC is taken 1.2 times.',
    ],
    places: { Voc: 'jobs.csv, line 3, Voc', n: 'jobs.csv, line 3, Modules' },
  },
  {
    name: 'iec without a temperature: 1.2 x Voc above what the converter bears is a conflict',
    given: { basis: 'iec', arrays: [string()], converters: [bears(500)] },
    asks: 532.8,
    bound: BOUND,
    notes: ['rate/cold-factor-assumed job.lowest_temp', 'rate/above-converter ARR-1.modules_in_series'],
  },
  {
    name: 'iec without a temperature takes the factor for another technology too',
    given: { basis: 'iec', arrays: [thinFilm] },
    asks: 532.8,
    bound: BOUND,
    notes: ['rate/cold-factor-assumed job.lowest_temp'],
  },
  ...(['nec-2017', 'nec-2020', 'nec-2023'] as const).map((basis) => ({
    name: `${basis} without a temperature: missing, and the draft takes 1.25 x Voc(STC)`,
    given: { basis, arrays: [string()] },
    asks: 555,
    bound: BOUND,
    notes: [lowestTempMissing],
    places: { Voc: 'jobs.csv, line 3, Voc', n: 'jobs.csv, line 3, Modules' },
  })),
  {
    name: 'nec without a temperature: the converter bears more, so the draft takes that',
    entry: 555,
    given: { arrays: [string()], converters: [bears(555.5)] },
    asks: 555.5,
    bound: BOUND,
    steps: [umax(555.5)],
    notes: ['fact/lowest-temp job.lowest_temp'],
  },
  {
    name: 'nec without a temperature: the converter bears as much: the working of the modules is shown',
    given: { arrays: [string()], converters: [bears(555)] },
    asks: 555,
    bound: BOUND,
    notes: ['fact/lowest-temp job.lowest_temp'],
    places: { Voc: 'jobs.csv, line 3, Voc', n: 'jobs.csv, line 3, Modules' },
  },
  {
    name: 'nec without a temperature: the converter bears less than 1.25 x, and 444 V at 25 C: no conflict is known',
    entry: 500,
    given: { arrays: [string()], converters: [bears(500)] },
    asks: 555,
    bound: BOUND,
    notes: ['fact/lowest-temp job.lowest_temp'],
  },
  {
    name: 'nec without a temperature: 444 V at 25 C alone are above what the converter bears',
    entry: 440,
    given: { arrays: [string()], converters: [bears(440)] },
    asks: 555,
    bound: BOUND,
    notes: [
      'fact/lowest-temp job.lowest_temp',
      'rate/above-converter ARR-1.modules_in_series: The open-circuit voltage of ARR-1 reaches 444 V, above the 440 V that CC-1 bears.',
    ],
  },
  {
    name: 'nec without a temperature, of two arrays: the table is entered with the higher of their lower figures',
    entry: 500,
    given: {
      arrays: [string(), string({ tag: 'ARR-2', modulesInSeries: stated(1, 'Modules') })],
      converters: [bears(500)],
    },
    asks: 555,
    notes: ['fact/lowest-temp job.lowest_temp', 'fact/lowest-temp job.lowest_temp'],
    bound: 'a figure of the draft stands in for facts of ARR-1 and ARR-2 that aren’t stated',
  },
  {
    name: 'nec, the temperature is unreadable: its own item asks already',
    given: { arrays: [string()], lowestTempUnreadable: true },
    asks: 555,
  },
  {
    name: 'another technology without a coefficient: missing, the draft rates by the converter',
    given: { arrays: [thinFilm], lowestTemp: cold, converters: [bears(600)] },
    asks: 600,
    bound: BOUND,
    steps: [umax(600)],
    notes: [
      'fact/voc-coefficient ARR-1.voc_coefficient: voc_coefficient of ARR-1 isn’t stated: no table covers cdte thin film modules.',
    ],
  },
  {
    name: 'the same, and nothing bounds it',
    given: { basis: 'iec', arrays: [thinFilm], lowestTemp: cold },
    unknown: 'the open-circuit voltage of an array isn’t known',
    notes: ['fact/voc-coefficient ARR-1.voc_coefficient'],
  },
  {
    name: 'the same, though its 444 V at 25 C alone are above what the converter bears',
    given: { arrays: [thinFilm], lowestTemp: cold, converters: [bears(440)] },
    asks: 440,
    bound: BOUND,
    notes: ['fact/voc-coefficient ARR-1.voc_coefficient', 'rate/above-converter ARR-1.modules_in_series'],
  },
  {
    name: 'another technology, nec, no temperature either: both are asked for at once',
    entry: 555,
    given: { arrays: [thinFilm], converters: [bears(600)] },
    asks: 600,
    bound: BOUND,
    notes: ['fact/voc-coefficient ARR-1.voc_coefficient', 'fact/lowest-temp job.lowest_temp'],
  },
  {
    name: 'a megabyte of technology is cut short in the message',
    given: { arrays: [string({ technology: stated('x'.repeat(1000)) })], lowestTemp: cold },
    unknown: 'the open-circuit voltage of an array isn’t known',
    notes: [
      `fact/voc-coefficient ARR-1.voc_coefficient: voc_coefficient of ARR-1 isn’t stated: no table covers ${'x'.repeat(40)} modules.`,
    ],
  },
  {
    name: 'another technology, the coefficient unreadable: its own item asks already',
    given: { arrays: [{ ...thinFilm, unreadable: new Set(['voc_coefficient']) }], lowestTemp: cold },
    unknown: 'the open-circuit voltage of an array isn’t known',
  },
  {
    name: 'another technology with its coefficient: 1 + 0.28 % x 33 C (computed)',
    given: {
      arrays: [{ ...thinFilm, coefficient: stated({ value: -0.28, unit: '%/C' }, 'Coefficient') }],
      lowestTemp: cold,
    },
    asks: 485.03,
  },
  ...['Mono-crystalline', ' Monocrystalline ', 'polycrystalline', 'crystalline'].map((technology) => ({
    name: `"${technology}" is crystalline: the table holds`,
    given: { arrays: [string({ technology: stated(technology) })], lowestTemp: cold },
    asks: 506.16,
  })),
  {
    name: '"non-crystalline" isn’t',
    given: { arrays: [string({ technology: stated('non-crystalline') })], lowestTemp: cold },
    unknown: 'the open-circuit voltage of an array isn’t known',
    notes: ['fact/voc-coefficient ARR-1.voc_coefficient'],
  },
  {
    name: '-40 C is the last row of the table: 1.25 (NEC Table 690.7(A))',
    given: { arrays: [string()], lowestTemp: stated(-40) },
    asks: 555,
  },
  {
    name: 'colder than the table: a coefficient is missing, and the string reaches at least the last row',
    entry: 550,
    given: { arrays: [string()], lowestTemp: stated(-40.5), converters: [bears(550)] },
    asks: 555,
    bound: BOUND,
    notes: [
      'fact/voc-coefficient ARR-1.voc_coefficient: voc_coefficient of ARR-1 isn’t stated: the table ends at -40 C, and the site is colder.',
      'rate/above-converter ARR-1.modules_in_series',
    ],
    places: { Voc: 'jobs.csv, line 3, Voc', n: 'jobs.csv, line 3, Modules' },
  },
  {
    name: 'colder than the table, a converter that bears more: the draft takes that',
    entry: 555,
    given: { basis: 'iec', arrays: [string()], lowestTemp: stated(-45), converters: [bears(600)] },
    asks: 600,
    bound: BOUND,
    notes: ['fact/voc-coefficient ARR-1.voc_coefficient'],
  },
  {
    name: 'colder than the table, the coefficient unreadable',
    given: {
      arrays: [string({ unreadable: new Set(['voc_coefficient']) })],
      lowestTemp: stated(-45),
    },
    asks: 555,
  },
  {
    name: 'a coefficient of one cell without the cells: missing',
    entry: 500,
    given: { arrays: [perCell], lowestTemp: cold, converters: [bears(500)] },
    asks: 555,
    bound: BOUND,
    notes: ['fact/cells ARR-1.cells: cells of ARR-1 isn’t stated: the coefficient is given for one cell.'],
  },
  {
    name: 'the same: without the cells, what it reaches at 25 C is above what the converter bears',
    entry: 440,
    given: { arrays: [perCell], lowestTemp: cold, converters: [bears(440)] },
    asks: 555,
    bound: BOUND,
    notes: ['fact/cells ARR-1.cells', 'rate/above-converter ARR-1.modules_in_series'],
  },
  {
    name: 'the cells unreadable: their own item asks already',
    given: { arrays: [{ ...perCell, unreadable: new Set(['cells']) }], lowestTemp: cold },
    asks: 555,
  },
  {
    name: 'a coefficient without its minus sign: a conflict',
    entry: 500,
    given: {
      arrays: [string({ coefficient: { ...stated({ value: 0.3, unit: '%/C' } as const), text: '0.3 %/C' } })],
      lowestTemp: cold,
      converters: [bears(500)],
    },
    asks: 555,
    bound: BOUND,
    notes: [
      'rate/coefficient-sign ARR-1.voc_coefficient: The temperature coefficient of ARR-1 isn’t negative: 0.3 %/C.',
    ],
  },
  {
    name: 'the same: what it reaches at 25 C is above what the converter bears',
    entry: 440,
    given: {
      arrays: [string({ coefficient: stated({ value: 0.3, unit: '%/C' }) })],
      lowestTemp: cold,
      converters: [bears(440)],
    },
    asks: 555,
    bound: BOUND,
    notes: ['rate/coefficient-sign ARR-1.voc_coefficient', 'rate/above-converter ARR-1.modules_in_series'],
  },
  {
    name: 'what the converter bears itself isn’t above it',
    given: { arrays: [string()], lowestTemp: cold, converters: [converter(), bears(506.16)] },
    asks: 506.16,
  },
  {
    name: 'just above what the converter bears: a conflict; the figure stands',
    given: { arrays: [string()], lowestTemp: cold, converters: [bears(506.15)] },
    asks: 506.16,
    notes: [
      'rate/above-converter ARR-1.modules_in_series: The open-circuit voltage of ARR-1 reaches 506.16 V, above the 506.15 V that CC-1 bears.',
    ],
  },
  {
    name: 'a stated voltage above it is laid to its own cell',
    given: {
      arrays: [string({ openCircuitVoltage: stated(510) })],
      converters: [bears(500)],
    },
    asks: 510,
    notes: ['rate/above-converter ARR-1.open_circuit_voltage'],
  },
  ...(
    [
      ['dwelling', false, 600],
      ['sleeping', false, 1000],
      ['other', false, 1000],
      ['dwelling', true, 1500],
    ] as const
  ).flatMap(([occupancy, offBuildings, most]) => [
    {
      name: `nec, ${occupancy}, ${offBuildings ? 'off buildings' : 'on a building'}: ${most} V itself is allowed (NEC 690.7)`,
      given: {
        occupancy,
        arrays: [string({ offBuildings, openCircuitVoltage: stated(most) })],
      },
      asks: most,
    },
    {
      name: `nec, ${occupancy}, ${offBuildings ? 'off buildings' : 'on a building'}: above ${most} V is a conflict (NEC 690.7)`,
      given: {
        occupancy,
        arrays: [string({ offBuildings, openCircuitVoltage: stated(most + 1) })],
      },
      asks: most + 1,
      notes: [
        `rate/above-code-limit ARR-1.open_circuit_voltage: The open-circuit voltage of ARR-1 reaches ${most + 1} V, above the ${most} V of NEC 690.7 for this site.`,
      ],
    },
  ]),
  {
    name: 'iec knows no such limit',
    given: { basis: 'iec', arrays: [string({ openCircuitVoltage: stated(1501) })] },
    asks: 1501,
  },
  {
    name: 'nec, above the limit by the modules: laid to them',
    given: { arrays: [string({ modulesInSeries: stated(15) })], lowestTemp: cold },
    asks: 632.7,
    notes: ['rate/above-code-limit ARR-1.modules_in_series'],
  },
  {
    name: 'arrays in parallel: the highest counts, whichever comes first',
    given: {
      arrays: [
        string({ tag: 'ARR-1', openCircuitVoltage: stated(300) }),
        string({ tag: 'ARR-2', openCircuitVoltage: stated(400, 'b') }),
        string({ tag: 'ARR-3', openCircuitVoltage: stated(350) }),
      ],
    },
    asks: 400,
    steps: ['Voc: Open-circuit voltage of the string of ARR-2 = 400 V [stated; jobs.csv, line 3, b]'],
  },
  {
    name: 'arrays of one voltage: the first is shown',
    given: {
      arrays: [
        string({ tag: 'ARR-1', openCircuitVoltage: stated(300, 'a') }),
        string({ tag: 'ARR-2', openCircuitVoltage: stated(300, 'b') }),
      ],
    },
    asks: 300,
    steps: ['Voc: Open-circuit voltage of the string of ARR-1 = 300 V [stated; jobs.csv, line 3, a]'],
  },
  {
    name: 'one of them unknown: the whole is, and what is known isn’t taken for it',
    given: {
      arrays: [string({ openCircuitVoltage: stated(300) }), { ...optimizers, tag: 'ARR-2' }],
    },
    unknown: 'the open-circuit voltage of an array isn’t known',
    notes: ['fact/open-circuit-voltage ARR-2.open_circuit_voltage'],
  },
]);
