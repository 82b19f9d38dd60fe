import type { Lead } from '../lead.js';
import type { Quantity } from '../quantity.js';
import type { None } from '../none.js';
import type { NestedReason } from '../nested-reason.js';
import type { Wire } from '../wire.js';
import type { Conductor, Kind, PortClass } from '../words.js';

interface Tag {
  readonly tag: string;
}

/** What a protector guards, where it sits, how it is wired and measured: code and values. */
export interface MakeReasons extends PlaceOfProtectorReasons, SourceReasons, NoteReasons, VoltageReasons {
  /** Several reasons at once. */
  several: { readonly reasons: readonly NestedReason[] };
}

/** A port as one line names it. */
interface GuardedPort {
  readonly port: PortClass;
  /** Of the equipment that it belongs to. */
  readonly kind: Kind;
  /** 1... of a DC input; 0 of another port. */
  readonly input: number;
}

interface PlaceOfProtectorReasons {
  'protects/control-end': { readonly equipment: string; readonly circuit: string };
  'protects/ports': { readonly equipment: string; readonly ports: readonly GuardedPort[] };
  'position/ahead-of-main': None;
  'position/service': None;
  'position/load': None;
  'position/feeder': None;
  'position/tower-base': None;
  'position/cable-leaves': None;
  'position/control-cable': None;
  'position/battery-bus': None;
  'position/terminals': None;
}

/** A source to open before someone works at a place. */
interface SourceReasons {
  'source/control-supply': { readonly circuit: string };
  'source/utility': Tag;
  /** The place is ahead of the main disconnect. */
  'source/utility-ahead': Tag;
  'source/generator': Tag;
  'source/battery': Tag;
  'source/array': Tag;
  'source/turbine': Tag;
  'source/inverter': Tag;
  /** It feeds back through these ports. */
  'source/inverter-at': { readonly tag: string; readonly ports: readonly PortClass[] };
  'source/other': Tag;
  /** Too many sources to name one by one: so many of a kind. */
  'source/each-of': { readonly kind: Kind; readonly count: number };
  'source/named-elsewhere': None;
}

interface NoteReasons {
  'wiring-note/current-not-known': None;
  'wiring-note/stay-charged': { readonly tags: readonly string[] };
  /** `gauge`: of the leads as planned, as the catalogue has it. */
  'wiring-note/thin-lead': { readonly least: Lead; readonly gauge: string; readonly area: Quantity };
  'wiring-note/grounded-conductor': { readonly conductor: Conductor };
  'wiring-note/second-channel': { readonly channel: number; readonly wire: Wire };
  'neutral/no-channel-left': None;
}

/** The most that may stand there; null: the maker states it, and it isn't known here. */
interface Most {
  readonly most: Quantity | null;
}

/** The whole voltage of a DC circuit, by what drives it. */
interface Whole extends Most {
  readonly of: 'sun' | 'turbine' | 'both' | 'battery';
}

interface VoltageReasons {
  'expected-voltage/about': { readonly nominal: Quantity };
  'expected-voltage/near-zero': None;
  'expected-voltage/grounded-pole': None;
  'expected-voltage/whole': Whole;
  'expected-voltage/floating-pair': Whole;
  'expected-voltage/grounding-not-known': Whole;
  'expected-voltage/turbine-phase': Most;
  'expected-voltage/control-circuit': Most;
  'expected-voltage/floating-system': { readonly between: Quantity };
  'expected-voltage/system-not-stated': None;
  'expected-voltage/not-known': None;
  'stop/any-voltage': None;
  'stop/converter-bears': Tag;
}
