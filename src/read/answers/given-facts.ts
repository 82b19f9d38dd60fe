import type { RowField } from '../../model/list.js';
import { itemAt, note } from '../../model/message.js';
import { GIVEN_FACT_MESSAGES } from '../../model/messages/answers.js';
import type { OpenItem } from '../../model/open-item.js';
import { visible } from '../../words/visible.js';
import type { JobToSupply } from './answers-by-row.js';
import type { FactLine } from './fact-lines.js';
import type { Cable, GivenFact } from './given-fact.js';

/** Equipment facts and cables of one job. */
export interface JobGiven {
  readonly ofRows: ReadonlyMap<string, ReadonlyMap<RowField, GivenFact>>;
  readonly cables: readonly Cable[];
}

/**
 * Sorts equipment facts by the row that they are of, and cables by their job.
 * @param lines of all files, in their order
 * @param jobs by id
 * @returns by job; the items of lines whose job is on no list
 */
export function givenByJob(
  lines: readonly FactLine[],
  jobs: ReadonlyMap<string, JobToSupply>,
): { readonly byJob: ReadonlyMap<string, JobGiven>; readonly items: readonly OpenItem[] } {
  const byJob = new Map<string, { ofRows: Map<string, Map<RowField, GivenFact>>; cables: Cable[] }>();
  const items: OpenItem[] = [];
  for (const line of lines) {
    const job = jobs.get(line.job);
    if (job === undefined) {
      items.push(itemAt(note(GIVEN_FACT_MESSAGES.unknownJob, { job: visible(line.job) }), line.place));
      continue;
    }
    let mine = byJob.get(line.job);
    if (mine === undefined) byJob.set(line.job, (mine = { ofRows: new Map(), cables: [] }));
    for (const item of line.items) job.say(item);
    if (line.cable !== null) mine.cables.push(line.cable);
    if (line.facts.length === 0) continue;
    if (!job.tags.has(line.tag)) {
      job.say(itemAt(note(GIVEN_FACT_MESSAGES.rowGone, { tag: visible(line.tag) }), line.place, line.tag));
      continue;
    }
    let ofRow = mine.ofRows.get(line.tag);
    if (ofRow === undefined) mine.ofRows.set(line.tag, (ofRow = new Map<RowField, GivenFact>()));
    for (const [field, fact] of line.facts) put(ofRow, field, fact, line.tag, job);
  }
  return { byJob, items };
}

/** Keeps the first statement; another that differs is a conflict that names both lines. */
function put(
  facts: Map<RowField, GivenFact>,
  field: RowField,
  fact: GivenFact,
  tag: string,
  job: JobToSupply,
): void {
  const first = facts.get(field);
  if (first === undefined) {
    facts.set(field, fact);
    return;
  }
  const says = ({ reading }: GivenFact): string => JSON.stringify([reading.value, reading.feet]);
  if (says(first) === says(fact)) return;
  const p = {
    tag: visible(tag),
    field,
    first: visible(first.text),
    firstPlace: { ...first.origin, column: '' },
    second: visible(fact.text),
  };
  job.say(itemAt(note(GIVEN_FACT_MESSAGES.differ, p), fact.origin, tag));
}
