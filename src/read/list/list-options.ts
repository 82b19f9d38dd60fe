import type { Settings } from '../../model/settings.js';
import type { Library } from '../company/library.js';
import type { ColumnMap } from '../table/column-map.js';
import type { Dialect } from '../table/dialect.js';

/** What lists are read with. */
export interface ListOptions {
  readonly settings: Settings;
  readonly library?: Library | undefined;
  readonly columns?: ColumnMap | undefined;
  /** What flags state about the files; goes before the column map. */
  readonly dialect?: Dialect | undefined;
  /** The `--job` given: the job of standard input without a job column. */
  readonly stdinJob?: string | undefined;
}

/** One file to read. */
export interface NamedContent {
  readonly name: string;
  readonly content: Uint8Array | string;
}
