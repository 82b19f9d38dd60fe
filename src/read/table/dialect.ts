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
export type DecidedBy = 'flag' | 'column map' | 'its first bytes' | 'its sep= line' | 'its text' | 'a guess';

/** What decided each of the four that a flag can state. */
export interface Decided {
  readonly encoding: DecidedBy;
  readonly delimiter: DecidedBy;
  readonly decimal: DecidedBy;
  readonly headingLine: DecidedBy;
}
