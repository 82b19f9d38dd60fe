import { coldVoltageWithoutTemperature } from '../../electrical/cold-voltage.js';
import { leastBatteryVoltage, leastInFullSun } from '../../electrical/rest-voltage.js';
import { hundredthsOr } from '../../model/rounding.js';
import type { PlannedProtector } from '../../model/plan.js';
import type { PlannedBand, Probes } from '../../model/planned-measuring.js';
import { isSameReason } from '../../model/reason.js';
import type { SiteEquipment, SitePort } from '../../model/site.js';
import type { Conductor, Kind } from '../../model/words.js';
import { readAcConductors } from '../../rules/measure/ac-conductors.js';
import { clothingNeeded } from '../../rules/measure/clothing.js';
import { readControlCircuit } from '../../rules/measure/control-circuit.js';
import { readDcPair } from '../../rules/measure/dc-pair.js';
import { highest } from '../../rules/measure/highest.js';
import { meterNeeded } from '../../rules/measure/meter.js';
import { readTurbinePhases } from '../../rules/measure/turbine-phases.js';
import type { Reading } from '../../rules/measuring-facts.js';
import { INVERTER_LINK_RULE, VOLTAGE_RULES } from '../../rules/rulebook.js';
import { batteriesOn } from '../../site/battery-bus.js';
import { drivenBy, ultimateSources } from '../../site/inputs.js';
import { controlGroundingOf, isBehindBox, poleGrounding, suppliesOf } from '../choose/indicate.js';
import { betweenConductors, type BoxStands } from './box-stands.js';
import type { Selected } from '../choose/select.js';
import type { JobContext } from '../context/job-context.js';
import type { Asked } from '../rate/rate.js';
import { convertersOf } from '../rate/rating-facts.js';
import type { PortWiring, WiredChannel } from '../rate/wire.js';
import { measuredStateOf } from './sources-on.js';

type Measuring = PlannedProtector['wiring']['measuring'];

/**
 * What is measured at one housing before anything is connected, with what meter and in what clothing.
 * @param beside what stands at the other ports of its enclosure
 */
export function measuringOf(
  job: JobContext,
  one: Selected,
  channels: readonly WiredChannel[],
  beside: BoxStands,
): Measuring {
  const { requirement, placement, wirings } = one;
  const shared = placement.ports.length > 1;
  const { measuring } = job.settings;
  const current = requirement.current ?? null;
  const bands: PlannedBand[] = [];
  const volts: (number | undefined)[] = [requirement.mcov?.value];
  for (const wiring of wirings) {
    const { port } = wiring;
    volts.push(...betweenConductors(job, port));
    const conductors: Conductor[] = [];
    for (const channel of channels) {
      if (channel.port === port && !conductors.includes(channel.conductor))
        conductors.push(channel.conductor);
    }
    if (conductors.length === 0) continue;
    for (const reading of readingsAt(job, one, wiring, conductors))
      addTo(bands, reading, shared ? port.name : null, current);
  }
  const known = requirement.sccrState === 'known' ? requirement.sccr?.value : undefined;
  for (const { high } of bands) volts.push(high ?? undefined);
  const atService = beside.atService || placement.ports.some(({ cls }) => cls === 'service');
  const meter = meterNeeded({ atService, current, volts, beside: beside.volts });
  const isControl = requirement.circuit === 'control';
  const currents = isControl ? beside.faultCurrents : [known, ...beside.faultCurrents];
  const most = highest(currents);
  const clothing = clothingNeeded({
    basis: job.site.basis.value,
    faultCurrent: most,
    known: highest([
      ...(isControl || !requirement.sccr ? [] : [requirement.sccr.value]),
      ...beside.faultCurrentsKnown,
    ]),
    isControl: currents.length === 0,
    limit: measuring.clothingFaultCurrent,
  });
  return {
    state: measuredStateOf(job, one),
    bands,
    meter: { category: meter.category, volts: hundredthsOr(meter.volts), says: meter.says, current },
    clothing: { faultCurrent: hundredthsOr(most), first: clothing.first, says: clothing.says },
  };
}

