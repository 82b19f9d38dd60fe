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
 * The models that the library lacks, each with what a rule asked about it, so that the office supplies it once. One of which
 * nothing was asked stands there too: what the list states of it, or what stood in, was held against no library.
 * @param missing the models that the library lacks
 * @param jobs the jobs as they were read; a model that none of them names is left out
 * @param items the open items of the batch: those of missing facts count
 * @returns in the order of `missing`; the jobs that name each, and the facts asked for in the order of the contract
 */
export function modelsAskedFor(
  missing: readonly MissingModel[],
  jobs: readonly JobList[],
  items: readonly JobItem[],
): AskedModel[] {
  const lacking = new Set(missing.map(({ maker, model }) => modelKey(maker, model)));
  const modelAt = new Map<string, string>();
  const named = new Map<string, Set<string>>();
  for (const { job, rows } of jobs) {
    for (const { facts, sheet, line } of rows) {
      if (facts.maker === undefined || facts.model === undefined) continue;
      const key = modelKey(facts.maker.value, facts.model.value);
      if (!lacking.has(key)) continue;
      modelAt.set(placeKey(job, sheet.file, line), key);
      const mine = named.get(key) ?? new Set<string>();
      named.set(key, mine.add(job));
    }
  }
  const asked = new Map<string, Set<RowField>>();
  for (const { job, item } of items) {
    const fields = ASKED_BY.get(item.code);
    const key = modelAt.get(placeKey(job, item.file, item.line));
    if (fields === undefined || key === undefined) continue;
    const mine = asked.get(key) ?? new Set<RowField>();
    asked.set(key, mine);
    for (const field of fields) mine.add(field);
  }
  return missing.flatMap((one) => {
    const key = modelKey(one.maker, one.model);
    const of = named.get(key);
    if (of === undefined) return [];
    const facts = OF_A_MODEL.filter((field) => asked.get(key)?.has(field) === true);
    return [{ ...one, jobs: [...of].sort(byNaturalOrder), facts }];
  });
}

function placeKey(job: string, file: string, line: number): string {
  return JSON.stringify([job, file, line]);
}
