import { AC_SYSTEM_DATA } from '../../electrical/ac-systems.js';
import { transformerFaultCurrent } from '../../electrical/transformer.js';
import { withstandEntryVoltage } from '../../electrical/withstand.js';
import type { TransformerFacts } from '../../model/fault-current.js';
import type { PortGrounding, SiteEquipment, SitePort } from '../../model/site.js';
import type { AcSystem, Kind } from '../../model/words.js';
import type { ArrayFacts, FaultCurrentFacts, RatingFacts } from '../../rules/rating-facts.js';
import { FEEDER_RULE } from '../../rules/rulebook.js';
import type { Circuit } from '../../rules/wiring-facts.js';
import { batteriesOn } from '../../site/battery-bus.js';
import { faultCurrentAt } from '../../site/fault-current.js';
import { ultimateSources } from '../../site/inputs.js';
import { CONVERTERS } from '../../site/converters.js';
import { nominalClass } from '../../site/network.js';
import { systemField } from '../../site/system-field.js';
import { converterFed } from '../context/exposure.js';
import { joinedFacts } from './dc-current.js';
import { arrayFacts, batteryFacts, converterFacts, turbineFacts } from './source-facts.js';
import type { Placement } from '../context/verdict.js';
import { placementFacts, type JobContext } from '../context/job-context.js';

/** What a port carries: what feeds it decides. */
export interface Carried {
  readonly current: 'ac' | 'dc' | undefined;
  readonly circuit: Circuit;
}

/**
 * The current and the circuit of a placement's port.
 * @param subject of a control circuit's other end: the control circuit
 */
export function carriedBy(port: SitePort, subject: SiteEquipment): Carried {
  switch (port.cls) {
    case 'terminals':
      return CONTROL[subject.facts.control_voltage?.value.current ?? 'unknown'];
    case 'battery':
    case 'dc-bus':
      return BATTERY;
    case 'service':
    case 'feeder':
    case 'ac-in':
    case 'ac-in-2':
    case 'ac-out':
      return POWER;
    case 'dc-in':
    case 'output':
      return carriedByOutput(port);
  }
}

// One object each: every rule and every channel asks.
const CONTROL: Readonly<Record<'ac' | 'dc' | 'unknown', Carried>> = {
  ac: { current: 'ac', circuit: 'control' },
  dc: { current: 'dc', circuit: 'control' },
  unknown: { current: undefined, circuit: 'control' },
};
const BATTERY: Carried = { current: 'dc', circuit: 'battery' };
const POWER: Carried = { current: 'ac', circuit: 'power' };
const ARRAY: Carried = { current: 'dc', circuit: 'array' };
const AC_TURBINE: Carried = { current: 'ac', circuit: 'turbine' };
const TURBINE_UNKNOWN: Carried = { current: undefined, circuit: 'turbine' };

function carriedByOutput(port: SitePort): Carried {
  const kind = port.equipment.kind;
  if (kind === 'generator' || kind === 'ac-module-branch') return POWER;
  const sources = ultimateSources(port);
  const turbines = sources.filter((s) => s.kind !== 'array');
  if (turbines.length === 0) return ARRAY;
  const isAc = (s: SiteEquipment): boolean => s.facts.output?.value === 'three-phase';
  if (turbines.some(isAc)) {
    // Alternating and direct current on one conductor: an item asks; no part is right for both.
    return sources.every(isAc) ? AC_TURBINE : TURBINE_UNKNOWN;
  }
  return turbines.some((t) => t.facts.output === undefined) ? TURBINE_UNKNOWN : ARRAY;
}

