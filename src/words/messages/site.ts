import type { MessageEntry } from '../message-kit.js';

/** Messages about how the rows of a job hang together. */
export const SITE_MESSAGES = {
  tagTwice: {
    code: 'site/tag-twice',
    severity: 'conflict',
    title: 'Two rows have one tag',
    message: (p: { tag: string; first: string; second: string }) =>
      `Two rows have the tag ${p.tag}: ${p.first} and ${p.second}; the second is left out.`,
    found: (p) => p.tag,
    expected: 'a tag that no other row of the job has',
    hint: 'Give one of the rows another tag.',
    who: 'designer',
  } satisfies MessageEntry<{ tag: string; first: string; second: string }>,
  madeTagTyped: {
    code: 'site/made-tag-typed',
    severity: 'conflict',
    title: 'A tag made by a quantity is typed as well',
    message: (p: { tag: string; group: string; typedLine: string; groupLine: string }) =>
      `The tag ${p.tag} stands on ${p.typedLine}, and the quantity of ${p.group} on ${p.groupLine} makes it too; the made one is left out.`,
    found: (p) => p.tag,
    expected: 'tags that differ from those that a quantity makes',
    hint: 'Rename the row, or lower the quantity.',
    who: 'designer',
  } satisfies MessageEntry<{ tag: string; group: string; typedLine: string; groupLine: string }>,
  connectionToNothing: {
    code: 'site/connection-to-nothing',
    severity: 'conflict',
    title: 'A row connects to a tag that is not on the list',
    message: (p: { tag: string; to: string }) => `${p.tag} connects to ${p.to}, which is not on the list.`,
    found: (p) => p.to,
    expected: 'the tag of another row of the same job',
    hint: 'Correct connects_to, or add the row that it names.',
    who: 'designer',
  } satisfies MessageEntry<{ tag: string; to: string }>,
  connectionToItself: {
    code: 'site/connection-to-itself',
    severity: 'conflict',
    title: 'A row connects to itself',
    message: (p: { tag: string }) => `${p.tag} connects to itself.`,
    found: (p) => p.tag,
    expected: 'the tag of another row of the same job',
    hint: 'Correct connects_to.',
    who: 'designer',
  } satisfies MessageEntry<{ tag: string }>,
  circle: {
    code: 'site/circle',
    severity: 'conflict',
    title: 'Connections run in a circle',
    message: (p: { members: string }) =>
      `Connections run in a circle: ${p.members}; none of them is used until that is mended.`,
    found: (p) => p.members,
    expected: 'connections that end at a service, a generator, an inverter or a battery',
    hint: 'State each connection on one of its two rows only.',
    who: 'designer',
  } satisfies MessageEntry<{ members: string }>,
  senseless: {
    code: 'site/senseless-connection',
    severity: 'conflict',
    title: 'A connection makes no sense',
    message: (p: { tag: string; kind: string; line: number; to: string; toKind: string; toLine: number }) =>
      `${p.tag} (${p.kind}, line ${p.line}) connects to ${p.to} (${p.toKind}, line ${p.toLine}), which such equipment doesn't do.`,
    found: (p) => `${p.kind} to ${p.toKind}`,
    expected: 'a connection between equipment that feeds and equipment that is fed',
    hint: 'Correct connects_to, or the kind of one of the two rows.',
    who: 'designer',
  } satisfies MessageEntry<{
    tag: string;
    kind: string;
    line: number;
    to: string;
    toKind: string;
    toLine: number;
  }>,
  groupUnclear: {
    code: 'site/group-unclear',
    severity: 'missing',
    title: 'A connection to a group does not say which member',
    message: (p: { tag: string; count: number; to: string; toCount: number }) =>
      `${p.tag} (${p.count} of it) connects to ${p.to}, of which there are ${p.toCount}: it isn't said which goes to which.`,
    found: (p) => p.to,
    expected: 'one target, or as many targets as sources',
    hint: 'Name the member, such as TAG-1, or write a row for each.',
    who: 'designer',
  } satisfies MessageEntry<{ tag: string; count: number; to: string; toCount: number }>,
  sourceUnconnected: {
    code: 'fact/connects-to',
    severity: 'missing',
    title: 'A source connects to nothing',
    message: (p: { tag: string; kind: string }) =>
      `${p.tag} (${p.kind}) connects to nothing: what it feeds isn't stated.`,
    expected: 'the tag of the converter or combiner that it feeds',
    hint: 'Fill in connects_to.',
    who: 'designer',
  } satisfies MessageEntry<{ tag: string; kind: string }>,
  twoServices: {
    code: 'site/two-services',
    severity: 'conflict',
    title: 'A panel is fed by two services without a transfer switch',
    message: (p: { tag: string; services: string }) =>
      `${p.tag} is fed by ${p.services} and no transfer switch stands between.`,
    found: (p) => p.services,
    expected: 'one service, or a row of kind transfer-switch between',
    hint: 'Add the transfer switch, or correct connects_to.',
    who: 'designer',
  } satisfies MessageEntry<{ tag: string; services: string }>,
  twoOnAcIn: {
    code: 'site/two-feeds-on-one-ac-input',
    severity: 'confirm',
    title: 'Two supplies name one AC input',
    message: (p: { tag: string; feeds: string }) =>
      `${p.feeds} feed the AC input of ${p.tag}: how they are kept apart isn't on the list.`,
    found: (p) => p.feeds,
    expected: 'ac_in_2, or a row of kind transfer-switch',
    hint: 'State ac_in_2, or add the transfer switch.',
    who: 'designer',
  } satisfies MessageEntry<{ tag: string; feeds: string }>,
  inputNumberTooHigh: {
    code: 'site/input-number',
    severity: 'conflict',
    title: 'A connection names an input that the converter does not have',
    message: (p: { tag: string; to: string; inputs: number }) =>
      `${p.tag} connects to ${p.to}, but that converter has ${p.inputs} DC input${p.inputs === 1 ? '' : 's'} by the list.`,
    found: (p) => p.to,
    expected: 'an input number within dc_inputs',
    hint: 'Correct connects_to or dc_inputs.',
    who: 'designer',
  } satisfies MessageEntry<{ tag: string; to: string; inputs: number }>,
  dcInputsMissing: {
    code: 'fact/dc-inputs',
    severity: 'missing',
    title: 'The number of DC inputs is not stated',
    message: (p: { tag: string }) =>
      `The number of independent DC inputs of ${p.tag} isn't stated: each of them needs a protector.`,
    expected: 'the number of independent DC inputs',
    hint: 'Fill in dc_inputs, on the list or in the equipment library.',
    who: 'maker',
  } satisfies MessageEntry<{ tag: string }>,
  dcInputsDefault: {
    code: 'default/dc-inputs',
    severity: 'confirm',
    title: 'A charge controller is taken to have one DC input',
    message: (p: { tag: string }) => `dc_inputs of ${p.tag} isn't stated: taken as 1.`,
    expected: 'the number of independent DC inputs',
    hint: 'Check it against the controller, and state it.',
    who: 'maker',
  } satisfies MessageEntry<{ tag: string }>,
  dcInputsNamed: {
    code: 'default/dc-inputs-named',
    severity: 'confirm',
    title: 'A converter is taken to have as many DC inputs as connections name',
    message: (p: { tag: string; inputs: number }) =>
      `dc_inputs of ${p.tag} isn't stated: taken as ${p.inputs}, the highest input that a connection names.`,
    expected: 'the number of independent DC inputs',
    hint: 'Check it against the converter: each further input that is fed needs a protector.',
    who: 'maker',
  } satisfies MessageEntry<{ tag: string; inputs: number }>,
  unusedInUse: {
    code: 'site/unused-port-in-use',
    severity: 'conflict',
    title: 'A port that is said to be unused has a connection',
    message: (p: { tag: string; port: string; others: string }) =>
      `${p.port} of ${p.tag} is said to be unused, but ${p.others} connects there.`,
    found: () => 'unused',
    expected: 'the AC system of the port, or no connection to it',
    hint: 'State the AC system of the port, or correct connects_to.',
    who: 'designer',
  } satisfies MessageEntry<{ tag: string; port: string; others: string }>,
  combinerUnfed: {
    code: 'site/combiner-without-source',
    severity: 'confirm',
    title: 'No source on the list feeds a combiner',
    message: (p: { tag: string }) =>
      `No source on the list connects to ${p.tag}: its voltage is rated by what its converter bears.`,
    expected: 'the arrays that feed it',
    hint: 'Add the arrays, or confirm.',
    who: 'designer',
  } satisfies MessageEntry<{ tag: string }>,
  inputsByOrder: {
    code: 'site/inputs-by-order',
    severity: 'confirm',
    title: 'Sources are given to inputs in order of their tags',
    message: (p: { tag: string; sources: string }) =>
      `${p.sources}: given to the inputs of ${p.tag} in this order, since the list doesn't name the inputs; each of these inputs is rated at the highest of their voltages.`,
    found: (p) => p.sources,
    expected: 'TAG/1, TAG/2 in connects_to',
    hint: 'Name the inputs in connects_to.',
    who: 'designer',
  } satisfies MessageEntry<{ tag: string; sources: string }>,
  inputsUnclear: {
    code: 'site/inputs-unclear',
    severity: 'missing',
    title: 'Which source goes to which input is not stated',
    message: (p: { tag: string; sources: string; inputs: number }) =>
      `${p.sources} connect to ${p.tag}, which has ${p.inputs} DC inputs: it isn't said which goes where.`,
    found: (p) => p.sources,
    expected: 'TAG/1, TAG/2 or TAG/1+2 in connects_to',
    hint: 'Name the inputs in connects_to.',
    who: 'designer',
  } satisfies MessageEntry<{ tag: string; sources: string; inputs: number }>,
  inputsAssumedFed: {
    code: 'site/inputs-without-source',
    severity: 'confirm',
    title: 'No source on the list names a converter',
    message: (p: { tag: string }) =>
      `No source on the list connects to ${p.tag}: all its DC inputs count as fed, rated by max_dc_voltage.`,
    expected: 'the array, combiner or turbine that feeds it',
    hint: 'Add the source, or confirm.',
    who: 'designer',
  } satisfies MessageEntry<{ tag: string }>,
  sourcesInParallel: {
    code: 'site/sources-in-parallel',
    severity: 'confirm',
    title: 'Two sources share one input',
    message: (p: { tag: string; input: string; sources: string }) =>
      `${p.sources} share ${p.input} of ${p.tag}: taken as in parallel, the highest voltage counts.`,
    found: (p) => p.sources,
    expected: 'one source an input',
    hint: 'Confirm that they are in parallel.',
    who: 'designer',
  } satisfies MessageEntry<{ tag: string; input: string; sources: string }>,
  mixedSources: {
    code: 'site/mixed-sources',
    severity: 'conflict',
    title: 'AC and DC sources share one input',
    message: (p: { tag: string; port: string; sources: string }) =>
      `${p.sources} share ${p.port} of ${p.tag}, but one gives alternating and one direct current.`,
    found: (p) => p.sources,
    expected: 'sources of one kind of current on an input',
    hint: 'Correct connects_to, or the output of the turbine.',
    who: 'designer',
  } satisfies MessageEntry<{ tag: string; port: string; sources: string }>,
  groundingDiffers: {
    code: 'site/grounding-differs',
    severity: 'conflict',
    title: 'What shares its conductors is grounded differently',
    message: (p: { tag: string; port: string; rows: string }) =>
      `${p.rows} share the conductors of ${p.port} of ${p.tag}, and the list grounds them differently.`,
    found: (p) => p.rows,
    expected: 'one dc_grounding for all that shares its conductors',
    hint: 'Correct dc_grounding, or connects_to.',
    who: 'designer',
  } satisfies MessageEntry<{ tag: string; port: string; rows: string }>,
  kindMissing: {
    code: 'fact/kind',
    severity: 'missing',
    title: 'A row has no kind',
    message: (p: { tag: string }) => `The kind of ${p.tag} isn't stated: nothing can be decided about it.`,
    expected: 'the kind of equipment',
    hint: 'Fill in kind on the list or in the equipment library.',
    who: 'designer',
  } satisfies MessageEntry<{ tag: string }>,
  bipolar: {
    code: 'site/bipolar-array',
    severity: 'conflict',
    title: 'A bipolar array is out of scope',
    message: (p: { tag: string }) =>
      `${p.tag} is described as bipolar: shuntbook doesn't plan bipolar arrays.`,
    found: () => 'bipolar',
    expected: 'a two-wire array',
    hint: 'Have this array planned by hand.',
    who: 'designer',
  } satisfies MessageEntry<{ tag: string }>,
  variableSpeedDrive: {
    code: 'site/variable-speed-drive',
    severity: 'confirm',
    title: 'The output of a variable-speed drive is out of scope',
    message: (p: { tag: string }) =>
      `${p.tag} is described as a variable-speed drive: shuntbook doesn't plan the AC output of one.`,
    found: () => 'variable-speed drive',
    expected: 'equipment on a system of fixed frequency',
    hint: 'Have the output of this drive planned by hand.',
    who: 'designer',
  } satisfies MessageEntry<{ tag: string }>,
  microinverters: {
    code: 'site/microinverters',
    severity: 'confirm',
    title: 'Many grid-tie inverters of one module',
    message: (p: { tag: string; quantity: number }) =>
      `${p.tag} is ${p.quantity} grid-tie inverters with one module in series each: are these microinverters?`,
    found: (p) => String(p.quantity),
    expected: 'kind ac-module-branch, one row a trunk, for microinverters',
    hint: 'Change the kind if they are; else confirm.',
    who: 'designer',
  } satisfies MessageEntry<{ tag: string; quantity: number }>,
  bondUnknown: {
    code: 'site/neutral-bond',
    severity: 'confirm',
    title: 'A site without a service: where is the neutral bonded?',
    message: () => 'No utility service is on the list: where the neutral is bonded to ground isn’t known.',
    expected: 'n_pe_link yes on the row that bonds the neutral to ground',
    hint: 'Confirm the place of the bond with the installer, and state n_pe_link.',
    who: 'installer',
  } satisfies MessageEntry<Record<string, never>>,
} as const;
