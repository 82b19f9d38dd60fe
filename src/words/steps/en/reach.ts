import type { ReachSteps } from '../../../model/steps/reach.js';
import { figured, fine, type StepTexts } from '../step-words.js';

const inductance = (length: string) => ({
  formula: (v: ReachSteps['leads/inductance']) =>
    `${figured(v.perMetre)} × ${length} × (ln(4 × ${length} / d) - 1)`,
  substituted: (v: ReachSteps['leads/inductance']) =>
    `${figured(v.perMetre)} × ${figured(v.length)} × (ln(4 × ${figured(v.length)} / (${figured(v.diameter)})) - 1)`,
});

/** Steps about the leads of a protector and how far it covers, in English. */
export const REACH: StepTexts<ReachSteps> = {
  'leads/length': { says: 'Total length of the leads, line lead plus ground lead' },
  'leads/diameter': { says: 'Diameter of the lead' },
  'leads/inductance': {
    says: 'Inductance of the leads, straight round wire at high frequency',
    ...inductance('l'),
  },
  'leads/inductance-in-level': {
    says: 'Inductance of the 6 in that the rating already holds',
    ...inductance('l6'),
  },
  'leads/current-rise': {
    says: 'Steepest rise of the 8/20 µs current',
    formula: (v) => `${fine(v.rise)} 1/µs × Ip`,
    substituted: (v) => `${fine(v.rise)} 1/µs × ${figured(v.peak)}`,
  },
  'leads/voltage': {
    says: 'Voltage of the leads, added to the level',
    formula: 'L × di/dt',
    substituted: (v) => `${figured(v.inductance)} × ${figured(v.rise)}`,
  },
  'leads/voltage-beyond-level': {
    says: 'Voltage of the leads, added to the level',
    formula: 'max(0 µH, L - L6) × di/dt',
    substituted: (v) => `max(0 µH, ${figured(v.inductance)} - ${figured(v.inLevel)}) × ${figured(v.rise)}`,
  },
  'reach/level': { says: 'Protection level of the protector' },
  'reach/leads': { says: 'Voltage of the leads' },
  'reach/withstand': { says: 'Impulse withstand of the equipment' },
  'reach/fed-withstand': {
    says: ({ voltage, to }) =>
      `Impulse withstand assumed of what is fed from here: overvoltage category II at ${figured(voltage)} ${to === 'line' ? 'line to line' : 'to neutral'}`,
  },
  'level/between': {
    says: 'Level between two conductors that each have a channel to ground: up to the sum of both with their leads; compared with nothing',
    formula: '2 × (Up + Ul)',
    substituted: (v) => `2 × (${figured(v.level)} + ${figured(v.leads)})`,
  },
  'reach/none': {
    says: 'Reach: none, level and leads exceed the withstand',
    formula: '0 m where Up + Ul > Uw',
    substituted: (v) => `${figured(v.level)} + ${figured(v.leads)} > ${figured(v.withstand)}`,
  },
  'reach/unlimited': {
    says: 'Reach: not limited by oscillation, level and leads are at most half the withstand; up to the long-run limit; induction along the run isn’t counted',
    formula: 'no limit where Up + Ul <= Uw / 2',
    substituted: (v) => `${figured(v.level)} + ${figured(v.leads)} <= ${figured(v.withstand)} / 2`,
  },
  'reach/metres': {
    says: (v) => `Reach along the cable, at least ${figured(v.least)}, at most ${figured(v.limit)}`,
    formula: (v) =>
      `min(max((Uw - Up - Ul) / (${figured(v.slope)}), ${figured(v.least)}), ${figured(v.limit)})`,
    substituted: (v) =>
      `min(max((${figured(v.withstand)} - ${figured(v.level)} - ${figured(v.leads)}) / (${figured(v.slope)}), ${figured(v.least)}), ${figured(v.limit)})`,
  },
};
