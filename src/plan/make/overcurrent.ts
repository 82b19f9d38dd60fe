import { COMMON_PRACTICE, computed, taken } from '../../electrical/working.js';
import type { Part } from '../../model/catalogue.js';
import { isNec, type Basis } from '../../model/editions.js';
import { byNaturalOrder } from '../../model/natural-order.js';
import type { PlannedProtector } from '../../model/plan.js';
import { amperes, bare } from '../../model/quantity.js';
import { reason, type Reason } from '../../model/reason.js';
import { hundredthsOr } from '../../model/rounding.js';
import { subject, type Step } from '../../model/step.js';
import type { SitePort } from '../../model/site.js';
import type { Conductor } from '../../model/words.js';
import { leadDuty, NEC_690_8_B_SHARE } from '../../rules/lead-duty.js';
import type {
  OvercurrentDevicePlanned,
  OvercurrentFacts,
  OvercurrentRule,
  SystemBorne,
} from '../../rules/overcurrent-facts.js';
import { OVERCURRENT_RULES } from '../../rules/rulebook.js';
import { calculation, type Calculated } from '../context/calculation.js';
import type { JobContext } from '../context/job-context.js';
import { knownFaultCurrent } from '../rate/rate.js';
import type { OvercurrentPort } from '../rate/overcurrent-place.js';
import { alsoBorneAt } from '../rate/rating-facts.js';
import type { Selected } from '../choose/select.js';
import type { WiredChannel } from '../rate/wire.js';
import { groundedPole } from './describe.js';
import { polesInWords } from './poles-in-words.js';

/** The overcurrent device of one housing at one of its ports, with the rule that says so. */
export interface PortDevice {
  readonly rule: OvercurrentRule;
  readonly at: OvercurrentPort;
  readonly planned: OvercurrentDevicePlanned;
}

/**
 * The overcurrent devices of one housing: one for each port that it serves.
 * @param channels of the housing
 */
export function overcurrentDevices(
  job: JobContext,
  one: Selected,
  channels: readonly WiredChannel[],
): readonly PortDevice[] {
  const served = one.overcurrent.filter(({ port }) => channels.some((c) => c.port === port));
  return (served.length > 0 ? served : one.overcurrent).map((at) => {
    const facts = factsOf(job, one, at, channels);
    for (const rule of OVERCURRENT_RULES) {
      const decision = rule.decide(facts);
      if (decision.outcome === 'device') return { rule, at, planned: decision.planned };
    }
    throw new Error(`no rule about the overcurrent device at ${at.port.equipment.tag} ${at.port.name}`);
  });
}

const NEUTRAL: readonly Conductor[] = ['N'];

/** The grounded pole of a DC pair, or the grounded phase, which is L2; undefined where neither is. N isn't meant. */
function groundedOf(one: Selected): Conductor | undefined {
  const isCorner = one.requirement.circuit === 'power' && one.wirings[0]?.facts.grounding === 'corner';
  return isCorner ? 'L2' : groundedPole(one);
}

function factsOf(
  job: JobContext,
  one: Selected,
  { port, place }: OvercurrentPort,
  channels: readonly WiredChannel[],
): OvercurrentFacts {
  const { requirement, placement, part } = one;
  const wiring = one.wirings.find((w) => w.port === port);
  const lines: Conductor[] = [];
  let takesNeutral = false;
  for (const channel of channels) {
    if (channel.port !== port) continue;
    if (channel.conductor === 'N') takesNeutral = true;
    else if (!lines.includes(channel.conductor)) lines.push(channel.conductor);
  }
  const isNeutralAlone = takesNeutral && lines.length === 0;
  const isSolid = wiring?.facts.grounding === 'solid';
  return {
    circuit: place.circuit,
    aheadOfDisconnect: place.aheadOfDisconnect,
    ownDevice: place.ownDevice,
    arrayCurrent: place.arrayCurrent,
    basis: job.site.basis.value,
    current: requirement.current,
    part,
    lines: isNeutralAlone ? NEUTRAL : lines,
    groundedConductor: isNeutralAlone && isSolid ? 'N' : groundedOf(one),
    systems: place.circuit === 'power' ? systemsAt(job, port) : [],
    highLeg: wiring?.facts.doubledFirst === 'L2',
    highest: requirement.current === 'dc' ? requirement.mcov?.value : undefined,
    faultCurrent:
      one.overcurrent.length > 1
        ? knownFaultCurrent(job, placement, port)
        : requirement.sccrState === 'known'
          ? requirement.sccr?.value
          : undefined,
  };
}

function systemsAt(job: JobContext, port: SitePort): readonly SystemBorne[] {
  if (port.system === undefined) return [];
  const grounded = job.groundingAt(port);
  const own = { system: port.system, whole: grounded.whole, grounding: grounded.grounding };
  return [own, ...alsoBorneAt(job, port, grounded)];
}

/** Tags of the converters whose `backfeed_a` isn’t stated and may add to the current at a placement. */
export function backfeedUnknown(ports: readonly OvercurrentPort[]): string[] {
  const tags = new Set<string>();
  for (const { backfeedUnknown: some } of ports) for (const { tag } of some) tags.add(tag);
  return [...tags].sort(byNaturalOrder);
}

