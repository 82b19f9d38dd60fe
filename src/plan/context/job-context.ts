import type { RunFacts } from '../../model/rule.js';
import type { Settings } from '../../model/settings.js';
import type { DcJoined, PortGrounding, Site, SiteEquipment, SitePort, SiteRun } from '../../model/site.js';
import { since, isNec } from '../../model/editions.js';
import type { Kind } from '../../model/words.js';
import { KINDS_WITH_MAIN_PORT, mainPortsOf } from '../../rules/main-ports.js';
import type { PlacementFacts } from '../../rules/placement-facts.js';
import { groundingOf, noGroundings } from '../../site/grounding.js';
import { ultimateSources } from '../../site/inputs.js';
import { partsOf } from '../../site/parts.js';
import { servicePlaceRun, unitOf, unitsFedBy, windCarrier } from '../../site/premises.js';
import type { ArrayCurrent, ArraySums } from './array-current.js';
import { converterFed, type Exposure } from './exposure.js';
import type { PartAround } from './part-around.js';

/** What is the same for every port of a job, worked out once. */
export interface JobContext {
  readonly site: Site;
  readonly settings: Settings;
  readonly exposure: Exposure;
  readonly carrier: SitePort | 'none' | undefined;
  /** m; limit of place/long-run under the job's basis. */
  readonly longRunLimit: number;
  /** How the AC system of a port is grounded; asked a dozen times a port, so found once. */
  groundingAt(port: SitePort): PortGrounding;
  /** The equipments that hang together with one, itself among them; one and the same list for each of them. */
  togetherWith(equipment: SiteEquipment): readonly SiteEquipment[];
  /** What each of these lists has that is on or off while something in it is measured: looked at once. */
  readonly around: Map<readonly SiteEquipment[], PartAround>;
  /** What placement rules know of each port that was asked about: a panel is asked about for every circuit that ends there. */
  readonly placementFacts: Map<SitePort, PlacementFacts>;
  /** What the arrays of a DC circuit come to, and what they can send through it: a hundred of them each ask. */
  readonly arraySums: Map<DcJoined, ArraySums>;
  readonly arrayCurrents: Map<DcJoined, ArrayCurrent | undefined>;
}

/** @param exposure what the job's facts say of its exposure to lightning */
export function jobContext(site: Site, settings: Settings, exposure: Exposure): JobContext {
  const nec = isNec(site.basis.value);
  const groundings = noGroundings();
  let parts: ReturnType<typeof partsOf> | undefined;
  return {
    site,
    settings,
    exposure,
    carrier: nec ? windCarrier(site) : undefined,
    longRunLimit: nec ? settings.thresholds.longRunNec : settings.thresholds.longRunIec,
    placementFacts: new Map(),
    arraySums: new Map(),
    arrayCurrents: new Map(),
    around: new Map(),
    groundingAt: (port) => (port.found.grounding ??= groundingOf(site, port, groundings)),
    togetherWith: (equipment) => (parts ??= partsOf(site)).get(equipment) ?? [equipment],
  };
}

/** True where a kind has a main port at which the list may ask for a protector. */
export function hasMainPort(kind: Kind): boolean {
  return KINDS_WITH_MAIN_PORT.includes(kind);
}

/** True for a port in use that is the main port of its kind. */
export function isMainPort({ equipment, cls, unused }: SitePort): boolean {
  if (unused !== '') return false;
  const { kind, ports } = equipment;
  return mainPortsOf(kind, ports.length === 1 ? [cls] : ports.map((port) => port.cls)).includes(cls);
}

/** What a placement rule may know of one port; `nearest` is there only once parts are chosen. */
export function placementFacts(
  job: JobContext,
  port: SitePort,
  nearest?: PlacementFacts['nearest'],
): PlacementFacts {
  let facts = job.placementFacts.get(port);
  if (!facts) {
    facts = factsAt(job, port);
    job.placementFacts.set(port, facts);
  }
  return nearest ? { ...facts, nearest } : facts;
}

