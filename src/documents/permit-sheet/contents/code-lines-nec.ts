import type { Plan, PlannedProtector } from '../../../model/plan.js';
import { plain } from '../../../words/figures.js';
import { ungroundedInShort } from '../../../words/protector-short.js';
import {
  dischargeHeld,
  leadsHeld,
  resultOf,
  shortCircuitHeld,
  stepsOf,
  voltageHeld,
} from '../../parts/contents/code-figures.js';
import { isFloatingTurbine, isListingBlank } from '../../parts/blanks.js';
import type { CodeLine } from './code-line.js';
import { askedCurrent, askedVolts } from '../../parts/contents/paper-figures.js';

const joined = (...parts: readonly string[]): string => parts.filter((one) => one !== '').join(', ');

const guards = ({ ports }: PlannedProtector): string =>
  [...new Set(ports.map((p) => p.equipment))].join(', ');

function typeText({ partDetails, required }: PlannedProtector): string {
  const type = partDetails?.type ?? null;
  if (type !== null) return `type ${String(type)}`;
  return required.types.length === 0 ? '' : `type ${required.types.join(' or ')} needed`;
}

/** Behind the first disconnect types 1 and 2 may stand, ahead of it type 1 alone. */
function sideText(protector: PlannedProtector): string {
  const { required } = protector;
  if (required.types.length === 0) return '';
  const side = required.types.includes(2) ? 'load side' : 'supply side';
  return joined(typeText(protector), `${side} of the first disconnect`);
}

function listingText({ partDetails, required }: PlannedProtector): string {
  if (partDetails === null) return '';
  const system = required.listedFor === null ? '' : `for ${required.listedFor} systems`;
  return joined(partDetails.listing, system);
}

/** What the listing of a part says of the system that it hangs on, where that isn’t solidly grounded. */
function listedForText(protector: PlannedProtector, { basis }: Plan): string {
  const { listedFor } = protector.required;
  if (listedFor !== null) return `listed for ${listedFor} systems`;
  if (!isFloatingTurbine(protector, basis) || protector.partDetails === null) return '';
  return isListingBlank(protector, basis)
    ? 'listing for ungrounded systems to be filled in'
    : 'listed for ungrounded systems';
}

const INDICATORS: Readonly<Record<string, string>> = {
  light: 'light',
  flag: 'flag',
  none: 'none',
  both: 'light and flag',
};

function indicatorText({ partDetails }: PlannedProtector): string {
  const indicator = partDetails?.indicator ?? null;
  return indicator === null ? '' : (INDICATORS[indicator] ?? indicator);
}

/** True where leads of the planned gauge would be too thin behind their device, but for the instructions of the part. */
function isByInstructions({ figures }: PlannedProtector): boolean {
  const rest = figures?.leadsRestOn ?? null;
  return rest?.on === 'instructions' && !rest.plannedBear;
}

/** A device ahead of the leads, or why they are sized otherwise. */
function deviceText(protector: PlannedProtector): string {
  const { overcurrent, figures, wiring } = protector;
  const rest = figures?.leadsRestOn ?? null;
  if (rest !== null && isByInstructions(protector))
    return rest.amps === null
      ? 'leads by the part’s instructions'
      : `${plain(rest.amps)} A device, leads by the part’s instructions`;
  if (rest?.on === 'supply')
    return `class 2 supply${rest.amps === null ? '' : `, else a device of at most ${plain(rest.amps)} A`}, leads ${leadsHeld(protector)}`;
  const [device] = overcurrent;
  if (!device || device.device === 'none' || device.amps === null || wiring.leadGauge === '') return '';
  return `device of at most ${plain(device.amps)} A, leads ${wiring.leadGauge}`;
}

/** Why no fault current is held against a protector of a control circuit. */
function suppliedText({ overcurrent }: PlannedProtector): string {
  return overcurrent.some(({ because }) => because.code === 'overcurrent/by-supply-of-control')
    ? 'current limited by the class 2 supply'
    : '';
}

function straightText({ overcurrent }: PlannedProtector): string {
  const device = overcurrent.find(({ straight, device: kind }) => straight && kind !== 'fuse');
  return device === undefined
    ? ''
    : `straight rating, ${device.volts === null ? '' : `${plain(device.volts)} V`}`;
}

function straightThrough({ overcurrent }: PlannedProtector): string {
  const names = overcurrent.flatMap(({ noneIn }) => noneIn);
  return names.length === 0 ? '' : `no device in ${[...new Set(names)].join(', ')}`;
}

/** The highest PV voltage against the limit of the code and what the converter bears. */
function voltageLimits(protector: PlannedProtector): string {
  const reached = resultOf(protector, 'cold-voltage/string') ?? resultOf(protector, 'array-voltage/stated');
  if (reached === undefined) return '';
  const limits = [
    ...stepsOf(protector, 'array-voltage/code-limit').map(({ value }) => ({ value, whose: '' })),
    ...protector.calculations.flatMap(({ title, steps }) => {
      const last = steps.at(-1);
      if (title.code !== 'calculation/converter-limit' || last?.code !== 'input-limit/converter') return [];
      return [{ value: last.value, whose: ' of the converter' }];
    }),
  ];
  if (limits.length === 0) return '';
  const told = limits.map(({ value, whose }) => `${reached <= value ? '≤' : '>'} ${plain(value)} V${whose}`);
  return `${askedVolts(reached, Math.min(...limits.map(({ value }) => value)))} V ${told.join(', ')}`;
}

