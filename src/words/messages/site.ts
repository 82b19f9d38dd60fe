import { SITE_MESSAGES } from '../../model/messages/site.js';
import type { FileLine } from '../../model/fact.js';
import { lineOf } from '../lines.js';
import { says } from '../message-kit.js';

/** `SVC-1 (line 3)`. */
const withLine = ({ tag, line }: { readonly tag: string; readonly line: FileLine }): string =>
  `${tag} (${lineOf(line)})`;

/** `A (line 3) to B, B (line 4) to A`. */
const circle = (
  connections: readonly { readonly tag: string; readonly line: FileLine; readonly to: string }[],
): string => connections.map((one) => `${withLine(one)} to ${one.to}`).join(', ');

/** `ARR-1 (negative) and ARR-2 (positive)`. */
const grounded = (rows: readonly { readonly tag: string; readonly grounding: string }[]): string =>
  rows.map(({ tag, grounding }) => `${tag} (${grounding})`).join(' and ');

/** Words of the messages of model/messages/site.ts. */
export const SITE_WORDS = [
  says(SITE_MESSAGES.tagTwice, {
    title: 'Two rows have one tag',
    message: (p) => {
      const lines = [p.first, p.second];
      const both = lines.map((one) => lineOf(one, lines)).join(' and ');
      return `Two rows have the tag ${p.tag}: ${both}; the second is left out.`;
    },
    found: (p) => p.tag,
    expected: 'a tag that no other row of the job has',
    hint: 'Give one of the rows another tag.',
  }),
  says(SITE_MESSAGES.madeTagTyped, {
    title: 'A tag made by a quantity is typed as well',
    message: (p) =>
      `The tag ${p.tag} stands on ${lineOf(p.typed, [p.made])}, and the quantity of ${p.group} on ${lineOf(p.made, [p.typed])} makes it too; the made one is left out.`,
    found: (p) => p.tag,
    expected: 'tags that differ from those that a quantity makes',
    hint: 'Rename the row, or lower the quantity.',
  }),
  says(SITE_MESSAGES.connectionToNothing, {
    title: 'A row connects to a tag that is not on the list',
    message: (p) => `${p.tag} connects to ${p.to}, which is not on the list.`,
    found: (p) => p.to,
    expected: 'the tag of another row of the same job',
    hint: 'Correct connects_to, or add the row that it names.',
  }),
  says(SITE_MESSAGES.connectionTwice, {
    title: 'A row names another twice',
    message: (p) => `${p.tag} connects to ${p.to} twice: each is taken as a cable of its own.`,
    found: (p) => p.to,
    expected: 'each row or input once',
    hint: 'Correct connects_to, or leave the second out; of several cables state the longest.',
  }),
  says(SITE_MESSAGES.connectionToItself, {
    title: 'A row connects to itself',
    message: (p) => `${p.tag} connects to itself.`,
    found: (p) => p.tag,
    expected: 'the tag of another row of the same job',
    hint: 'Correct connects_to.',
  }),
  says(SITE_MESSAGES.circle, {
    title: 'Connections run in a circle',
    message: (p) =>
      `Connections run in a circle: ${circle(p.connections)}; none of them is used until that is mended.`,
    found: (p) => circle(p.connections),
    expected: 'connections that end at a service, a generator, an inverter or a battery',
    hint: 'State each connection on one of its two rows only.',
  }),
  says(SITE_MESSAGES.senseless, {
    title: 'A connection makes no sense',
    message: (p) =>
      `${p.tag} (${p.kind}, ${lineOf(p.line)}) connects to ${p.to} (${p.toKind}, ${lineOf(p.toLine)}), which such equipment doesn’t do.`,
    found: (p) => `${p.kind} to ${p.toKind}`,
    expected: 'a connection between equipment that feeds and equipment that is fed',
    hint: 'Correct connects_to, or the kind of one of the two rows.',
  }),
  says(SITE_MESSAGES.groupUnclear, {
    title: 'A connection to a group does not say which member',
    message: (p) =>
      `${p.tag} (${p.count} of it) connects to ${p.to}, of which there are ${p.toCount}: it isn’t said which goes to which.`,
    found: (p) => p.to,
    expected: 'one target, or as many targets as sources',
    hint: 'Name the member, such as TAG-1, or write a row for each.',
  }),
  says(SITE_MESSAGES.sourceUnconnected, {
    title: 'A source connects to nothing',
    message: (p) => `${p.tag} (${p.kind}) connects to nothing: what it feeds isn’t stated.`,
    expected: 'the tag of the converter or combiner that it feeds',
    hint: 'Fill in connects_to.',
  }),
  says(SITE_MESSAGES.twoServices, {
    title: 'Two services meet without a transfer switch between',
    message: (p) =>
      `${withLine(p)} is fed by ${p.services.map(withLine).join(' and ')} and no transfer switch stands between.`,
    found: (p) => p.services.map(withLine).join(' and '),
    expected: 'one service, or a row of kind transfer-switch between',
    hint: 'Add the transfer switch, or correct connects_to.',
  }),
  says(SITE_MESSAGES.twoOnAcIn, {
    title: 'Two supplies name one AC input',
    message: (p) =>
      `${p.feeds.join(' and ')} feed the AC input of ${p.tag}: how they are kept apart isn’t on the list.`,
    found: (p) => p.feeds.join(' and '),
    expected: 'ac_in_2, or a row of kind transfer-switch',
    hint: 'State ac_in_2, or add the transfer switch.',
  }),
  says(SITE_MESSAGES.inputNumberTooHigh, {
    title: 'A connection names an input that the converter does not have',
    message: (p) =>
      `${p.tag} connects to ${p.to}, but that converter has ${p.inputs} DC input${p.inputs === 1 ? '' : 's'} by the list.`,
    found: (p) => p.to,
    expected: 'an input number within dc_inputs',
    hint: 'Correct connects_to or dc_inputs.',
  }),
  says(SITE_MESSAGES.dcInputsMissing, {
    title: 'The number of DC inputs is not stated',
    message: (p) =>
      `The number of independent DC inputs of ${p.tag} isn’t stated: each of them needs a protector.`,
    expected: 'the number of independent DC inputs',
    hint: 'Fill in dc_inputs, on the list or in the equipment library.',
  }),
  says(SITE_MESSAGES.dcInputsDefault, {
    title: 'A charge controller is taken to have one DC input',
    message: (p) => `dc_inputs of ${p.tag} isn’t stated: taken as 1.`,
    expected: 'the number of independent DC inputs',
    hint: 'Check it against the controller, and state it.',
  }),
  says(SITE_MESSAGES.dcInputsNamed, {
    title: 'A converter is taken to have as many DC inputs as connections name',
    message: (p) =>
      `dc_inputs of ${p.tag} isn’t stated: taken as ${p.inputs}, the highest input that a connection names.`,
    expected: 'the number of independent DC inputs',
    hint: 'Check it against the converter: each further input that is fed needs a protector.',
  }),
  says(SITE_MESSAGES.unusedInUse, {
    title: 'A port that is said to be unused has a connection',
    message: (p) =>
      `${p.port} of ${p.tag} is said to be unused, but ${p.others.join(' and ')} connects there.`,
    found: () => 'unused',
    expected: 'the AC system of the port, or no connection to it',
    hint: 'State the AC system of the port, or correct connects_to.',
  }),
  says(SITE_MESSAGES.combinerUnfed, {
    title: 'No source on the list feeds a combiner',
    message: (p) =>
      `No source on the list connects to ${p.tag}: the draft takes what its converter bears, which is no bound, since a design may break it.`,
    expected: 'the arrays that feed it',
    hint: 'Add the arrays, or name the combiner in their connects_to.',
  }),
  says(SITE_MESSAGES.inputsByOrder, {
    title: 'Sources are given to inputs in order of their tags',
    message: (p) =>
      `${p.sources.join(', ')}: given to the inputs of ${p.tag} in this order, since the list doesn’t name the inputs; each of these inputs is rated at the highest of their voltages.`,
    found: (p) => p.sources.join(', '),
    expected: 'TAG/1, TAG/2 in connects_to',
    hint: 'Name the inputs in connects_to.',
  }),
  says(SITE_MESSAGES.inputsUnclear, {
    title: 'Which source goes to which input is not stated',
    message: (p) =>
      `${p.sources.join(', ')} connect to ${p.tag}, which has ${p.inputs} DC inputs: it isn’t said which goes where.`,
    found: (p) => p.sources.join(', '),
    expected: 'TAG/1, TAG/2 or TAG/1+2 in connects_to',
    hint: 'Name the inputs in connects_to.',
  }),
  says(SITE_MESSAGES.inputsAssumedFed, {
    title: 'No source on the list names a converter',
    message: (p) =>
      `No source on the list connects to ${p.tag}: all its DC inputs count as fed, rated by max_dc_voltage.`,
    expected: 'the array, combiner or turbine that feeds it',
    hint: 'Add the source, or confirm.',
  }),
  says(SITE_MESSAGES.sourcesInParallel, {
    title: 'Two sources share one input',
    message: (p) =>
      `${p.sources.join(', ')} share ${p.input} of ${p.tag}: taken as in parallel, the highest voltage counts.`,
    found: (p) => p.sources.join(', '),
    expected: 'one source an input',
    hint: 'Confirm that they are in parallel.',
  }),
  says(SITE_MESSAGES.mixedSources, {
    title: 'AC and DC sources share one input',
    message: (p) =>
      `${p.sources.join(', ')} share ${p.port} of ${p.tag}, but one gives alternating and one direct current.`,
    found: (p) => p.sources.join(', '),
    expected: 'sources of one kind of current on an input',
    hint: 'Correct connects_to, or the output of the turbine.',
  }),
  says(SITE_MESSAGES.groundingDiffers, {
    title: 'What shares its conductors is grounded differently',
    message: (p) =>
      `${grounded(p.rows)} share the conductors of ${p.port} of ${p.tag}, and the list grounds them differently.`,
    found: (p) => grounded(p.rows),
    expected: 'one dc_grounding for all that shares its conductors',
    hint: 'Correct dc_grounding, or connects_to.',
  }),
  says(SITE_MESSAGES.kindMissing, {
    title: 'A row has no kind',
    message: (p) => `The kind of ${p.tag} isn’t stated: nothing can be decided about it.`,
    expected: 'the kind of equipment',
    hint: 'Fill in kind on the list or in the equipment library.',
  }),
  says(SITE_MESSAGES.bipolar, {
    title: 'A bipolar array is out of scope',
    message: (p) => `${p.tag} is described as bipolar: shuntbook doesn’t plan bipolar arrays.`,
    found: () => 'bipolar',
    expected: 'a two-wire array',
    hint: 'Have this array planned by hand.',
  }),
  says(SITE_MESSAGES.variableSpeedDrive, {
    title: 'The output of a variable-speed drive is out of scope',
    message: (p) =>
      `${p.tag} is described as a variable-speed drive: shuntbook doesn’t plan the AC output of one.`,
    found: () => 'variable-speed drive',
    expected: 'equipment on a system of fixed frequency',
    hint: 'Have the output of this drive planned by hand.',
  }),
  says(SITE_MESSAGES.microinverters, {
    title: 'Many grid-tie inverters of one module',
    message: (p) =>
      `${p.tag} is ${p.quantity} grid-tie inverters with one module in series each: are these microinverters?`,
    found: (p) => String(p.quantity),
    expected: 'kind ac-module-branch, one row a trunk, for microinverters',
    hint: 'Change the kind if they are; else confirm.',
  }),
  says(SITE_MESSAGES.bondUnknown, {
    title: 'A site without a service: where is the neutral bonded?',
    message: () => 'No utility service is on the list: where the neutral is bonded to ground isn’t known.',
    expected: 'n_pe_link yes on the row that bonds the neutral to ground',
    hint: 'Confirm the place of the bond with the installer, and state n_pe_link.',
  }),
];
