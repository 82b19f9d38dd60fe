import { AC_SYSTEM_DATA } from '../../electrical/ac-systems.js';
import type { SiteEquipment, SitePort } from '../../model/site.js';
import { isNec } from '../../model/editions.js';
import type { Conductor, SystemGrounding } from '../../model/words.js';
import { WIRING_RULES } from '../../rules/rulebook.js';
import type { LeadsDecision, NeutralDecision, SpareDecision, WiringFacts } from '../../rules/wiring-facts.js';
import { carriedBy } from './rating-facts.js';
import type { JobContext } from '../context/job-context.js';

/** How one port is wired: its conductors, what spare channels take, its neutral and its leads. */
export interface PortWiring {
  readonly port: SitePort;
  readonly facts: WiringFacts;
  readonly conductors: readonly Conductor[];
  readonly neutral: NeutralDecision;
  readonly spare: SpareDecision;
  readonly leads: LeadsDecision;
}

const THREE_PHASES: readonly Conductor[] = ['L1', 'L2', 'L3'];

/** @param subject of a control circuit's other end: the control circuit */
export function wirePort(job: JobContext, port: SitePort, subject: SiteEquipment): PortWiring {
  const base = wiringFacts(job, port, subject);
  const neutral = WIRING_RULES.neutral.decide(base);
  const facts: WiringFacts = neutral.neutral === 'asked' ? { ...base, neutralAsked: true } : base;
  return {
    port,
    facts,
    neutral,
    conductors: WIRING_RULES.conductors.decide(facts).conductors,
    spare: WIRING_RULES.spareChannel.decide(facts),
    leads: WIRING_RULES.leads.decide(facts),
  };
}

function wiringFacts(job: JobContext, port: SitePort, subject: SiteEquipment): WiringFacts {
  const { site } = job;
  const { current, circuit } = carriedBy(port, subject);
  const data = port.system ? AC_SYSTEM_DATA[port.system] : undefined;
  const isPower = circuit === 'power' && current === 'ac';
  const grounded = isPower ? job.groundingAt(port) : undefined;
  const grounding = grounded?.grounding ?? 'solid';
  const hasHighLeg =
    grounded?.whole === '240/120 high-leg' && port.system !== '120' && port.system !== '120/240';
  const atService = port.cls === 'service';
  const lightning = site.list.facts.lightning_protection?.value;
  const isTt = site.basis.value === 'iec' && site.earthing.value === 'TT';
  return {
    basis: site.basis.value,
    earthing: site.earthing.value,
    circuit,
    current: current ?? 'ac',
    system: port.system,
    whole: grounded?.whole,
    grounding,
    atService,
    bondedHere: isBonded(port, grounding, isTt, isNec(site.basis.value)),
    lines: isPower ? (data?.lines ?? []) : circuit === 'turbine' ? THREE_PHASES : [],
    hasNeutral: isPower && (data?.hasNeutral ?? false),
    doubledFirst: hasHighLeg ? 'L2' : 'L1',
    neutralAsked: false,
    threePlusOne: isTt && isPower,
    positiveGround: false,
    negativeGround: false,
    classOneAsked:
      !isNec(site.basis.value) &&
      circuit !== 'control' &&
      (lightning === 'attached' || (lightning === 'isolated' && atService)),
  };
}

/**
 * `n_pe_link`, by default `yes` at a service, and behind a transformer that makes a system of its own, where that is grounded at its
 * neutral, and `no` elsewhere: a system without that link has none at its service either, and in a TT system the link is at the
 * utility's transformer alone.
 */
function isBonded(port: SitePort, grounding: SystemGrounding, isTt: boolean, nec: boolean): boolean {
  const { equipment, cls } = port;
  const isDerived =
    equipment.kind === 'transformer' && cls === 'ac-out' && equipment.facts.isolated?.value !== false;
  const isHead = cls === 'service' || isDerived;
  // What a transformer's row states is about what it feeds.
  if (equipment.kind === 'transformer' && cls === 'ac-in') return false;
  // A row that links N there contradicts itself: an item says so, and N counts as lifted.
  if (grounding === 'none' || grounding === 'impedance') return false;
  const unstated = isHead && grounding === 'solid' && !isTt;
  // With iec N has a channel everywhere but there, linked or not: no default decides.
  const settled = nec || unstated ? equipment.row.settled?.n_pe_link : undefined;
  return equipment.facts.n_pe_link?.value ?? settled?.value ?? unstated;
}

/** One channel of one housing. */
export interface WiredChannel {
  readonly channel: number;
  readonly port: SitePort;
  readonly conductor: Conductor;
  readonly doubled: boolean;
  readonly to: 'ground' | 'N';
}

/**
 * Wires the channels of a placement: every conductor that is asked for, then what spare channels take.
 * @param wirings one for each port that shares the protector
 * @param channels of one housing; undefined: no part, so just as many as there are conductors, in one housing
 * @returns the channels of each housing
 */
export function wireHousings(
  wirings: readonly PortWiring[],
  channels: number | undefined,
): readonly (readonly WiredChannel[])[] {
  const wires: Omit<WiredChannel, 'channel'>[] = [];
  for (const wiring of wirings) {
    const toNeutral = wiring.facts.threePlusOne;
    for (const conductor of wiring.conductors) {
      const to = toNeutral && conductor !== 'N' ? 'N' : 'ground';
      wires.push({ port: wiring.port, conductor, doubled: false, to });
    }
  }
  const each = channels ?? Math.max(1, wires.length);
  const count = Math.max(1, Math.ceil(wires.length / each));
  // The N of each port goes before a second channel of a line of any of them.
  for (const isDoubled of [false, true]) {
    for (const { port, spare } of wirings) {
      for (const { conductor, doubled } of spare.uses) {
        if (doubled !== isDoubled || wires.length >= count * each) continue;
        wires.push({ port, conductor, doubled, to: 'ground' });
      }
    }
  }
  const housings: WiredChannel[][] = [];
  for (let h = 0; h < count; h += 1) {
    housings.push(
      wires
        .slice(h * each, (h + 1) * each)
        .map(({ port, conductor, doubled, to }, i) => ({ channel: i + 1, port, conductor, doubled, to })),
    );
  }
  return housings;
}

/** How many spare channels a placement can use. */
export function spareRoom(wirings: readonly PortWiring[]): number {
  return wirings.reduce((sum, w) => sum + w.spare.uses.length, 0);
}
