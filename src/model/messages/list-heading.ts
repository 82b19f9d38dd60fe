import type { Holds } from '../item-causes.js';
import { message } from '../message.js';

/** Messages about headings and column maps. */

/** `mapped`, here and below: a column map can say what the headings mean, as of a list; not of a catalogue. */
export const NO_HEADING = message<{ path: string; list: string; first: string; mapped: boolean }>(
  'heading/none',
  'conflict',
  'office',
);

export const COLUMN_WITHOUT_HEADING = message<{ column: number }>('heading/blank', 'confirm', 'office');

export const HEADING_UNKNOWN = message<{ heading: string; near: string; holds: Holds; mapped: boolean }>(
  'heading/unknown',
  'confirm',
  'office',
);

export const HEADING_AGAIN = message<{ found: string }>('heading/again', 'conflict', 'office');

export const QUOTE_IN_HEADING = message<{ found: string }>('heading/quote', 'conflict', 'office');

export const HEADING_NEAR = message<{ heading: string; field: string; mapped: boolean }>(
  'heading/near',
  'conflict',
  'office',
);

export const HEADINGS_MANY_UNKNOWN = message<{ count: number; first: string; mapped: boolean }>(
  'heading/many-unknown',
  'confirm',
  'office',
);

export const HEADINGS_SAME_FIELD = message<{ field: string; headings: readonly string[] }>(
  'heading/same-field',
  'conflict',
  'office',
);

export const HEADING_UNIT = message<{ field: string; heading: string; unit: string }>(
  'heading/unit',
  'conflict',
  'office',
);

export const HEADING_TWO_FIELDS = message<{ heading: string; fields: string }>(
  'heading/two-fields',
  'conflict',
  'office',
);

export const MAP_HEADING_TWICE = message<{ path: string; headings: readonly string[] }>(
  'map/heading-twice',
  'conflict',
  'office',
);

export const TAG_HEADING_MISSING = message<object>('heading/tag-missing', 'missing', 'designer');
