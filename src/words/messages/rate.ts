import { FIELDS } from '../../model/fields.js';
import type { Field } from '../../model/list.js';
import type { Quantity } from '../../model/quantity.js';
import { ASKED_FIELDS, factMissing, RATE_MESSAGES } from '../../model/messages/rate.js';
import { measure } from '../figures.js';
import { says, type MessageEntry } from '../message-kit.js';
import { say } from '../reasons/say.js';

/** The sentences of a missing fact: they are made of what its field is. */
function factWords(field: Field): MessageEntry {
  const info = FIELDS[field];
  return says(factMissing(field), {
    title: `${field} is not stated, and a rule needs it`,
    message: (p) => `${field}${p.tag === '' ? '' : ` of ${p.tag}`} isn’t stated: ${say(p.why)}.`,
    expected: info.expected,
    hint: `Fill in ${field} on the list${info.of === 'row' ? ' or in the equipment library' : ' or in the job facts'}.`,
    shared: { fact: `${field} isn’t stated.`, about: (p) => (p.tag === '' ? [] : [p.tag]) },
  });
}

/** Words of the missing facts that rating rules ask for. */
export const FACT_WORDS = ASKED_FIELDS.map(factWords);

/** What a turbine reaches without load, and where. */
function openVoltage(p: { readonly reached: Quantity; readonly rectified: boolean }): string {
  return `${measure(p.reached)}${p.rectified ? ' behind the rectifier' : ''}`;
}

/** What is known of a battery whose charge voltage isn't. */
function batteryOf(p: { readonly chemistry: string; readonly nominal: Quantity | null }): string {
  return `${p.chemistry}, ${p.nominal ? measure(p.nominal) : 'no nominal voltage'}`;
}