/** The devices of a housing as the plan holds them. */
export function plannedOvercurrent(devices: readonly PortDevice[]): PlannedProtector['overcurrent'] {
  return devices.map(({ at, planned }) => {
    const { device, poles, amps, leastAmps, volts, straight, dc, interrupting, because } = planned;
    const { conductors, noneIn } = planned;
    return {
      port: at.port.name,
      device,
      poles,
      conductors: [...conductors],
      noneIn: [...noneIn],
      amps: hundredthsOr(amps),
      leastAmps: hundredthsOr(leastAmps),
      volts: hundredthsOr(volts),
      straight,
      dc,
      interrupting: hundredthsOr(interrupting),
      because,
    };
  });
}

/** Characters of the catalogue’s words that a note repeats. */
const MOST_WORDS = 120;

/**
 * What the wiring note of a housing says of its devices.
 * @param words of the catalogue on the overcurrent device of the part; `` none
 */
export function overcurrentNotes(
  devices: readonly PortDevice[],
  channels: readonly WiredChannel[],
  nec: boolean,
  words: string,
): readonly Reason[] {
  const notes: Reason[] = [];
  for (const { planned } of devices) notes.push(...planned.notes);
  notes.push(...polesNotes(devices, words));
  const own = devices.filter(({ planned }) => planned.device !== 'none');
  if (own.length > 1)
    notes.push(
      reason('overcurrent-note/one-for-each-port', { ports: own.map(({ at }) => at.port.name), nec }),
    );
  const twice = new Set<Conductor>();
  for (const { port, conductor, doubled } of channels) {
    if (!doubled) continue;
    const again = channels.filter((c) => c.port === port && c.conductor === conductor).length > 1;
    if (again) twice.add(conductor);
  }
  for (const conductor of twice)
    notes.push(reason('overcurrent-note/one-wire-a-terminal', { conductor, nec }));
  return notes;
}

/** The words of the catalogue may have been written for another system than that of the place. */
function polesNotes(devices: readonly PortDevice[], words: string): readonly Reason[] {
  const named = polesInWords(words);
  if (named === undefined) return [];
  const others = devices.flatMap(({ planned: { device, poles } }) =>
    device === 'none' || poles === null || poles === named ? [] : [poles],
  );
  return [...new Set(others)].map((poles) =>
    reason('overcurrent-note/poles-in-words', { words: words.slice(0, MOST_WORDS), named, poles }),
  );
}

/** How a device came about, where figures decide: what arrays can send, or the circuit's own device. */
export function overcurrentCalculations(
  devices: readonly PortDevice[],
  part: Part | undefined,
  basis: Basis,
): readonly Calculated[] {
  const found: Calculated[] = [];
  for (const { rule, at } of devices) {
    const known = stepsAt(at);
    if (known.length === 0) continue;
    const steps = part ? [...known, ...stepsOfPart(part, at, isNec(basis))] : known;
    const title = reason(titleOf(steps), { port: at.port.name });
    found.push(calculation(rule.id, title, { value: 0, unit: 'A', steps }));
  }
  return found;
}

/** The last step stands for the calculation on a permit sheet: its title says what that figure is of. */
function titleOf(steps: readonly Step[]): `calculation/overcurrent${'' | '-of-circuit' | '-none' | '-sum'}` {
  switch (steps.at(-1)?.code) {
    case 'overcurrent/ampacity':
      return 'calculation/overcurrent-none';
    case 'overcurrent/circuit-device':
      return 'calculation/overcurrent-of-circuit';
    case 'overcurrent/most':
      return 'calculation/overcurrent';
    default:
      return 'calculation/overcurrent-sum';
  }
}

function stepsAt({ port, place, current }: OvercurrentPort): readonly Step[] {
  if (current) return current.steps;
  const rating = place.ownDevice === undefined ? undefined : port.equipment.facts.rating_a;
  if (!rating) return [];
  const what = subject('overcurrent/circuit-device', { equipment: port.equipment.tag });
  return [taken('Icircuit', what, rating.value, 'A', 'stated', rating.origin)];
}

function stepsOfPart(part: Part, { place, current }: OvercurrentPort, nec: boolean): readonly Step[] {
  const most = part.overcurrentMost;
  if (most === null) return [];
  const { file, line } = part;
  const origin = { from: 'catalogue', file, line, column: '' } as const;
  const steps = [
    taken('Idevice', subject('overcurrent/most', { part: part.part }), most, 'A', 'stated', origin),
  ];
  const duty = leadDuty(place, part);
  if (duty.of !== 'current' || !current) return steps;
  const what = subject('overcurrent/ampacity', {
    share: bare(NEC_690_8_B_SHARE),
    current: amperes(current.value),
  });
  const source = nec ? reason('source/array-conductors') : COMMON_PRACTICE;
  const sure = nec ? 'memory' : 'common practice';
  return [
    ...steps,
    computed('Ilead', what, { value: duty.amperes, unit: 'A', sure, uses: ['Isum'], source }),
  ];
}
