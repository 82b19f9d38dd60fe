import type { Fact, FileLine, Signed, Stated } from './fact.js';
import type { OpenItem } from './open-item.js';
import type { Basis } from './editions.js';
import type {
  AcPortUse,
  BatteryChemistry,
  DcGrounding,
  Earthing,
  Kind,
  LightningProtection,
  Occupancy,
  OvervoltageCategory,
  SystemGrounding,
} from './words.js';

/** A temperature coefficient of the open-circuit voltage, as stated: negative for silicon. */
export interface VoltageCoefficient {
  readonly value: number;
  /** `%/C`: of Voc at STC; `V/C`: of one module; `mV/cell/C`: needs the cells of a module. */
  readonly unit: '%/C' | 'V/C' | 'mV/cell/C';
}

/** One of the rows that `connects_to` names. The tag is kept whole as well, since a tag may itself hold a slash. */
export interface Connection {
  /** As typed, trimmed. */
  readonly whole: string;
  /** Before the last `/` where what follows is input numbers; else the whole cell. */
  readonly tag: string;
  /** `TAG/2` is [2], `TAG/1+2` is [1, 2], `TAG` is []. */
  readonly inputs: readonly number[];
}

/** What a cell of `connects_to` names: several, `A; B`, where a row is joined to several; the whole, since a tag may hold a semicolon. */
export interface ConnectsTo extends Connection {
  /** The parts between semicolons, in their order; one where there is none. */
  readonly each: readonly Connection[];
}

/** A control circuit's voltage, `24 V dc`. */
export interface ControlVoltage {
  readonly volts: number;
  readonly current: 'dc' | 'ac';
}

/** Facts of a job; all volts, amperes, metres (km where the name says so), degrees Celsius. */
export interface JobFacts {
  job_name: string;
  address: string;
  occupancy: Occupancy;
  revision: string;
  owner: string;
  parcel: string;
  permit_number: string;
  amendments: string;
  drawn_by: string;
  checked_by: string;
  crew_language: string;
  owner_language: string;
  basis: Basis;
  earthing: Earthing;
  lowest_temp: number;
  lowest_temp_source: string;
  flash_density: number;
  thunderstorm_days: number;
  lv_overhead_km: number;
  lv_underground_km: number;
  hv_overhead_km: number;
  hv_underground_km: number;
  surroundings: 'rural' | 'urban';
  lightning_protection: LightningProtection;
}

/** Facts of one row; V, A, m, C. */
export interface RowFacts {
  tag: string;
  kind: Kind;
  quantity: number;
  maker: string;
  model: string;
  description: string;
  connects_to: ConnectsTo;
  /** m; one for each row that `connects_to` names, or one for all. */
  run_length: readonly number[];
  place: string;
  building: string;
  outdoors: boolean;
  mounting: 'roof' | 'ground' | 'recessed' | 'surface';
  building_occupancy: Occupancy;
  worth_protecting: boolean;
  protect: boolean;
  existing: string;
  dc_inputs: number;
  max_dc_voltage: number;
  isolated: boolean;
  /** kVA. */
  kva: number;
  /** %. */
  impedance_percent: number;
  rating_a: number;
  backfeed_a: number;
  parallel: boolean;
  rapid_shutdown: boolean;
  neutral_switched: boolean;
  modules: number;
  /** Index of a string: rows of one tag that state it are strings of one array. */
  string: string;
  voc_stc: number;
  isc_stc: number;
  modules_in_series: number;
  strings_in_parallel: number;
  voc_coefficient: VoltageCoefficient;
  cells: number;
  module_technology: string;
  optimizers: boolean;
  dc_grounding: DcGrounding;
  battery_voltage: number;
  /** Lower case; one of the known chemistries or another word. */
  battery_chemistry: BatteryChemistry | (string & {});
  ac_in: AcPortUse;
  ac_in_2: AcPortUse;
  ac_out: AcPortUse;
  system_grounding: SystemGrounding;
  n_pe_link: boolean;
  output: 'three-phase' | 'dc';
  open_circuit_voltage: number;
  poles: number;
  rpm: number;
  control_voltage: ControlVoltage;
  supply: string;
  fault_current: number;
  impulse_withstand: number;
  overvoltage_category: OvervoltageCategory;
  ahead_of_disconnect: boolean;
  lead_length: number;
  protector: string;
  serial: string;
}

export type JobField = keyof JobFacts;
export type RowField = keyof RowFacts;
export type Field = 'job' | JobField | RowField;

/** One file as it was read: which heading stands for which field. */
export interface Sheet {
  readonly file: string;
  /** Heading as the file has it, by field; a field without a heading is no key. */
  readonly headings: { readonly [F in Field]?: string };
}

/** One row of the equipment list, typed, with the library's facts filled in where the list is silent. */
export interface ListRow {
  readonly sheet: Sheet;
  readonly line: number;
  readonly facts: Stated<RowFacts>;
  /** Fields whose cell couldn't be understood: an open item stands already, so nobody asks a second time. */
  readonly unreadable: ReadonlySet<Field>;
  /** Those cells as typed, as far as they were looked at. */
  readonly typed?: { readonly [F in Field]?: string };
  /** The kinds that the word in its kind cell can mean beside the one that it was read as (a meter may be the service). */
  readonly mayBe?: readonly Kind[];
  /** What the company settled for facts that nothing states, where their default would decide; undefined: nothing. */
  readonly settled?: Stated<RowFacts>;
}

/** The list of one job, from one file or several. */
export interface JobList {
  readonly job: string;
  readonly facts: Stated<JobFacts>;
  readonly unreadable: ReadonlySet<Field>;
  readonly rows: readonly ListRow[];
  /** The first row of the job: where an item about the job as a whole points to. */
  readonly sheet: Sheet;
  readonly line: number;
  /** Open items found while reading this job's rows. */
  readonly items: readonly OpenItem[];
  /** Cells of lines of its files that couldn't be read at all, an item each: a row that names one of them is no second fault. */
  readonly lost: readonly string[];
  /** Cells of job facts that couldn't be understood, as typed. */
  readonly typed?: { readonly [F in Field]?: string };
  /** What people accepted of what was to be confirmed. */
  readonly accepted?: readonly Accepted[];
}

/** Somebody accepts what was to be confirmed, as a line of a file of answers says. */
export interface Accepted extends Signed, FileLine {
  /** Tags of rows; ``: the job itself. */
  readonly tags: readonly string[];
  /** `` for what is about no field. */
  readonly field: string;
  /** Of the item. */
  readonly code: string;
  /** The question as it was asked: it may be another one by now. */
  readonly question: string;
}

/** A model that the equipment library lacks. */
export interface MissingModel {
  readonly maker: string;
  readonly model: string;
  readonly jobs: readonly string[];
  /** Maker and model of the library that a slip of the hand may have meant; none is near: not there. */
  readonly near?: string;
}

/** A model that the equipment library lacks, with what the rules asked about it. */
export interface AskedModel extends MissingModel {
  readonly facts: readonly RowField[];
}

/** A heading of the equipment library, as its file has it. */
export interface LibraryHeading {
  readonly heading: string;
  /** Null: not understood. */
  readonly field: string | null;
}

/** The value of a fact, or undefined where it isn't stated. */
export function valueOf<T>(fact: Fact<T> | undefined): T | undefined {
  return fact?.value;
}