/** The facts of one port of a placement, as the rating rules may know them. */
export function ratingFacts(job: JobContext, placement: Placement, port: SitePort): RatingFacts {
  const { site, settings } = job;
  const { subject } = placement;
  const { facts } = subject;
  const { current, circuit } = carriedBy(port, subject);
  const sources = port.cls === 'dc-in' || port.cls === 'output' ? ultimateSources(port) : [];
  const isDcSource = circuit === 'array' || circuit === 'turbine';
  const arraySources = isDcSource ? sources.filter((s) => s.kind === 'array') : [];
  const arrays = arraySources.map((array) => arrayFacts(site, array));
  const isBus = port.cls === 'battery' || port.cls === 'dc-bus';
  const batteries = isBus ? batteriesOn(port).map(batteryFacts) : [];
  const isPower = current === 'ac' && circuit === 'power';
  const grounded = isPower ? job.groundingAt(port) : undefined;
  const grounding = grounded?.grounding ?? 'solid';
  return {
    basis: site.basis.value,
    earthing: site.earthing.value,
    occupancy: site.occupancy.value,
    tag: subject.tag,
    kind: port.equipment.kind,
    port: port.cls,
    current,
    inputUse: port.use,
    arrays,
    arrayGroups: isDcSource ? arrayGroupsOf(port, arrays) : [],
    joined: isDcSource ? joinedFacts(job, port, arraySources) : undefined,
    turbines: isDcSource ? sources.filter((s) => s.kind !== 'array').map(turbineFacts) : [],
    converters: isDcSource ? convertersOf(port).map(converterFacts) : [],
    batteries,
    lowestTemp: site.list.facts.lowest_temp,
    lowestTempUnreadable: site.list.unreadable.has('lowest_temp'),
    system: port.system,
    whole: grounded?.whole,
    alsoBorne: alsoBorneAt(job, port, grounded),
    systemField: systemField(port),
    grounding,
    controlVoltage: facts.control_voltage,
    regulated: facts.supply?.value.trim().toLowerCase() === 'regulated',
    impulseWithstand: impulseWithstandOf(port, subject),
    overvoltageCategory: port.equipment.facts.overvoltage_category?.value,
    faultCurrent: faultCurrent(port),
    feederPlace: feederPlace(job, placement, port),
    lightning: site.list.facts.lightning_protection?.value ?? 'none',
    inverterDcLink: settings.inverterDcLink,
    unreadable: subject.row.unreadable,
    thresholds: settings.thresholds,
    withstandVoltage: withstandVoltageAt(job, port, subject, grounded),
  };
}

/** What the rule about the impulse withstand knows. */
export type WithstandFacts = Pick<
  RatingFacts,
  'tag' | 'kind' | 'impulseWithstand' | 'overvoltageCategory' | 'withstandVoltage'
>;

/** What the rule about the impulse withstand may know of a port: for whom nothing else of it matters. */
export function withstandFacts(job: JobContext, subject: SiteEquipment, port: SitePort): WithstandFacts {
  const { current, circuit } = carriedBy(port, subject);
  const grounded = current === 'ac' && circuit === 'power' ? job.groundingAt(port) : undefined;
  return {
    tag: subject.tag,
    kind: port.equipment.kind,
    impulseWithstand: impulseWithstandOf(port, subject),
    overvoltageCategory: port.equipment.facts.overvoltage_category?.value,
    withstandVoltage: withstandVoltageAt(job, port, subject, grounded),
  };
}

function impulseWithstandOf(port: SitePort, subject: SiteEquipment): RatingFacts['impulseWithstand'] {
  const { cls, equipment } = port;
  return cls === 'terminals' && equipment !== subject ? undefined : equipment.facts.impulse_withstand;
}

/** V. @param grounded how the system of an AC power port is grounded; undefined: it is none */
function withstandVoltageAt(
  { site: { basis, earthing } }: JobContext,
  port: SitePort,
  subject: SiteEquipment,
  grounded: PortGrounding | undefined,
): number | undefined {
  const { system } = port;
  if (!grounded || !system) return nominalAt(port, subject);
  const { whole, grounding } = grounded;
  return withstandEntryVoltage({ system, whole, grounding, basis: basis.value, earthing: earthing.value });
}

/** V; the nominal voltage of a battery bus or a control circuit, by which its equipment is made; of a battery that of its class. */
function nominalAt(port: SitePort, subject: SiteEquipment): number | undefined {
  if (port.cls === 'terminals') return subject.facts.control_voltage?.value.volts;
  if (port.cls !== 'battery' && port.cls !== 'dc-bus') return undefined;
  const own = port.equipment.facts.battery_voltage;
  const stated = (own ? [port.equipment] : batteriesOn(port)).flatMap(({ facts }) =>
    facts.battery_voltage ? [nominalClass(facts.battery_voltage.value)] : [],
  );
  return stated.length > 0 ? Math.max(...stated) : undefined;
}

