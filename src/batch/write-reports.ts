import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { stat } from 'node:fs/promises';
import type { OpenItem } from '../model/message.js';
import {
  missingModelsCsv,
  openItemsCsv,
  orderListCsv,
  reportCsv,
  type JobOrder,
  type ReportLine,
} from '../output/tables.js';
import { writeWhole, type FileToWrite } from '../output/whole-file.js';
import type { JobItem } from '../text/tell.js';
import type { BatchInputs } from './batch-inputs.js';

/** What the reports of a batch tell. */
export interface BatchReport {
  readonly lines: readonly ReportLine[];
  /** Those of no job first. */
  readonly items: readonly JobItem[];
  readonly orders: readonly JobOrder[];
  /** False for a run that was stopped: it knows too little for an order list. */
  readonly whole: boolean;
}

/**
 * Writes the batch's files beside the job folders.
 * @param out the output folder
 * @param report what they tell
 * @param inputs catalogue (prices), library (headings) and the models that it lacks
 * @throws Failure where the disk refuses
 */
export async function writeReports(out: string, report: BatchReport, inputs: BatchInputs): Promise<void> {
  const files: FileToWrite[] = [{ name: 'open-items.csv', content: openItemsCsv(report.items) }];
  // Nothing was read: what an earlier run wrote is left alone.
  if (report.lines.length > 0) {
    files.push({ name: 'report.csv', content: reportCsv(report.lines) });
    if (report.whole) {
      const models = missingModelsCsv(inputs.missingModels, inputs.libraryFields);
      files.push({ name: 'order-list.csv', content: orderListCsv(report.orders, inputs.catalogue) });
      files.push({ name: 'missing-models.csv', content: models });
    }
  }
  await writeWhole(out, files);
}

/** Puts items of no job under the empty job. */
export const ofNoJob = (items: readonly OpenItem[]): JobItem[] => items.map((item) => ({ job: '', item }));

/**
 * The folders of packs in the output folder that no list names any more.
 * @param out the output folder
 * @param named the folders of all jobs on the lists
 */
export async function foldersLeft(out: string, named: Iterable<string>): Promise<string[]> {
  const known = new Set(named);
  const entries = await readdir(out, { withFileTypes: true });
  const others = entries.filter((e) => e.isDirectory() && !e.name.startsWith('.') && !known.has(e.name));
  const left: string[] = [];
  for (const { name } of others) {
    if (await stat(join(out, name, 'plan.json')).catch(() => undefined)) left.push(name);
  }
  return left.sort();
}
