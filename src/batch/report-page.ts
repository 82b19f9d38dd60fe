import { told } from '../words/messages/told.js';
import type { JobItem } from '../model/open-item.js';
import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { z } from 'zod';
import { loadTemplates } from '../documents/parts/templates.js';
import type { ReportLine } from '../output/tables.js';
import { gapsOf, gapText } from '../screen/gaps.js';
import { counted, printable } from '../screen/text-table.js';
import { placeText } from '../words/origin.js';
import type { Sentence } from '../model/sentence.js';
import { byLead } from '../model/item-order.js';
import { byNaturalOrder } from '../model/natural-order.js';
import { WHOS } from '../model/words.js';

const count = z.object({ value: z.string(), count: z.number() });

/** What `report.html` shows. */
const ReportPageSchema = z.object({
  title: z.string(),
  style: z.string(),
  script: z.string(),
  scriptHash: z.string().regex(/^[A-Za-z0-9+/]{43}=$/),
  summary: z.string(),
  /** `` for a run that reached its end. */
  stopped: z.string(),
  statuses: z.array(count),
  deeds: z.array(count),
  headings: z.array(z.object({ text: z.string(), sortable: z.boolean(), sort: z.string() })),
  jobs: z.array(
    z.object({
      job: z.string(),
      name: z.string(),
      status: z.enum(['complete', 'draft', 'failed']),
      done: z.enum(['printed', 'unchanged', 'nothing']),
      basis: z.string(),
      protectors: z.number(),
      missing: z.number(),
      conflict: z.number(),
      confirm: z.number(),
      documents: z.array(z.object({ text: z.string(), href: z.string().regex(/^[A-Za-z0-9._/-]+$/) })),
      openItems: z.array(z.string()),
    }),
  ),
  changes: z.array(z.string()),
  noChanges: z.string(),
  /** Clauses that nobody of the company has checked against the edition in force, a line a basis. */
  unchecked: z.array(z.string()),
  /** Gaps that several jobs share, a line each. */
  gaps: z.array(z.string()),
  groups: z.array(
    z.object({
      who: z.string(),
      count: z.number(),
      open: z.boolean(),
      items: z.array(
        z.object({
          severity: z.string(),
          jobs: z.string(),
          place: z.string(),
          message: z.string(),
          code: z.string(),
          hint: z.string(),
        }),
      ),
    }),
  ),
});
type ReportPage = z.infer<typeof ReportPageSchema>;

/** A job as the report shows it. */
export interface ReportedJob {
  readonly line: ReportLine;
  readonly name: string;
  /** Clauses that its papers cite and that nobody of the company has checked. */
  readonly unchecked: readonly string[];
  /** Names of the PDFs in its folder. */
  readonly documents: readonly string[];
}

/** What the report of a batch is made from. */
export interface ReportSource {
  /** `YYYY-MM-DD`. */
  readonly date: string;
  readonly jobs: readonly ReportedJob[];
  readonly items: readonly JobItem[];
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
/** Items of one job or jobs of one item that are named before the rest is counted. */
const MOST = 5;

/**
 * `report.html`: the batch as one page that opens from disk, with no server and nothing fetched.
 * @param source what the batch gave
 * @param templates a folder whose templates go before the shipped ones
 * @throws Failure where the template can't be used
 */
export async function reportPage(source: ReportSource, templates: string | undefined): Promise<string> {
  const shipped = await loadTemplates(templates);
  const script = await readFile(new URL('../../templates/report/report.js', import.meta.url), 'utf8');
  const view = ReportPageSchema.parse(pageView(source, shipped.style('report'), script));
  return shipped.render('report', view);
}

function pageView(
  { date, jobs, items, changes, all }: ReportSource,
  style: string,
  script: string,
): ReportPage {
  const lines = jobs.map((job) => job.line);
  const tally = (values: readonly string[], of: (line: ReportLine) => string) =>
    values.map((value) => ({ value, count: lines.filter((line) => of(line) === value).length }));
  const statuses = tally(['complete', 'draft', 'failed'], (line) => line.status);
  const blocking = new Map<string, Sentence[]>();
  for (const { job, item } of items) {
    if (item.severity !== 'confirm') blocking.set(job, [...(blocking.get(job) ?? []), told(item).message]);
  }
  const said = statuses.map((s) => `${s.count} ${s.value}`).join(', ');
  return {
    title: 'Surge protection packs: report of the batch',
    style,
    script,
    scriptHash: createHash('sha256').update(script, 'utf8').digest('base64'),
    summary: `${date}: ${counted(lines.length, 'job')}, ${said}.`,
    stopped:
      lines.length < all ? `The run was stopped: ${lines.length} of ${all} jobs are in this report.` : '',
    statuses,
    deeds: tally(['printed', 'unchanged', 'nothing'], (line) => line.done),
    headings: HEADINGS,
    jobs: jobs.map(({ line, name, documents }) => ({
      ...line,
      name,
      documents: documents.map((file) => ({
        text: file.replace(/\.pdf$/, ''),
        href: `${line.folder}/${file}`,
      })),
      openItems: firstOf(blocking.get(line.job) ?? []),
    })),
    changes: [...(changes ?? [])],
    noChanges: changes ? 'Nothing changed since the last run.' : 'This is the first run into this folder.',
    unchecked: uncheckedLines(jobs),
    gaps: gapsOf(items).map(gapText),
    groups: groupsOf(items),
  };
}

/** `nec-2023: 110.3(B), 230.67`, each clause once. */
function uncheckedLines(jobs: readonly ReportedJob[]): string[] {
  const byBasis = new Map<string, Set<string>>();
  for (const { line, unchecked } of jobs) {
    const known = byBasis.get(line.basis) ?? new Set<string>();
    for (const clause of unchecked) known.add(clause);
    byBasis.set(line.basis, known);
  }
  return [...byBasis].flatMap(([basis, clauses]) =>
    clauses.size === 0 ? [] : [`${basis}: ${[...clauses].sort(byNaturalOrder).join(', ')}`],
  );
}

function firstOf(messages: readonly Sentence[]): string[] {
  const more = messages.length - MOST;
  return more > 0 ? [...messages.slice(0, MOST), `and ${more} more: see open-items.csv`] : [...messages];
}

/** Open items by who can supply them; what several jobs share stands once. */
function groupsOf(items: readonly JobItem[]): ReportPage['groups'] {
  return WHOS.flatMap((who) => {
    const own = items.filter(({ item }) => item.who === who);
    if (own.length === 0) return [];
    const shared = new Map<string, { first: JobItem; jobs: string[] }>();
    for (const one of own) {
      const key = JSON.stringify([one.item.severity, one.item.code, one.item.values]);
      const known = shared.get(key);
      if (known) known.jobs.push(one.job);
      else shared.set(key, { first: one, jobs: [one.job] });
    }
    const rows = [...shared.values()].sort((a, b) => byLead(a.first.item, b.first.item));
    return [
      {
        who,
        count: own.length,
        open: own.some(({ item }) => item.severity !== 'confirm'),
        items: rows.map(({ first: { item }, jobs }) => {
          const { message, hint } = told(item);
          return {
            severity: item.severity,
            jobs: jobsText(jobs),
            place: jobs.length > 1 ? '' : printable(placeText(item)),
            message,
            code: item.code,
            hint,
          };
        }),
      },
    ];
  });
}

function jobsText(jobs: readonly string[]): string {
  const named = [...new Set(jobs)].filter((job) => job !== '');
  const more = named.length - MOST;
  return more > 0 ? `${named.slice(0, MOST).join('; ')} and ${more} more` : named.join('; ');
}
