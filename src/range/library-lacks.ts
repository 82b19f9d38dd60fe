import { FIELD_NAMES, FIELDS } from '../model/fields.js';
import type { Stated } from '../model/fact.js';
import type { Field, RowFacts } from '../model/list.js';
import type { Settings } from '../model/settings.js';
import { singleRowJob } from '../plan/context/single-row-job.js';
import { planJob } from '../plan/plan-job.js';

/** What a model is, beside what only its maker knows: the rest is of a site. */
const OF_A_MODEL: ReadonlySet<Field> = new Set<Field>([
  'kind',
  'battery_voltage',
  'ac_in',
  'ac_in_2',
  'ac_out',
  'control_voltage',
]);

/**
 * The facts that planning asks of a model and that the equipment library doesn't have: a job that has nothing but this
 * model is planned, and what it misses of the model itself is named.
 * @param known what the library has of the model
 * @returns fields, in the order of the contract
 */
export function libraryLacks(known: Stated<RowFacts>, settings: Settings): readonly Field[] {
  if (!known.kind) return ['kind'];
  // Of the site, so that nothing is asked that no library knows.
  const site = { modules_in_series: 1, strings_in_parallel: 1 };
  const plan = planJob(singleRowJob(site, { lowest_temp: 0 }, known), { catalogue: undefined, settings });
  const missing = new Set(plan.openItems.filter((i) => i.severity === 'missing').map((i) => i.column));
  return FIELD_NAMES.filter(
    (field) => missing.has(field) && (OF_A_MODEL.has(field) || FIELDS[field].who === 'maker'),
  );
}
