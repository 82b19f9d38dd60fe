import type { StepCode } from '../../../model/step.js';

/** Kinds of quantities in the order of the summary, with the codes of the steps that are their results. */
interface Kind {
  readonly quantity: string;
  /** In the words of the IEC, where they are others. */
  readonly underIec?: string;
  readonly codes: readonly StepCode[];
  /** How result and check are told. */
  readonly as: 'voltage' | 'current' | 'nominal' | 'leads' | 'reach';
}
export type CalculationKind = Kind;

export const CALCULATION_KINDS: readonly Kind[] = [
  {
    quantity: 'PV voltage, cold',
    codes: ['cold-voltage/string', 'array-voltage/stated', 'array-voltage/stand-in'],
    as: 'voltage',
  },
  { quantity: 'PV voltage lifted by the inverter', codes: ['inverter-link/peak'], as: 'voltage' },
  { quantity: 'DC input voltage', codes: ['input-limit/converter'], as: 'voltage' },
  {
    quantity: 'Turbine voltage',
    codes: ['turbine-voltage/stated', 'turbine-voltage/between-lines', 'turbine-voltage/rectified'],
    as: 'voltage',
  },
  {
    quantity: 'Battery voltage, charging',
    codes: ['battery-voltage/stated', 'battery-voltage/battery'],
    as: 'voltage',
  },
  {
    quantity: 'Control circuit voltage',
    codes: ['control-voltage/share', 'control-voltage/larger', 'control-voltage/nominal'],
    as: 'voltage',
  },
  {
    quantity: 'AC voltage to ground',
    underIec: 'AC voltage to earth',
    codes: ['ac-voltage/larger', 'ac-voltage/least'],
    as: 'voltage',
  },
  {
    quantity: 'PV short-circuit current',
    codes: [
      'array-current/array',
      'array-current/stated',
      'array-current/others',
      'array-current/total',
      'array-current/sum',
      'array-current/largest',
    ],
    as: 'current',
  },
  {
    quantity: 'Fault current',
    codes: [
      'fault-current/own',
      'fault-current/upstream',
      'fault-current/transformer',
      'fault-current/together',
      'fault-current/of-battery',
      'fault-current/sum',
      'fault-current/from',
    ],
    as: 'current',
  },
  {
    quantity: 'Nominal discharge current',
    codes: [
      'nominal-current/least',
      'nominal-current/service',
      'nominal-current/service-with-lightning-protection',
      'nominal-current/fed-panel',
    ],
    as: 'nominal',
  },
  {
    quantity: 'Voltage of the leads',
    codes: ['leads/voltage', 'leads/voltage-beyond-level'],
    as: 'leads',
  },
  {
    quantity: 'Level with leads; reach along the cable',
    codes: ['reach/none', 'reach/unlimited', 'reach/metres'],
    as: 'reach',
  },
];