/** Readings of one band stand together. */
function addTo(
  bands: PlannedBand[],
  reading: Reading,
  port: string | null,
  current: PlannedBand['current'],
): void {
  const { reads, below, above, fault, due } = reading;
  const low = hundredthsOr(reading.low);
  const high = hundredthsOr(reading.high);
  const wire = (name: Conductor): Probes['wire'] => ({ port, name, doubled: false });
  const probes: Probes = {
    wire: wire(reading.wire),
    to: reading.to === null ? null : wire(reading.to),
    sign: reading.sign,
  };
  // What is read pole to pole or line to line isn't what is read to ground, even where the figures are the same.
  const there = bands.find(
    (b) =>
      b.low === low &&
      b.high === high &&
      (b.between[0]?.to === null) === (probes.to === null) &&
      isSameReason(b.reads, reads) &&
      isSameReason(b.below, below) &&
      isSameReason(b.above, above) &&
      isSameReason(b.fault, fault) &&
      isSameReason(b.due, due),
  );
  if (there) there.between.push(probes);
  else bands.push({ between: [probes], current, low, high, reads, below, above, fault, due });
}

function readingsAt(
  job: JobContext,
  one: Selected,
  wiring: PortWiring,
  conductors: readonly Conductor[],
): readonly Reading[] {
  const { circuit, mcov } = one.requirement;
  switch (circuit) {
    case 'power':
      return acReadings(job, one, wiring, conductors);
    case 'turbine':
      return readTurbinePhases({ conductors, most: mcov?.value });
    case 'array':
    case 'battery':
      return dcReadings(job, one, wiring.port);
    case 'control':
      return controlReadings(job, one);
  }
}

/** Kinds that voltage of the service is measured at; all others use it. */
const AT_SERVICE: ReadonlySet<Kind> = new Set<Kind>(['service', 'panel', 'transformer']);

function acReadings(
  job: JobContext,
  { requirement }: Selected,
  { port, facts }: PortWiring,
  conductors: readonly Conductor[],
): readonly Reading[] {
  const supply = suppliesOf(port);
  const utility = supply.utility || isPassedThrough(port);
  const atService = AT_SERVICE.has(port.equipment.kind) && port.cls !== 'ac-in';
  return readAcConductors({
    basis: job.site.basis.value,
    earthing: job.site.earthing.value,
    system: port.system,
    whole: facts.whole,
    grounding: facts.grounding,
    place: atService ? 'service' : 'utilization',
    fedByUtility: utility,
    fedBySource: supply.source,
    threePlusOne: facts.threePlusOne,
    conductors,
    mostToGround: requirement.mcov?.value,
    settings: job.settings.measuring,
  });
}

/** True where an inverter-charger passes the utility of its AC input through to a port. */
function isPassedThrough(port: SitePort): boolean {
  const seen = new Set<SitePort>([port]);
  const open = [port];
  for (let at = open.pop(); at; at = open.pop()) {
    const { equipment, cls, system } = at;
    if (equipment.kind === 'inverter-charger' && cls === 'ac-out') {
      const inputs = equipment.ports.filter((p) => p.cls === 'ac-in' || p.cls === 'ac-in-2');
      if (inputs.some((p) => p.system === system && suppliesOf(p).utility)) return true;
      continue;
    }
    for (const feeder of at.feeders) {
      if (seen.has(feeder)) continue;
      seen.add(feeder);
      open.push(feeder);
    }
  }
  return false;
}

const VOLTAGE_RULE_IDS: ReadonlySet<string> = new Set(
  VOLTAGE_RULES.filter((rule) => rule !== INVERTER_LINK_RULE).map(({ id }) => id),
);

