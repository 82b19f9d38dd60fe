import { join } from 'node:path';
import { z } from 'zod';
import { readPlan } from '../output/plan-file.js';
import { ownFolder } from '../output/make-folder.js';
import { readRegularFile } from '../output/regular-file.js';
import { writeWholeFile } from '../output/whole-file.js';
import { decisionsOf, type HousingDecision } from '../site-forms/decisions.js';
import { fingerprint } from './fingerprint.js';
import type { PackRecord } from './pack-records.js';

/**
 * What the plans decided for which forms were given out and that were replaced since: a record that comes back for one of them is held
 * against the plan of today line by line. The plan of today itself stands in the job's folder.
 */
export interface GivenPlans {
  /** Keeps what the plan of a folder decides before its file is overwritten by one that decides otherwise. */
  readonly keep: (record: PackRecord | undefined, mark: string) => Promise<void>;
  /** What a plan decided, by the fingerprint on its forms; undefined where it is lost or was never given out. */
  readonly read: (folder: string, mark: string) => Promise<readonly HousingDecision[] | undefined>;
}

/** The folder of what is kept. */
const KEPT = 'given';
/** Bytes; no plan is nearly as large. */
const LARGEST = 400_000_000;
/** What forms carry; it is part of a path. */
const MARK = /^[A-Z]{1,16}$/;

const keptSchema = z.object({
  version: z.literal(1),
  plan: z.string(),
  decisions: z.array(
    z.object({
      tag: z.string(),
      ports: z.array(z.string()),
      place: z.string(),
      part: z.string(),
      conductors: z.array(z.string()),
    }),
  ),
});

/**
 * Opens what is kept of given plans in an output folder.
 * @param own the folder of our own files inside the output folder
 * @param out the output folder
 */
export function openGivenPlans(own: string, out: string): GivenPlans {
  const pathOf = (folder: string, mark: string): string => join(own, KEPT, `${folder}@${mark}.json`);
  const textOf = async (path: string): Promise<string | undefined> => {
    const bytes = await readRegularFile(path, { most: LARGEST, followLinks: false }).catch(() => undefined);
    return bytes?.toString('utf8');
  };
  return {
    keep: async (record, mark) => {
      if (!record || record.mark === '' || record.mark === mark) return;
      const text = await textOf(join(out, record.folder, 'plan.json'));
      // One that someone edited isn't what was given out.
      if (text === undefined || fingerprint(text) !== record.plan) return;
      const plan = readPlan(JSON.parse(text))?.plan;
      if (!plan) return;
      await ownFolder(own, KEPT);
      const kept = { version: 1, plan: record.mark, decisions: decisionsOf(plan) };
      await writeWholeFile(pathOf(record.folder, record.mark), `${JSON.stringify(kept)}\n`);
    },
    read: async (folder, mark) => {
      if (!MARK.test(mark)) return undefined;
      const text = await textOf(pathOf(folder, mark));
      if (text === undefined) return undefined;
      try {
        const kept = keptSchema.safeParse(JSON.parse(text));
        return kept.success && kept.data.plan === mark ? kept.data.decisions : undefined;
      } catch {
        return undefined;
      }
    },
  };
}
