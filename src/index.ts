/**
 * shuntbook as a toolkit: the steps of a batch as functions. Lists, library, catalogue and settings are read into jobs,
 * each job is planned, its documents are rendered from the plan alone and printed; `runBatch` does all of it.
 *
 * @packageDocumentation
 */

// Read: what stands in a file never throws; it comes back as items.
export { readCatalogue, readCatalogueText, type CatalogueReading } from './read/company/catalogue.js';
export {
  readColumnMap,
  ColumnMapSchema,
  type ColumnMap,
  type ColumnMapReading,
} from './read/table/column-map.js';
export { draftColumnMap } from './read/table/draft-map.js';
export { companyPaths, findCompanyFiles, type CompanyFiles } from './read/file/find.js';
export { readLibrary, readLibraryText, type Library, type LibraryReading } from './read/company/library.js';
export {
  readLists,
  readListContents,
  readListText,
  type ReadOptions,
  type ReadResult,
} from './read/list/lists.js';
export type { ListOptions, NamedContent } from './read/list/list-options.js';
export {
  catalogueGuide,
  kindGuide,
  listGuide,
  type ColumnEntry,
  type FieldEntry,
  type GuideEntry,
} from './read/company/guide.js';
export { jsonSchemas, type PublishedSchema } from './read/company/schemas.js';
export { readSettings, type SettingsReading } from './read/company/settings.js';
export type { Dialect } from './read/table/dialect.js';
export type { Understood } from './read/table/table.js';

// Survey and plan: one job, in memory.
export { surveySite } from './site/survey.js';
export { placeItems } from './plan/items/items.js';
export { planJob } from './plan/plan-job.js';
export { libraryLacks } from './range/library-lacks.js';
export { rangeOf, type PartUse, type Range, type RangeCover, type RangeLine } from './range/range.js';
export { rulesAskingField, rulesAskingPart } from './rules/asks.js';
export { ALL_RULES } from './rules/rulebook.js';

// Render: a plan as self-contained HTML with the metadata of its PDF.
export { renderDocument, renderDocuments } from './documents/render.js';
export { shippedTemplate } from './documents/parts/templates.js';
export {
  DOCUMENT_KINDS,
  type DocumentContext,
  type DocumentKind,
  type JobPhoto,
} from './documents/parts/context.js';

// Print: HTML as bytes; the browser starts with the first document.
export { embeddedFonts, type EmbeddedFonts } from './print/fonts.js';
export { withPrinter, type Printer, type PrinterOptions, type PrintOrder } from './print/printer.js';

// Write: the texts of the files beside the PDFs.
export { jsonText } from './output/json.js';
export { planJson, readPlan, type ReadPlan } from './output/plan-file.js';
export { writeWhole, writeWholeFile, type FileToWrite } from './output/whole-file.js';
export {
  openItemsCsv,
  orderListCsv,
  reportCsv,
  scheduleCsv,
  type JobOrder,
  type ReportLine,
} from './output/tables.js';

// All of it for many jobs.
export { readInputs, type BatchInputs } from './batch/batch-inputs.js';
export { withAccepted } from './batch/accepted.js';
export { runBatch } from './batch/run-batch.js';
export { runRecord } from './batch/record-run.js';
export type { RecordOptions, RecordResult } from './batch/record-options.js';
export type { BatchOptions, BatchResult, Progress } from './batch/batch-options.js';

// The register: what hangs where by the records of all jobs, and what is to be looked at.
export {
  askRegister,
  makeRegister,
  rebuildRegister,
  type RegisterAnswer,
  type RegisterResult,
} from './batch/register.js';
export { readSerials } from './batch/serials-file.js';
export { checkWithoutNames, lineWithoutNames, type RegisterQuestion } from './register/search.js';
export { serialRange, type SerialTest } from './register/serials.js';
export { RECORD_STATES } from './model/record.js';

// The words, types and schemas that the steps share.
export { EXIT, type ExitStatus } from './model/exit-status.js';
export { Failure } from './model/failure.js';
export { PlanSchema } from './model/plan.js';
export { SettingsSchema, defaultSettings } from './model/settings.js';
export type * from './model/catalogue.js';
export type * from './model/fact.js';
export type * from './model/list.js';
export type * from './model/message.js';
export type * from './model/open-item.js';
export type * from './model/plan.js';
export type * from './model/print.js';
export type * from './model/register.js';
export type { Reason, ReasonCode } from './model/reason.js';
export type * from './model/rule.js';
export type * from './model/settings.js';
export type * from './model/site.js';
export type * from './model/editions.js';
export type * from './model/words.js';
