/** A clause of a standard, in our own words. */
export interface ClauseSource {
  readonly standard: string;
  readonly edition: string;
  readonly clause: string;
  readonly says: string;
  /** The text wasn't at hand: printed as "see" only. */
  readonly sure?: 'memory';
  /** What it is about, the same in every basis and edition. */
  readonly subject?: string;
}

/** Keeps the names of a table's subjects as its type. */
export function table<E>() {
  return <K extends string>(entries: Readonly<Record<K, E>>): Readonly<Record<K, E>> => entries;
}
