import { AC_SYSTEM_DATA, nominalToGround } from '../../electrical/ac-systems.js';
import { generatorFrequency } from '../../electrical/wind.js';
import type { Part } from '../../model/catalogue.js';
import type { PlannedIndicator } from '../../model/plan.js';
import type { FoundOfPort, SiteEquipment, SitePort } from '../../model/site.js';
import type { AcSystem, Conductor, DcGrounding } from '../../model/words.js';
import type { IndicatorFacts } from '../../rules/indicator-facts.js';
import { INDICATOR_RULES } from '../../rules/rulebook.js';
import { batteriesOn, portsOnBus } from '../../site/battery-bus.js';
import { batteryGroundingByDefault } from '../../rules/dc-grounding.js';
import { drivenBy, ultimateSources } from '../../site/inputs.js';
import type { Placement } from '../context/verdict.js';
import { memo } from '../context/memo.js';
import { carriedBy, convertersOf } from '../rate/rating-facts.js';
import type { JobContext } from '../context/job-context.js';
import type { PortWiring, WiredChannel } from '../rate/wire.js';
import { indicatorKey } from './indicator-key.js';

/** What the indicator of one channel shows in each state, and the rule that says so. */
export interface Indicated {
  readonly rule: string;
  readonly indicator: readonly PlannedIndicator[];
}

const indicated = memo<Indicated>();

export function indicate(
  job: JobContext,
  placement: Placement,
  wiring: PortWiring,
  channel: WiredChannel,
  part: Part | undefined,
): Indicated {
  const facts = indicatorFacts(job, placement, wiring, channel, part);
  return indicated(INDICATOR_RULES, indicatorKey(facts), () => decide(facts));
}

function decide(facts: IndicatorFacts): Indicated {
  for (const rule of INDICATOR_RULES) {
    const decision = rule.decide(facts);
    if (decision.outcome === 'shows') return { rule: rule.id, indicator: decision.indications };
  }
  throw new Error(`no indicator rule knows ${facts.conductor} of a ${facts.circuit} circuit`);
}

function indicatorFacts(
  job: JobContext,
  placement: Placement,
  wiring: PortWiring,
  channel: WiredChannel,
  part: Part | undefined,
): IndicatorFacts {
  const { port, conductor } = channel;
  const { subject } = placement;
  const { circuit } = carriedBy(port, subject);
  const poles = circuit === 'power' || circuit === 'turbine' ? undefined : poleGrounding(port, subject);
  const supply = suppliesOf(port);
  const isDc = circuit === 'array';
  const driven = isDc ? drivenBy(ultimateSources(port)) : undefined;
  const grounded =
    poles === undefined ? isGroundedAc(wiring, channel) : isGroundedPole(poles, conductor, circuit);
  return {
    circuit,
    current: wiring.facts.current,
    conductor,
    grounded,
    floating: poles === undefined ? isFloatingAc(wiring) : poles === 'floating' || poles === 'unknown',
    liftedNeutral: conductor === 'N' ? liftedNeutral(wiring) : undefined,
    fedByUtility: supply.utility,
    fedBySource: supply.source,
    turbineDriven: driven === 'turbine',
    sunAndWind: driven === 'both',
    rapidShutdown: isBehindBox(port),
    turbineOutputKnown:
      circuit !== 'turbine' || ultimateSources(port).every((s) => s.facts.output !== undefined),
    frequency: circuit === 'turbine' ? frequencyOf(port) : undefined,
    groundingUnknown:
      poles === 'unknown' || (circuit === 'control' && controlGroundingOf(subject) === undefined),
    indicator: part?.indicator ?? undefined,
    indicatorMinVoltage: part?.indicatorMinVoltage ?? undefined,
    usualVoltage: usualVoltage(job, wiring, channel, subject),
  };
}

/** True where a rapid-shutdown box stands between the arrays and this port, also ahead of a combiner. */
export function isBehindBox({ cls, equipment, runs }: SitePort): boolean {
  if (cls !== 'dc-in' && equipment.kind !== 'combiner') return false;
  return runs.some(
    ({ from, to, rapidShutdown }) => to.equipment === equipment && (rapidShutdown || isBehindBox(from)),
  );
}

/** `unknown`: what shares the conductors is stated to be grounded differently. */
export type PoleGrounding = DcGrounding | 'unknown';