/**
 * V; the most that arrays give whose voltage is only a draft: by the coldest row of the table. The draft is rated for what a converter
 * bears where that is more, but a string that stands there isn't the one of the list.
 * @returns undefined where what one of them gives isn't known
 * Source: NEC Table 690.7(A).
 */
function mostOfDraft(sources: readonly SiteEquipment[]): number | undefined {
  let most: number | undefined;
  for (const { facts } of sources) {
    const { open_circuit_voltage: stated, voc_stc: voc, modules_in_series: modules } = facts;
    let one = stated?.value;
    if (one === undefined) {
      if (facts.optimizers?.value === true || !voc || !modules) return undefined;
      const string = { vocStc: voc.value, modulesInSeries: modules.value, basis: 'nec-2023' } as const;
      one = coldVoltageWithoutTemperature(string).value;
    }
    most = Math.max(most ?? 0, one);
  }
  return most;
}

/** V; the most that a DC circuit's sources give pole to pole; what an inverter lifts its poles by isn't there while it is off. */
function mostOfSources({ requirement }: Selected): Asked | undefined {
  if (requirement.unknown.some(({ rule }) => VOLTAGE_RULE_IDS.has(rule))) return undefined;
  return requirement.voltages.find(({ rule }) => rule !== INVERTER_LINK_RULE);
}

function dcReadings(job: JobContext, one: Selected, port: SitePort): readonly Reading[] {
  const { requirement, placement } = one;
  const { measuring: settings } = job.settings;
  const asked = mostOfSources(one);
  const poles = poleGrounding(port, placement.subject);
  if (requirement.circuit === 'battery') {
    const low = leastOfBatteries(port);
    const high = asked?.value;
    return readDcPair({ of: 'battery', poles, low, high, bears: [], behindBox: false, settings });
  }
  const sources = ultimateSources(port);
  const of = drivenBy(sources);
  const strings = sources.map(({ facts }) => ({
    vocStc: facts.voc_stc?.value,
    modulesInSeries: facts.modules_in_series?.value,
    optimizers: facts.optimizers?.value === true,
  }));
  const bears: { tag: string; volts: number }[] = [];
  for (const { tag, facts } of convertersOf(port)) {
    if (facts.max_dc_voltage) bears.push({ tag, volts: facts.max_dc_voltage.value });
  }
  // A figure that stands in is rated by what converters bear, also where a cell that nobody can read leaves it so.
  const isDraft = asked?.bound !== undefined || (of === 'sun' && bears.some((b) => b.volts === asked?.value));
  const draft = isDraft && of === 'sun' ? mostOfDraft(sources) : undefined;
  const high = draft === undefined || asked === undefined ? undefined : Math.min(draft, asked.value);
  return readDcPair({
    of,
    poles,
    low: of === 'sun' ? leastInFullSun(strings, settings.fullSunShare) : undefined,
    high: isDraft ? high : asked?.value,
    bears,
    behindBox: isBehindBox(port),
    settings,
  });
}

/** V; what the weakest battery of a bus shows at the least; undefined where one isn't known. */
function leastOfBatteries(port: SitePort): number | undefined {
  let least: number | undefined;
  for (const { facts } of batteriesOn(port)) {
    const one =
      facts.battery_chemistry &&
      leastBatteryVoltage({
        chemistry: facts.battery_chemistry.value,
        nominal: facts.battery_voltage?.value,
        cells: facts.cells?.value,
      });
    if (one === undefined) return undefined;
    least = Math.min(least ?? Infinity, one);
  }
  return least;
}

function controlReadings(job: JobContext, { requirement, placement }: Selected): readonly Reading[] {
  const { control_voltage: stated } = placement.subject.facts;
  const isAc = stated?.value.current === 'ac';
  return readControlCircuit({
    current: stated?.value.current,
    nominal: stated?.value.volts,
    most: requirement.mcov?.value,
    grounding: controlGroundingOf(placement.subject),
    wires: isAc ? ['L1', 'N'] : ['positive', 'negative'],
    settings: job.settings.measuring,
  });
}
