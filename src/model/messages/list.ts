import type { Place } from '../fact.js';
import { message } from '../message.js';
import type { Kind, Who } from '../words.js';

/** Messages about the rows, cells and jobs of equipment lists. */

interface CellAt {
  readonly field: string;
  readonly text: string;
  readonly expected: string;
  readonly who: Who;
}

export const CELL_WRONG = message<
  CellAt & {
    readonly because: string;
    readonly hint: string;
    /** A figure with a mark that separates decimals or thousands. */
    readonly problem?: 'two-ways';
  }
>('cell/wrong', 'conflict', 'given');

export const KIND_MISSING = message<{ tag: string }>('row/kind-missing', 'missing', 'designer');

export const KIND_UNCLEAR = message<{ text: string; kinds: readonly Kind[] }>(
  'row/kind-unclear',
  'missing',
  'designer',
);

export const KIND_CONTRADICTS = message<{ tag: string; word: string; field: string; text: string }>(
  'row/kind-contradicts',
  'conflict',
  'designer',
);

export const TAG_MISSING = message<{ standIn: string }>('row/tag-missing', 'missing', 'designer');

export const CELLS_SURPLUS = message<{ cells: number; headings: number }>(
  'row/cells-surplus',
  'conflict',
  'office',
);

export const CELLS_SHORT = message<{ cells: number; headings: number }>(
  'row/cells-short',
  'conflict',
  'office',
);

export const QUOTE_IN_NAME = message<{ found: string }>('row/quote-in-name', 'conflict', 'office');

export const FIGURES_LEFT_OUT = message<{ lines: readonly number[]; found: string }>(
  'row/figures-left-out',
  'confirm',
  'office',
);

export const JOB_MISSING = message<{ job: string }>('row/job-missing', 'missing', 'office');

export const JOB_JOINED = message<{ text: string; job: string }>('row/job-joined', 'conflict', 'office');

export const JOB_FROM_ABOVE = message<{ count: number }>('row/job-from-above', 'confirm', 'office');

export const JOB_OR_NOTE = message<{ text: string }>('row/job-or-note', 'conflict', 'office');

export const JOB_CONTRADICTS = message<{
  field: string;
  first: string;
  firstPlace: Place;
  second: string;
}>('job/contradiction', 'conflict', 'office');

export const JOB_WITHOUT_ROWS = message<{ job: string }>('job/no-rows', 'missing', 'office');

export const LANGUAGE_UNKNOWN = message<CellAt & { readonly languages: string }>(
  'cell/language-unknown',
  'confirm',
  'given',
);

export const UNIT_UNSURE = message<CellAt & { readonly units: string }>(
  'cell/unit-unsure',
  'confirm',
  'given',
);

export const CELL_CUT = message<CellAt>('cell/cut', 'confirm', 'given');
