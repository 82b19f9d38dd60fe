import type { Field, JobField, RowField } from '../../model/list.js';
import type { OpenItem } from '../../model/open-item.js';
import type { AnswerLine } from '../answers/answer-lines.js';
import { answersByJob, type Answer, type JobAnswers, type JobToSupply } from '../answers/answers-by-row.js';
import type { FactLine } from '../answers/fact-lines.js';
import type { GivenFact } from '../answers/given-fact.js';
import { givenByJob, type JobGiven } from '../answers/given-facts.js';
import { answerReader } from '../answers/readers.js';
import { answeredFact, goesBefore, sayChanged } from '../answers/take-answer.js';
import type { JobDraft, JobDrafts } from './job-drafts.js';
import type { ListOptions } from './list-options.js';

/** What people supplied for one row beside its list. */
export interface RowSupply {
  readonly answers: ReadonlyMap<RowField, Answer>;
  readonly facts: ReadonlyMap<RowField, GivenFact>;
}

/** What people supplied for the jobs of the lists beside them. */
export interface Supply {
  /** Undefined: nothing. */
  readonly ofRow: (job: string, tag: string) => RowSupply | undefined;
  readonly ofJob: (job: string) => {
    readonly answers: JobAnswers | undefined;
    readonly given: JobGiven | undefined;
  };
  /** Items of no job. */
  readonly items: readonly OpenItem[];
  /** Says what became of answers, once all rows are read. */
  readonly finish: () => void;
}

const NO_ANSWERS: ReadonlyMap<RowField, Answer> = new Map();
const NO_FACTS: ReadonlyMap<RowField, GivenFact> = new Map();

/**
 * Sorts what people supplied by job and row.
 * @param answers lines of files of answers
 * @param facts lines of files of equipment facts
 * @param drafts the jobs of the lists; items about them are added
 * @param tags of the rows of each job
 * @param options settings and column map
 */
export function supplyOf(
  answers: readonly AnswerLine[],
  facts: readonly FactLine[],
  drafts: JobDrafts,
  tags: ReadonlyMap<string, ReadonlySet<string>>,
  options: ListOptions,
): Supply {
  const jobs = new Map<string, JobToSupply>();
  for (const [job, { items }] of drafts)
    jobs.set(job, { tags: tags.get(job) ?? new Set(), say: (item) => items.push(item) });
  const answered = answersByJob(answers, jobs, answerReader(options.settings, options.columns));
  const given = givenByJob(facts, jobs);
  return {
    ofRow(job, tag) {
      const mine = answered.byJob.get(job)?.ofRows.get(tag);
      const stated = given.byJob.get(job)?.ofRows.get(tag);
      if (mine === undefined && stated === undefined) return undefined;
      return { answers: mine ?? NO_ANSWERS, facts: stated ?? NO_FACTS };
    },
    ofJob: (job) => ({ answers: answered.byJob.get(job), given: given.byJob.get(job) }),
    items: [...answered.items, ...given.items],
    finish() {
      for (const [id, mine] of answered.byJob) {
        const job = jobs.get(id);
        if (job !== undefined) sayChanged(mine, job);
      }
    },
  };
}

/**
 * Puts the answers about a job into its facts: they go before what lists and job facts state.
 * @param draft the job, with the facts of all its rows
 * @param answers of the job
 */
export function takeJobAnswers(draft: JobDraft, { ofJob, accepted }: JobAnswers): void {
  draft.accepted.push(...accepted);
  for (const [field, answer] of ofJob) {
    const stated = draft.facts[field];
    const text = stated?.text ?? draft.typed[field] ?? '';
    const place = stated !== undefined && 'file' in stated.origin ? stated.origin : lineOfJob(draft, field);
    const reading =
      stated === undefined
        ? ({ is: text === '' ? 'blank' : 'wrong', note: null } as const)
        : ({ is: 'value', value: stated.value, feet: null, note: null } as const);
    if (!goesBefore(answer, { text, reading, ...place }, false)) continue;
    draft.facts[field] = answeredFact(answer, false);
    draft.unreadable.delete(field);
    // What was wrong with the cells, or differed among them, is settled.
    const { file, line } = answer.line.place;
    const left = draft.items.filter(
      (item) => !isAbout(item, field) || (item.file === file && item.line === line),
    );
    draft.items.splice(0, draft.items.length, ...left);
  }
}

function lineOfJob({ sheet, line }: JobDraft, field: Field): { file: string; line: number; column: string } {
  return { file: sheet.file, line, column: sheet.headings[field] ?? '' };
}

function isAbout({ equipment, values }: OpenItem, field: JobField): boolean {
  return equipment === '' && 'field' in values && values.field === field;
}
