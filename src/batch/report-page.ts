import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { z } from 'zod';
import { loadTemplates } from '../documents/parts/templates.js';
import type { AskedModel } from '../model/list.js';
import { byNaturalOrder } from '../model/natural-order.js';
import type { JobItem } from '../model/open-item.js';
import { RECORD_STATES } from '../model/record.js';
import type { RegisteredJob } from '../model/register.js';
import type { JobOrder, ReportLine } from '../output/tables.js';
import { embeddedFonts } from '../print/fonts.js';
import type { ListCount } from '../read/list/lists.js';
import { counted } from '../screen/text-table.js';
import { told } from '../words/messages/told.js';
import { placedSchema, type Placed } from './placed.js';
import { reportModels, reportModelsSchema } from './report-models.js';
import { factGroups, factGroupsSchema } from './report-facts.js';
import { recordsSchema, recordsView, REGISTER_TABLES } from './report-records.js';

const count = z.object({ value: z.string(), count: z.number() });

/** What `report.html` shows. */
const ReportPageSchema = z.object({
  title: z.string(),
  style: z.string(),
  script: z.string(),
  scriptHash: z.string().regex(/^[A-Za-z0-9+/]{43}=$/),
  summary: z.string(),
  /** `` where every list and company file could be read. */
  unread: z.string(),
  /** The tables of the batch beside the page. */
  tables: z.array(z.object({ file: z.string(), what: z.string(), last: z.boolean() })),
  /** How many parts to order, and for what; `` where that isn't known. */
  order: z.string(),
  /** Jobs at one address: `4 jobs at 4 Sedge Lane: A, B, C, D`. */
  together: z.array(z.string()),
  /** Jobs whose papers are drafts. */
  drafts: z.array(z.object({ job: z.string(), href: z.string() })),
  /** True where the files of questions were written. */
  asks: z.boolean(),
  /** `` for a run that reached its end. */
  stopped: z.string(),
  statuses: z.array(count),
  deeds: z.array(count),
  /** Empty where no job has a record. */
  recordStates: z.array(count),
  headings: z.array(z.object({ text: z.string(), sortable: z.boolean(), sort: z.string() })),
  jobs: z.array(
    z.object({
      job: z.string(),
      /** By which the page is linked to within itself. */
      id: z.string(),
      folder: z.string(),
      draft: z.boolean(),
      jobName: z.string(),
      address: z.string(),
      revision: z.string(),
      status: z.enum(['complete', 'draft', 'failed']),
      record: z.enum(RECORD_STATES),
      /** True where its record came back. */
      recorded: z.boolean(),
      done: z.enum(['printed', 'unchanged', 'nothing']),
      basis: z.string(),
      protectors: z.number(),
      placed: z.array(placedSchema.extend({ guards: z.string() })),
      missing: z.number(),
      conflict: z.number(),
      confirm: z.number(),
      documents: z.array(z.object({ text: z.string(), href: z.string().regex(/^[A-Za-z0-9._/-]+$/) })),
      /** How many facts hold it back: `4 facts`; `` for none. */
      held: z.string(),
      holds: z.string(),
      openItems: z.array(z.object({ who: z.string(), says: z.string() })),
    }),
  ),
  changes: z.array(z.string()),
  changesSummary: z.string(),
  fewChanges: z.boolean(),
  noChanges: z.string(),
  /** Clauses that nobody of the company has checked against the edition in force, by basis. */
  unchecked: z.array(z.object({ basis: z.string(), count: z.number(), clauses: z.string() })),
  groups: factGroupsSchema,
  records: recordsSchema,
  models: reportModelsSchema,
});
type ReportPage = z.infer<typeof ReportPageSchema>;

/** A job as the report shows it. */
export interface ReportedJob {
  readonly line: ReportLine;
  readonly placed: readonly Placed[];
  /** Clauses that its papers cite and that nobody of the company has checked. */
  readonly unchecked: readonly string[];
  /** Names of the PDFs in its folder. */
  readonly documents: readonly string[];
  /** What the register holds of it; undefined: no record came back. */
  readonly registered?: RegisteredJob | undefined;
}