/** Words of the messages of model/messages/rate.ts. */
export const RATE_WORDS = [
  says(RATE_MESSAGES.aboveConverter, {
    title: 'The cold open-circuit voltage is above what the converter bears',
    message: (p) =>
      `The open-circuit voltage of ${p.tag} reaches ${measure(p.reached)}, above the ${measure(p.most)} that ${p.converter} bears.`,
    found: (p) => measure(p.reached),
    expected: (p) => `at most ${measure(p.most)}`,
    hint: 'Put fewer modules in series, or choose another converter.',
  }),
  says(RATE_MESSAGES.aboveLimit, {
    title: 'The cold open-circuit voltage is above the limit of NEC 690.7',
    message: (p) =>
      `The open-circuit voltage of ${p.tag} reaches ${measure(p.reached)}, above the ${measure(p.most)} of NEC 690.7 for this site.`,
    found: (p) => measure(p.reached),
    expected: (p) => `at most ${measure(p.most)}`,
    hint: 'Put fewer modules in series, or correct the occupancy or the mounting.',
  }),
  says(RATE_MESSAGES.coldFactorAssumed, {
    title: 'The lowest temperature is not stated, so the factor of IEC 60364-7-712 is used',
    message: (p) =>
      `The lowest temperature isn’t stated: the open-circuit voltage at STC is taken ${measure(p.factor)} times.`,
    expected: 'lowest_temp',
    hint: 'State lowest_temp, or confirm.',
  }),
  says(RATE_MESSAGES.coefficientNotNegative, {
    title: 'A temperature coefficient of the open-circuit voltage is not negative',
    message: (p) => `The temperature coefficient of ${p.tag} isn’t negative: ${p.found}.`,
    found: (p) => p.found,
    expected: 'a negative figure, such as -0.27 %/C',
    hint: 'Correct it from the module’s data sheet.',
  }),
  says(RATE_MESSAGES.liftedByInverter, {
    title: 'An array is rated higher because its inverter is not stated to be isolated',
    message: (p) =>
      `${p.inverter} isn’t stated to be isolated: conductors of its arrays at ${p.tag} are rated for at least ${measure(p.least)}, which is derived, not published.`,
    expected: 'isolated yes or no',
    hint: 'Ask the maker of the inverter what its DC conductors reach to ground.',
  }),
  says(RATE_MESSAGES.rectifiedAbove, {
    title: 'The voltage of a turbine without load, rectified, is above what the converter bears',
    message: (p) =>
      `${p.tag} reaches ${openVoltage(p)} without load, above the ${measure(p.most)} that ${p.converter} bears.`,
    found: openVoltage,
    expected: (p) => `at most ${measure(p.most)}`,
    hint: 'Choose another controller, or correct the open-circuit voltage.',
  }),
  says(RATE_MESSAGES.turbineFloats, {
    title: 'The phases of a turbine float',
    message: (p) =>
      `The phases of ${p.tag} float: it is assumed that the protector needs no listing for that, but ${p.clause} asks for one on ungrounded systems, and the office may.`,
    expected:
      'the word of the authority having jurisdiction, or a part that is listed for ungrounded systems',
    hint: 'Ask the authority having jurisdiction.',
    shared: {
      fact: (p) =>
        `The phases of a turbine float: it is assumed that the protector needs no listing for that, but ${p.clause} asks for one on ungrounded systems, and the office may.`,
      about: (p) => [p.tag],
    },
  }),
  says(RATE_MESSAGES.noNeutralInTt, {
    title: 'A TT system without a neutral',
    message: (p) =>
      `The AC system ${p.system} of ${p.tag} has no neutral, yet the earthing is TT, where lines are led to the neutral.`,
    found: (p) => p.system,
    expected: 'an AC system with a neutral, or another earthing',
    hint: 'Correct the AC system, or earthing.',
  }),
  says(RATE_MESSAGES.linkInIt, {
    title: 'An IT system whose neutral is linked to earth',
    message: (p) =>
      `n_pe_link is "yes" for ${p.tag}, yet the earthing is IT, where nothing links a live conductor to earth.`,
    found: () => 'yes',
    expected: 'n_pe_link no, or another earthing',
    hint: 'Correct n_pe_link, or earthing.',
  }),
  says(RATE_MESSAGES.linkNotSolid, {
    title: 'A neutral that is linked to ground in a system that is not solidly grounded',
    message: (p) =>
      `n_pe_link is "yes" for ${p.tag}, yet system_grounding is "${p.grounding}" there: a link from N to ground would ground the system solidly.`,
    found: () => 'yes',
    expected: 'n_pe_link no, or system_grounding solid',
    hint: 'Find out on site which of the two is so.',
  }),
  says(RATE_MESSAGES.turbineUnearthed, {
    title: 'The phases of a turbine are not earthed',
    message: (p) =>
      `No phase of ${p.tag} is earthed: that the protector may stand in such a system, only its maker can say.`,
    expected: 'the word of the maker of the part',
    hint: 'Ask the maker of the part.',
  }),
  says(RATE_MESSAGES.batteryUnknown, {
    title: 'The highest charge voltage of a battery cannot be worked out',
    message: (p) =>
      `The highest charge voltage of ${p.tag} (${batteryOf(p)}) isn’t known from its chemistry and nominal voltage.`,
    found: batteryOf,
    expected: 'cells of a known chemistry, or the maker’s highest voltage in max_dc_voltage',
    hint: 'Fill in cells, or max_dc_voltage.',
  }),
  says(RATE_MESSAGES.batteryNotListed, {
    title: 'A battery cable, and no battery on the list',
    message: (p) => `A battery cable ends at ${p.tag}, but no battery on the list is on that bus.`,
    expected: 'a row of kind battery on that bus',
    hint: 'Add the battery.',
  }),
  says(RATE_MESSAGES.foreignSystem, {
    title: 'An AC system that is foreign to the basis',
    message: (p) =>
      `The AC system ${p.system} of ${p.tag} isn’t one of ${p.basis}: rated by the formula of ${p.basis}.`,
    found: (p) => p.system,
    expected: 'an AC system of the basis',
    hint: 'Check the system and the basis.',
  }),
];
