import type { Encoding } from '../file/decode.js';
import type { Delimiter } from './find-heading.js';

/** What a flag or the column map states about a file; what isn't stated is found out. */
export interface Dialect {
  readonly encoding?: Encoding | undefined;
  readonly delimiter?: Delimiter | undefined;
  readonly decimal?: '.' | ',' | undefined;
  /** Line of the heading, first line 1. */
  readonly headingLine?: number | undefined;
}

/** How something about a file was decided: a flag or the column map states it, the file itself does, or its text shows it. */
export type DecidedBy =
  'flag' | 'column map' | 'its first bytes' | 'its sep= line' | 'its text' | 'its cells' | 'a guess';

/** What decided each of the four that a flag can state. */
export interface Decided {
  readonly encoding: DecidedBy;
  readonly delimiter: DecidedBy;
  readonly decimal: DecidedBy;
  readonly headingLine: DecidedBy;
}

/** What decided how a file is written. */
export function decider(
  map: Dialect,
  flags: Dialect,
): (what: keyof Dialect, otherwise: DecidedBy) => DecidedBy {
  return (what, otherwise) =>
    flags[what] !== undefined ? 'flag' : map[what] !== undefined ? 'column map' : otherwise;
}

/** What a flag states, else what the column map does. */
export function statedDialect(map: Dialect, flags: Dialect): Dialect {
  return {
    encoding: flags.encoding ?? map.encoding,
    delimiter: flags.delimiter ?? map.delimiter,
    decimal: flags.decimal ?? map.decimal,
    headingLine: flags.headingLine ?? map.headingLine,
  };
}

/**
 * True of a dialect that says where a heading is to be found. Where no heading is, it is how another source writes: a run reads lists of
 * several sources by one map, and nothing else of it (its decimal mark above all) holds for such a file either.
 */
export function statesPlace({ delimiter, headingLine }: Dialect): boolean {
  return delimiter !== undefined || headingLine !== undefined;
}
