import type { Who } from '../../model/words.js';
import type { MessageEntry } from '../message-kit.js';

/** Messages about the choice of parts. */
export const CHOOSE_MESSAGES = {
  noCatalogue: {
    code: 'choose/no-catalogue',
    severity: 'missing',
    title: 'There is no catalogue',
    message: () =>
      'There is no catalogue: everything is placed and rated, and the schedule is a specification to buy by.',
    expected: 'a catalogue.csv beside the list, or --catalogue FILE',
    hint: 'Name the company’s catalogue.',
    who: 'office',
  } satisfies MessageEntry<Record<string, never>>,
  noneFits: {
    code: 'choose/none-fits',
    severity: 'conflict',
    title: 'No part of the catalogue fits a place',
    message: (p: { at: string; asks: string; nearest: string }) =>
      `No part of the catalogue fits ${p.at}, which asks for ${p.asks}.${p.nearest === '' ? '' : ` The nearest miss: ${p.nearest}.`}`,
    found: (p) => p.nearest,
    expected: (p) => `a part with ${p.asks}`,
    hint: 'Add a part to the catalogue that fits.',
    who: 'office',
  } satisfies MessageEntry<{ at: string; asks: string; nearest: string }>,
  noneThreePlusOne: {
    code: 'choose/no-3-plus-1',
    severity: 'conflict',
    title: 'No part with connection 3+1 for a TT system',
    message: (p: { at: string; asks: string; nearest: string }) =>
      `No part of the catalogue with connection 3+1 fits ${p.at}, which asks for ${p.asks}.${p.nearest === '' ? '' : ` The nearest miss: ${p.nearest}.`}`,
    found: (p) => p.nearest,
    expected: (p) => `a part of connection 3+1 with ${p.asks}`,
    hint: 'Add a part of connection 3+1 to the catalogue.',
    who: 'office',
  } satisfies MessageEntry<{ at: string; asks: string; nearest: string }>,
  byHandUnknown: {
    code: 'choose/by-hand-unknown',
    severity: 'conflict',
    title: 'A part chosen by hand is not in the catalogue',
    message: (p: { at: string; part: string }) =>
      `${p.part}, chosen by hand for ${p.at}, isn't in the catalogue.`,
    found: (p) => p.part,
    expected: 'a part of the catalogue',
    hint: 'Correct protector, or add the part to the catalogue.',
    who: 'office',
  } satisfies MessageEntry<{ at: string; part: string }>,
  byHandFails: {
    code: 'choose/by-hand-fails',
    severity: 'conflict',
    title: 'A part chosen by hand fails a rule',
    message: (p: { at: string; part: string; fails: string }) =>
      `${p.part}, chosen by hand for ${p.at}, is kept but fails: ${p.fails}.`,
    found: (p) => p.part,
    expected: 'a part that meets what the place asks',
    hint: 'Choose another part, or leave protector blank.',
    who: 'office',
  } satisfies MessageEntry<{ at: string; part: string; fails: string }>,
  existingUnknown: {
    code: 'choose/existing-unknown',
    severity: 'confirm',
    title: 'The ratings of a protector that is there already are not known',
    message: (p: { at: string; existing: string; asks: string }) =>
      `The protector that is there at ${p.at} ("${p.existing}") isn't in the catalogue: check that it has ${p.asks}.`,
    found: (p) => p.existing,
    expected: (p) => p.asks,
    hint: 'Read its label on site.',
    who: 'installer',
  } satisfies MessageEntry<{ at: string; existing: string; asks: string }>,
  existingFails: {
    code: 'choose/existing-fails',
    severity: 'conflict',
    title: 'A protector that is there already fails a rule',
    message: (p: { at: string; part: string; fails: string }) =>
      `${p.part}, which is there at ${p.at}, fails: ${p.fails}.`,
    found: (p) => p.part,
    expected: 'a part that meets what the place asks',
    hint: 'Replace it: clear existing on that row.',
    who: 'designer',
  } satisfies MessageEntry<{ at: string; part: string; fails: string }>,
  shortfall: {
    code: 'choose/shortfall',
    severity: 'confirm',
    title: 'The chosen part falls short of an aim',
    message: (p: { at: string; part: string; shortfall: string }) =>
      `${p.part} at ${p.at} falls short of an aim: ${p.shortfall}.`,
    expected: 'the withstand of the equipment from its maker, or a part that clamps lower',
    hint: 'Ask the maker of the equipment, or shorten the leads.',
    who: 'maker',
  } satisfies MessageEntry<{ at: string; part: string; shortfall: string }>,
  enclosureScale: {
    code: 'choose/enclosure-scale',
    severity: 'confirm',
    title: 'The enclosure of a part out of doors is stated on another scale',
    message: (p: { at: string; part: string; shortfall: string }) => `${p.part} at ${p.at}: ${p.shortfall}.`,
    expected: 'a NEMA type in the catalogue, or the word of the maker that the part may stand out of doors',
    hint: 'Ask the maker of the part.',
    who: 'maker',
  } satisfies MessageEntry<{ at: string; part: string; shortfall: string }>,
  existingSeveral: {
    code: 'choose/existing-several',
    severity: 'confirm',
    title: 'One cell says that a protector is there, and the row has several places',
    message: (p: { tag: string; existing: string; places: string }) =>
      `existing of ${p.tag} ("${p.existing}") counts for each of its places, so that none is ordered: ${p.places}.`,
    found: (p) => p.existing,
    expected: 'a protector that is there at each of these places',
    hint: 'Check on site which of them are there; where one isn’t, clear existing.',
    who: 'installer',
  } satisfies MessageEntry<{ tag: string; existing: string; places: string }>,
  listedToUlOnly: {
    code: 'choose/listed-to-ul-only',
    severity: 'confirm',
    title: 'A part without an IEC class under basis iec',
    message: (p: { at: string; part: string }) =>
      `${p.part} at ${p.at} states no IEC class: it is kept, and its fitness under IEC 61643 isn't known.`,
    expected: 'iec_class in the catalogue',
    hint: 'Ask the maker of the part.',
    who: 'maker',
  } satisfies MessageEntry<{ at: string; part: string }>,
  leadThin: {
    code: 'choose/lead-thin',
    severity: 'confirm',
    title: 'The lead of a part as planned is thinner than the smallest earth lead',
    message: (p: { at: string; part: string; planned: string; least: string; source: string }) =>
      `The leads of ${p.part} at ${p.at} are planned with ${p.planned}; its earth lead takes at least ${p.least} (${p.source}).`,
    found: (p) => p.planned,
    expected: (p) => `${p.least} or more`,
    hint: 'Wire the earth lead that thick; state lead_gauge in the catalogue, if the part comes with it.',
    who: 'office',
  } satisfies MessageEntry<{ at: string; part: string; planned: string; least: string; source: string }>,
  faultCurrentUnknown: {
    code: 'choose/fault-current-unknown',
    severity: 'confirm',
    title: 'The fault current at a place is not stated',
    message: (p: { at: string; because: string; part: string; holds: string; who: Who }) =>
      `At ${p.at} ${p.because}: ${p.part} ${p.holds}.`,
    expected: 'the available fault current',
    hint: (p) => `Ask the ${p.who === 'utility' ? 'utility' : 'maker of the source'}, and compare.`,
    who: (p) => p.who,
  } satisfies MessageEntry<{ at: string; because: string; part: string; holds: string; who: Who }>,
} as const;
