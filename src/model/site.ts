import type { Fact, Stated } from './fact.js';
import type { JobList, ListRow, RowFacts } from './list.js';
import type { PlacedNote } from './open-item.js';
import type { Basis } from './editions.js';
import type { FaultCurrent, Fed, Feed } from './fault-current.js';
import type {
  AcSystem,
  DcGrounding,
  Earthing,
  Kind,
  Occupancy,
  PortClass,
  PortName,
  SystemGrounding,
} from './words.js';

/** A value with whether the list states it or a default stands in. */
export interface OrDefault<T> {
  readonly value: T;
  readonly byDefault: boolean;
}

/** How a DC input is used. */
export type InputUse = 'fed' | 'assumed' | 'spare';

/** One set of terminals of an equipment. */
export interface SitePort {
  readonly equipment: SiteEquipment;
  readonly name: PortName;
  readonly cls: PortClass;
  /** 1... of a DC input; 0 of another port. */
  readonly input: number;
  /** Of a DC input: whether a source feeds it. */
  use: InputUse;
  /** Of an AC port: its system as the list states it, or that of what feeds it; undefined: not known, or not an AC port. */
  system: AcSystem | undefined;
  /** Where that was read. */
  systemBy: 'stated' | 'feed' | undefined;
  /** Ports at the other end of a run whose system isn't that of this one, nor a part of it: an item says so, both ends are rated for both. */
  readonly clashes: SitePort[];
  /** An AC port that the list says is unused, or that nothing states or feeds. */
  readonly unused: '' | 'stated' | 'nothing-named';
  /** Sources (array, combiner, turbine) on a DC input or a combiner, in natural order. */
  readonly sources: SiteEquipment[];
  /** True where any one of `sources` feeds this input, and not all of them at once: which one isn't stated. */
  oneOfSources: boolean;
  /** Ports that feed this one, through transfer switches and disconnects, in natural order. */
  readonly feeders: SitePort[];
  /** Runs that end here. */
  readonly runs: SiteRun[];
  /** What was found of it once it was asked for; it goes with the site, or a batch would drag every site along. */
  readonly found: FoundOfPort;
}

/** What is worked out of a port of a surveyed site when it is first asked for: every rule asks again. */
export interface FoundOfPort {
  /** The arrays and turbines behind it. */
  sources: readonly SiteEquipment[] | undefined;
  /** The batteries on its bus. */
  batteries: readonly SiteEquipment[] | undefined;
  /** How its AC system is grounded. */
  grounding: PortGrounding | undefined;
  /** Which pole of a DC port is grounded; `unknown`: what shares the conductors is grounded differently. */
  pole: DcGrounding | 'unknown' | undefined;
  /** Whether the utility, and whether an inverter or a generator, gives an AC port its voltage, and which equipments do. */
  supplies:
    | { readonly utility: boolean; readonly source: boolean; readonly by: readonly SiteEquipment[] }
    | undefined;
  /** The converters that a DC port leads to. */
  converters: readonly SiteEquipment[] | undefined;
  /** The DC circuit that it is on. */
  circuit: DcJoined | undefined;
  /** Its fault bus, looked at from what feeds it, and from what it feeds: one and the same unless the port separates them. */
  busAbove: FaultBus | undefined;
  busBelow: FaultBus | undefined;
  /** The fault current; null: nobody states anything. */
  faultCurrent: FaultCurrent | null | undefined;
}

/** What is joined to one DC circuit: whatever feeds a fault anywhere on it. */
export interface DcJoined {
  /** Arrays, in natural order. */
  readonly arrays: ReadonlySet<SiteEquipment>;
  /** Turbines and combiners, in natural order. */
  readonly others: readonly SiteEquipment[];
  /** DC inputs, in natural order: what a converter sends back comes out of each. */
  readonly inputs: readonly SitePort[];
  /** True where something else than arrays drives it, or nothing on the list does. */
  readonly otherSources: boolean;
  /** True where turbines alone drive it. */
  readonly turbinesAlone: boolean;
}

