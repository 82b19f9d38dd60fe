import { stat } from 'node:fs/promises';
import { resolve } from 'node:path';
import type { DocumentContext } from '../documents/parts/context.js';
import type { Catalogue } from '../model/catalogue.js';
import type { Failure } from '../model/failure.js';
import type { JobList } from '../model/list.js';
import type { Plan } from '../model/plan.js';
import type { FontKit, RenderedDocument } from '../model/print.js';
import type { Settings } from '../model/settings.js';
import type { Printer } from '../print/printer.js';
import type { BatchInputs } from './batch-inputs.js';
import type { BatchOptions } from './batch-options.js';
import {
  dataFingerprint,
  fingerprint,
  folderFingerprint,
  programFingerprint,
  type Fingerprint,
} from './fingerprint.js';
import type { PackRecords } from './pack-records.js';
import type { PhotoFolder } from './photos.js';
import type { SheetFolder } from './cut-sheets.js';
import type { GivenPlans } from './given-plans.js';
import type { PreviousPlans } from './previous-plans.js';

/** The two steps that a batch repeats for each job; a caller may put others in their place. */
export interface BatchSteps {
  readonly planJob: (
    job: JobList,
    context: { readonly catalogue: Catalogue | undefined; readonly settings: Settings },
  ) => Plan | Promise<Plan>;
  readonly renderDocuments: (plan: Plan, context: DocumentContext) => Promise<readonly RenderedDocument[]>;
}

/** What all jobs of a batch share. */
export interface BatchContext {
  readonly options: BatchOptions;
  readonly steps: BatchSteps;
  readonly settings: Settings;
  readonly catalogue: Catalogue | undefined;
  readonly logo: string | undefined;
  /** The output folder. */
  readonly out: string;
  /** The folder of our own files in it. */
  readonly own: string;
  /** The name of each job's folder in it. */
  readonly folders: ReadonlyMap<string, string>;
  readonly records: PackRecords;
  readonly previous: PreviousPlans;
  readonly given: GivenPlans;
  readonly photos: PhotoFolder;
  /** Undefined: no data sheets are asked for. */
  readonly cutSheets: SheetFolder | undefined;
  readonly fonts: FontKit;
  readonly printer: Printer;
  readonly jobFingerprint: (job: JobList) => Fingerprint;
  /** `plan.json` of a job whose papers alone are made anew, as it stands; absent: jobs are planned. */
  readonly planAsKept?: (job: string) => string | undefined;
  /** What every plan is made from beside its job: program, catalogue, settings. */
  readonly planFrom: Fingerprint;
  /** What all pages are made from beside their plan: program, templates, settings, logo, browser. */
  readonly pagesFrom: Fingerprint;
  /** Set once nothing more can be printed, so that the other jobs needn't find out. */
  readonly fatal: { failure: Failure | undefined };
  readonly signal: AbortSignal;
}

/** The same while no printer is at hand. */
export type UnprintedContext = Omit<BatchContext, 'printer'>;

/**
 * The fingerprints that all jobs share.
 * @param inputs what was read
 * @param options of the batch
 * @throws Error where the folder of templates can't be read
 */
export async function sharedFingerprints(
  inputs: Pick<BatchInputs, 'settings' | 'catalogue' | 'logo'>,
  options: BatchOptions,
): Promise<Pick<BatchContext, 'planFrom' | 'pagesFrom'>> {
  const [program, templates, browser] = await Promise.all([
    programFingerprint(),
    options.templates === undefined ? '' : folderFingerprint(options.templates, () => true),
    browserFingerprint(options.browser ?? process.env['SHUNTBOOK_BROWSER'] ?? ''),
  ]);
  const settings = dataFingerprint(inputs.settings);
  const choices = dataFingerprint([
    options.ownerLanguage ?? '',
    options.crewLanguage ?? '',
    options.separate === true,
    [...(options.appendices ?? [])],
  ]);
  return {
    planFrom: fingerprint(program, settings, dataFingerprint(inputs.catalogue?.parts ?? null)),
    pagesFrom: fingerprint(program, settings, templates, browser, choices, inputs.logo ?? ''),
  };
}

async function browserFingerprint(path: string): Promise<Fingerprint> {
  if (path === '') return '';
  const state = await stat(path).catch(() => undefined);
  return dataFingerprint([resolve(path), state?.size, state?.mtimeMs]);
}
