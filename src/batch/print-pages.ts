import type { DocumentContext } from '../documents/parts/context.js';
import type { Plan } from '../model/plan.js';
import type { FileToWrite } from '../output/whole-file.js';
import { appendPdfs } from '../print/append-pdfs.js';
import type { BatchContext } from './batch-context.js';
import type { PartSheet } from './cut-sheets.js';
import type { PhotosRead } from './photos.js';

/** What people laid beside the lists for a job's documents. */
export interface Enclosed {
  readonly photos: PhotosRead['photos'];
  /** Undefined: no data sheets are asked for. */
  readonly sheets: readonly PartSheet[] | undefined;
  /** What came back from the work; undefined: nothing yet. */
  readonly record: Pick<DocumentContext, 'record' | 'recordPhotos' | 'recordFits' | 'permitStays'>;
}

/**
 * Renders the documents of a job and prints them.
 * @param plan of the job
 * @param before the plan of the last pack; undefined: there is none to compare with
 * @param enclosed photos and data sheets
 * @param batch what all jobs share
 */
export async function printPages(
  plan: Plan,
  before: Plan | undefined,
  { photos, sheets, record }: Enclosed,
  batch: BatchContext,
): Promise<FileToWrite[]> {
  const { options } = batch;
  const context: DocumentContext = {
    settings: batch.settings,
    date: options.date,
    fonts: batch.fonts,
    measure: batch.printer.measure,
    photos,
    ...record,
    appendices: [...new Set([...batch.settings.appendices, ...(options.appendices ?? [])])],
    ...(sheets === undefined ? {} : { dataSheets: sheets.map(({ part, pages }) => ({ part, pages })) }),
    separate: options.separate === true,
    ...(options.ownerLanguage === undefined ? {} : { ownerLanguage: options.ownerLanguage }),
    ...(options.crewLanguage === undefined ? {} : { crewLanguage: options.crewLanguage }),
    ...(options.templates === undefined ? {} : { templatesFolder: options.templates }),
    ...(batch.logo === undefined ? {} : { logo: batch.logo }),
    ...(before === undefined ? {} : { previous: before }),
  };
  const documents = await batch.steps.renderDocuments(plan, context);
  const created = new Date(`${options.date}T00:00:00Z`);
  return Promise.all(
    documents.map(async ({ fileName, html, metadata, form }) => {
      const printed = await batch.printer.print({ html, metadata: { ...metadata, created }, form });
      const isAppendix = fileName === 'permit-appendix.pdf';
      return { name: fileName, content: isAppendix ? await appendPdfs(printed, sheets ?? []) : printed };
    }),
  );
}