/** AC ports of which a fault is fed alike: joined without a transfer switch and without a row that says what is available there. */
export interface FaultBus {
  /** What rows that feed it say is available at them; what stands ahead of them is in that figure. */
  readonly given: Feed[];
  /** What feeds by itself: generators, inverters, AC batteries, services; and panels of which nobody says what feeds them. */
  readonly sources: Feed[];
  /** Ports fed by it that say what is available there: what stands behind them may feed back. */
  readonly lower: SitePort[];
  /** Runs through a transfer switch that feed it, and that it feeds. */
  readonly up: SiteRun[];
  readonly down: SiteRun[];
  /** AC inputs, by inverter, whose supply its AC out passes on. */
  readonly passed: (readonly SitePort[])[];
  /** All that can feed a fault on it, and what feeds back to it, once each was asked for. */
  fed: Fed | undefined;
  feedsBack: Fed | undefined;
}

/** What was found of the supplies of a site, each once: a chain of panels may be as long as its list. */
export interface Supplies {
  readonly heads: Map<SiteEquipment, SiteEquipment>;
  readonly buildings: Map<SiteEquipment, boolean>;
  /** The first of the site. */
  readonly service: SiteEquipment | undefined;
}

/** One equipment: a row of the list, or one of a row of several. */
export interface SiteEquipment {
  readonly tag: string;
  readonly kind: Kind;
  readonly row: ListRow;
  readonly facts: Stated<RowFacts>;
  /** `` where it can't be known. */
  readonly place: string;
  /** Where the place isn't known: the tag whose place it is, of itself or of what it connects to; `` where it is known. */
  readonly placeOf: string;
  /** `` where it can't be known. */
  readonly building: string;
  readonly buildingByDefault: boolean;
  readonly outdoors: OrDefault<boolean>;
  readonly worthProtecting: OrDefault<boolean>;
  readonly ports: SitePort[];
}

/** One cable of a run. Runs that share a cable share the object. */
export interface RunLeg {
  readonly row: SiteEquipment;
  /** m; undefined: not stated. */
  readonly length: number | undefined;
}

/** A length of cable between two ports, transfer switches and disconnects passed through. */
export interface SiteRun {
  /** The upstream end: source before converter, service before panel. */
  readonly from: SitePort;
  readonly to: SitePort;
  /** The cables that it is made of, in order; the length of each belongs to its row. */
  readonly legs: readonly RunLeg[];
  /** Tags of what it passes through, in order. */
  readonly through: readonly string[];
  /** Those of them that are transfer switches. */
  readonly switches: readonly string[];
  /** True where one of them is a rapid-shutdown box. */
  readonly rapidShutdown: boolean;
  /** m; undefined where a row of it states none. */
  readonly length: number | undefined;
  /** Rows of it that state no length. */
  readonly unknown: readonly SiteEquipment[];
  readonly outdoors: boolean;
  /** True where only a default says that an end is outdoors. */
  readonly outdoorsByDefault: boolean;
  readonly betweenBuildings: boolean;
  /** True where a building that decides it was taken from the place. */
  readonly betweenByDefault: boolean;
  /** Tags whose place would say whether it leads to another building; empty: that is known. */
  readonly unplaced: readonly string[];
  /** True where the places of its ends are known and differ. */
  readonly placesDiffer: boolean;
  /** Tags whose place would say whether it leaves the place that it begins in; empty: that is known. */
  readonly placeless: readonly string[];
  readonly carries: 'ac' | 'dc' | 'battery' | 'control';
}

/** The survey of one job. */
export interface Site {
  readonly list: JobList;
  readonly job: string;
  readonly basis: OrDefault<Basis>;
  readonly earthing: OrDefault<Earthing>;
  readonly occupancy: OrDefault<Occupancy>;
  /** In natural order of tags. */
  readonly equipments: readonly SiteEquipment[];
  readonly runs: readonly SiteRun[];
  readonly supplies: Supplies;
  /** Tags of equipment that a connection with an error names, or may mean: an item says so already. */
  readonly inDoubt: ReadonlySet<string>;
  readonly notes: readonly PlacedNote[];
  /** Why nothing of the job is looked at: it is larger than a site may be. */
  readonly limit?: PlacedNote;
}

/** What an AC port's system is grounded like, and where that was read. */
export interface PortGrounding {
  /** The system that the port's own is a part of, or its own; undefined: not known. */
  readonly whole: AcSystem | undefined;
  readonly grounding: SystemGrounding;
  readonly byDefault: boolean;
  readonly from: Fact<SystemGrounding> | undefined;
  /** The autotransformer that it stands behind: both its sides are one system. */
  readonly autotransformer: SiteEquipment | undefined;
}
