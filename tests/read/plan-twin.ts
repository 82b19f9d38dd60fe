import { planJob, planJson, readInputs } from '../../src/index.js';

/**
 * The plans of all jobs of a folder of lists, with its library and catalogue, as they are written; what workbooks are called, and their
 * sheets, is that of the CSVs that they were made of.
 * @param folder lists with the company's files beside them
 */
export async function plansOfFolder(folder: string): Promise<Readonly<Record<string, string>>> {
  const inputs = await readInputs({ make: 'plan', lists: [folder], date: '2026-01-01', dateGiven: true });
  const unread = [...inputs.unreadable, ...inputs.items].map(
    (item) => `${item.code} ${item.file}:${item.line}`,
  );
  const plans = inputs.jobs.map((job): [string, string] => {
    const plan = planJob(job, { catalogue: inputs.catalogue, settings: inputs.settings });
    return [job.job, planJson(plan).replace(/([\w-]+)\.(?:xlsx|xlsm|ods)![\w-]+/g, '$1.csv')];
  });
  return {
    ...Object.fromEntries(plans),
    unread: unread.map((text) => text.replace(/\.(?:xlsx|xlsm|ods)![\w-]+/, '.csv')).join('\n'),
  };
}
