import { turbinePhase } from '../../../src/rules/indicate/turbine-phase.js';
import { indicatorTable } from '../table.js';

const still = 'still: dark (standing-still): a turbine that stands still gives no voltage: not a fault';

export const table = indicatorTable(import.meta.url, turbinePhase, [
  {
    name: '12 poles at 300 rpm: 30 Hz (check-values 7, computed)',
    given: { circuit: 'turbine', frequency: 30 },
    shows: [
      'turning: flickers (turning-alternator): it flickers at the frequency of its generator, up to 30 Hz: normal',
      still,
    ],
  },
  {
    name: 'a light that needs more than a slow turbine gives',
    given: { circuit: 'turbine', frequency: 30, indicatorMinVoltage: 60 },
    shows: [
      'turning: flickers (turning-alternator): it flickers at the frequency of its generator, up to 30 Hz: normal, or dark where the load, or too little speed, holds it below the 60 V that it needs: recorded at commissioning',
      still,
    ],
  },
  {
    name: 'poles or speed not stated',
    given: { circuit: 'turbine' },
    shows: [
      'turning: flickers (turning-alternator): it flickers at the frequency of its generator: normal',
      still,
    ],
  },
  {
    name: 'output not stated: alternating or direct current, so nothing is claimed of a turning one',
    given: { circuit: 'turbine', frequency: 30, turbineOutputKnown: false },
    shows: [
      'turning: either (output-unknown): whether the turbine gives alternating or direct current isn’t stated',
      still,
    ],
  },
  ...(['power', 'array'] as const).map((circuit) => ({
    name: `a conductor of a circuit of kind ${circuit}`,
    given: { circuit, turbineDriven: true, frequency: 30 },
    outside: 'no phase of a turbine',
  })),
]);
