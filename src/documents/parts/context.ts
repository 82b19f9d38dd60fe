import type { Appendix } from '../../model/appendices.js';
import type { Plan } from '../../model/plan.js';
import type { SiteRecord } from '../../model/record.js';
import type { FontKit, Measure } from '../../model/print.js';
import type { Unprinted } from '../../words/languages/as-built-words.js';
import type { Settings } from '../../model/settings.js';

export const DOCUMENT_KINDS = [
  'closeout-pack',
  'permit-sheet',
  'owner-sheet',
  'labels',
  'site-record',
] as const;
/** The documents of a pack; the file of each is its kind with `.pdf`. */
export type DocumentKind = (typeof DOCUMENT_KINDS)[number];

/** What a draft's pack doesn't hold: a label stays on the wall when the plan has changed. */
const NOT_OF_A_DRAFT: readonly DocumentKind[] = ['labels'];

/**
 * The documents that a plan's pack doesn't hold, whatever an earlier one held.
 * @param plan of the job
 */
export function documentsLeftOut(plan: Plan): readonly DocumentKind[] {
  return plan.submittable ? [] : NOT_OF_A_DRAFT;
}

/** A photo of an equipment, found by its tag, as a `data:` URL. */
export interface JobPhoto {
  readonly tag: string;
  readonly caption: string;
  readonly dataUrl: string;
}

/** A photo that came with the record. */
export interface RecordPhoto {
  /** Of the protectors; none: the job’s. */
  readonly tags: readonly string[];
  /** Its file's name. */
  readonly file: string;
  readonly dataUrl: string;
}

/** The photos of a record, and the names of those that can't be printed. */
export interface RecordPhotos {
  readonly printed: readonly RecordPhoto[];
  readonly notPrinted: readonly { readonly name: string; readonly why: Unprinted }[];
}

/** The data sheet of a part, which is appended to the appendix of the permit sheets. */
export interface DataSheet {
  readonly part: string;
  readonly pages: number;
}

/** What a document needs besides the plan. */
export interface DocumentContext {
  readonly settings: Settings;
  /** `YYYY-MM-DD`, printed on every page. */
  readonly date: string;
  readonly fonts: FontKit;
  /** Measures blocks in the browser that prints them: `printer.measure`. */
  readonly measure: Measure;
  /** Goes before the job's own `owner_language`. */
  readonly ownerLanguage?: string;
  /** Goes before the job's own `crew_language`, as `ownerLanguage` does. */
  readonly crewLanguage?: string;
  /** A folder that overrides templates, partials and styles by relative path. */
  readonly templatesFolder?: string;
  /** The company's logo as a `data:` URL. */
  readonly logo?: string;
  readonly photos?: readonly JobPhoto[];
  /** True: one file a sheet of the permit sheet, in place of one combined file. */
  readonly separate?: boolean;
  /** What was asked for beside the documents of a pack. */
  readonly appendices?: readonly Appendix[];
  /** Of the parts used, those of which a data sheet is appended; undefined: none were asked for. */
  readonly dataSheets?: readonly DataSheet[];
  /** What came back from the work; undefined: nothing yet. */
  readonly record?: SiteRecord;
  readonly recordPhotos?: RecordPhotos;
  /** False: it belongs to another plan than this. */
  readonly recordFits?: boolean;
  /** True: the permit sheets stay as they were submitted, and aren't made anew. */
  readonly permitStays?: boolean;
  /** The plan of the last pack in the same folder: the cover says what changed. */
  readonly previous?: Plan;
}
