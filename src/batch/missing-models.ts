import type { JobItem } from '../model/open-item.js';
import type { AskedModel, JobList, MissingModel, RowField } from '../model/list.js';
import { LIBRARY_VOCABULARY } from '../read/table/list-vocabulary.js';
import { KIND_MISSING } from '../model/messages/list.js';
import { RATE_MESSAGES } from '../model/messages/rate.js';
import { modelKey } from '../words/model-key.js';
import { byNaturalOrder } from '../model/natural-order.js';

/** The facts that a library could state of a model, in the order of the contract; how an array is laid out isn't the maker's. */
const OF_A_MODEL = LIBRARY_VOCABULARY.fields.filter(
  (field) => field !== 'modules_in_series' && field !== 'strings_in_parallel',
);

/** Those facts by the code of the item that asks for them. */
const ASKED_BY: ReadonlyMap<string, readonly RowField[]> = new Map<string, readonly RowField[]>([
  ...OF_A_MODEL.map((field) => [`fact/${field.replaceAll('_', '-')}`, [field]] as const),
  [KIND_MISSING.code, ['kind']],
  [RATE_MESSAGES.batteryUnknown.code, ['cells', 'max_dc_voltage']],
]);

/**
 * The models that the library lacks and that a rule asked something about, so that the office supplies it once.
 * @param missing the models that the library lacks
 * @param jobs the jobs as they were read
 * @param items the open items of the batch: those of missing facts count
 * @returns in the order of `missing`; the jobs that need each, and the facts asked for in the order of the contract
 */
export function modelsAskedFor(
  missing: readonly MissingModel[],
  jobs: readonly JobList[],
  items: readonly JobItem[],
): AskedModel[] {
  const lacking = new Set(missing.map(({ maker, model }) => modelKey(maker, model)));
  const modelAt = new Map<string, string>();
  for (const { job, rows } of jobs) {
    for (const { facts, sheet, line } of rows) {
      if (facts.maker === undefined || facts.model === undefined) continue;
      const key = modelKey(facts.maker.value, facts.model.value);
      if (lacking.has(key)) modelAt.set(placeKey(job, sheet.file, line), key);
    }
  }
  const asked = new Map<string, { readonly jobs: Set<string>; readonly facts: Set<RowField> }>();
  for (const { job, item } of items) {
    const fields = ASKED_BY.get(item.code);
    const key = modelAt.get(placeKey(job, item.file, item.line));
    if (fields === undefined || key === undefined) continue;
    const one = asked.get(key) ?? { jobs: new Set<string>(), facts: new Set<RowField>() };
    asked.set(key, one);
    one.jobs.add(job);
    for (const field of fields) one.facts.add(field);
  }
  return missing.flatMap(({ maker, model }) => {
    const one = asked.get(modelKey(maker, model));
    if (one === undefined) return [];
    const facts = OF_A_MODEL.filter((field) => one.facts.has(field));
    return [{ maker, model, jobs: [...one.jobs].sort(byNaturalOrder), facts }];
  });
}

function placeKey(job: string, file: string, line: number): string {
  return JSON.stringify([job, file, line]);
}
