import { FIELDS } from '../../model/fields.js';
import type { Field } from '../../model/list.js';
import type { MessageEntry } from '../message-kit.js';

/** A fact that a rule asked for and that nobody states. */
export interface MissingFact {
  readonly tag: string;
  /** What the fact is needed for: "needed for the cold open-circuit voltage". */
  readonly why: string;
}

/**
 * The message of a missing fact: its code is `fact/` and the field.
 * @param field the field of the contract that is missing
 */
export function factMissing(field: Field): MessageEntry<MissingFact> {
  const info = FIELDS[field];
  return {
    code: `fact/${field.replaceAll('_', '-')}`,
    severity: 'missing',
    title: `${field} is not stated, and a rule needs it`,
    message: (p) => `${field}${p.tag === '' ? '' : ` of ${p.tag}`} isn't stated: ${p.why}.`,
    expected: info.expected,
    hint: `Fill in ${field} on the list${info.of === 'row' ? ' or in the equipment library' : ' or in the job facts'}.`,
    who: info.who,
  };
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
export const FACT_MESSAGES: { readonly [F in AskedField]: MessageEntry<MissingFact> } = {
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
  boundByConverter: {
    code: 'rate/bound-by-converter',
    severity: 'confirm',
    title: 'An array is rated by the highest voltage of its converter',
    message: (p: { tag: string; missing: string; converter: string; volts: string }) =>
      `${p.missing} of ${p.tag} isn't stated: rated by the ${p.volts} that ${p.converter} bears.`,
    expected: 'the open-circuit voltage of a module and the modules in series',
    hint: 'State them; the figure can only become smaller.',
    who: 'designer',
  } satisfies MessageEntry<{ tag: string; missing: string; converter: string; volts: string }>,
  aboveConverter: {
    code: 'rate/above-converter',
    severity: 'conflict',
    title: 'The cold open-circuit voltage is above what the converter bears',
    message: (p: { tag: string; volts: string; converter: string; most: string }) =>
      `The open-circuit voltage of ${p.tag} reaches ${p.volts}, above the ${p.most} that ${p.converter} bears.`,
    found: (p) => p.volts,
    expected: (p) => `at most ${p.most}`,
    hint: 'Put fewer modules in series, or choose another converter.',
    who: 'designer',
  } satisfies MessageEntry<{ tag: string; volts: string; converter: string; most: string }>,
  aboveLimit: {
    code: 'rate/above-code-limit',
    severity: 'conflict',
    title: 'The cold open-circuit voltage is above the limit of NEC 690.7',
    message: (p: { tag: string; volts: string; most: string }) =>
      `The open-circuit voltage of ${p.tag} reaches ${p.volts}, above the ${p.most} of NEC 690.7 for this site.`,
    found: (p) => p.volts,
    expected: (p) => `at most ${p.most}`,
    hint: 'Put fewer modules in series, or correct the occupancy or the mounting.',
    who: 'designer',
  } satisfies MessageEntry<{ tag: string; volts: string; most: string }>,
  coldFactorAssumed: {
    code: 'rate/cold-factor-assumed',
    severity: 'confirm',
    title: 'The lowest temperature is not stated, so the factor of IEC 60364-7-712 is used',
    message: (p: { factor: string }) =>
      `The lowest temperature isn't stated: the open-circuit voltage at STC is taken ${p.factor} times.`,
    expected: 'lowest_temp',
    hint: 'State lowest_temp, or confirm.',
    who: 'designer',
  } satisfies MessageEntry<{ factor: string }>,
  coefficientNotNegative: {
    code: 'rate/coefficient-sign',
    severity: 'conflict',
    title: 'A temperature coefficient of the open-circuit voltage is not negative',
    message: (p: { tag: string; found: string }) =>
      `The temperature coefficient of ${p.tag} isn't negative: ${p.found}.`,
    found: (p) => p.found,
    expected: 'a negative figure, such as -0.27 %/C',
    hint: "Correct it from the module's data sheet.",
    who: 'maker',
  } satisfies MessageEntry<{ tag: string; found: string }>,
  liftedByInverter: {
    code: 'rate/lifted-by-inverter',
    severity: 'confirm',
    title: 'An array is rated higher because its inverter is not stated to be isolated',
    message: (p: { tag: string; inverter: string; volts: string }) =>
      `${p.inverter} isn't stated to be isolated: conductors of its arrays at ${p.tag} are rated for at least ${p.volts}, which is derived, not published.`,
    expected: 'isolated yes or no',
    hint: 'Ask the maker of the inverter what its DC conductors reach to ground.',
    who: 'maker',
  } satisfies MessageEntry<{ tag: string; inverter: string; volts: string }>,
  rectifiedAbove: {
    code: 'rate/rectified-above-converter',
    severity: 'conflict',
    title: 'The voltage of a turbine without load, rectified, is above what the converter bears',
    message: (p: { tag: string; volts: string; converter: string; most: string }) =>
      `${p.tag} reaches ${p.volts} without load, above the ${p.most} that ${p.converter} bears.`,
    found: (p) => p.volts,
    expected: (p) => `at most ${p.most}`,
    hint: 'Choose another controller, or correct the open-circuit voltage.',
    who: 'designer',
  } satisfies MessageEntry<{ tag: string; volts: string; converter: string; most: string }>,
  turbineFloats: {
    code: 'rate/turbine-floats',
    severity: 'confirm',
    title: 'The phases of a turbine float',
    message: (p: { tag: string }) =>
      `The phases of ${p.tag} float: whether the protector must be listed for ungrounded systems isn't settled by the code.`,
    expected: 'the word of the authority having jurisdiction',
    hint: 'Ask the authority having jurisdiction.',
    who: 'office',
  } satisfies MessageEntry<{ tag: string }>,
  turbineUnearthed: {
    code: 'rate/turbine-unearthed',
    severity: 'confirm',
    title: 'The phases of a turbine are not earthed',
    message: (p: { tag: string }) =>
      `No phase of ${p.tag} is earthed: that the protector may stand in such a system, only its maker can say.`,
    expected: 'the word of the maker of the part',
    hint: 'Ask the maker of the part.',
    who: 'maker',
  } satisfies MessageEntry<{ tag: string }>,
  batteryUnknown: {
    code: 'rate/battery-voltage-unknown',
    severity: 'missing',
    title: 'The highest charge voltage of a battery cannot be worked out',
    message: (p: { tag: string; chemistry: string; volts: string }) =>
      `The highest charge voltage of ${p.tag} (${p.chemistry}, ${p.volts}) isn't known from its chemistry and nominal voltage.`,
    found: (p) => `${p.chemistry}, ${p.volts}`,
    expected: "cells of a known chemistry, or the maker's highest voltage in max_dc_voltage",
    hint: 'Fill in cells, or max_dc_voltage.',
    who: 'maker',
  } satisfies MessageEntry<{ tag: string; chemistry: string; volts: string }>,
  batteryNotListed: {
    code: 'rate/battery-not-listed',
    severity: 'missing',
    title: 'A battery cable, and no battery on the list',
    message: (p: { tag: string }) =>
      `A battery cable ends at ${p.tag}, but no battery on the list is on that bus.`,
    expected: 'a row of kind battery on that bus',
    hint: 'Add the battery.',
    who: 'designer',
  } satisfies MessageEntry<{ tag: string }>,
  foreignSystem: {
    code: 'rate/foreign-system',
    severity: 'confirm',
    title: 'An AC system that is foreign to the basis',
    message: (p: { tag: string; system: string; basis: string }) =>
      `The AC system ${p.system} of ${p.tag} isn't one of ${p.basis}: rated by the formula of ${p.basis}.`,
    found: (p) => p.system,
    expected: 'an AC system of the basis',
    hint: 'Check the system and the basis.',
    who: 'designer',
  } satisfies MessageEntry<{ tag: string; system: string; basis: string }>,
} as const;
