import type { AcSystem } from '../../../src/model/words.js';
import { namesAndColours } from '../../../src/rules/wire/names-and-colours.js';
import { wiringTable } from '../table.js';

const nec = {
  colours: 'nec',
  grounded: null,
  because: 'no colour of its own beside those of the settings',
} as const;
const nec480 = {
  colours: 'nec480',
  grounded: null,
  because: 'a system of 480 or 600 V between lines has colours of its own',
} as const;
const iec = { colours: 'iec', grounded: null, because: 'names and colours of IEC 60445' } as const;
const plant = {
  colours: 'positiveGround',
  grounded: null,
  because: 'the positive pole is grounded: poles go by their voltage and their use',
} as const;
const corner = { grounded: 'L2', because: 'the grounded phase is white or gray' } as const;

const of = (system: AcSystem, whole: AcSystem = system) => ({ system, whole });

export const table = wiringTable(import.meta.url, namesAndColours, [
  ...(['nec-2017', 'nec-2020', 'nec-2023'] as const).map((basis) => ({
    name: `${basis}, 120/240: the colours of the settings`,
    given: { basis },
    fires: false,
    then: nec,
  })),
  ...(['120', '120/208', '208Y/120', '240', '208', '240 delta'] as const).map((system) => ({
    name: `${system}: of the lower voltages`,
    given: of(system),
    fires: false,
    then: nec,
  })),
  ...(['277', '347', '480', '480 delta', '480Y/277', '600Y/347'] as const).map((system) => ({
    name: `${system}: brown, orange, yellow, gray (common practice, no source)`,
    given: of(system),
    fires: true,
    then: nec480,
  })),
  {
    name: 'three lines of 480Y/277 without N have its colours',
    given: of('480 delta', '480Y/277'),
    fires: true,
    then: nec480,
  },
  {
    name: 'a whole that isn’t known: by its own system',
    given: { system: '480', whole: undefined },
    fires: true,
    then: nec480,
  },
  {
    name: 'a system that isn’t known',
    given: { system: undefined, whole: undefined },
    fires: false,
    then: nec,
  },
  {
    name: 'no system of its own, of a corner-grounded whole (own case)',
    given: { system: undefined, whole: '240 delta', grounding: 'corner' },
    fires: true,
    then: { ...corner, colours: 'nec' },
  },
  {
    name: 'a high leg is another rule’s',
    given: of('240/120 high-leg'),
    fires: false,
    then: nec,
  },
  {
    name: 'a corner-grounded phase is white or gray (NEC 200.6, value from memory)',
    given: { ...of('240 delta'), grounding: 'corner' },
    fires: true,
    then: { ...corner, colours: 'nec' },
  },
  {
    name: 'a corner-grounded phase of 480 V',
    given: { ...of('480 delta'), grounding: 'corner' },
    fires: true,
    then: { ...corner, colours: 'nec480' },
  },
  ...(['solid', 'impedance', 'none'] as const).map((grounding) => ({
    name: `480Y/277, ${grounding}: no grounded phase`,
    given: { ...of('480Y/277'), grounding },
    fires: true,
    then: nec480,
  })),
  ...(['turbine', 'control', 'array', 'battery'] as const).map((circuit) => ({
    name: `a ${circuit} has no system that would decide (own case)`,
    given: { ...of('480Y/277'), circuit, grounding: 'corner' as const },
    fires: false,
    then: nec,
  })),
  {
    name: 'iec: IEC 60445, also of a high-leg or a corner-grounded system',
    given: { basis: 'iec', ...of('240/120 high-leg'), grounding: 'corner' },
    fires: true,
    then: iec,
  },
  {
    name: 'iec, 480 V',
    given: { basis: 'iec', ...of('480Y/277') },
    fires: true,
    then: iec,
  },
  {
    name: 'the grounded negative of a battery’s bus is white or gray (NEC 200.6, value from memory)',
    given: { circuit: 'battery', current: 'dc', system: undefined, whole: undefined, negativeGround: true },
    fires: true,
    then: {
      colours: 'nec',
      grounded: 'negative',
      because: 'the grounded pole of a battery’s bus is white or gray',
    },
  },
  {
    name: 'iec has no colour of its own for it',
    given: { basis: 'iec', circuit: 'battery', current: 'dc', negativeGround: true },
    fires: true,
    then: iec,
  },
  ...(['nec-2023', 'iec'] as const).map((basis) => ({
    name: `${basis}, a plant with its positive grounded: by voltage and use, no colour unless the settings give one`,
    given: { basis, circuit: 'battery' as const, current: 'dc' as const, positiveGround: true },
    fires: true,
    then: plant,
  })),
]);