/** The systems that a port bears beside its own. */
export function alsoBorneAt(
  job: JobContext,
  port: SitePort,
  grounded: PortGrounding | undefined,
): RatingFacts['alsoBorne'] {
  return [
    ...port.clashes.flatMap((other) => clashAt(job, other)),
    ...(grounded ? throughAutotransformer(port, grounded) : []),
  ];
}

/**
 * What a port behind an autotransformer bears beside its own system, since both sides are one: line to line of each where that
 * isn't solidly grounded; line to line of its own where it has no neutral, for the winding may lift one of its lines so far.
 */
function throughAutotransformer(
  { system }: SitePort,
  { grounding, autotransformer }: PortGrounding,
): RatingFacts['alsoBorne'] {
  if (!autotransformer || system === undefined) return [];
  if (grounding === 'solid') return AC_SYSTEM_DATA[system].hasNeutral ? [] : [lineToLine(system)];
  return autotransformer.ports.flatMap((side) => (side.system ? [lineToLine(side.system)] : []));
}

function lineToLine(system: AcSystem): RatingFacts['alsoBorne'][number] {
  return { system, whole: undefined, grounding: 'none' };
}

function clashAt(job: JobContext, other: SitePort): RatingFacts['alsoBorne'] {
  if (other.system === undefined) return [];
  const { grounding, whole } = job.groundingAt(other);
  return [{ system: other.system, whole, grounding }];
}

function feederPlace(job: JobContext, { reasons }: Placement, port: SitePort): RatingFacts['feederPlace'] {
  if (!reasons.some((r) => r.rule === FEEDER_RULE)) return '';
  return placementFacts(job, port).feeders.some((f) => f.outside) ? 'outside' : 'inside';
}

function faultCurrent(port: SitePort): FaultCurrentFacts | undefined {
  const { equipment, cls } = port;
  const isDc = cls === 'dc-in' || (cls === 'output' && !AC_OUTPUTS.has(equipment.kind));
  if (!isDc) return faultCurrentAt(port, transformerBound);
  // Of a DC source only its own row can state one.
  const own = cls === 'output' ? equipment.facts.fault_current : undefined;
  return (
    own && {
      value: own.value,
      own: true,
      from: [{ tag: equipment.tag, fact: own }],
      apart: [],
      unknown: [],
      passing: [],
    }
  );
}

/** Kinds whose output is an AC port of the site. */
const AC_OUTPUTS: ReadonlySet<Kind> = new Set<Kind>(['generator', 'ac-module-branch']);

function transformerBound({ kva, impedance, system }: TransformerFacts): number {
  return transformerFaultCurrent({ kva: kva.value, impedancePercent: impedance.value, system });
}

/** The converters that a DC port leads to. */
export function convertersOf(port: SitePort): readonly SiteEquipment[] {
  return (port.found.converters ??= convertersAt(port));
}

function convertersAt(port: SitePort): readonly SiteEquipment[] {
  if (CONVERTERS.has(port.equipment.kind)) return [port.equipment];
  const found = new Set<SiteEquipment>();
  for (const run of port.runs) {
    if (run.from !== port) continue;
    const other = run.to.equipment;
    if (CONVERTERS.has(other.kind)) found.add(other);
    else {
      const behind = converterFed(other);
      if (behind) found.add(behind);
    }
  }
  return [...found];
}

/** Sources of which one feeds the port stand in a group each; else all of its arrays are on it at once. */
function arrayGroupsOf(port: SitePort, arrays: readonly ArrayFacts[]): readonly (readonly string[])[] {
  if (!port.oneOfSources) return [arrays.map((a) => a.tag)];
  return port.sources
    .map((s) => (s.ports[0] ? ultimateSources(s.ports[0]) : []))
    .map((group) => group.filter((e) => e.kind === 'array').map((e) => e.tag));
}
