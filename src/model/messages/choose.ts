import type { Said } from '../reason.js';
import { message } from '../message.js';
import type { Who } from '../words.js';

/** Messages about the choice of parts. */
export const CHOOSE_MESSAGES = {
  noCatalogue: message<Record<string, never>>('choose/no-catalogue', 'missing', 'office'),
  noneFits: message<{ at: string; asks: string; nearest: string }>('choose/none-fits', 'conflict', 'office'),
  noneThreePlusOne: message<{ at: string; asks: string; nearest: string }>(
    'choose/no-3-plus-1',
    'conflict',
    'office',
  ),
  byHandUnknown: message<{ at: string; part: string }>('choose/by-hand-unknown', 'conflict', 'office'),
  byHandFails: message<{ at: string; part: string; fails: string }>(
    'choose/by-hand-fails',
    'conflict',
    'office',
  ),
  existingUnknown: message<{ at: string; existing: string; asks: string }>(
    'choose/existing-unknown',
    'confirm',
    'installer',
  ),
  existingFails: message<{ at: string; part: string; fails: string }>(
    'choose/existing-fails',
    'conflict',
    'designer',
  ),
  shortfall: message<{ at: string; part: string; shortfall: string }>('choose/shortfall', 'confirm', 'maker'),
  enclosureScale: message<{ at: string; part: string; shortfall: string }>(
    'choose/enclosure-scale',
    'confirm',
    'maker',
  ),
  existingSeveral: message<{ tag: string; existing: string; places: string }>(
    'choose/existing-several',
    'confirm',
    'installer',
  ),
  listedToUlOnly: message<{ at: string; part: string }>('choose/listed-to-ul-only', 'confirm', 'maker'),
  leadThin: message<{ at: string; part: string; planned: string; least: string; source: Said }>(
    'choose/lead-thin',
    'confirm',
    'office',
  ),
  faultCurrentUnknown: message<{ at: string; because: Said; part: string; holds: string; who: Who }>(
    'choose/fault-current-unknown',
    'confirm',
    'given',
  ),
} as const;
