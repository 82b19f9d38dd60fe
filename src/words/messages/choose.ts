import { say } from '../reasons/say.js';
import { CHOOSE_MESSAGES } from '../../model/messages/choose.js';
import { says } from '../message-kit.js';

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
      `No part of the catalogue fits ${p.at}, which asks for ${p.asks}.${p.nearest === '' ? '' : ` The nearest miss: ${p.nearest}.`}`,
    found: (p) => p.nearest,
    expected: (p) => `a part with ${p.asks}`,
    hint: 'Add a part to the catalogue that fits.',
  }),
  says(CHOOSE_MESSAGES.noneThreePlusOne, {
    title: 'No part with connection 3+1 for a TT system',
    message: (p) =>
      `No part of the catalogue with connection 3+1 fits ${p.at}, which asks for ${p.asks}.${p.nearest === '' ? '' : ` The nearest miss: ${p.nearest}.`}`,
    found: (p) => p.nearest,
    expected: (p) => `a part of connection 3+1 with ${p.asks}`,
    hint: 'Add a part of connection 3+1 to the catalogue.',
  }),
  says(CHOOSE_MESSAGES.byHandUnknown, {
    title: 'A part chosen by hand is not in the catalogue',
    message: (p) => `${p.part}, chosen by hand for ${p.at}, isn't in the catalogue.`,
    found: (p) => p.part,
    expected: 'a part of the catalogue',
    hint: 'Correct protector, or add the part to the catalogue.',
  }),
  says(CHOOSE_MESSAGES.byHandFails, {
    title: 'A part chosen by hand fails a rule',
    message: (p) => `${p.part}, chosen by hand for ${p.at}, is kept but fails: ${p.fails}.`,
    found: (p) => p.part,
    expected: 'a part that meets what the place asks',
    hint: 'Choose another part, or leave protector blank.',
  }),
  says(CHOOSE_MESSAGES.existingUnknown, {
    title: 'The ratings of a protector that is there already are not known',
    message: (p) =>
      `The protector that is there at ${p.at} ("${p.existing}") isn't in the catalogue: check that it has ${p.asks}.`,
    found: (p) => p.existing,
    expected: (p) => p.asks,
    hint: 'Read its label on site.',
  }),
  says(CHOOSE_MESSAGES.existingFails, {
    title: 'A protector that is there already fails a rule',
    message: (p) => `${p.part}, which is there at ${p.at}, fails: ${p.fails}.`,
    found: (p) => p.part,
    expected: 'a part that meets what the place asks',
    hint: 'Replace it: clear existing on that row.',
  }),
  says(CHOOSE_MESSAGES.shortfall, {
    title: 'The chosen part falls short of an aim',
    message: (p) => `${p.part} at ${p.at} falls short of an aim: ${p.shortfall}.`,
    expected: 'the withstand of the equipment from its maker, or a part that clamps lower',
    hint: 'Ask the maker of the equipment, or shorten the leads.',
  }),
  says(CHOOSE_MESSAGES.enclosureScale, {
    title: 'The enclosure of a part out of doors is stated on another scale',
    message: (p) => `${p.part} at ${p.at}: ${p.shortfall}.`,
    expected: 'a NEMA type in the catalogue, or the word of the maker that the part may stand out of doors',
    hint: 'Ask the maker of the part.',
  }),
  says(CHOOSE_MESSAGES.existingSeveral, {
    title: 'One cell says that a protector is there, and the row has several places',
    message: (p) =>
      `existing of ${p.tag} ("${p.existing}") counts for each of its places, so that none is ordered: ${p.places}.`,
    found: (p) => p.existing,
    expected: 'a protector that is there at each of these places',
    hint: 'Check on site which of them are there; where one isn’t, clear existing.',
  }),
  says(CHOOSE_MESSAGES.listedToUlOnly, {
    title: 'A part without an IEC class under basis iec',
    message: (p) =>
      `${p.part} at ${p.at} states no IEC class: it is kept, and its fitness under IEC 61643 isn't known.`,
    expected: 'iec_class in the catalogue',
    hint: 'Ask the maker of the part.',
  }),
  says(CHOOSE_MESSAGES.leadThin, {
    title: 'The lead of a part as planned is thinner than the smallest earth lead',
    message: (p) =>
      `The leads of ${p.part} at ${p.at} are planned with ${p.planned}; its earth lead takes at least ${p.least} (${say(p.source)}).`,
    found: (p) => p.planned,
    expected: (p) => `${p.least} or more`,
    hint: 'Wire the earth lead that thick; state lead_gauge in the catalogue, if the part comes with it.',
  }),
  says(CHOOSE_MESSAGES.faultCurrentUnknown, {
    title: 'The fault current at a place is not stated',
    message: (p) => `At ${p.at} ${say(p.because)}: ${p.part} ${p.holds}.`,
    expected: 'the available fault current',
    hint: (p) => `Ask the ${p.who === 'utility' ? 'utility' : 'maker of the source'}, and compare.`,
  }),
];