/** 690.8 and 690.9: the current of the arrays, and whether a device is asked for. */
function arrayCurrentText(protector: PlannedProtector): string {
  const [device] = protector.overcurrent;
  const { sccr, backfeedUnknown } = protector.required;
  if (!device || sccr === null) return '';
  switch (device.because.code) {
    case 'overcurrent/array-below': {
      const { current: sum, ampacity } = device.because.values;
      const leads = ampacity === null ? '' : `; leads carry at least ${askedCurrent(ampacity.value)}`;
      return `${askedCurrent(sum.value, device.amps)} ≤ ${device.amps === null ? '' : `${plain(device.amps)} A`}, no device asked for${leads}`;
    }
    case 'overcurrent/array-above':
    case 'overcurrent/array-not-known': {
      const open = backfeedUnknown.length === 0 ? '' : ' and what the converter sends back';
      return `${askedCurrent(sccr)}${open}: device of its own${device.amps === null ? '' : `, at most ${plain(device.amps)} A`}`;
    }
    default:
      return '';
  }
}

function highLegText({ channels, system }: PlannedProtector): string {
  if (system !== '240/120 high-leg') return '';
  const leg = channels.find(({ called }) => called !== '');
  return leg === undefined ? '' : joined(leg.wire.name, leg.called, leg.colour);
}

const TYPE_SUBJECTS = ['type-1-places', 'type-2-places', 'type-3-places'] as const;

function typesCited({ partDetails }: PlannedProtector): readonly string[] {
  const type = partDetails?.type ?? null;
  return TYPE_SUBJECTS.filter((_, index) => type === null || index === type - 1);
}

const atPanel = (p: PlannedProtector): string => joined(`at ${guards(p)}`, typeText(p), dischargeHeld(p));

/** The clauses of the NEC that a reviewer looks for. */
export const NEC_LINES: readonly CodeLine[] = [
  {
    subjects: ['dwelling-service'],
    title: 'Protector at the service',
    here: (p) => joined(`at the service ${guards(p)}`, typeText(p), dischargeHeld(p)),
    places: true,
  },
  {
    subjects: ['feeder'],
    title: 'Protector at a panel that a feeder supplies',
    here: atPanel,
    places: true,
  },
  {
    subjects: ['outside-feeder'],
    title: 'Protector at a panel that an outside feeder supplies',
    here: atPanel,
    places: true,
  },
  {
    subjects: ['wind'],
    title: 'Protector between wind system and loads',
    here: (p) => joined(`at ${guards(p)}`, typeText(p)),
    places: true,
  },
  { subjects: ['listing'], title: 'Listed; files in the schedule', here: listingText },
  {
    subjects: TYPE_SUBJECTS,
    title: 'Type for its side of the disconnect',
    here: sideText,
    cites: typesCited,
  },
  {
    subjects: ['uses-not-permitted'],
    title: 'MCOV ≥ highest voltage to ground; at most 1000\u00a0V; fit for the system',
    here: (p, plan) => joined(voltageHeld(p, 'MCOV'), listedForText(p, plan)),
  },
  {
    subjects: ['short-circuit-current-rating'],
    title: 'SCCR not below the fault current',
    here: shortCircuitHeld,
    beyond: suppliedText,
  },
  { subjects: ['working-indication'], title: 'Shows that it works', here: indicatorText },
  {
    subjects: ['each-ungrounded-conductor'],
    title: 'Each ungrounded conductor has one',
    here: ungroundedInShort,
  },
  {
    subjects: ['lead-routing', 'smallest-lead'],
    title: 'Leads short, straight; least size',
    here: (p) => leadsHeld(p),
  },
  {
    subjects: ['small-conductors', 'leads-by-instructions'],
    title: 'Device fits the leads',
    here: deviceText,
    cites: (p) => [isByInstructions(p) ? 'leads-by-instructions' : 'small-conductors'],
  },
  { subjects: ['slash-rating'], title: 'Straight voltage rating of breakers', here: straightText },
  {
    subjects: ['no-device-in-grounded-conductor'],
    title: 'No device in a grounded conductor',
    here: straightThrough,
  },
  {
    subjects: ['maximum-pv-voltage', 'cold-voltage', 'maker-instructions'],
    title: 'PV voltage, cold, against code and equipment',
    here: voltageLimits,
    cites: (p) => [
      ...(stepsOf(p, 'array-voltage/code-limit').length === 0 ? [] : ['maximum-pv-voltage', 'cold-voltage']),
      ...(stepsOf(p, 'input-limit/converter').length === 0 ? [] : ['maker-instructions']),
    ],
  },
  {
    subjects: ['array-current', 'array-overcurrent', 'array-conductors'],
    title: 'PV current, device, ampacity of leads',
    here: arrayCurrentText,
  },
  { subjects: ['high-leg-position', 'high-leg-marking'], title: 'High leg', here: highLegText },
  {
    subjects: ['lightning-protection'],
    title: 'With a lightning protection system, In of at least 20 kA at the service',
    here: (p) =>
      resultOf(p, 'nominal-current/service-with-lightning-protection') === undefined ? '' : dischargeHeld(p),
  },
];
