import { fileURLToPath } from 'node:url';
import {
  defaultSettings,
  planJob,
  readCatalogue,
  readListText,
  type Plan,
  type PlannedProtector,
} from '../../src/index.js';

const CATALOGUE = fileURLToPath(new URL('../../fixtures/demo/catalogue.csv', import.meta.url));

/**
 * Plans the only job of a list, with the catalogue of the demo.
 * @param csv the list, as a file would hold it
 */
export async function planOf(csv: string): Promise<Plan> {
  const settings = defaultSettings();
  const { catalogue } = await readCatalogue(CATALOGUE);
  const read = readListText('list.csv', csv.trimStart(), { settings });
  const [job, ...others] = read.jobs;
  if (!job || others.length > 0 || read.unreadable.length > 0) {
    throw new Error(`the list must hold one job: ${JSON.stringify(read.unreadable)}`);
  }
  return planJob(job, { catalogue, settings });
}

/** The protectors at one port. */
export function atPort(plan: Plan, equipment: string, port: string): readonly PlannedProtector[] {
  return plan.protectors.filter((p) =>
    p.ports.some((one) => one.equipment === equipment && one.port === port),
  );
}
