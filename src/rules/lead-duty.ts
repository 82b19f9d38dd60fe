import type { OvercurrentDevice } from '../model/catalogue.js';
import type { Circuit } from './wiring-facts.js';

/** What one port tells of the overcurrent device ahead of a protector, whatever part stands there. */
export interface OvercurrentPlace {
  readonly circuit: Circuit;
  /** The protector sits ahead of the first overcurrent device there. */
  readonly aheadOfDisconnect: boolean;
  /** A; of the main, bus or branch device at an AC port; undefined: not stated, or not asked of such a circuit. */
  readonly ownDevice: number | undefined;
  /** A; all that arrays and converters can send through the port at once; undefined: not known, or no array reaches it. */
  readonly arrayCurrent: number | undefined;
}

/** What the catalogue states of a part’s overcurrent device. */
export interface OvercurrentPart {
  readonly overcurrentMost: number | null;
  readonly overcurrentDevice: OvercurrentDevice | null;
}

/** Which overcurrent device stands ahead of the leads of a protector at one port. */
export type OvercurrentWay =
  /** Ahead of the first disconnect: none but what the part is listed with. */
  | 'ahead'
  /** The part needs none of its own. */
  | 'not-needed'
  /** The circuit’s own device will do. */
  | 'circuit'
  /** All that arrays can send is no more than the part allows. */
  | 'array'
  /** A device of its own. */
  | 'own'
  /** As the maker of the turbine says. */
  | 'turbine'
  /** The limit of the control circuit’s supply, or as the part says. */
  | 'control';

/**
 * Which overcurrent device stands ahead of a protector at one port.
 * @returns `own` too where what decides isn’t known
 */
export function overcurrentWay(place: OvercurrentPlace, part: OvercurrentPart): OvercurrentWay {
  const { circuit, ownDevice, arrayCurrent } = place;
  if (circuit === 'turbine' || circuit === 'control') return circuit;
  if (place.aheadOfDisconnect) return 'ahead';
  if (part.overcurrentDevice === 'none') return 'not-needed';
  const most = part.overcurrentMost;
  if (most === null) return 'own';
  if (circuit === 'power') return ownDevice !== undefined && ownDevice <= most ? 'circuit' : 'own';
  if (circuit === 'array') return arrayCurrent !== undefined && arrayCurrent <= most ? 'array' : 'own';
  return 'own';
}

/** What the leads at one port must carry. */
export type LeadDuty =
  /** No device sizes them. */
  | { readonly of: 'nothing' }
  /** `amperes`: A, of the device ahead of them; undefined: not stated. */
  | { readonly of: 'device'; readonly amperes: number | undefined }
  /** `amperes`: A, the least ampacity. */
  | { readonly of: 'current'; readonly amperes: number };

/** Share of the current of an array that its conductors carry, 690.8(B), value from memory. */
export const NEC_690_8_B_SHARE = 1.25;

const NOTHING: LeadDuty = { of: 'nothing' };

/** What the leads of a protector must carry at one port: its device, or the current of the arrays. */
export function leadDuty(place: OvercurrentPlace, part: OvercurrentPart): LeadDuty {
  switch (overcurrentWay(place, part)) {
    case 'ahead':
    case 'not-needed':
    case 'control':
      return NOTHING;
    case 'circuit':
      return { of: 'device', amperes: place.ownDevice };
    case 'array':
      return { of: 'current', amperes: NEC_690_8_B_SHARE * (place.arrayCurrent ?? 0) };
    case 'turbine':
    case 'own':
      return { of: 'device', amperes: part.overcurrentMost ?? undefined };
  }
}
