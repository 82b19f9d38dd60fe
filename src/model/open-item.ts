import type { Place } from './fact.js';
import type { Severity, Who } from './words.js';

/** A message without its place: what a rule or a check has to say. The place is put to it by whoever knows the row. */
export interface Note {
  /** Permanent code, e.g. `fact/run-length`. */
  readonly code: string;
  readonly severity: Severity;
  readonly who: Who;
  /** What its sentences are made of. */
  readonly values: object;
}

/** A note about one field of one row of the list; `tag` `` is the job itself. */
export interface PlacedNote extends Note {
  readonly tag: string;
  /** Field of the contract, ``: the row as a whole. */
  readonly field: string;
}

/** A fact that is missing or contradictory, or a default to confirm, with its file, line and column. */
export interface OpenItem extends Note, Place {
  /** The equipment it is about; `` where it is about the job, a file or the catalogue. */
  readonly equipment: string;
  /** The field of the contract that it is about, where it is about one. */
  readonly field?: string | undefined;
}

/** A file that couldn't be read at all: exit status 2. */
export interface Unreadable extends OpenItem {
  readonly unreadable: true;
}

/** An open item with the job that it belongs to; `` where it belongs to none. */
export interface JobItem {
  readonly job: string;
  readonly item: OpenItem;
}

/** What tells one item from another, wherever its row stands. */
export function itemKey({
  code,
  equipment,
  values,
}: Pick<OpenItem, 'code' | 'equipment' | 'values'>): string {
  return JSON.stringify([code, equipment, values]);
}
