import { say } from '../reasons/say.js';
import { CHOOSE_MESSAGES, type LeadAt } from '../../model/messages/choose.js';
import { isNec, type Basis } from '../../model/editions.js';
import type { PortsAt } from '../../model/ports-at.js';
import type { Quantity } from '../../model/quantity.js';
import type { Reason } from '../../model/reason.js';
import { firstNamed, list, quantity } from '../figures.js';
import { leadLength, paperLead, runLength } from '../lengths.js';
import { says } from '../message-kit.js';
import { portsAt } from '../places.js';

const all = (reasons: readonly Reason[]): string => reasons.map((one) => say(one)).join('; ');

/** `, no larger than 30 A`. */
function upTo(most: Quantity | null): string {
  return most === null ? '' : `, no larger than ${quantity(most)}`;
}

/** A lead as the catalogue has it, with its cross-section: `10 AWG (5.26 mm2)`. */
function lead({ planned, area }: { readonly planned: string; readonly area: Quantity }): string {
  const inMm2 = quantity(area);
  return planned === inMm2 ? planned : `${planned} (${inMm2})`;
}

/** The place of a message that is about one. */
const atOne = ({ at }: { readonly at: PortsAt }): readonly string[] => [portsAt(at)];

/** Whether shorter leads would do. */
function shorter({ longest, basis }: { readonly longest: Quantity | null; readonly basis: Basis }): string {
  return longest === null
    ? 'The level alone is above it: no leads are short enough.'
    : `With leads of at most ${paperLead(longest.value, isNec(basis) ? 'ft' : 'm', 'down')}, line lead plus ground lead, it isn’t above it.`;
}

interface LongLead {
  readonly basis: Basis;
  readonly planned: LeadAt;
  readonly aimed: LeadAt;
}

/** `47.2 in (1.2 m) make 1380 V and a reach of 10 m, where 19.7 in (0.5 m) would make 990 V and a reach of 20 m`, by the basis. */
function longLead({ basis, planned, aimed }: LongLead): string {
  const makes = ({ level, reach }: LeadAt): string =>
    `${quantity(level)} and ${typeof reach === 'string' ? REACH[reach] : `a reach of ${runLength(reach.value, basis)}`}`;
  const inAll = ({ total }: LeadAt): string => leadLength(total.value, basis);
  return `${inAll(planned)} make ${makes(planned)}, where ${inAll(aimed)} would make ${makes(aimed)}`;
}

const REACH = {
  unknown: 'a reach that isn’t known',
  unlimited: 'a reach that oscillation doesn’t limit',
} as const;

/** ` (MCOV 150 V)`; `` where it isn't known. */
const ofMcov = (mcov: Quantity | null): string => (mcov === null ? '' : ` (MCOV ${quantity(mcov)})`);

/** Places that a message names: `A and B`, `A, ... and L and 14 more`. */
function placesNamed(at: readonly PortsAt[]): string {
  const { named, more } = firstNamed(at.map(portsAt));
  return `${list(named)}${more === '' ? '' : ` and ${more}`}`;
}

