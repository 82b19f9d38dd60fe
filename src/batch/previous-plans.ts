import { rm } from 'node:fs/promises';
import { join } from 'node:path';
import type { Plan } from '../model/plan.js';
import { readPlan } from '../output/plan-file.js';
import { isFolderItself, ownFolder } from '../output/make-folder.js';
import { readRegularFile } from '../output/regular-file.js';
import { writeWholeFile } from '../output/whole-file.js';
import { fingerprint, type Fingerprint } from './fingerprint.js';
import type { PackRecord } from './pack-records.js';

/**
 * The plans that packs were printed from and that were replaced since: the cover of the next pack says what changed.
 * A plan is kept aside before its file is overwritten, so that a run that is killed in between compares with the same one.
 */
export interface PreviousPlans {
  /**
   * The fingerprint of the plan that a pack of `plan` is to be compared with; ``: none.
   * The same plan printed again is compared with what it was compared with before.
   */
  readonly baseOf: (record: PackRecord | undefined, plan: Fingerprint) => Fingerprint;
  /** The plan itself; undefined where it is lost or was never kept. */
  readonly read: (folder: string, plan: Fingerprint) => Promise<Plan | undefined>;
  /** Keeps the plan of a folder aside before it is overwritten. */
  readonly keep: (record: PackRecord | undefined) => Promise<void>;
  /** Removes what neither the folder's old record nor its new one needs. */
  readonly forget: (before: PackRecord | undefined, now: PackRecord) => Promise<void>;
}

/** The folder of the plans that are kept aside. */
const KEPT = 'plans';
/** Bytes; no plan is nearly as large. */
const LARGEST = 400_000_000;

/**
 * Opens the replaced plans of an output folder.
 * @param own the folder of our own files inside the output folder
 * @param out the output folder
 */
export function openPreviousPlans(own: string, out: string): PreviousPlans {
  const plans = join(own, KEPT);
  const pathOf = (folder: string, plan: Fingerprint): string => join(plans, `${folder}@${plan}.json`);
  const textOf = async (folder: string, plan: Fingerprint): Promise<string | undefined> => {
    for (const path of [pathOf(folder, plan), join(out, folder, 'plan.json')]) {
      const bytes = await readRegularFile(path, { most: LARGEST, followLinks: false }).catch(() => undefined);
      const text = bytes?.toString('utf8');
      if (text !== undefined && fingerprint(text) === plan) return text;
    }
    return undefined;
  };
  return {
    baseOf: (record, plan) => {
      if (!record) return '';
      const printed = record.printedPlan;
      return printed !== '' && printed !== plan ? printed : record.previousPlan;
    },
    read: async (folder, plan) => {
      if (plan === '') return undefined;
      const text = await textOf(folder, plan);
      return text === undefined ? undefined : readPlan(JSON.parse(text))?.plan;
    },
    keep: async (record) => {
      if (!record || record.printedPlan === '') return;
      const text = await textOf(record.folder, record.printedPlan);
      if (text === undefined) return;
      await ownFolder(own, KEPT);
      await writeWholeFile(pathOf(record.folder, record.printedPlan), text);
    },
    forget: async (before, now) => {
      if (!(await isFolderItself(plans))) return;
      const needed = new Set([now.previousPlan, now.printedPlan === now.plan ? '' : now.printedPlan]);
      for (const plan of [before?.previousPlan, before?.printedPlan]) {
        if (plan === undefined || plan === '' || needed.has(plan)) continue;
        await rm(pathOf(now.folder, plan), { force: true });
      }
    },
  };
}
