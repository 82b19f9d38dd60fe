import { FIELDS } from '../fields.js';
import type { Field } from '../list.js';
import { message, type MessageKind } from '../message.js';
import type { Quantity } from '../quantity.js';
import type { Reason } from '../reason.js';
import type { Basis } from '../editions.js';
import type { AcSystem } from '../words.js';

/** A fact that a rule asked for and that nobody states. */
export interface MissingFact {
  readonly tag: string;
  /** What the fact is needed for: "needed for the cold open-circuit voltage". */
  readonly why: Reason;
}

/**
 * The message of a missing fact: its code is `fact/` and the field.
 * @param field the field of the contract that is missing
 */
export function factMissing(field: Field): MessageKind<MissingFact> {
  return message(`fact/${field.replaceAll('_', '-')}`, 'missing', FIELDS[field].who);
}

/** The fields that rating rules ask for. */
export const ASKED_FIELDS = [
  'voc_stc',
  'modules_in_series',
  'voc_coefficient',
  'cells',
  'lowest_temp',
  'open_circuit_voltage',
  'max_dc_voltage',
  'output',
  'battery_voltage',
  'battery_chemistry',
  'control_voltage',
  'ac_in',
  'ac_in_2',
  'ac_out',
] as const satisfies readonly Field[];
export type AskedField = (typeof ASKED_FIELDS)[number];

/** The messages of missing facts by field. */
export const FACT_MESSAGES: { readonly [F in AskedField]: MessageKind<MissingFact> } = {
  voc_stc: factMissing('voc_stc'),
  modules_in_series: factMissing('modules_in_series'),
  voc_coefficient: factMissing('voc_coefficient'),
  cells: factMissing('cells'),
  lowest_temp: factMissing('lowest_temp'),
  open_circuit_voltage: factMissing('open_circuit_voltage'),
  max_dc_voltage: factMissing('max_dc_voltage'),
  output: factMissing('output'),
  battery_voltage: factMissing('battery_voltage'),
  battery_chemistry: factMissing('battery_chemistry'),
  control_voltage: factMissing('control_voltage'),
  ac_in: factMissing('ac_in'),
  ac_in_2: factMissing('ac_in_2'),
  ac_out: factMissing('ac_out'),
};

/** Messages of the rating rules. */
export const RATE_MESSAGES = {
  aboveConverter: message<{ tag: string; reached: Quantity; converter: string; most: Quantity }>(
    'rate/above-converter',
    'conflict',
    'designer',
  ),
  aboveLimit: message<{ tag: string; reached: Quantity; most: Quantity }>(
    'rate/above-code-limit',
    'conflict',
    'designer',
  ),
  coldFactorAssumed: message<{ factor: Quantity }>('rate/cold-factor-assumed', 'confirm', 'designer'),
  coefficientNotNegative: message<{ tag: string; found: string }>(
    'rate/coefficient-sign',
    'conflict',
    'maker',
  ),
  liftedByInverter: message<{ tag: string; inverter: string; least: Quantity }>(
    'rate/lifted-by-inverter',
    'confirm',
    'maker',
  ),
  rectifiedAbove: message<{
    tag: string;
    reached: Quantity;
    /** True where it stands behind the rectifier. */
    rectified: boolean;
    converter: string;
    most: Quantity;
  }>('rate/rectified-above-converter', 'conflict', 'designer'),
  /** `clause`: that of the job's cycle about systems that a part must be listed for. */
  turbineFloats: message<{ tag: string; clause: string }>('rate/turbine-floats', 'confirm', 'office'),
  noNeutralInTt: message<{ tag: string; system: AcSystem }>('rate/no-neutral-in-tt', 'conflict', 'designer'),
  linkInIt: message<{ tag: string }>('rate/link-in-it', 'conflict', 'designer'),
  linkNotSolid: message<{ tag: string; grounding: 'none' | 'impedance' }>(
    'rate/link-not-solid',
    'conflict',
    'designer',
  ),
  turbineUnearthed: message<{ tag: string }>('rate/turbine-unearthed', 'confirm', 'maker'),
  batteryUnknown: message<{ tag: string; chemistry: string; nominal: Quantity | null }>(
    'rate/battery-voltage-unknown',
    'missing',
    'maker',
  ),
  batteryNotListed: message<{ tag: string }>('rate/battery-not-listed', 'missing', 'designer'),
  foreignSystem: message<{ tag: string; system: AcSystem; basis: Basis }>(
    'rate/foreign-system',
    'confirm',
    'designer',
  ),
} as const;
