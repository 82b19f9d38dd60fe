import { FIELDS } from '../../model/fields.js';
import { PLACE_MESSAGES } from '../../model/messages/place.js';
import type { PortClass } from '../../model/words.js';
import type { Reason } from '../../model/reason.js';
import { firstNamed, list, quantity } from '../figures.js';
import { say } from '../reasons/say.js';
import { says } from '../message-kit.js';

/** The rows that a default stands in for; none: the job itself. */
function namedRows({ rows }: { readonly rows: readonly string[] }): string {
  if (rows.length === 0) return '';
  const { named, more } = firstNamed(rows);
  return ` for ${named.join(', ')}${more === '' ? '' : ` and ${more}`}`;
}

/** What stands in for a fact, and what that decides. */
function takenAs({ value, why }: { readonly value: string | Reason; readonly why: Reason | null }): string {
  return `taken as ${typeof value === 'string' ? value : say(value)}${why === null ? '' : `, which ${say(why)}`}`;
}

/** The AC inputs of what has several, named beside its tag. */
const AC_PORT_WORDS: { readonly [C in PortClass]?: string } = {
  'ac-in': ' at its AC input',
  'ac-in-2': ' at its second AC input',
};

/** Words of the messages of model/messages/place.ts. */
export const PLACE_WORDS = [
  says(PLACE_MESSAGES.runLength, {
    title: 'The length of a run outdoors or between buildings is not stated',
    message: (p) =>
      `The run between ${p.from} and ${p.to} leaves the building, and its length isn’t stated (row ${p.row}).`,
    expected: 'a length, such as 100 ft or 30 m',
    hint: 'Fill in run_length.',
    shared: {
      fact: 'The length of a run that leaves the building isn’t stated.',
      about: (p) => [`${p.from} to ${p.to}`],
    },
  }),
  says(PLACE_MESSAGES.defaultsUsed, {
    title: 'A default stands in for a fact that the list does not state',
    message: (p) => `${p.field} isn’t stated${namedRows(p)}: ${takenAs(p)}.`,
    expected: (p) => `${p.field} on the list`,
    hint: 'State it, or confirm.',
    shared: {
      fact: (p) => `${p.field} isn’t stated: ${takenAs(p)}.`,
      about: ({ rows }) => {
        const { named, more } = firstNamed(rows);
        return more === '' ? named : [...named, more];
      },
    },
  }),
  says(PLACE_MESSAGES.placeUnknown, {
    title: 'A place that decides a placement is not stated',
    message: (p) =>
      `The place of ${p.tag} isn’t stated, nor that of what it connects to: whether it is in the same place or building as the other end decides what is protected. Planned as if it weren’t.`,
    expected: 'BUILDING / ROOM, or one of them',
    hint: 'Fill in place.',
  }),
  says(PLACE_MESSAGES.basisDefault, {
    title: 'The basis is not stated',
    message: (p) => `The basis isn’t stated: planned under ${p.basis}.`,
    expected: FIELDS.basis.expected,
    hint: 'Ask the authority having jurisdiction which code cycle is in force, and state it.',
  }),
  says(PLACE_MESSAGES.buildingDefault, {
    title: 'A building that was read from a place decides a placement',
    message: (p) =>
      `The run between ${p.tag} and ${p.other} counts as between buildings because of their places; no building is stated.`,
    expected: 'building on both rows',
    hint: 'State building, or confirm.',
    shared: {
      fact: 'A run counts as between buildings because of the places at its ends; no building is stated.',
      about: (p) => [`${p.tag} to ${p.other}`],
    },
  }),
  says(PLACE_MESSAGES.subPanel, {
    title: 'A sub-panel of a dwelling whose main panel is protected',
    message: (p) =>
      `${p.tag} is fed by ${p.main} of the same unit: whether 215.18 asks for a second protector there differs between offices.`,
    expected: 'the reading of the authority having jurisdiction',
    hint: 'Ask the authority having jurisdiction.',
  }),
  says(PLACE_MESSAGES.serviceOfUnitElsewhere, {
    title: 'A service that feeds a dwelling through another building',
    message: (p) =>
      `230.67 is taken not to ask at ${p.tag}, whose own building holds no dwelling or sleeping unit; yet it feeds such a unit through ${list(p.units)}.`,
    expected: 'the reading of the authority having jurisdiction',
    hint: 'Ask the authority having jurisdiction whether 230.67 means this service.',
  }),
  says(PLACE_MESSAGES.feedUnknown, {
    title: 'What feeds a place is not on the list',
    message: (p) =>
      p.port === 'terminals'
        ? `What feeds ${p.tag}, where a control circuit ends, isn’t known from the list: whoever works there can’t know all that has to be opened.`
        : `What feeds ${p.tag}${AC_PORT_WORDS[p.port] ?? ''} isn’t on the list: whoever works there can’t know all that has to be opened, nor can a rule about feeders ask for a protector.`,
    expected: (p) =>
      p.port === 'terminals'
        ? 'a kind, such as load, and connects_to on it or on what feeds it'
        : 'connects_to on it, or on what feeds it; unused in its AC cell where nothing is joined to it',
    hint: 'State what feeds it; find every source before anybody starts work there.',
    shared: {
      fact: (p) =>
        p.port === 'terminals'
          ? 'What feeds a place where a control circuit ends isn’t known from the list: whoever works there can’t know all that has to be opened.'
          : `What feeds equipment${AC_PORT_WORDS[p.port] ?? ''} isn’t on the list: whoever works there can’t know all that has to be opened, nor can a rule about feeders ask for a protector.`,
      about: (p) => [p.tag],
    },
  }),
  says(PLACE_MESSAGES.servicePlaceUnknown, {
    title: 'It is not known whether a panel stands at the service',
    message: (p) =>
      `The run from the service to ${p.tag} has no length on the list: the panel counts as a place of its own.`,
    expected: 'run_length on the panel',
    hint: 'State run_length; a panel right at the service shares its protector.',
  }),
  says(PLACE_MESSAGES.nothingWorth, {
    title: 'A code asks for a protector where the list sees nothing worth protecting',
    message: (p) =>
      `${p.tag} is said to hold nothing worth protecting, yet ${p.rules.join(' and ')} requires a protector there: it stays.`,
    found: () => 'no',
    expected: 'worth_protecting yes, or a decision of the authority having jurisdiction',
    hint: 'Correct the list, or ask the authority having jurisdiction.',
  }),
  says(PLACE_MESSAGES.cannotWaive, {
    title: 'The list waives a protector that a code requires',
    message: (p) =>
      `protect is "no" for ${p.tag}, yet ${p.rules.join(' and ')} requires a protector there: it stays.`,
    found: () => 'no',
    expected: 'protect yes or blank, or a decision of the authority having jurisdiction',
    hint: 'Correct the list, or ask the authority having jurisdiction.',
  }),
  says(PLACE_MESSAGES.waivedByException, {
    title: 'The protector of a service is left to the next panels',
    message: (p) =>
      `protect is "no" for ${p.tag}: left out under the exception of 230.67(B), since each next panel on the list has a protector.`,
    found: () => 'no',
    expected: 'a protector at each next level of distribution equipment',
    hint: 'Confirm that the list holds every panel that the service feeds.',
  }),
  says(PLACE_MESSAGES.noMainPort, {
    title: 'The list asks for a protector on equipment that can have none',
    message: (p) =>
      `protect is "yes" for ${p.tag}, but a ${p.kind} has no place for a power protector of its own.`,
    found: () => 'yes',
    expected: 'protect on the equipment at one end of it',
    hint: 'Move protect to that row.',
  }),
  says(PLACE_MESSAGES.passesThrough, {
    title: 'The list asks for protection, or waives it, at equipment that only passes a circuit through',
    message: (p) =>
      `${p.field} is "${p.value ? 'yes' : 'no'}" for ${p.tag}, but a ${p.kind} has no protector of its own: there is nothing to do.`,
    found: (p) => (p.value ? 'yes' : 'no'),
    expected: (p) => `${p.field} on the equipment at one end of the circuit`,
    hint: 'Move it to that row, or confirm.',
  }),
  says(PLACE_MESSAGES.driveOutput, {
    title: 'The output of a pump drive carries switched pulses',
    message: (p) =>
      `The output of ${p.tag} carries switched pulses, which a protector for a sine wave doesn’t bear: none is planned on the cable to its motor.`,
    expected: 'the word of the drive’s maker which filter or protector that cable may have',
    hint: 'Ask the maker of the drive.',
  }),
  says(PLACE_MESSAGES.askedAtMotor, {
    title: 'The list asks for a protector at the motor of a pump drive',
    message: (p) =>
      `protect is "yes" for ${p.tag}, but what ${p.drive} gives it are switched pulses, which a protector for a sine wave doesn’t bear.`,
    found: () => 'yes',
    expected: 'protect blank, and what the drive’s maker says of its cable',
    hint: 'Clear protect, and ask the maker of the drive.',
  }),
  says(PLACE_MESSAGES.mainPortUnused, {
    title: 'The list asks for a protector at a port that it says is unused',
    message: (p) =>
      `protect is "yes" for ${p.tag}, but each port at which it would stand is unused by the list.`,
    found: () => 'yes',
    expected: 'the AC system of the port, or protect blank',
    hint: 'State the AC system of the port, or clear protect.',
  }),
  says(PLACE_MESSAGES.signalLine, {
    title: 'A signal line needs protection of another kind',
    message: (p) =>
      `${p.tag} is a signal line: its protection is outside this plan (see IEEE C62.72 and the maker of what it serves).`,
    expected: 'protection planned by whoever designs the signal line',
    hint: 'Hand it to the designer of that line.',
  }),
  says(PLACE_MESSAGES.otherKind, {
    title: 'Equipment of kind other is outside every rule',
    message: (p) => {
      const but =
        p.circuits.length === 0 ? '' : `, but for the control circuits that end there: ${list(p.circuits)}`;
      return `${p.tag} is of kind other: no rule of shuntbook looks at it${but}.`;
    },
    expected: 'a kind that a rule knows, or a plan by hand',
    hint: 'Choose a kind, or have it planned by hand.',
    shared: {
      fact: 'Equipment is of kind other: no rule of shuntbook looks at it, but for control circuits that end there.',
      about: (p) => [p.tag],
    },
  }),
  says(PLACE_MESSAGES.controlOtherEnd, {
    title: 'The other end of a control circuit is not on the list',
    message: (p) =>
      p.placed
        ? `The other end of ${p.tag} isn’t named, so it has a protector at this end only.`
        : `The other end of ${p.tag} isn’t named: whether it leaves the building isn’t known, and it has no protector.`,
    expected: 'connects_to on the control circuit',
    hint: 'Name the equipment at its other end.',
  }),
  says(PLACE_MESSAGES.controlNotLow, {
    title: 'A control circuit is above low voltage',
    message: (p) =>
      `${p.tag} works at ${quantity(p.voltage)}, above the ${quantity(p.limit)} of a low-voltage control circuit.`,
    found: (p) => quantity(p.voltage),
    expected: 'a control circuit of low voltage, or another kind',
    hint: 'Correct control_voltage, or list it as a panel or a load.',
  }),
  says(PLACE_MESSAGES.cycleUndecided, {
    title: 'A code cycle that rules aren’t decided for',
    message: (p) =>
      `${p.count} rules or clauses of shuntbook aren’t decided for ${p.basis}: the plan isn’t to be relied on.`,
    found: (p) => p.basis,
    expected: 'a code cycle that every rule knows',
    hint: 'Take another shuntbook, or plan the job under the cycle that the permit office accepts instead.',
  }),
  says(PLACE_MESSAGES.undecided, {
    title: 'No rule says anything of a port',
    message: (p) =>
      `No rule says anything of the port ${p.port} of ${p.tag} under ${p.basis}: it has neither a protector nor a reason to have none.`,
    expected: 'a protector there, or the reason why none is needed',
    hint: 'Have this port planned by hand, and report the list as a fault of shuntbook.',
  }),
  says(PLACE_MESSAGES.windWithoutAc, {
    title: 'A turbine, and no AC equipment on the list',
    message: (p) =>
      `${p.tag} is a turbine, and no AC equipment is on the list that could carry the protector of 694.7(D).`,
    expected: 'the AC equipment between the wind system and the loads, if there is any',
    hint: 'Add it, or confirm that the site has none.',
  }),
  says(PLACE_MESSAGES.riskUnknown, {
    title: 'The calculated risk level cannot be computed',
    message: (p) =>
      `The flash density isn’t stated, or every line has a length of 0: the calculated risk level of the supply at ${p.tag} isn’t known.`,
    expected: 'flash_density or thunderstorm_days',
    hint: 'State one of them.',
  }),
  says(PLACE_MESSAGES.criticalLengthUnknown, {
    title: 'The length of array cables could not be compared with the critical length',
    message: () =>
      'The flash density isn’t stated, so the lengths of the cables of arrays aren’t compared with the critical length.',
    expected: 'flash_density or thunderstorm_days',
    hint: 'State one of them.',
  }),
  says(PLACE_MESSAGES.arraysLengthUnknown, {
    title: 'The length of the cables of the arrays on a converter is not known',
    message: (p) =>
      `A run of the arrays on ${p.tag} isn’t stated, so their length isn’t compared with the critical length.`,
    expected: 'run_length of each array and combiner',
    hint: 'State them.',
  }),
];
