import type { Lead } from '../lead.js';
import type { Quantity } from '../quantity.js';
import type { None } from '../none.js';
import type { NestedReason } from '../nested-reason.js';
import type { Wire } from '../wire.js';
import type { Conductor, Kind, PortClass } from '../words.js';

/** What a protector guards, where it sits, how it is wired and measured: code and values. */
export interface MakeReasons extends PlaceOfProtectorReasons, NoteReasons {
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
  /** `of`: whose first overcurrent device it is. */
  'position/first-device': { readonly ahead: boolean; readonly of: 'building' | 'system' | 'generator' };
  'position/load': None;
  'position/feeder': None;
  'position/tower-base': None;
  'position/cable-leaves': None;
  'position/control-cable': None;
  'position/battery-bus': None;
  'position/terminals': None;
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
