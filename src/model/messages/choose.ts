import type { PortsAt } from '../ports-at.js';
import type { Quantity } from '../quantity.js';
import type { Reason } from '../reason.js';
import { message } from '../message.js';
import type { Who } from '../words.js';

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
  mayNotProtect: message<{ at: PortsAt; part: string; shortfall: Reason }>(
    'choose/may-not-protect',
    'confirm',
    'maker',
  ),
  enclosureScale: message<{ at: PortsAt; part: string; shortfall: Reason }>(
    'choose/enclosure-scale',
    'confirm',
    'maker',
  ),
  existingSeveral: message<{ tag: string; existing: string; places: readonly PortsAt[] }>(
    'choose/existing-several',
    'confirm',
    'installer',
  ),
  listedToUlOnly: message<{ at: PortsAt; part: string }>('choose/listed-to-ul-only', 'confirm', 'maker'),
  leadThin: message<{
    at: PortsAt;
    part: string;
    planned: string;
    area: Quantity;
    least: string;
    source: Reason;
  }>('choose/lead-thin', 'confirm', 'office'),
  /** Nobody could tell a used-up flag from a good one. */
  flagNotTold: message<{ at: PortsAt; part: string }>('choose/flag-not-told', 'confirm', 'office'),
  faultCurrentUnknown: message<{ at: PortsAt; because: Reason; part: string; holds: Reason; who: Who }>(
    'choose/fault-current-unknown',
    'confirm',
    'given',
  ),
} as const;