/** Words of the messages of model/messages/choose.ts. */
export const CHOOSE_WORDS = [
  says(CHOOSE_MESSAGES.noCatalogue, {
    title: 'There is no catalogue',
    message: () =>
      'There is no catalogue: everything is placed and rated, and the schedule is a specification to buy by.',
    expected: 'a catalogue.csv beside the list, or --catalogue FILE',
    hint: 'Name the company’s catalogue.',
  }),
  says(CHOOSE_MESSAGES.noneFits, {
    title: 'No part of the catalogue fits a place',
    message: (p) =>
      `No part of the catalogue fits ${portsAt(p.at)}, which asks for ${say(p.asks)}.${p.nearest === null ? '' : ` The nearest miss: ${say(p.nearest)}.`}`,
    found: (p) => (p.nearest === null ? '' : say(p.nearest)),
    expected: (p) => `a part with ${say(p.asks)}`,
    hint: 'Add a part to the catalogue that fits.',
  }),
  says(CHOOSE_MESSAGES.noneThreePlusOne, {
    title: 'No part with connection 3+1 for a TT system',
    message: (p) =>
      `No part of the catalogue with connection 3+1 fits ${portsAt(p.at)}, which asks for ${say(p.asks)}.${p.nearest === null ? '' : ` The nearest miss: ${say(p.nearest)}.`}`,
    found: (p) => (p.nearest === null ? '' : say(p.nearest)),
    expected: (p) => `a part of connection 3+1 with ${say(p.asks)}`,
    hint: 'Add a part of connection 3+1 to the catalogue.',
  }),
  says(CHOOSE_MESSAGES.byHandUnknown, {
    title: 'A part chosen by hand is not in the catalogue',
    message: (p) => `${p.part}, chosen by hand for ${portsAt(p.at)}, isn’t in the catalogue.`,
    found: (p) => p.part,
    expected: 'a part of the catalogue',
    hint: 'Correct protector, or add the part to the catalogue.',
  }),
  says(CHOOSE_MESSAGES.byHandFails, {
    title: 'A part chosen by hand fails a rule',
    message: (p) => `${p.part}, chosen by hand for ${portsAt(p.at)}, is kept but fails: ${all(p.fails)}.`,
    found: (p) => p.part,
    expected: 'a part that meets what the place asks',
    hint: 'Choose another part, or leave protector blank.',
  }),
  says(CHOOSE_MESSAGES.existingUnknown, {
    title: 'The ratings of a protector that is there already are not known',
    message: (p) =>
      `The protector that is there at ${portsAt(p.at)} ("${p.existing}") isn’t in the catalogue: check that it has ${say(p.asks)}.`,
    found: (p) => p.existing,
    expected: (p) => say(p.asks),
    hint: 'Read its label on site.',
  }),
  says(CHOOSE_MESSAGES.existingFails, {
    title: 'A protector that is there already fails a rule',
    message: (p) => `${p.part}, which is there at ${portsAt(p.at)}, fails: ${all(p.fails)}.`,
    found: (p) => p.part,
    expected: 'a part that meets what the place asks',
    hint: 'Replace it: clear existing on that row.',
  }),
  says(CHOOSE_MESSAGES.shortfall, {
    title: 'The chosen part falls short of an aim',
    message: (p) => `${p.part} at ${portsAt(p.at)} falls short of an aim: ${say(p.shortfall)}.`,
    expected: 'the withstand of the equipment from its maker, or a part that clamps lower',
    hint: 'Ask the maker of the equipment, or shorten the leads.',
    shared: {
      fact: (p) => `${p.part} falls short of an aim: ${say(p.shortfall)}.`,
      about: atOne,
    },
  }),
  says(CHOOSE_MESSAGES.mayNotProtect, {
    title: 'The chosen part may not protect what stands behind it',
    message: (p) => `${p.part} at ${portsAt(p.at)} may not protect: ${say(p.shortfall)}. ${shorter(p)}`,
    expected: 'the withstand of the equipment from its maker, or a part that clamps lower',
    hint: 'Ask the maker of the equipment before you rely on it, or choose a part that clamps lower.',
    shared: {
      fact: (p) => `${p.part} may not protect: ${say(p.shortfall)}. ${shorter(p)}`,
      about: atOne,
    },
  }),
  says(CHOOSE_MESSAGES.enclosureScale, {
    title: 'The enclosure of a part out of doors is stated on another scale',
    message: (p) => `${p.part} at ${portsAt(p.at)}: ${say(p.shortfall)}.`,
    expected: 'a NEMA type in the catalogue, or the word of the maker that the part may stand out of doors',
    hint: 'Ask the maker of the part.',
  }),
  says(CHOOSE_MESSAGES.neutralPath, {
    title: 'What the path from neutral to ground of a 3+1 part bears is not stated',
    message: (p) => `${p.part} at ${portsAt(p.at)}: ${say(p.shortfall)}.`,
    expected: 'in_npe_ka in the catalogue, and iimp_npe_ka beside a lightning protection system',
    hint: 'Ask the maker of the part.',
  }),
  says(CHOOSE_MESSAGES.leadLong, {
    title: 'The leads of a protector are long',
    message: (p) => `The leads of ${p.part} at ${portsAt(p.at)} are long: ${longLead(p)}.`,
    found: (p) => leadLength(p.planned.total.value, p.basis),
    expected: (p) => `line lead plus ground lead of at most ${leadLength(p.aimed.total.value, p.basis)}`,
    hint: 'Move the protector closer to its tap, or confirm that the lower reach is enough.',
  }),
  says(CHOOSE_MESSAGES.leadTooLong, {
    title: 'The leads of a protector are longer than IEC 60364-5-53 allows',
    message: (p) =>
      `The leads of ${p.part} at ${portsAt(p.at)} are longer than the ${leadLength(p.most.value, p.basis)} of 534.4.8 (value from memory): ${longLead(p)}.`,
    found: (p) => leadLength(p.planned.total.value, p.basis),
    expected: (p) =>
      `line lead plus ground lead of at most ${leadLength(p.aimed.total.value, p.basis)}, never over ${leadLength(p.most.value, p.basis)}`,
    hint: 'Move the protector closer to its tap.',
  }),
  says(CHOOSE_MESSAGES.besideExisting, {
    title: 'A new protector stands beside one that is there already',
    message: (p) =>
      `${p.part} at ${portsAt(p.at)}${ofMcov(p.mcov)} stands beside the protector that is there at ${portsAt(p.existing)}${ofMcov(p.existingMcov)}: of two the one with the lower MCOV takes the surges of both.`,
    found: (p) => (p.existingMcov === null ? '' : quantity(p.existingMcov)),
    expected: 'both of one MCOV class',
    hint: 'Read the MCOV on the label of the one that is there.',
  }),
  says(CHOOSE_MESSAGES.existingSeveral, {
    title: 'One cell says that a protector is there, and the row has several places',
    message: (p) =>
      `existing of ${p.tag} ("${p.existing}") counts for each of its places, so that none is ordered: ${list(p.places.map(portsAt))}.`,
    found: (p) => p.existing,
    expected: 'a protector that is there at each of these places',
    hint: 'Check on site which of them are there; where one isn’t, clear existing.',
  }),
  says(CHOOSE_MESSAGES.listedToUlOnly, {
    title: 'A part without an IEC class under basis iec',
    message: (p) =>
      `${p.part} at ${portsAt(p.at)} states no IEC class: it is kept, its fitness under IEC 61643 isn’t known, and its leads are those of class ${p.leads}.`,
    expected: 'iec_class in the catalogue',
    hint: 'Ask the maker of the part.',
  }),
  says(CHOOSE_MESSAGES.leadThin, {
    title: 'The lead of a part as planned is thinner than the smallest earth lead',
    message: (p) =>
      `The leads of ${p.part} at ${portsAt(p.at)} are planned with ${lead(p)}; its earth lead takes at least ${p.least} (${say(p.source)}).`,
    found: (p) => lead(p),
    expected: (p) => `${p.least} or more`,
    hint: 'Wire the earth lead that thick; state lead_gauge in the catalogue, if the part comes with it.',
  }),
  says(CHOOSE_MESSAGES.overcurrentSize, {
    title: 'The catalogue does not state the largest overcurrent device of a part',
    message: (p) =>
      `The catalogue states no overcurrent_a of ${p.part}, so that nothing is known of the size of the device ahead of it${p.words === '' ? '' : ` but its words, "${p.words}",`} at ${placesNamed(p.at)}; the leads are to be as thick as that device asks.`,
    found: (p) => p.words,
    expected: 'overcurrent_a in the catalogue, from the instructions of the part',
    hint: 'Fill in overcurrent_a and overcurrent_device of that part.',
  }),
  says(CHOOSE_MESSAGES.leadsByClass, {
    title: 'The smallest leads under iec go by the class of the part alone',
    message: (p) =>
      `The smallest leads of ${p.part} at ${placesNamed(p.at)} (${p.leads}) are those of 534.4.10 (value from memory) and of its terminals: whether they bear ${quantity(p.amps)}, the device or current ahead of them, isn’t worked out.`,
    found: (p) => quantity(p.amps),
    expected:
      'leads sized for what is ahead of them by the rules in force, or lead_by_instructions in the catalogue',
    hint: 'Size the leads for that device or current, never thinner than these.',
  }),
  says(CHOOSE_MESSAGES.overcurrentTurbine, {
    title: 'The overcurrent device of a protector on a turbine is for its maker to say',
    message: (p) =>
      `The overcurrent device ahead of ${p.part} at ${portsAt(p.at)} is as the maker of the turbine says${upTo(p.most)}.`,
    expected: 'the device that the maker of the turbine allows on its conductors, if any',
    hint: 'Ask the maker of the turbine.',
    shared: {
      fact: (p) =>
        `The overcurrent device ahead of ${p.part} on the wires of a turbine is as the maker of the turbine says${upTo(p.most)}.`,
      about: atOne,
    },
  }),
  says(CHOOSE_MESSAGES.overcurrentControl, {
    title: 'What limits the current of a control circuit is not stated',
    message: (p) =>
      `The overcurrent device ahead of ${p.part} at ${portsAt(p.at)} is the limit of the circuit’s own supply (class 2), or as the part says${upTo(p.most)}.`,
    expected: 'a supply that limits its current by itself, or a device as the part says',
    hint: 'Look at the supply of the control circuit.',
    shared: {
      fact: (p) =>
        `The overcurrent device ahead of ${p.part} on a control circuit is the limit of the circuit’s own supply (class 2), or as the part says${upTo(p.most)}.`,
      about: atOne,
    },
  }),
  says(CHOOSE_MESSAGES.backfeedUnknown, {
    title: 'What a converter sends back into its DC input is not stated',
    message: (p) =>
      `backfeed_a of ${p.converter} isn’t stated: what it sends back adds to the fault current at ${placesNamed(p.at)}, and no figure of the plan counts it.`,
    expected: 'backfeed_a on the list, 0 A where the converter sends nothing back',
    hint: 'Ask the maker of the converter, and hold the sum against the short-circuit current rating of the protector and the interrupting rating of its device.',
    shared: {
      fact: 'backfeed_a of a converter isn’t stated: what it sends back adds to the fault current at its DC input, and no figure of the plan counts it.',
      about: (p) => [p.converter],
    },
  }),
  says(CHOOSE_MESSAGES.overcurrentBelowLeast, {
    title: 'The circuit’s own device is smaller than the part asks for',
    message: (p) =>
      `The circuit’s own device of ${quantity(p.rating)} at ${portsAt(p.at)} is smaller than the ${quantity(p.least)} that ${p.part} asks for at least: a surge may open it.`,
    found: (p) => quantity(p.rating),
    expected: (p) => `a device of ${quantity(p.least)} or more`,
    hint: 'Take the protector to a circuit with a larger device, or choose another part.',
  }),
  says(CHOOSE_MESSAGES.flagNotTold, {
    title: 'The catalogue does not say how a good flag and a used-up one look',
    message: (p) =>
      `${p.part} at ${portsAt(p.at)} has a flag, and the catalogue doesn’t say how it looks while the part is good and once it is used up.`,
    expected: 'good_flag and used_flag in the catalogue, such as green and red',
    hint: 'Copy both from the instructions of the part, so that a used-up flag is never taken for a good one.',
  }),
  says(CHOOSE_MESSAGES.faultCurrentUnknown, {
    title: 'The fault current at a place is not stated',
    message: (p) => `At ${portsAt(p.at)} ${say(p.because)}: ${p.part} ${say(p.holds)}.`,
    expected: 'the available fault current',
    hint: (p) =>
      p.who === 'designer'
        ? 'List what feeds it, or say that its AC in is unused.'
        : `Ask the ${p.who === 'utility' ? 'utility' : 'maker of the source'}, and compare.`,
    shared: {
      fact: (p) => `Where ${p.part} stands, ${say(p.because)}: it ${say(p.holds)}.`,
      about: atOne,
    },
  }),
];
