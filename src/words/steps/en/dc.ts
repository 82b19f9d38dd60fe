import type { VoltageCoefficient } from '../../../model/list.js';
import type { DcSteps } from '../../../model/steps/dc.js';
import { workingFigure } from '../../../model/rounding.js';
import { figured, fine, number, type StepTexts } from '../step-words.js';

/** Formula of the change for each degree by the unit of the coefficient. */
const CHANGE: Readonly<Record<VoltageCoefficient['unit'], string>> = {
  '%/C': 'β × Voc',
  'V/C': 'β',
  'mV/cell/C': 'β × cells',
};

/** The same with its figures. */
function changeOf({ coefficient, module, cells }: DcSteps['cold-voltage/change-per-degree']): string {
  const c = String(workingFigure(coefficient.value));
  switch (coefficient.unit) {
    case '%/C':
      return `${c} %/°C × ${figured(module)}`;
    case 'V/C':
      return `${c} V/°C`;
    case 'mV/cell/C':
      return `${c} mV/cell/°C × ${String(cells)} cells`;
  }
}

/** The charge voltage of a lead-acid cell with its temperature put in. */
function compensated(v: DcSteps['battery-voltage/compensated-cell'], temperature: string): string {
  const rise = `${figured(v.rise)} × (${figured(v.reference)} - ${temperature})`;
  return `max(${figured(v.equalise)}, ${figured(v.absorb)} + ${rise})`;
}

const CELL: Readonly<Record<DcSteps['battery-voltage/cell']['chemistry'], string>> = {
  'lead-acid': 'Highest charge voltage of a cell, lead-acid, temperature not stated',
  lfp: 'End-of-charge voltage of a cell, lithium iron phosphate',
  nicd: 'Highest charge voltage of a cell, nickel-cadmium',
};

/** Steps about arrays, turbines, batteries and DC inputs, in English. */
export const DC: StepTexts<DcSteps> = {
  'cold-voltage/module-voltage': {
    says: 'Open-circuit voltage of one module at standard test conditions',
  },
  'cold-voltage/modules-in-series': { says: 'Modules in series' },
  'cold-voltage/lowest-temperature': { says: 'Lowest expected ambient temperature' },
  'cold-voltage/change-per-degree': {
    says: 'Change of the voltage of one module for each degree',
    formula: (v) => CHANGE[v.coefficient.unit],
    substituted: changeOf,
  },
  'cold-voltage/factor': {
    says: 'Factor for the lowest temperature, at least 1',
    formula: (v) => `max(1, 1 + dV/dT × (T - ${figured(v.reference)}) / Voc)`,
    substituted: (v) =>
      `max(1, 1 + (${figured(v.change)}) × (${figured(v.lowest)} - ${figured(v.reference)}) / (${figured(v.module)}))`,
  },
  'cold-voltage/factor-of-table': { says: 'Factor for the lowest temperature, crystalline silicon' },
  'cold-voltage/factor-of-coldest-row': {
    says: 'Factor of the coldest row, lowest temperature not stated',
  },
  'cold-voltage/factor-without-temperature': {
    says: 'Factor where the lowest temperature is not stated',
  },
  'cold-voltage/string': {
    says: 'Highest open-circuit voltage of the string',
    formula: 'Voc × n × F',
    substituted: (v) => `${figured(v.module)} × ${figured(v.modules)} × ${fine(v.factor)}`,
  },
  'array-voltage/stated': { says: (v) => `Open-circuit voltage of the string of ${v.array}` },
  'array-voltage/stand-in': {
    says: (v) => `Highest DC voltage that ${v.converter} bears: in the draft for what isn’t stated, no bound`,
  },
  'array-voltage/code-limit': { says: 'Highest DC voltage that 690.7 allows here' },
  'array-current/module': {
    says: 'Short-circuit current of one module at standard test conditions',
  },
  'array-current/strings': { says: 'Strings in parallel' },
  'array-current/array': {
    says: 'Short-circuit current of the array',
    formula: (v) => `${figured(v.share)} × Isc × p`,
    substituted: (v) => `${figured(v.share)} × ${figured(v.module)} × ${figured(v.strings)}`,
  },
  'array-current/others': {
    says: ({ count, at }) =>
      `Short-circuit current of ${count === 1 ? 'the other array' : `the ${count} other arrays`} joined to it${at === '' ? '' : ` at ${at}`}`,
    formula: (v) => `${figured(v.share)} × sum of Isc × p`,
    substituted: (v) => `${figured(v.share)} × ${figured(v.current)}`,
  },
  'array-current/backfeed': {
    says: ({ converter, inputs }) =>
      `Current that ${converter} can send back${inputs === 1 ? '' : ` out of each of the ${inputs} inputs joined here`}`,
  },
  'array-current/total': {
    says: 'Most that feeds a fault on this circuit',
    formula: 'sum of all that reach it',
    substituted: (v) => v.parts.map(figured).join(' + '),
  },
  'array-current/stated': { says: 'Short-circuit current of the array' },
  'array-current/sum': {
    says: 'Sum of the arrays on this conductor',
    formula: 'sum of Isc,max',
    substituted: (v) => v.arrays.join(' + '),
  },
  'array-current/largest': {
    says: 'Largest of the sources, of which one feeds this input',
    formula: 'largest of Isc,max',
    substituted: (v) => `max(${v.sources.map((group) => group.join(' + ')).join(', ')})`,
  },
  'input-limit/converter': { says: (v) => `Highest DC voltage that ${v.converter} bears` },
  'turbine-voltage/stated': {
    says: (v) =>
      `Open-circuit voltage of ${v.turbine} at the highest unloaded speed${v.lineToLine ? ', line to line' : ''}`,
  },
  'turbine-voltage/between-lines': {
    says: 'Open-circuit voltage between lines at the highest unloaded speed',
  },
  'turbine-voltage/rectified': {
    says: 'Open-circuit voltage behind the rectifier: peak of the voltage between lines',
    formula: (v) => `${figured(v.factor)} × ULL`,
    substituted: (v) => `${figured(v.factor)} × ${figured(v.lineToLine)}`,
  },
  'turbine-frequency/poles': { says: 'Poles of the generator' },
  'turbine-frequency/speed': { says: 'Speed' },
  'turbine-frequency/frequency': {
    says: 'Frequency of the generator, at which the indicators flicker',
    formula: '(poles / 2) × rpm / (60 s/min)',
    substituted: (v) => `(${figured(v.poles)} / 2) × ${figured(v.speed)} / (60 s/min)`,
  },
  'battery-voltage/stated': { says: (v) => `Highest voltage of ${v.battery} by its maker` },
  'battery-voltage/cell': { says: (v) => CELL[v.chemistry] },
  'battery-voltage/lowest-temperature': { says: 'Lowest expected temperature' },
  'battery-voltage/compensated-cell': {
    says: 'Highest charge voltage of a cell, lead-acid: equalising, or absorption compensated for cold',
    formula: (v) => compensated(v, 'T'),
    substituted: (v) => compensated(v, `(${figured(v.lowest)})`),
  },
  'battery-voltage/usual-cells': { says: (v) => `Usual cells in series at ${figured(v.nominal)}` },
  'battery-voltage/cells': { says: 'Cells in series' },
  'battery-voltage/battery': {
    says: 'Highest charge voltage of the battery',
    formula: 'Ucell × n',
    substituted: (v) => `${figured(v.cell)} × ${number(v.cells)}`,
  },
};
