import type { Place } from './fact.js';
import type { FactHeading, Outcome, ReadingHeading, RecordHeading } from './site-form-headings.js';

/** Headings of `deviations.csv`: what somebody accepts by name and date. */
export const DEVIATION_HEADINGS = ['job', 'protector', 'check', 'by', 'date', 'reason', 'paper'] as const;
export type DeviationHeading = (typeof DEVIATION_HEADINGS)[number];

/** How a light or flag was seen. */
export const SEEN = ['lit', 'dark', 'flickers', 'good', 'used'] as const;
export type Seen = (typeof SEEN)[number];

export type FormName = 'record' | 'readings' | 'facts' | 'deviations';
export type AnyHeading = RecordHeading | ReadingHeading | FactHeading | DeviationHeading;

/** A row of a form as it came back: its cells, and where each stands. */
export interface FormRow {
  readonly form: FormName;
  /** As typed, trimmed; a cell that isn't there is no key. */
  readonly cells: { readonly [H in AnyHeading]?: string };
  readonly file: string;
  /** Of a PDF form 0. */
  readonly line: number;
  /** What the file calls the column of a heading, where that is another word; of a PDF form its field. */
  readonly columns: { readonly [H in AnyHeading]?: string };
  /** Unit of a bare figure, as the heading says; `ft`, `m`. */
  readonly units: { readonly [H in AnyHeading]?: string };
  /** The decimal mark of the file. */
  readonly mark: 'auto' | 'auto-comma' | '.' | ',';
}

/** Where a cell of a row stands. */
export function cellPlace(row: Pick<FormRow, 'file' | 'line' | 'columns'>, heading: AnyHeading): Place {
  return { file: row.file, line: row.line, column: row.columns[heading] ?? heading };
}

/** A cell as typed; `` where it is blank. */
export const cellOf = (row: FormRow, heading: AnyHeading): string => row.cells[heading] ?? '';

/** What a row of a record says; m, V, A; null and ``: not said. */
export interface HousingRow {
  readonly outcome: Outcome | null;
  readonly partFitted: string;
  readonly serials: readonly { readonly serial: string; readonly dateCode: string }[];
  readonly serialRemoved: readonly string[];
  readonly place: string;
  readonly leadLength: number | null;
  readonly leadGauge: string;
  readonly device: {
    readonly fitted: string;
    readonly volts: number | null;
    readonly interrupting: number | null;
    readonly position: string;
  };
  readonly torque: string;
  readonly instrument: string;
  readonly groundPoint: string;
  readonly faultCurrent: number | null;
  readonly photos: readonly string[];
  readonly change: string;
  readonly reason: string;
  /** `YYYY-MM-DD`. */
  readonly date: string;
  /** `HH:MM`. */
  readonly time: string;
  readonly name: string;
  readonly licence: string;
}
