import type { Measured } from './measure-page.d.mts';
import type { Vocabulary } from './broken-words.d.mts';
import type { FindingOnPage } from './whole-document.d.mts';

/** A document of a job; `page` null: what the whole of it breaks. */
export interface MeasuredDocument {
  readonly document: string;
  readonly job: string;
  readonly pages: readonly (Measured & { readonly page: number; readonly paper: string })[];
  readonly findings: readonly FindingOnPage[];
}

/** The folders of jobs below a folder. */
export function jobFolders(folder: string, job?: string): string[];

/** Measures the documents of a job. */
export function measureJob(
  folder: string,
  words: Vocabulary,
  only: ReadonlySet<string>,
): Promise<MeasuredDocument[]>;
