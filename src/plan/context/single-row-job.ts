import { FIELD_NAMES } from '../../model/fields.js';
import type { Fact, Stated } from '../../model/fact.js';
import type { JobFacts, JobList, RowFacts } from '../../model/list.js';

/** Facts that nobody typed, for a job that stands for all jobs of its sort. */
function stated<T extends object>(values: T): Stated<T> {
  const facts = Object.entries(values).map(([field, value]): [string, Fact<unknown>] => [
    field,
    { value: value as unknown, text: String(value), origin: { from: 'default', field } },
  ]);
  return Object.fromEntries(facts) as Stated<T>;
}

/**
 * A job of one row that asks for protection, to see what planning asks of it.
 * @param row what its list would state
 * @param job facts of the job
 * @param known facts of the row that someone did state; they go before `row`
 */
export function singleRowJob(
  row: Partial<RowFacts>,
  job: Partial<JobFacts>,
  known: Stated<RowFacts> = {},
): JobList {
  // Every field has a heading, its own name: an item of the plan names its field by it.
  const sheet = { file: '', headings: Object.fromEntries(FIELD_NAMES.map((field) => [field, field])) };
  const facts = stated({ tag: 'X', protect: true, ...row }) as Stated<RowFacts>;
  return {
    job: 'X',
    facts: stated(job) as Stated<JobFacts>,
    unreadable: new Set(),
    rows: [{ sheet, line: 0, facts: { ...facts, ...known }, unreadable: new Set() }],
    sheet,
    line: 0,
    items: [],
    lost: [],
  };
}
