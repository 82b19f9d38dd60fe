import type { ExitStatus } from '../model/exit-status.js';
import type { JobItem, Note, OpenItem } from '../model/open-item.js';
import type { RecordState } from '../model/record.js';

/** What `record` is to do; paths as they were given. */
export interface RecordOptions {
  /** Files that crews filled in, and folders of them. */
  readonly files: readonly string[];
  /** The output folder that the packs are in; default `out`. */
  readonly out?: string | undefined;
  /** `YYYY-MM-DD` of the run. */
  readonly date: string;
  /** True where `--date` or SOURCE_DATE_EPOCH says the date. */
  readonly dateGiven: boolean;
  /** In place of those of the last pack. */
  readonly catalogue?: string | undefined;
  readonly settings?: string | undefined;
  /** A folder with a folder for each job, which holds its photos. */
  readonly photos?: string | undefined;
  /** False: the as-built papers are left to the next pack. */
  readonly pack: boolean;
  readonly browser?: string | undefined;
  readonly workers?: number | undefined;
  readonly signal?: AbortSignal | undefined;
  readonly stopOnSignals?: boolean | undefined;
  readonly onNotice?: ((notice: Note) => void) | undefined;
}

/** What was taken of one file. */
export interface FileTaken {
  /** As messages name it. */
  readonly file: string;
  readonly rows: number;
  /** Jobs that its rows are of. */
  readonly jobs: readonly string[];
}

/** What came of one job. */
export interface RecordedJob {
  readonly job: string;
  readonly folder: string;
  readonly record: RecordState;
  readonly protectors: number;
  readonly missing: number;
  readonly conflict: number;
  readonly confirm: number;
  /** False where the record is what it was. */
  readonly changed: boolean;
  /** True where its as-built papers were printed. */
  readonly printed: boolean;
}

/** What came of taking records. */
export interface RecordResult {
  readonly exitStatus: ExitStatus;
  readonly out: string;
  readonly files: readonly FileTaken[];
  readonly jobs: readonly RecordedJob[];
  /** Of this run's jobs, and of no job. */
  readonly items: readonly JobItem[];
  readonly unreadable: readonly OpenItem[];
  readonly interrupted: boolean;
}
