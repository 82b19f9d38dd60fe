import { conductors } from '../../../src/rules/wire/conductors.js';
import { wiringTable } from '../table.js';

const poles = {
  conductors: ['positive', 'negative'] as const,
  because: 'both poles, since a grounded pole floats once its ground-fault device or its bond opens',
};
const lines = 'every ungrounded conductor, and a grounded phase like the others';

export const table = wiringTable(import.meta.url, conductors, [
  ...(['array', 'battery', 'control'] as const).map((circuit) => ({
    name: `DC, ${circuit}: both poles, also the grounded one (common practice, no source)`,
    given: { circuit, current: 'dc' as const, lines: [], hasNeutral: false },
    fires: true,
    then: poles,
  })),
  ...(['nec-2017', 'nec-2020', 'nec-2023', 'iec'] as const).map((basis) => ({
    name: `${basis}, split phase: both lines (NEC 2023 242.20)`,
    given: { basis },
    fires: true,
    then: { conductors: ['L1', 'L2'] as const, because: lines },
  })),
  {
    name: 'three phases and N that is asked for',
    given: { lines: ['L1', 'L2', 'L3'], neutralAsked: true },
    fires: true,
    then: { conductors: ['L1', 'L2', 'L3', 'N'], because: 'every line, and N' },
  },
  {
    name: 'a delta has no N to take',
    given: { lines: ['L1', 'L2', 'L3'], hasNeutral: false, neutralAsked: true },
    fires: true,
    then: { conductors: ['L1', 'L2', 'L3'], because: lines },
  },
  {
    name: 'a corner-grounded delta: the grounded phase L2 gets a channel like the others (section 5)',
    given: { system: '240 delta', grounding: 'corner', lines: ['L1', 'L2', 'L3'], hasNeutral: false },
    fires: true,
    then: { conductors: ['L1', 'L2', 'L3'], because: lines },
  },
  {
    name: 'the phases of a turbine',
    given: { circuit: 'turbine', lines: ['L1', 'L2', 'L3'], hasNeutral: false },
    fires: true,
    then: { conductors: ['L1', 'L2', 'L3'], because: lines },
  },
  {
    name: 'an AC control circuit: both wires',
    given: { circuit: 'control', lines: [], hasNeutral: false },
    fires: true,
    then: { conductors: ['L1', 'N'], because: 'both wires of an AC control circuit' },
  },
]);
