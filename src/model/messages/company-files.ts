import type { Reason } from '../reason.js';
import type { Place } from '../fact.js';
import { message } from '../message.js';

/** Messages about the company's files: equipment library, catalogue, job facts, settings. */

export const LIBRARY_MODEL_MISSING = message<object>('library/model-missing', 'confirm', 'office');

/** `sheet`: the other sheet of a workbook on which it stands first; empty: the same table. */
export const LIBRARY_MODEL_TWICE = message<{ maker: string; model: string; line: number; sheet: string }>(
  'library/model-twice',
  'conflict',
  'office',
);

export const LIBRARY_OVERRIDDEN = message<{
  tag: string;
  field: string;
  list: string;
  library: string;
  libraryPlace: Place;
}>('library/overridden', 'confirm', 'office');

export const LIBRARY_KIND_CONTRADICTS = message<{
  tag: string;
  list: string;
  library: string;
  libraryPlace: Place;
  model: string;
}>('library/kind-contradicts', 'conflict', 'designer');

export const LIBRARY_NEAR = message<{ tag: string; model: string; near: string; nearPlace: Place }>(
  'library/near-miss',
  'confirm',
  'designer',
);

export const JOB_FACTS_NO_JOB_COLUMN = message<{ path: string }>(
  'job-facts/no-job-column',
  'conflict',
  'office',
);

export const JOB_FACTS_NO_JOB = message<object>('job-facts/no-job', 'confirm', 'office');

export const JOB_FACTS_UNKNOWN_JOB = message<{ job: string }>('job-facts/unknown-job', 'confirm', 'office');

export const PART_LEFT_OUT = message<{ part: string; because: string; found: string; expected: string }>(
  'catalogue/part-left-out',
  'confirm',
  'office',
);

export const PART_CELL_IGNORED = message<{
  part: string;
  field: string;
  because: string;
  found: string;
  expected: string;
}>('catalogue/cell-ignored', 'confirm', 'office');

export const WIRE_RANGE_NOT_READ = message<{ part: string; found: string; expected: string }>(
  'catalogue/wire-range-not-read',
  'confirm',
  'office',
);

/** `sheet`: the other sheet of a workbook on which it stands first; empty: the same table. */
export const PART_TWICE = message<{ part: string; line: number; sheet: string }>(
  'catalogue/part-twice',
  'confirm',
  'office',
);

export const VPR_OFF_LIST = message<{ part: string; up: number; list: readonly number[] }>(
  'catalogue/vpr-off-list',
  'confirm',
  'office',
);

export const PART_FITS_NOTHING = message<{ part: string; because: Reason | null }>(
  'catalogue/part-fits-nothing',
  'confirm',
  'office',
);

/** A fact of the company that paper leaves a blank for. */
export const COMPANY_NOT_STATED = message<{ field: 'phone' | 'licence' }>(
  'settings/company-not-stated',
  'confirm',
  'office',
);