/** What the report of a batch is made from. */
export interface ReportSource {
  /** `YYYY-MM-DD`. */
  readonly date: string;
  readonly lists: ListCount;
  /** Company files (catalogue, library, job facts) that couldn't be read. */
  readonly otherUnreadable: number;
  readonly jobs: readonly ReportedJob[];
  readonly items: readonly JobItem[];
  /** Models that the library lacks; none for a run that was stopped. */
  readonly models: readonly AskedModel[];
  /** Of all jobs; empty for a run that was stopped. */
  readonly orders: readonly JobOrder[];
  /** Sentences; undefined: this is the first run. */
  readonly changes: readonly string[] | undefined;
  /** Jobs on the lists; more than `jobs` where the run was stopped. */
  readonly all: number;
}

const text = (heading: string) => ({ text: heading, sortable: true, sort: 'text' });
const number = (heading: string) => ({ text: heading, sortable: true, sort: 'number' });
const plain = (heading: string) => ({ text: heading, sortable: false, sort: '' });
const HEADINGS = [
  text('Job'),
  text('Status'),
  text('This run'),
  text('Basis'),
  number('Protectors'),
  number('Missing'),
  number('Conflict'),
  number('Confirm'),
  plain('Documents'),
  plain('What holds it back'),
];
/** The tables of a batch; those of what to buy and to fill in are written by a run that reached its end alone. */
const TABLES = [
  { file: 'open-items.csv', what: 'what is open, for the office', whole: false },
  { file: 'report.csv', what: 'the state of each job, for the office', whole: false },
  { file: 'order-list.csv', what: 'what to buy, for who orders', whole: true },
  { file: 'missing-models.csv', what: 'models to add to the library, for the office', whole: true },
  { file: 'questions.csv', what: 'all that is asked, to be answered', whole: true },
];
/** What holds a job back, and who can supply it. */
interface Reason {
  readonly who: string;
  readonly says: string;
}

/** Items of one job that are named before the rest is counted. */
const MOST = 5;
/** Changes that are shown before they are folded. */
const FEW = 10;

/**
 * `report.html`: the batch as one page that opens from disk, with no server and nothing fetched.
 * @param source what the batch gave
 * @param templates a folder whose templates go before the shipped ones
 * @throws Failure where the template can't be used
 */
export async function reportPage(source: ReportSource, templates: string | undefined): Promise<string> {
  const [shipped, fonts, script] = await Promise.all([
    loadTemplates(templates),
    embeddedFonts(),
    readFile(new URL('../../templates/report/report.js', import.meta.url), 'utf8'),
  ]);
  const style = shipped.style('report');
  const view = ReportPageSchema.parse(pageView(source, style, script));
  const faces = fonts.standAloneKit.css(shipped.render('report', view));
  return shipped.render('report', { ...view, style: `${faces}\n${style}` });
}

function pageView(source: ReportSource, style: string, script: string): ReportPage {
  const { date, jobs, items, changes, all } = source;
  const lines = jobs.map((job) => job.line);
  const tally = (values: readonly string[], of: (line: ReportLine) => string) =>
    values.map((value) => ({ value, count: lines.filter((line) => of(line) === value).length }));
  const statuses = tally(['complete', 'draft', 'failed'], (line) => line.status);
  const recorded = jobs.flatMap(({ registered }, at) =>
    registered ? [{ record: registered, href: `#job-${at}` }] : [],
  );
  const beside = [...TABLES, ...(recorded.length > 0 ? REGISTER_TABLES : [])];
  const blocking = new Map<string, Reason[]>();
  for (const { job, item } of items) {
    if (item.severity === 'confirm') continue;
    const own = blocking.get(job) ?? [];
    own.push({ who: item.who, says: told(item).message });
    blocking.set(job, own);
  }
  const said = statuses.map((s) => `${s.count} ${s.value}`).join(', ');
  return {
    title: 'Surge protection packs: report of the batch',
    style,
    script,
    scriptHash: createHash('sha256').update(script, 'utf8').digest('base64'),
    summary: `${date}: ${listsText(source.lists)}; ${counted(lines.length, 'job')}: ${said}.`,
    unread: unreadText(source),
    tables: beside
      .filter(({ whole }) => !whole || lines.length === all)
      .map(({ file, what }, at, of) => ({ file, what, last: at === of.length - 1 })),
    order: lines.length === all ? orderText(source.orders) : '',
    together: sharedAddresses(lines),
    drafts: lines.flatMap(({ status, job }, at) => (status === 'draft' ? [{ job, href: `#job-${at}` }] : [])),
    asks: lines.length === all && lines.length > 0,
    stopped:
      lines.length < all ? `The run was stopped: ${lines.length} of ${all} jobs are in this report.` : '',
    statuses,
    deeds: tally(['printed', 'unchanged', 'nothing'], (line) => line.done),
    recordStates: recorded.length === 0 ? [] : tally(RECORD_STATES, (line) => line.record),
    headings: HEADINGS,
    jobs: jobs.map((job, at) => jobView(job, `job-${at}`, blocking.get(job.line.job) ?? [])),
    changes: [...(changes ?? [])],
    changesSummary: counted(changes?.length ?? 0, 'change'),
    fewChanges: (changes?.length ?? 0) <= FEW,
    noChanges: changes ? 'Nothing changed since the last run.' : 'This is the first run into this folder.',
    unchecked: uncheckedClauses(jobs),
    groups: factGroups(items),
    records: recordsView(recorded, date),
    models: reportModels(source.models),
  };
}

