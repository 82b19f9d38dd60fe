import { NETWORK_MESSAGES } from '../../model/messages/network.js';
import { lineOf } from '../lines.js';
import { says } from '../message-kit.js';

/** `A, B and C`. */
const listed = (tags: readonly string[]): string =>
  tags.length < 2 ? tags.join('') : `${tags.slice(0, -1).join(', ')} and ${tags.at(-1) ?? ''}`;

const lacking = (lacks: 'supply' | 'load' | 'both'): string =>
  lacks === 'both'
    ? 'is fed by nothing and feeds nothing'
    : lacks === 'load'
      ? 'feeds nothing'
      : 'is fed by nothing';

const INSTEAD = {
  converter:
    'List the rectifier or controller that stands between as a row of its own, and connect the turbine to it.',
  'ac-battery': 'List a battery with its own AC terminals as ac-battery.',
} as const;

/** Words of the messages of model/messages/network.ts. */
export const NETWORK_WORDS = [
  says(NETWORK_MESSAGES.passUnconnected, {
    title: 'A disconnect or transfer switch stands in no run',
    message: (p) => `${p.tag} (${p.kind}) ${lacking(p.lacks)} on the list.`,
    found: (p) => p.tag,
    expected: 'what feeds it, and what it feeds',
    hint: 'State connects_to on it, or name it in connects_to of the row beside it.',
  }),
  says(NETWORK_MESSAGES.passUnclear, {
    title: 'Which of the rows at a disconnect feeds which is not stated',
    message: (p) => `${listed(p.ends)} meet at ${p.tag}: which of them feeds which isn’t known.`,
    found: (p) => listed(p.ends),
    expected: 'connects_to of what is fed, towards what feeds it',
    hint: 'State connects_to on the disconnect: it names what feeds it.',
  }),
  says(NETWORK_MESSAGES.serviceEquipment, {
    title: 'Which is the service equipment is not stated',
    message: (p) =>
      `${listed(p.through)} ${p.through.length === 1 ? 'stands' : 'stand'} between ${p.service} and ${p.panel}: which is the service equipment, where N is bonded? Taken as ${p.service}.`,
    found: (p) => listed(p.through),
    expected: 'the place of the main bonding jumper',
    hint: 'Confirm that N is bonded at the service as listed.',
  }),
  says(NETWORK_MESSAGES.listedOtherwise, {
    title: 'A connection is listed otherwise',
    message: (p) =>
      `${p.tag} (${p.kind}, ${lineOf(p.line)}) connects straight to ${p.to} (${p.toKind}, ${lineOf(p.toLine)}): something stands between, or one of the two is of another kind.`,
    found: (p) => `${p.kind} to ${p.toKind}`,
    expected: (p) => (p.instead === 'ac-battery' ? 'the kind ac-battery' : 'the row between the two'),
    hint: (p) => INSTEAD[p.instead],
  }),
  says(NETWORK_MESSAGES.unplanned, {
    title: 'A connection that shuntbook does not plan',
    message: (p) =>
      `${p.tag} (${p.kind}, ${lineOf(p.line)}) connects to ${p.to} (${p.toKind}, ${lineOf(p.toLine)}): the trade makes such a connection, and shuntbook doesn’t plan it.`,
    found: (p) => `${p.kind} to ${p.toKind}`,
    expected: 'a connection that is planned',
    hint: 'Have this connection planned by hand, or list what each of the two is joined to.',
  }),
  says(NETWORK_MESSAGES.transformerSystem, {
    title: 'The system of a side of a transformer is not stated',
    message: (p) =>
      `The AC system of ${p.port} of ${p.tag} isn’t stated: a transformer states both its sides.`,
    expected: 'an AC system',
    hint: 'Fill in ac_in and ac_out.',
  }),
  says(NETWORK_MESSAGES.separatelyDerived, {
    title: 'A transformer is taken to make a system of its own',
    message: (p) => `Is what ${p.tag} feeds separately derived? Taken as so: isolated isn’t stated.`,
    expected: 'yes, or no of an autotransformer',
    hint: 'State isolated.',
  }),
  says(NETWORK_MESSAGES.transformerGrounding, {
    title: 'The grounding behind a transformer is taken',
    message: (p) => `system_grounding behind ${p.tag} isn’t stated: taken as ${p.grounding}.`,
    expected: 'solid, none, corner or impedance',
    hint: 'State system_grounding of the transformer.',
  }),
  says(NETWORK_MESSAGES.systemsDisagree, {
    title: 'What feeds does not hold what is fed',
    message: (p) =>
      `${p.from} gives ${p.fromSystem} (${lineOf(p.lines[0] ?? { file: '', line: 0 }, p.lines)}) and ${p.to} takes ${p.toSystem} (${lineOf(p.lines[1] ?? { file: '', line: 0 }, p.lines)}): one can’t come from the other without a transformer. Both ends are rated by the higher of the two.`,
    found: (p) => `${p.fromSystem} to ${p.toSystem}`,
    expected: 'one AC system, or a part of it, or a row of kind transformer between',
    hint: 'Correct one of the two systems, or add the transformer.',
  }),
  says(NETWORK_MESSAGES.oneSource, {
    title: 'One 120 V source feeds a 120/240 V panel',
    message: (p) =>
      `${p.source} alone feeds ${p.at} with 120 V: no multiwire circuits and no 240 V loads there (NEC 710.15(C), value from memory).`,
    found: () => '120',
    expected: 'a panel without multiwire circuits and 240 V loads',
    hint: 'Confirm.',
  }),
  says(NETWORK_MESSAGES.whichLines, {
    title: 'Which two lines of a high-leg system are taken is not stated',
    message: (p) =>
      `${p.tag} takes two lines of the high-leg system of ${p.from}: which two isn’t stated, so the high leg is reckoned with.`,
    found: () => '240',
    expected: 'the two lines',
    hint: 'Confirm which two lines it takes.',
  }),
  says(NETWORK_MESSAGES.cornerLine, {
    title: 'Which two lines of a corner-grounded system are taken is not stated',
    message: (p) =>
      `${p.tag} takes two lines of a corner-grounded ${p.whole}: which two isn’t stated. They are planned as L1 and the grounded L2, which has no overcurrent device.`,
    found: (p) => p.system,
    expected: 'the two lines',
    hint: 'Confirm that one of them is the grounded one; where neither is, each takes a pole of the device.',
  }),
  says(NETWORK_MESSAGES.dcNominals, {
    title: 'Nominal voltages on one DC bus differ',
    message: (p) =>
      `${p.rows.map(({ tag, volts }) => `${tag} (${volts} V)`).join(' and ')} are on one DC bus, and their nominal voltages differ.`,
    found: (p) => p.rows.map(({ volts }) => `${volts} V`).join(', '),
    expected: 'one nominal voltage on a bus',
    hint: 'Correct battery_voltage or connects_to, or list the converter between.',
  }),
  says(NETWORK_MESSAGES.transferMissing, {
    title: 'Transfer equipment is not on the list',
    message: (p) =>
      `${p.tag} and ${listed(p.others)} can feed the same conductors, and no transfer equipment or interlock stands between (NEC 702.5).`,
    found: (p) => listed(p.others),
    expected: 'a row of kind transfer-switch between, or parallel yes where they are meant to run together',
    hint: 'Add the transfer equipment or interlock, or state parallel.',
  }),
  says(NETWORK_MESSAGES.inParallel, {
    title: 'Sources are meant to run in parallel',
    message: (p) => `${p.tag} and ${listed(p.others)} are stated to run in parallel (NEC 705).`,
    found: (p) => listed(p.others),
    expected: 'sources made to run together',
    hint: 'Confirm that they are made for it.',
  }),
  says(NETWORK_MESSAGES.otherInTheWay, {
    title: 'The kind of a row that stands in a run is not stated',
    message: (p) =>
      `${p.tag} is of kind other, and ${listed(p.ends)} ${p.ends.length === 1 ? 'hangs' : 'hang'} on it: the run through it can’t be told.`,
    found: () => 'other',
    expected: 'its kind: disconnect, transfer-switch, combiner, transformer, panel ...',
    hint: 'State its kind.',
  }),
  says(NETWORK_MESSAGES.driveSupply, {
    title: 'What feeds a pump drive is not stated',
    message: (p) => `Nothing on the list feeds ${p.tag}: neither an array nor an AC supply.`,
    expected: 'an array that names it, or connects_to its AC supply',
    hint: 'Fill in connects_to.',
  }),
];