/**
 * Which pole of a DC circuit is grounded: as its rows state, else on a charge controller that of its battery, floating on an
 * inverter; of a battery by its voltage; a control circuit's isn't known by default. What shares the conductors shares their
 * grounding.
 */
export function poleGrounding(port: SitePort, subject: SiteEquipment): PoleGrounding {
  if (port.cls === 'terminals') return controlGroundingOf(subject) ?? 'floating';
  return (port.found.pole ??= poleAt(port));
}

function poleAt(port: SitePort): PoleGrounding {
  if (port.cls === 'battery' || port.cls === 'dc-bus') return busGrounding(port);
  // What a source's row states counts at its own port, whatever input it was given by order.
  const own =
    port.cls === 'output' && inputFed(port).oneOfSources ? statedAlike(ultimateSources(port)) : undefined;
  if (own !== undefined) return own;
  const converters = convertersOf(port);
  const onController = converters.length > 0 && converters.every((c) => c.kind === 'charge-controller');
  const byDefault = onController ? behindControllers(converters) : 'floating';
  const input = inputFed(port);
  // Where it isn't stated which of several feeds this input, each may, by its own grounding.
  const sources = ultimateSources(input);
  const stated = input.oneOfSources ? undefined : statedAlike(sources);
  return stated ?? alike(sources, byDefault) ?? byDefault;
}

/** What a control circuit states of its grounding, or the company for all of them; undefined: it isn't known. */
export function controlGroundingOf({ facts, row }: SiteEquipment): DcGrounding | undefined {
  return facts.dc_grounding?.value ?? row.settled?.dc_grounding?.value;
}

/** Of a battery bus: what its batteries state, else what hangs on it states, else by the voltage of its batteries. */
function busGrounding(port: SitePort): PoleGrounding {
  const batteries = batteriesOn(port);
  const stated =
    statedAlike(batteries) ?? statedAlike([...portsOnBus(port)].map((p) => p.equipment).filter(isOnDcBus));
  if (stated !== undefined) return stated;
  const voltages = batteries.flatMap(({ facts }) => facts.battery_voltage?.value ?? []);
  const byDefault = batteryGroundingByDefault(voltages.length > 0 ? Math.max(...voltages) : undefined);
  return alike(batteries, byDefault) ?? byDefault;
}

function isOnDcBus({ ports }: SiteEquipment): boolean {
  return ports.some((p) => p.cls === 'dc-bus');
}

/** An array on charge controllers that states none has the grounding of their batteries. */
function behindControllers(controllers: readonly SiteEquipment[]): PoleGrounding {
  const buses = controllers.map((c) => {
    const port = c.ports.find((p) => p.cls === 'battery');
    return port && batteriesOn(port).length > 0 ? busGrounding(port) : 'negative';
  });
  const [first = 'negative'] = buses;
  return buses.every((one) => one === first) ? first : 'unknown';
}

/** The input that a source's conductors lead to, through combiners: what else feeds it is in parallel. */
function inputFed(port: SitePort): SitePort {
  const run =
    port.cls === 'output'
      ? port.runs.find((r) => r.from === port && r.carries === 'dc' && r.to.cls !== 'dc-bus')
      : undefined;
  return run ? inputFed(run.to) : port;
}

/** What the rows that state a grounding say alike; undefined: none states one. */
function statedAlike(rows: readonly SiteEquipment[]): PoleGrounding | undefined {
  return oneOf(rows.map(({ facts }) => facts.dc_grounding?.value));
}

/**
 * What all rows say alike, one that states nothing as it is settled for it, else by default; where the default isn't known it says
 * nothing. Undefined: none says anything.
 */
function alike(rows: readonly SiteEquipment[], byDefault: PoleGrounding): PoleGrounding | undefined {
  const known = byDefault === 'unknown' ? undefined : byDefault;
  return oneOf(rows.map((row) => row.facts.dc_grounding?.value ?? settledFor(row, byDefault) ?? known));
}

/** That a company grounds a pole where that is usual says nothing of conductors that float: their lights would be told wrongly. */
function settledFor({ row }: SiteEquipment, byDefault: PoleGrounding): DcGrounding | undefined {
  const settled = row.settled?.dc_grounding?.value;
  return byDefault === 'floating' && settled !== 'floating' ? undefined : settled;
}

