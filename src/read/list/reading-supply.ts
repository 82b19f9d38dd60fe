import { BASES } from '../../model/editions.js';
import type { OpenItem } from '../../model/open-item.js';
import { unstatedBasis } from '../../model/settled.js';
import type { Settings } from '../../model/settings.js';
import { answerLines, type AnswerLine } from '../answers/answer-lines.js';
import { factLines, type FactLine } from '../answers/fact-lines.js';
import { bareLengthIsFeet } from '../cell/bare-length.js';
import type { InSteps } from '../file/in-steps.js';
import { jobOfFile } from '../file/sources.js';
import { takeCables } from './cables.js';
import type { JobDraft, JobDrafts } from './job-drafts.js';
import type { ListOptions, NamedContent } from './list-options.js';
import type { OpenList } from './open-list.js';
import { supplyOf, takeJobAnswers, type Supply } from './supply.js';

/** What people supplied beside the lists; undefined: nothing. */
interface SupplyRead {
  readonly supply: Supply | undefined;
  readonly items: readonly OpenItem[];
  readonly unreadable: readonly OpenItem[];
}

/** Whether a bare length of a job is in feet. */
export function isInFeet({ facts }: JobDraft, settings: Settings): boolean {
  const basis = BASES.find((b) => b === facts.basis?.value);
  return bareLengthIsFeet(settings, basis ?? unstatedBasis(settings));
}

/**
 * Reads answers and equipment facts, and takes those about jobs: what a row takes depends on the basis of its job.
 * @param answers files of answers, named as messages call them
 * @param equipmentFacts files of equipment facts and cable schedules
 * @param lists the lists as tables, with the jobs of their rows
 * @param drafts the jobs
 * @param options settings and column map
 */
export function* readingSupply(
  answers: readonly NamedContent[],
  equipmentFacts: readonly NamedContent[],
  lists: readonly OpenList[],
  drafts: JobDrafts,
  options: ListOptions,
): InSteps<SupplyRead> {
  if (answers.length + equipmentFacts.length === 0) return { supply: undefined, items: [], unreadable: [] };
  const items: OpenItem[] = [];
  const unreadable: OpenItem[] = [];
  const answered: AnswerLine[] = [];
  for (const { name, content } of answers) {
    const read = yield* answerLines(name, content);
    for (const line of read.lines) answered.push(line);
    items.push(...read.items);
    unreadable.push(...read.unreadable);
  }
  const [only, ...others] = drafts.keys();
  const facts: FactLine[] = [];
  for (const { name, content } of equipmentFacts) {
    const jobOfAll = only !== undefined && others.length === 0 ? only : jobOfFile(name);
    const { settings, columns } = options;
    const read = yield* factLines(name, content, { settings, columns, jobOfAll });
    for (const line of read.lines) facts.push(line);
    items.push(...read.items);
    unreadable.push(...read.unreadable);
  }
  const supply = supplyOf(answered, facts, drafts, tagsByJob(lists), options);
  for (const draft of drafts.values()) {
    const mine = supply.ofJob(draft.job).answers;
    if (mine !== undefined) takeJobAnswers(draft, mine);
  }
  return { supply, items: [...items, ...supply.items], unreadable };
}

/** Gives the rows, once all are read, the lengths of cable schedules, and says which answers weren't used. */
export function finishSupply(supply: Supply | undefined, drafts: JobDrafts, settings: Settings): void {
  if (supply === undefined) return;
  for (const draft of drafts.values())
    takeCables(draft, supply.ofJob(draft.job).given?.cables ?? [], isInFeet(draft, settings));
  supply.finish();
}

/** The tags that the rows of each job state. */
function tagsByJob(lists: readonly OpenList[]): ReadonlyMap<string, ReadonlySet<string>> {
  const tags = new Map<string, Set<string>>();
  for (const { table, columns, jobs } of lists) {
    const { tag } = columns;
    if (tag === null) continue;
    for (const [r, { job }] of jobs.entries()) {
      const reading = tag.read(table.rows[r]?.[tag.index] ?? '');
      if (reading.is !== 'value' || typeof reading.value !== 'string') continue;
      let mine = tags.get(job);
      if (mine === undefined) tags.set(job, (mine = new Set()));
      mine.add(reading.value);
    }
  }
  return tags;
}
