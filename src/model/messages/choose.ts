import type { PortsAt } from '../ports-at.js';
import type { Quantity } from '../quantity.js';
import type { Reason } from '../reason.js';
import type { Basis } from '../editions.js';
import { message } from '../message.js';
import type { Who } from '../words.js';

/** A total lead length with the level and the reach that it leaves. */
export interface LeadAt {
  total: Quantity;
  level: Quantity;
  reach: Quantity | 'unknown' | 'unlimited';
}

/** Leads as planned beside the length that is aimed at. */
interface LongLead {
  at: PortsAt;
  part: string;
  basis: Basis;
  planned: LeadAt;
  aimed: LeadAt;
}

/** Messages about the choice of parts. */
export const CHOOSE_MESSAGES = {
  noCatalogue: message<Record<string, never>>('choose/no-catalogue', 'missing', 'office'),
  noneFits: message<{ at: PortsAt; asks: Reason; nearest: Reason | null }>(
    'choose/none-fits',
    'conflict',
    'office',
  ),
  noneThreePlusOne: message<{ at: PortsAt; asks: Reason; nearest: Reason | null }>(
    'choose/no-3-plus-1',
    'conflict',
    'office',
  ),
  byHandUnknown: message<{ at: PortsAt; part: string }>('choose/by-hand-unknown', 'conflict', 'office'),
  byHandFails: message<{ at: PortsAt; part: string; fails: readonly Reason[] }>(
    'choose/by-hand-fails',
    'conflict',
    'office',
  ),
  existingUnknown: message<{ at: PortsAt; existing: string; asks: Reason }>(
    'choose/existing-unknown',
    'confirm',
    'installer',
  ),
  existingFails: message<{ at: PortsAt; part: string; fails: readonly Reason[] }>(
    'choose/existing-fails',
    'conflict',
    'designer',
  ),
  shortfall: message<{ at: PortsAt; part: string; shortfall: Reason }>(
    'choose/shortfall',
    'confirm',
    'maker',
  ),
  /** Above even the withstand that is only assumed. */
  /** `longest`: m, the longest leads at which the level with them isn’t above the withstand; null: the level alone is. */
  mayNotProtect: message<{
    at: PortsAt;
    part: string;
    shortfall: Reason;
    longest: Quantity | null;
    basis: Basis;
  }>('choose/may-not-protect', 'confirm', 'maker'),
  enclosureScale: message<{ at: PortsAt; part: string; shortfall: Reason }>(
    'choose/enclosure-scale',
    'confirm',
    'maker',
  ),
  /** Of a 3+1 part: what its path from neutral to ground bears isn't stated. */
  neutralPath: message<{ at: PortsAt; part: string; shortfall: Reason }>(
    'choose/neutral-path',
    'confirm',
    'maker',
  ),
  leadLong: message<LongLead>('choose/lead-long', 'confirm', 'installer'),
  leadTooLong: message<LongLead & { most: Quantity }>('choose/lead-too-long', 'conflict', 'installer'),
  besideExisting: message<{
    at: PortsAt;
    existing: PortsAt;
    part: string;
    mcov: Quantity | null;
    /** Null: what is there already isn't in the catalogue. */
    existingMcov: Quantity | null;
  }>('choose/beside-existing', 'confirm', 'installer'),
  existingSeveral: message<{ tag: string; existing: string; places: readonly PortsAt[] }>(
    'choose/existing-several',
    'confirm',
    'installer',
  ),
  listedToUlOnly: message<{ at: PortsAt; part: string; leads: 'I' | 'II' }>(
    'choose/listed-to-ul-only',
    'confirm',
    'maker',
  ),
  leadThin: message<{
    at: PortsAt;
    part: string;
    planned: string;
    area: Quantity;
    least: string;
    source: Reason;
  }>('choose/lead-thin', 'confirm', 'office'),
  overcurrentSize: message<{ part: string; words: string; at: readonly PortsAt[] }>(
    'choose/overcurrent-size',
    'confirm',
    'office',
  ),
  /** Under `iec`; `amps`: the largest device or current ahead of leads whose least goes by the class of the part alone. */
  leadsByClass: message<{ part: string; amps: Quantity; leads: string; at: readonly PortsAt[] }>(
    'choose/leads-by-class',
    'confirm',
    'designer',
  ),
  overcurrentTurbine: message<{ at: PortsAt; part: string; most: Quantity | null }>(
    'choose/overcurrent-turbine',
    'confirm',
    'maker',
  ),
  overcurrentControl: message<{ at: PortsAt; part: string; most: Quantity | null }>(
    'choose/overcurrent-control',
    'confirm',
    'designer',
  ),
  /** A converter of which nobody states what it sends back into its DC inputs; `at`: up to twelve protectors that it reaches. */
  backfeedUnknown: message<{ converter: string; at: readonly PortsAt[] }>(
    'choose/backfeed-unknown',
    'confirm',
    'maker',
  ),
  /** The circuit's own device is smaller than the part's least. */
  overcurrentBelowLeast: message<{ at: PortsAt; part: string; rating: Quantity; least: Quantity }>(
    'choose/overcurrent-below-least',
    'confirm',
    'designer',
  ),
  /** Nobody could tell a used-up flag from a good one. */
  flagNotTold: message<{ at: PortsAt; part: string }>('choose/flag-not-told', 'confirm', 'office'),
  faultCurrentUnknown: message<{ at: PortsAt; because: Reason; part: string; holds: Reason; who: Who }>(
    'choose/fault-current-unknown',
    'confirm',
    'given',
  ),
} as const;