/** `9 parts to order: 6 for complete jobs, 3 for drafts`. */
function orderText(orders: readonly JobOrder[]): string {
  const sum = (of: readonly JobOrder[]): number => of.reduce((all, { quantity }) => all + quantity, 0);
  if (orders.length === 0) return '';
  const drafts = sum(orders.filter(({ draft }) => draft));
  const all = sum(orders);
  return `${counted(all, 'part')} to order: ${String(all - drafts)} for complete jobs, ${String(drafts)} for drafts`;
}

/** A line for each address that several jobs share. */
function sharedAddresses(lines: readonly ReportLine[]): string[] {
  const at = new Map<string, string[]>();
  for (const { address, job } of lines) at.set(address, [...(at.get(address) ?? []), job]);
  return [...at].flatMap(([address, jobs]) =>
    address === '' || jobs.length === 1
      ? []
      : [`${counted(jobs.length, 'job')} at ${address}: ${jobs.join(', ')}.`],
  );
}

/** `60 lists, 1 unreadable`. */
function listsText({ all, unreadable }: ListCount): string {
  return `${counted(all, 'list')}${unreadable === 0 ? '' : `, ${String(unreadable)} unreadable`}`;
}

function unreadText({ lists, otherUnreadable }: ReportSource): string {
  const what = [
    ...(lists.unreadable === 0 ? [] : [counted(lists.unreadable, 'list')]),
    ...(otherUnreadable === 0 ? [] : [counted(otherUnreadable, 'company file')]),
  ];
  if (what.length === 0) return '';
  const jobs = lists.unreadable === 0 ? '' : ' Jobs that stand on such a list alone are not in this report.';
  return `${what.join(' and ')} could not be read: see the open items of the office.${jobs}`;
}

function jobView(
  { line, placed, documents, registered }: ReportedJob,
  id: string,
  blocking: readonly Reason[],
): ReportPage['jobs'][number] {
  return {
    ...line,
    id,
    draft: line.status === 'draft',
    recorded: registered !== undefined,
    placed: placed.map((one) => ({ ...one, guards: one.guards.join(', ') })),
    documents: documents.map((file) => ({
      text: `${file.replace(/\.pdf$/, '').replaceAll('-', ' ')}${line.status === 'draft' ? ' (draft)' : ''}`,
      href: `${line.folder}/${file}`,
    })),
    held: blocking.length === 0 ? '' : counted(blocking.length, 'fact'),
    holds: blocking.length === 1 ? 'holds it back' : 'hold it back',
    openItems: firstOf(blocking),
  };
}

/** The clauses of each basis that nobody has checked, each once. */
function uncheckedClauses(jobs: readonly ReportedJob[]): ReportPage['unchecked'] {
  const byBasis = new Map<string, Set<string>>();
  for (const { line, unchecked } of jobs) {
    const known = byBasis.get(line.basis) ?? new Set<string>();
    for (const clause of unchecked) known.add(clause);
    byBasis.set(line.basis, known);
  }
  return [...byBasis].flatMap(([basis, clauses]) =>
    clauses.size === 0
      ? []
      : [{ basis, count: clauses.size, clauses: [...clauses].sort(byNaturalOrder).join(', ') }],
  );
}

function firstOf(messages: readonly Reason[]): Reason[] {
  const more = messages.length - MOST;
  return more > 0
    ? [...messages.slice(0, MOST), { who: '', says: `and ${more} more: see open-items.csv` }]
    : [...messages];
}
