import type { OvercurrentSteps } from '../../../model/steps/overcurrent.js';
import { figured, type StepTexts } from '../step-words.js';

const LEADS = { line: 'the line lead', ground: 'the ground lead', both: 'either lead' } as const;

/** Steps about the overcurrent device of a protector and the least of its leads, in English. */
export const OVERCURRENT: StepTexts<OvercurrentSteps> = {
  'overcurrent/most': { says: ({ part }) => `Largest overcurrent device ahead of ${part}` },
  'overcurrent/circuit-device': { says: ({ equipment }) => `Device of the circuit at ${equipment}` },
  'overcurrent/array': { says: ({ array }) => `Highest current of ${array}` },
  'overcurrent/backfeed': {
    says: ({ converter, input }) => `What ${converter} can send back into its DC input ${String(input)}`,
  },
  'overcurrent/sum': {
    says: 'All that can flow through the port at once',
    formula: 'Σ Isc,max + Σ Iback',
    substituted: ({ each }) => each.map(figured).join(' + '),
  },
  'overcurrent/sum-of-many': {
    says: ({ arrays, inputs }) =>
      `All that can flow through the port at once, from ${String(arrays)} arrays and back from ${String(inputs)} DC inputs`,
  },
  'overcurrent/ampacity': {
    says: 'Least ampacity of the leads, without a device ahead of them',
    formula: 'share × Isum',
    substituted: ({ share, current }) => `${figured(share)} × ${figured(current)}`,
  },
  'lead/code': { says: ({ lead }) => `Least that is allowed of ${LEADS[lead]}` },
  'lead/terminals': { says: 'Smallest wire that the terminals of the part take' },
  'lead/behind-device': {
    says: ({ device, gauge }) => `Least behind a device of ${figured(device)}: ${gauge}`,
  },
  'lead/for-current': {
    says: ({ current, gauge }) => `Least that carries ${figured(current)}: ${gauge}`,
  },
  'lead/by-instructions': {
    says: 'Device or current ahead of the leads, which asks for thicker ones: the part’s instructions go before it',
  },
  'lead/either': {
    says: ({ gauge }) => `Smallest lead, line and ground: ${gauge}`,
    formula: 'the thickest of these',
    substituted: '',
  },
  'lead/line': {
    says: ({ gauge }) => `Smallest line lead: ${gauge}`,
    formula: 'the thickest of these',
    substituted: '',
  },
  'lead/ground': {
    says: ({ gauge }) => `Smallest ground lead: ${gauge}`,
    formula: 'the thickest of these',
    substituted: '',
  },
};
