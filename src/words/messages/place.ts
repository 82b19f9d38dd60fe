import type { MessageEntry } from '../message-kit.js';

/** Messages of the placement rules and of what plan/ makes of them. */
export const PLACE_MESSAGES = {
  runLength: {
    code: 'fact/run-length',
    severity: 'missing',
    title: 'The length of a run outdoors or between buildings is not stated',
    message: (p: { row: string; from: string; to: string }) =>
      `The run between ${p.from} and ${p.to} leaves the building, and its length isn't stated (row ${p.row}).`,
    expected: 'a length, such as 100 ft or 30 m',
    hint: 'Fill in run_length.',
    who: 'designer',
  } satisfies MessageEntry<{ row: string; from: string; to: string }>,
  defaultsUsed: {
    code: 'default/used',
    severity: 'confirm',
    title: 'A default stands in for a fact that the list does not state',
    message: (p: { field: string; value: string; rows: string; why: string }) =>
      `${p.field} isn't stated${p.rows === '' ? '' : ` for ${p.rows}`}: taken as ${p.value}${p.why === '' ? '' : `, which ${p.why}`}.`,
    expected: (p) => `${p.field} on the list`,
    hint: 'State it, or confirm.',
    who: 'designer',
  } satisfies MessageEntry<{ field: string; value: string; rows: string; why: string }>,
  basisDefault: {
    code: 'default/basis',
    severity: 'confirm',
    title: 'The basis is not stated',
    message: (p: { basis: string }) => `The basis isn't stated: planned under ${p.basis}.`,
    expected: 'nec-2017, nec-2020, nec-2023 or iec',
    hint: 'Ask the authority having jurisdiction which code cycle is in force, and state it.',
    who: 'office',
  } satisfies MessageEntry<{ basis: string }>,
  buildingDefault: {
    code: 'default/building',
    severity: 'confirm',
    title: 'A building that was read from a place decides a placement',
    message: (p: { tag: string; other: string }) =>
      `The run between ${p.tag} and ${p.other} counts as between buildings because of their places; no building is stated.`,
    expected: 'building on both rows',
    hint: 'State building, or confirm.',
    who: 'designer',
  } satisfies MessageEntry<{ tag: string; other: string }>,
  subPanel: {
    code: 'place/sub-panel',
    severity: 'confirm',
    title: 'A sub-panel of a dwelling whose main panel is protected',
    message: (p: { tag: string; main: string }) =>
      `${p.tag} is fed by ${p.main} of the same unit: whether 215.18 asks for a second protector there differs between offices.`,
    expected: 'the reading of the authority having jurisdiction',
    hint: 'Ask the authority having jurisdiction.',
    who: 'office',
  } satisfies MessageEntry<{ tag: string; main: string }>,
  feedUnknown: {
    code: 'place/feed-unknown',
    severity: 'confirm',
    title: 'What feeds a panel is not on the list',
    message: (p: { tag: string }) =>
      `What feeds ${p.tag} isn't on the list, so place/feeder couldn't ask for a protector there.`,
    expected: 'connects_to on the panel, or on what feeds it',
    hint: 'State connects_to, or confirm that the panel stands at the service.',
    who: 'designer',
  } satisfies MessageEntry<{ tag: string }>,
  servicePlaceUnknown: {
    code: 'place/service-place-unknown',
    severity: 'confirm',
    title: 'It is not known whether a panel stands at the service',
    message: (p: { tag: string }) =>
      `The run from the service to ${p.tag} has no length on the list: the panel counts as a place of its own.`,
    expected: 'run_length on the panel',
    hint: 'State run_length; a panel right at the service shares its protector.',
    who: 'designer',
  } satisfies MessageEntry<{ tag: string }>,
  nothingWorth: {
    code: 'place/nothing-worth-protecting',
    severity: 'confirm',
    title: 'A code asks for a protector where the list sees nothing worth protecting',
    message: (p: { tag: string; rules: string }) =>
      `${p.tag} is said to hold nothing worth protecting, yet ${p.rules} requires a protector there: it stays.`,
    found: () => 'no',
    expected: 'worth_protecting yes, or a decision of the authority having jurisdiction',
    hint: 'Correct the list, or ask the authority having jurisdiction.',
    who: 'designer',
  } satisfies MessageEntry<{ tag: string; rules: string }>,
  cannotWaive: {
    code: 'place/cannot-waive',
    severity: 'confirm',
    title: 'The list waives a protector that a code requires',
    message: (p: { tag: string; rules: string }) =>
      `protect is "no" for ${p.tag}, yet ${p.rules} requires a protector there: it stays.`,
    found: () => 'no',
    expected: 'protect yes or blank, or a decision of the authority having jurisdiction',
    hint: 'Correct the list, or ask the authority having jurisdiction.',
    who: 'designer',
  } satisfies MessageEntry<{ tag: string; rules: string }>,
  waivedByException: {
    code: 'place/waived-by-exception',
    severity: 'confirm',
    title: 'The protector of a service is left to the next panels',
    message: (p: { tag: string }) =>
      `protect is "no" for ${p.tag}: left out under the exception of 230.67(B), since each next panel on the list has a protector.`,
    found: () => 'no',
    expected: 'a protector at each next level of distribution equipment',
    hint: 'Confirm that the list holds every panel that the service feeds.',
    who: 'designer',
  } satisfies MessageEntry<{ tag: string }>,
  noMainPort: {
    code: 'place/no-main-port',
    severity: 'conflict',
    title: 'The list asks for a protector on equipment that can have none',
    message: (p: { tag: string; kind: string }) =>
      `protect is "yes" for ${p.tag}, but a ${p.kind} has no place for a power protector of its own.`,
    found: () => 'yes',
    expected: 'protect on the equipment at one end of it',
    hint: 'Move protect to that row.',
    who: 'designer',
  } satisfies MessageEntry<{ tag: string; kind: string }>,
  mainPortUnused: {
    code: 'place/main-port-unused',
    severity: 'conflict',
    title: 'The list asks for a protector at a port that it says is unused',
    message: (p: { tag: string }) =>
      `protect is "yes" for ${p.tag}, but each port at which it would stand is unused by the list.`,
    found: () => 'yes',
    expected: 'the AC system of the port, or protect blank',
    hint: 'State the AC system of the port, or clear protect.',
    who: 'designer',
  } satisfies MessageEntry<{ tag: string }>,
  signalLine: {
    code: 'place/signal-line',
    severity: 'confirm',
    title: 'A signal line needs protection of another kind',
    message: (p: { tag: string }) =>
      `${p.tag} is a signal line: its protection is outside this plan (see IEEE C62.72 and the maker of what it serves).`,
    expected: 'protection planned by whoever designs the signal line',
    hint: 'Hand it to the designer of that line.',
    who: 'designer',
  } satisfies MessageEntry<{ tag: string }>,
  otherKind: {
    code: 'place/other-kind',
    severity: 'confirm',
    title: 'Equipment of kind other is outside every rule',
    message: (p: { tag: string; circuits: string }) => {
      const but = p.circuits === '' ? '' : `, but for the control circuits that end there: ${p.circuits}`;
      return `${p.tag} is of kind other: no rule of shuntbook looks at it${but}.`;
    },
    expected: 'a kind that a rule knows, or a plan by hand',
    hint: 'Choose a kind, or have it planned by hand.',
    who: 'designer',
  } satisfies MessageEntry<{ tag: string; circuits: string }>,
  controlOtherEnd: {
    code: 'place/control-other-end',
    severity: 'confirm',
    title: 'The other end of a control circuit is not on the list',
    message: (p: { tag: string }) =>
      `The other end of ${p.tag} isn't named, so it has a protector at this end only.`,
    expected: 'connects_to on the control circuit',
    hint: 'Name the equipment at its other end.',
    who: 'designer',
  } satisfies MessageEntry<{ tag: string }>,
  controlNotLow: {
    code: 'place/control-voltage-high',
    severity: 'conflict',
    title: 'A control circuit is above low voltage',
    message: (p: { tag: string; volts: string; limit: string }) =>
      `${p.tag} works at ${p.volts}, above the ${p.limit} of a low-voltage control circuit.`,
    found: (p) => p.volts,
    expected: 'a control circuit of low voltage, or another kind',
    hint: 'Correct control_voltage, or list it as a panel or a load.',
    who: 'designer',
  } satisfies MessageEntry<{ tag: string; volts: string; limit: string }>,
  windWithoutAc: {
    code: 'place/wind-without-ac',
    severity: 'confirm',
    title: 'A turbine, and no AC equipment on the list',
    message: (p: { tag: string }) =>
      `${p.tag} is a turbine, and no AC equipment is on the list that could carry the protector of 694.7(D).`,
    expected: 'the AC equipment between the wind system and the loads, if there is any',
    hint: 'Add it, or confirm that the site has none.',
    who: 'designer',
  } satisfies MessageEntry<{ tag: string }>,
  riskUnknown: {
    code: 'place/risk-level-unknown',
    severity: 'confirm',
    title: 'The calculated risk level cannot be computed',
    message: (p: { tag: string }) =>
      `The flash density isn't stated, or every line has a length of 0: the calculated risk level of the supply at ${p.tag} isn't known.`,
    expected: 'flash_density or thunderstorm_days',
    hint: 'State one of them.',
    who: 'designer',
  } satisfies MessageEntry<{ tag: string }>,
  criticalLengthUnknown: {
    code: 'place/critical-length-unknown',
    severity: 'confirm',
    title: 'The length of array cables could not be compared with the critical length',
    message: () =>
      'The flash density isn’t stated, so the lengths of the cables of arrays aren’t compared with the critical length.',
    expected: 'flash_density or thunderstorm_days',
    hint: 'State one of them.',
    who: 'designer',
  } satisfies MessageEntry<Record<string, never>>,
  arraysLengthUnknown: {
    code: 'place/arrays-length-unknown',
    severity: 'confirm',
    title: 'The length of the cables of the arrays on a converter is not known',
    message: (p: { tag: string }) =>
      `A run of the arrays on ${p.tag} isn't stated, so their length isn't compared with the critical length.`,
    expected: 'run_length of each array and combiner',
    hint: 'State them.',
    who: 'designer',
  } satisfies MessageEntry<{ tag: string }>,
} as const;