function factsAt(job: JobContext, port: SitePort): PlacementFacts {
  const { site, settings, exposure } = job;
  const { equipment } = port;
  const { facts } = equipment;
  // Exposure decides with iec only, what a building holds from nec-2023 on.
  const isIec = site.basis.value === 'iec';
  const unit =
    port.cls === 'feeder' && since(site.basis.value, 'nec-2023') ? unitOf(site, equipment) : undefined;
  const limit = settings.thresholds.servicePlaceRun;
  const atService = port.cls === 'feeder' ? servicePlaceRun(port, limit) : undefined;
  const turbines =
    job.carrier === 'none' ? site.equipments.find((e) => e.kind === 'wind-turbine') : undefined;
  return {
    basis: site.basis.value,
    tag: equipment.tag,
    kind: equipment.kind,
    port: port.cls,
    occupancy: site.occupancy.value,
    unitOccupancy: unit?.occupancy.value ?? site.occupancy.value,
    unitsFed: equipment.kind === 'service' ? unitsFedBy(site, equipment) : NO_UNITS,
    outdoors: equipment.outdoors.value,
    worthProtecting: equipment.worthProtecting.value,
    protect: facts.protect?.value,
    mainPort: isMainPort(port),
    runs: port.runs.map((run) => runFacts(job, port, run)),
    runInDoubt: site.inDoubt.has(equipment.tag),
    feeders: port.feeders.length === 0 ? NO_FEEDERS : port.feeders.map((f) => feederFacts(port, f)),
    servicePlaceOf: atService?.from.equipment.tag ?? '',
    servicePlaceUnknown: equipment.kind === 'panel' && servicePlaceUnknown(port),
    servicePlaceUnplaced: equipment.kind === 'panel' ? servicePlaceUnplaced(port, limit) : NO_TAGS,
    inputUse: port.use,
    sourceKinds: port.cls === 'dc-in' ? ultimateSources(port).map((s) => s.kind) : NO_KINDS,
    unused: port.unused,
    hasWind: job.carrier !== undefined,
    windCarrier: job.carrier === port,
    windWithoutAc: turbines === equipment,
    controlVolts: facts.control_voltage?.value.volts,
    connected: equipment.kind === 'control-circuit' && port.runs.length > 0,
    ownLength:
      equipment.kind === 'control-circuit' && port.runs.length === 0 ? facts.run_length?.value[0] : undefined,
    drive: driveAt(port),
    longRunLimit: job.longRunLimit,
    controlVoltageLimit: settings.thresholds.controlVoltage,
    riskLevel: exposure.riskLevel?.value,
    criticalLength: isIec ? exposure.criticalLengthFor(equipment)?.value : undefined,
    arraysLength:
      isIec && (port.cls === 'dc-in' || equipment.kind === 'array')
        ? exposure.arraysLength(equipment)
        : undefined,
    serviceRequired: exposure.serviceRequired,
    nearest: undefined,
  };
}

const NO_TAGS: readonly string[] = [];
const NO_UNITS: PlacementFacts['unitsFed'] = [];
const NO_KINDS: readonly Kind[] = [];
const NO_FEEDERS: PlacementFacts['feeders'] = [];

function feederFacts(port: SitePort, feeder: SitePort): PlacementFacts['feeders'][number] {
  const { tag, kind } = feeder.equipment;
  for (const run of port.runs)
    if (run.from === feeder && run.to === port) return { tag, kind, outside: run.betweenBuildings };
  return { tag, kind, outside: false };
}

/** The pump drive whose output a port is, or is fed by. */
function driveAt({ cls, equipment, feeders }: SitePort): string {
  if (equipment.kind === 'pump-drive') return cls === 'ac-out' ? equipment.tag : '';
  for (const feeder of feeders) if (feeder.equipment.kind === 'pump-drive') return feeder.equipment.tag;
  return '';
}

function servicePlaceUnknown(port: SitePort): boolean {
  return port.runs.some(
    (r) =>
      r.to === port && r.from.equipment.kind === 'service' && !r.betweenBuildings && r.length === undefined,
  );
}

/** Tags whose place would say whether a panel is its service's place. */
function servicePlaceUnplaced(port: SitePort, limit: number): readonly string[] {
  const run = port.runs.find(
    (r) => r.to === port && r.from.equipment.kind === 'service' && r.unplaced.length > 0,
  );
  return run && (run.length === undefined || run.length <= limit) ? run.unplaced : [];
}

/** A run as the rules see it from one of its ends. */
export function runFacts(job: JobContext, port: SitePort, run: SiteRun): RunFacts {
  const upstream = run.from === port;
  const other = upstream ? run.to : run.from;
  const asked = run.unknown.find((row) => isAskable(row));
  const isIec = job.site.basis.value === 'iec';
  const converter = isIec && run.carries === 'dc' ? converterOf(run) : undefined;
  return {
    unknownRow: (asked ?? run.unknown[0])?.tag ?? '',
    lengthNotAsked: run.length === undefined && asked === undefined,
    otherTag: other.equipment.tag,
    otherKind: other.equipment.kind,
    length: run.length,
    outdoors: run.outdoors,
    outdoorsByDefault: run.outdoorsByDefault,
    betweenBuildings: run.betweenBuildings,
    betweenByDefault: run.betweenByDefault,
    placesDiffer: run.placesDiffer,
    unplaced: run.unplaced,
    placeless: run.placeless,
    carries: run.carries,
    upstream,
    fromArray: isIec && run.carries === 'dc' && ultimateSources(run.from).some((s) => s.kind === 'array'),
    arraysLength: converter ? job.exposure.arraysLength(converter) : undefined,
  };
}

/** A length is asked for only where the row holds something worth protecting and its cell isn't an item already. */
function isAskable(row: SiteEquipment): boolean {
  const isExempt = row.kind === 'diversion-load' && row.facts.protect?.value !== true;
  const holds = (row.worthProtecting.value && !isExempt) || row.kind === 'service';
  return holds && !row.row.unreadable.has('run_length');
}

/** The converter that a DC run leads to, combiners passed through. */
function converterOf(run: SiteRun): SiteEquipment | undefined {
  return run.to.cls === 'dc-in' ? run.to.equipment : converterFed(run.to.equipment);
}