function oneOf(groundings: readonly (DcGrounding | undefined)[]): PoleGrounding | undefined {
  let said: PoleGrounding | undefined;
  for (const one of groundings) {
    if (one === undefined || one === said) continue;
    if (said !== undefined) return 'unknown';
    said = one;
  }
  return said;
}

function isGroundedPole(poles: PoleGrounding, conductor: string, circuit: string): boolean {
  if (circuit === 'control' && conductor === 'N') return poles === 'negative';
  return poles === conductor;
}

/** N of a solid system, or at its bond; the corner-grounded phase, which is L2. */
function isGroundedAc(wiring: PortWiring, channel: WiredChannel): boolean {
  const { grounding, bondedHere, circuit } = wiring.facts;
  if (circuit !== 'power') return false;
  if (channel.conductor === 'N') return bondedHere || grounding === 'solid' || grounding === 'corner';
  return grounding === 'corner' && channel.conductor === 'L2';
}

function isFloatingAc(wiring: PortWiring): boolean {
  return wiring.facts.grounding === 'none' || wiring.facts.grounding === 'impedance';
}

/** N between lines is their star point or midpoint; of two wires alone it is as a line. */
function liftedNeutral({ facts }: PortWiring): IndicatorFacts['liftedNeutral'] {
  const { grounding, bondedHere, whole, system } = facts;
  const of = whole ?? system;
  if (bondedHere || of === undefined) return undefined;
  const { lineToLine, linesToGround } = AC_SYSTEM_DATA[of];
  if (lineToLine <= Math.min(...linesToGround)) return undefined;
  if (grounding === 'impedance') return 'held';
  return grounding === 'none' ? 'free' : undefined;
}

function frequencyOf(port: SitePort): number | undefined {
  let highest: number | undefined;
  for (const { facts } of ultimateSources(port)) {
    if (!facts.poles || !facts.rpm) continue;
    const { value } = generatorFrequency({ poles: facts.poles.value, rpm: facts.rpm.value });
    highest = Math.max(highest ?? 0, value);
  }
  return highest;
}

/** Whether the utility, and whether an inverter or a generator, gives an AC port its voltage, and which equipments do. */
export function suppliesOf(port: SitePort): NonNullable<FoundOfPort['supplies']> {
  return (port.found.supplies ??= suppliesAt(port));
}

function suppliesAt(port: SitePort): NonNullable<FoundOfPort['supplies']> {
  let utility = false;
  let source = false;
  const by = new Set<SiteEquipment>();
  const seen = new Set<SitePort>();
  const walk = (at: SitePort): void => {
    if (seen.has(at)) return;
    seen.add(at);
    const { kind } = at.equipment;
    const isOwn =
      kind === 'generator' || kind === 'ac-battery' || (kind === 'inverter-charger' && at.cls === 'ac-out');
    if (kind === 'service' || isOwn) {
      if (isOwn) source = true;
      else utility = true;
      by.add(at.equipment);
    } else if (kind === 'transformer' && at.cls === 'ac-out') {
      for (const side of at.equipment.ports) if (side.cls === 'ac-in') walk(side);
    } else for (const feeder of at.feeders) walk(feeder);
  };
  walk(port);
  return { utility, source, by: [...by] };
}

/** V; what a conductor of a system that isn't solidly grounded can stand at in a ground fault: its light may show it, if it can. */
function highestWhereFloating(system: AcSystem, conductor: Conductor): number {
  const { lineToLine, linesToGround } = AC_SYSTEM_DATA[system];
  return conductor === 'N' ? Math.max(...linesToGround) : lineToLine;
}

/**
 * V to ground, nominal, where the conductor is energised (of a system that isn't solidly grounded in a ground fault); undefined where
 * no figure is known.
 */
function usualVoltage(
  job: JobContext,
  wiring: PortWiring,
  channel: WiredChannel,
  subject: SiteEquipment,
): number | undefined {
  const { circuit, system, whole, grounding } = wiring.facts;
  const { site } = job;
  if (circuit === 'power' && system) {
    const { conductor } = channel;
    if (isFloatingAc(wiring)) return highestWhereFloating(whole ?? system, conductor);
    const basis = site.basis.value;
    const earthing = site.earthing.value;
    return nominalToGround({ system, whole, grounding, conductor, basis, earthing }) ?? undefined;
  }
  if (circuit === 'control') return subject.facts.control_voltage?.value.volts;
  if (circuit === 'battery') return batteriesOn(channel.port)[0]?.facts.battery_voltage?.value;
  return undefined;
}
