import { NETWORK_MESSAGES } from '../../model/messages/network.js';
import { PLACE_MESSAGES } from '../../model/messages/place.js';
import { ROW_MESSAGES } from '../../model/messages/rows.js';
import { SITE_MESSAGES } from '../../model/messages/site.js';
import { isNec } from '../../model/editions.js';
import { list } from '../figures.js';
import { portInWords } from '../port-words.js';
import { tagList } from '../tag-list.js';
import { assumed, ofOffice } from './assumption-kit.js';

const tagOf = ({ tag }: { readonly tag: string }): readonly string[] => [tag];

const GROUNDINGS = {
  solid: 'solidly grounded',
  none: 'ungrounded',
  corner: 'corner-grounded',
  impedance: 'impedance-grounded',
} as const;
const EARTHINGS = {
  solid: 'directly earthed',
  none: 'unearthed',
  corner: 'corner-earthed',
  impedance: 'impedance-earthed',
} as const;

/** What is taken for granted of the site and of where protectors go. */
export const SITE_ASSUMPTIONS = [
  assumed(PLACE_MESSAGES.feedUnknown, {
    decides: 'what feeds it',
    says: ({ port }) => `Supply of the ${portInWords(port)} not known: find every source before work starts`,
    tags: tagOf,
  }),
  assumed(SITE_MESSAGES.inputsAssumedFed, {
    decides: 'what feeds it',
    says: 'No source of the DC inputs known: each counts as fed, at the most that the converter bears',
    tags: tagOf,
  }),
  assumed(NETWORK_MESSAGES.inParallel, {
    decides: 'what feeds it',
    says: 'Sources made to run in parallel',
    tags: ({ tag, others }) => [tag, ...others],
  }),
  assumed(SITE_MESSAGES.twoOnAcIn, {
    decides: 'what feeds it',
    says: ({ feeds }) => `${list(feeds)} kept apart by transfer equipment ahead of one AC input`,
    tags: tagOf,
  }),
  assumed(NETWORK_MESSAGES.oneSource, {
    decides: 'what feeds it',
    says: ({ source }) => `Fed by one 120 V source, ${source}: no multiwire circuits, no 240 V loads`,
    tags: ({ at }) => [at],
  }),
  assumed(PLACE_MESSAGES.signalLine, {
    decides: 'the rest',
    says: 'Data, telephone and antenna lines protected by others',
    tags: tagOf,
  }),
  assumed(PLACE_MESSAGES.otherKind, {
    decides: 'the rest',
    says: ({ circuits }) =>
      circuits.length === 0
        ? 'Equipment of another kind, not looked at'
        : 'Equipment of another kind: not looked at but for the control circuit that ends there',
    tags: tagOf,
  }),
  assumed(PLACE_MESSAGES.driveOutput, {
    decides: 'the rest',
    says: 'Output of the drive and its motor cable: filter or protector by the maker of the drive',
    tags: tagOf,
  }),
  assumed(SITE_MESSAGES.variableSpeedDrive, {
    decides: 'the rest',
    says: 'Output of the variable-speed drive: by others',
    tags: tagOf,
  }),
  assumed(PLACE_MESSAGES.controlOtherEnd, {
    decides: 'the rest',
    says: ({ placed }) =>
      placed
        ? 'Other end of the control circuit not known: protector at this end only'
        : 'Other end of the control circuit not known: taken as inside the building, no protector',
    tags: tagOf,
  }),
  assumed(PLACE_MESSAGES.subPanel, {
    decides: 'whether a clause asks',
    says: ({ main }) =>
      `Sub-panel of ${main}: a second protector under 215.18, unless the office reads it otherwise`,
    tags: tagOf,
  }),
  assumed(PLACE_MESSAGES.serviceOfUnitElsewhere, {
    decides: 'whether a clause asks',
    says: ({ units }) =>
      `Protector at the service recommended, not required by 230.67: it feeds a dwelling or sleeping unit only through ${tagList(units)}, in another building`,
    tags: tagOf,
  }),
  assumed(PLACE_MESSAGES.nothingWorth, {
    decides: 'whether a clause asks',
    says: 'Protector kept where the code requires it, though nothing there is said to be worth protecting',
    tags: tagOf,
  }),
  assumed(PLACE_MESSAGES.cannotWaive, {
    decides: 'whether a clause asks',
    says: 'Protector kept where the code requires it, against the wish for none',
    tags: tagOf,
  }),
  assumed(PLACE_MESSAGES.waivedByException, {
    decides: 'whether a clause asks',
    says: 'No protector at the service, by the exception of 230.67(B): each next panel has one, and all panels are shown',
    tags: tagOf,
  }),
  assumed(PLACE_MESSAGES.servicePlaceUnknown, {
    decides: 'whether a clause asks',
    says: 'Panel not at the service equipment: length of its feeder not stated',
    tags: tagOf,
  }),
  assumed(PLACE_MESSAGES.windWithoutAc, {
    decides: 'whether a clause asks',
    says: 'No AC equipment between the wind system and the loads (694.7(D))',
    tags: tagOf,
  }),
  assumed(PLACE_MESSAGES.buildingDefault, {
    decides: 'whether a clause asks',
    says: ({ tag, other }) => `${tag} and ${other} stand in different buildings`,
  }),
  assumed(PLACE_MESSAGES.basisDefault, {
    decides: 'whether a clause asks',
    says: ({ basis }) =>
      isNec(basis) ? `Code in force: NEC ${basis.slice('nec-'.length)}` : 'Standards in force: IEC 60364',
    fact: ({ basis }) => ({ field: 'basis', value: basis }),
  }),
  assumed(PLACE_MESSAGES.riskUnknown, {
    decides: 'whether a clause asks',
    says: 'Risk level not worked out, as the flash density is not known: protector at the service recommended',
    tags: tagOf,
  }),
  assumed(PLACE_MESSAGES.criticalLengthUnknown, {
    decides: 'whether a clause asks',
    says: 'Critical length not compared, as the flash density is not known: DC protectors recommended',
  }),
  assumed(PLACE_MESSAGES.arraysLengthUnknown, {
    decides: 'whether a clause asks',
    says: 'Length of the DC runs not known: not compared with the critical length',
    tags: tagOf,
  }),
  ofOffice(PLACE_MESSAGES.passesThrough),
  assumed(SITE_MESSAGES.dcInputsDefault, {
    decides: 'whether it protects',
    says: 'One DC input; each further input that is fed needs a protector',
    tags: tagOf,
    fact: () => ({ field: 'dc_inputs', value: '1' }),
  }),
  assumed(SITE_MESSAGES.dcInputsNamed, {
    decides: 'whether it protects',
    says: ({ inputs }) =>
      `${String(inputs)} DC input${inputs === 1 ? '' : 's'}; each further input that is fed needs a protector`,
    tags: tagOf,
    fact: ({ inputs }) => ({ field: 'dc_inputs', value: String(inputs) }),
  }),
  assumed(SITE_MESSAGES.inputsByOrder, {
    decides: 'a voltage',
    says: ({ sources }) =>
      `${list(sources)} on the DC inputs in this order; each rated for the highest of them`,
    tags: tagOf,
  }),
  assumed(SITE_MESSAGES.sourcesInParallel, {
    decides: 'a voltage',
    says: ({ sources, input }) => `${list(sources)} in parallel on ${portInWords(input)}`,
    tags: tagOf,
  }),
  assumed(SITE_MESSAGES.microinverters, {
    decides: 'whether it protects',
    says: 'Inverters of one module each, with DC inputs of their own: no microinverters',
    tags: tagOf,
  }),
  assumed(SITE_MESSAGES.bondUnknown, {
    decides: 'a voltage',
    says: 'No utility service: neutral bonded to ground once, at a place not known',
    underIec: () => 'No utility service: neutral bonded to earth once, at a place not known',
  }),
  assumed(NETWORK_MESSAGES.serviceEquipment, {
    decides: 'a voltage',
    says: ({ service }) => `Neutral bonded at ${service}, the service equipment`,
    tags: ({ through }) => through,
  }),
  assumed(NETWORK_MESSAGES.separatelyDerived, {
    decides: 'a voltage',
    says: 'Separately derived system behind the transformer',
    tags: tagOf,
    fact: () => ({ field: 'isolated', value: 'yes' }),
  }),
  assumed(NETWORK_MESSAGES.transformerGrounding, {
    decides: 'a voltage',
    says: ({ grounding }) => `System behind the transformer ${GROUNDINGS[grounding]}`,
    underIec: ({ grounding }) => `System behind the transformer ${EARTHINGS[grounding]}`,
    tags: tagOf,
    fact: ({ grounding }) => ({ field: 'system_grounding', value: grounding }),
  }),
  assumed(NETWORK_MESSAGES.whichLines, {
    decides: 'a voltage',
    says: ({ from }) => `Two lines of the high-leg system of ${from}, the high leg among them`,
    tags: tagOf,
  }),
  assumed(NETWORK_MESSAGES.cornerLine, {
    decides: 'a device',
    says: ({ whole }) => `Two lines of a corner-grounded ${whole}, the grounded one (L2) among them`,
    underIec: ({ whole }) => `Two lines of a corner-earthed ${whole}, the earthed one (L2) among them`,
    tags: tagOf,
  }),
  assumed(ROW_MESSAGES.stringsLongest, {
    decides: 'a voltage',
    says: 'Strings with runs of several lengths: the longest counts',
    tags: tagOf,
  }),
];
