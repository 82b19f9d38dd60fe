import type { Appendix } from '../model/appendices.js';
import type { ExitStatus } from '../model/exit-status.js';
import type { AskedModel } from '../model/list.js';
import type { Note, OpenItem, JobItem } from '../model/open-item.js';
import type { ListCount } from '../read/list/lists.js';
import type { ReportLine } from '../output/tables.js';
import type { Dialect } from '../read/table/dialect.js';

/** What a batch is to do; paths as they were given. */
export interface BatchOptions {
  /** `pack`: everything; `plan`: all but the PDFs and `report.html`. */
  readonly make: 'pack' | 'plan';
  /** Files, folders or `-`. */
  readonly lists: readonly string[];
  /** Each of the four: by default `catalogue.csv`, `library.csv` (or workbooks of these names), `columns.json`, `settings.json` beside the first list, where they exist. */
  readonly catalogue?: string | undefined;
  readonly library?: string | undefined;
  readonly columns?: string | undefined;
  readonly settings?: string | undefined;
  /** How the lists are written; goes before the column map, and what neither states is found out. */
  readonly dialect?: Dialect | undefined;
  readonly jobFacts?: string | undefined;
  /** Files of answers, in their order. */
  readonly answers?: readonly string[] | undefined;
  /** Files of equipment facts and cable schedules, in their order. */
  readonly equipmentFacts?: readonly string[] | undefined;
  /** Only this job. */
  readonly job?: string | undefined;
  /** The output folder; default `out`. */
  readonly out?: string | undefined;
  /** `YYYY-MM-DD`, printed on every page. */
  readonly date: string;
  /** True where `--date` or SOURCE_DATE_EPOCH says the date; a date of today doesn't by itself make a pack be printed again. */
  readonly dateGiven: boolean;
  readonly ownerLanguage?: string | undefined;
  readonly crewLanguage?: string | undefined;
  /** A folder with a folder for each job, which holds a picture named by each tag. */
  readonly photos?: string | undefined;
  /** A folder with the data sheet of each part, a PDF named by it, for the appendix of the permit sheets. */
  readonly cutSheets?: string | undefined;
  /** What is printed beside the documents of a pack, with what the settings ask for. */
  readonly appendices?: readonly Appendix[] | undefined;
  readonly separate?: boolean | undefined;
  /** A folder whose templates go before the shipped ones. */
  readonly templates?: string | undefined;
  /** Make every pack again, also where nothing changed. */
  readonly force?: boolean | undefined;
  readonly browser?: string | undefined;
  /** Documents printed at a time; default: one a core. */
  readonly workers?: number | undefined;
  /** ms that a document of nothing may take to print, the more the more it holds; default 60 000. */
  readonly documentTimeout?: number | undefined;
  /** The bytes of the list `-`. */
  readonly stdin?: (() => Promise<Uint8Array>) | undefined;
  /** Stops the batch: the pages in hand are finished or dropped, the report so far is written, the run ends with 130. */
  readonly signal?: AbortSignal | undefined;
  /** True: SIGINT and SIGTERM of this process stop the batch as `signal` does. */
  readonly stopOnSignals?: boolean | undefined;
  readonly onProgress?: ((progress: Progress) => void) | undefined;
  /** Is told at once what a person should know: no sandbox, another browser, a job that failed. */
  readonly onNotice?: ((notice: Note) => void) | undefined;
}

/** How far a batch is. */
export interface Progress {
  readonly done: number;
  readonly all: number;
  /** The job that was finished last. */
  readonly job: string;
  readonly status: ReportLine['status'];
  readonly did: ReportLine['done'];
  /** s since the first job was begun. */
  readonly seconds: number;
  /** s that the rest is likely to take, by the jobs that were printed so far; null: not known yet. */
  readonly secondsLeft: number | null;
}

/** What came of a batch. */
export interface BatchResult {
  readonly exitStatus: ExitStatus;
  /** The output folder, as given. */
  readonly out: string;
  /** None where the run was stopped while it read them. */
  readonly lists: ListCount;
  /** One a job, in natural order of their ids; jobs that an interrupted run didn't reach are `failed`, `nothing`. */
  readonly jobs: readonly ReportLine[];
  /** Those of no job first, then by job. */
  readonly items: readonly JobItem[];
  /** Lists, library, catalogue or settings that couldn't be read at all. */
  readonly unreadable: readonly OpenItem[];
  /** The models that the library lacks, with the jobs that need them and the facts asked for. */
  readonly missingModels: readonly AskedModel[];
  /** Folders of packs in the output folder that no list names any more; they are left as they are. */
  readonly leftFolders: readonly string[];
  readonly interrupted: boolean;
}
