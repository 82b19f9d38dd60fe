import type { Basis } from './editions.js';

/** A place in a file, as messages and documents print it. */
export interface Place {
  /** As it was given where that is relative and stays below the working folder, else its name; `-` is standard input; `` is no file. */
  readonly file: string;
  /** First line of the record, the heading's line counted, first line 1; 0: none. */
  readonly line: number;
  /** The heading as the file has it; ``: none. */
  readonly column: string;
}

/** A line of a file: where a row stands. */
export type FileLine = Pick<Place, 'file' | 'line'>;

/** Who said something, and when. */
export interface Signed {
  /** ``: nobody is named. */
  readonly by: string;
  /** As typed, by contract `YYYY-MM-DD`; ``: none. */
  readonly date: string;
}

/** Where a value comes from. */
export type Origin =
  | ({ readonly from: 'list' | 'library' | 'catalogue' | 'job-facts' | 'equipment-facts' } & Place)
  | ({ readonly from: 'answer' } & Place & Signed)
  | { readonly from: 'setting'; readonly name: string }
  | { readonly from: 'default'; readonly field: string }
  | { readonly from: 'rule'; readonly id: string }
  | { readonly from: 'published'; readonly source: string };

/** The line that a value comes from; no file where it comes from none. */
export function lineOf(origin: Origin): Place {
  return 'line' in origin
    ? { file: origin.file, line: origin.line, column: '' }
    : { file: '', line: 0, column: '' };
}

/** A value that someone stated (or a default that stands in for it), with the cell as typed. */
export interface Fact<T> {
  readonly value: T;
  readonly origin: Origin;
  /** The cell as typed; `` for a default. */
  readonly text: string;
}

/** The facts of `T` that are stated; a blank cell is no key. */
export type Stated<T> = { readonly [K in keyof T]?: Fact<T[K]> };

/** How sure a figure is; printed beside it. */
export const SURENESSES = [
  'published',
  'memory',
  'common practice',
  'assumption',
  'derived',
  'stated',
  'computed',
] as const;
export type Sureness = (typeof SURENESSES)[number];

/** Where a rule's knowledge comes from under one basis. */
export type Source =
  | {
      readonly standard: string;
      readonly edition: string;
      readonly clause: string;
      readonly says: string;
      readonly sure?: 'memory';
      /** What it is about, the same in every basis and edition; absent: it has no name. */
      readonly subject?: string;
    }
  | { readonly commonPractice: true; readonly says: string };

/** The sources of a rule for each basis; null: the rule doesn't belong to that basis. */
export type SourcesByBasis = { readonly [B in Basis]: readonly Source[] | null };
