import { join } from 'node:path';
import type { BatchContext } from './batch-context.js';
import type { BroughtBack } from './brought-back.js';
import type { Fingerprint } from './fingerprint.js';
import { areIntact } from './pack-files.js';
import type { PackRecord } from './pack-records.js';
import type { Enclosed } from './print-pages.js';

/** A job whose work came back. */
interface Worked {
  readonly folder: string;
  readonly record: PackRecord | undefined;
  readonly back: BroughtBack;
}

/**
 * The permit sheets that were made of this plan before the work came back: they stay as they were submitted.
 * @param plan its fingerprint
 * @returns as the record of the pack names them; none where they are made anew
 */
export async function submittedSheets(
  plan: Fingerprint,
  { folder, record, back }: Worked,
  { options, out }: BatchContext,
): Promise<PackRecord['files']> {
  if (back.record === undefined || options.force === true || record?.printedPlan !== plan) return [];
  const isSheet = options.separate === true ? /^permit-sheet-\d/ : /^permit-sheet\.pdf$/;
  const sheets = record.files.filter(({ name }) => isSheet.test(name));
  return (await areIntact(join(out, folder), sheets)) ? sheets : [];
}

/**
 * What came back from the work, as documents take it.
 * @param mark fingerprint of the decisions of the plan that is printed
 * @param permitStays true: the permit sheets aren't printed anew
 */
export async function recordOf(
  { record, photos }: BroughtBack,
  mark: string,
  permitStays: boolean,
): Promise<Enclosed['record']> {
  if (record === undefined) return {};
  return { record, recordPhotos: await photos(), recordFits: record.plan === mark, permitStays };
}
