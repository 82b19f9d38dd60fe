import { told } from '../words/messages/told.js';
import type { JobItem } from '../model/open-item.js';
import { byLead } from '../model/item-order.js';
import { SEVERITIES } from '../model/words.js';
import { placeText } from '../words/origin.js';
import { causesTold } from './causes.js';
import { itemText, MOST_OF_A_KIND } from './item-text.js';
import { counted, printable, textTable } from './text-table.js';

/** What the table of a batch shows of one job. */
export interface JobLine {
  readonly job: string;
  readonly folder: string;
  readonly status: 'complete' | 'draft' | 'failed';
  readonly protectors: number;
  readonly missing: number;
  readonly conflict: number;
  readonly confirm: number;
}

interface Group {
  readonly first: JobItem;
  readonly jobs: Set<string>;
}

/**
 * Open items as a screen shows them: the same gap through a batch once, with its number of jobs; at most five of one
 * kind a column, the rest counted, so that a column full of faults hides none of another; what is only to confirm is counted unless it belongs to no job or `all` is set.
 * @param items all items of the run, in their order
 * @param all true: confirmations of jobs are shown as well
 * @param rest where all of them can be seen
 * @returns lines, each ended by a line feed; `` where there is nothing to say
 */
export function itemsText(
  items: readonly JobItem[],
  all: boolean,
  rest = 'all of them stand in open-items.csv',
): string {
  const listed = items.filter((i) => all || i.job === '' || i.item.severity !== 'confirm');
  const { told: causesFirst, left } = causesTold(listed, rest);
  const out: string[] = [...causesFirst];
  for (const severity of SEVERITIES) {
    const groups = grouped(
      left.filter(({ item }) => item.severity === severity).sort((a, b) => byLead(a.item, b.item)),
    );
    const used = new Map<string, number>();
    const uncounted = new Map<string, { code: string; file: string; column: string; count: number }>();
    for (const group of groups) {
      const { item } = group.first;
      const { code, file, column } = item;
      const key = JSON.stringify([code, file, column]);
      const already = used.get(key) ?? 0;
      used.set(key, already + 1);
      if (already < MOST_OF_A_KIND) out.push(itemText(item, jobsText(group.jobs)));
      else uncounted.set(key, { code, file, column, count: (uncounted.get(key)?.count ?? 0) + 1 });
    }
    for (const { code, file, column, count } of uncounted.values()) {
      const where = file === '' ? '' : ` in ${printable(placeText({ file, line: 0, column }))}`;
      out.push(`${severity}  and ${String(count)} more of ${code}${where}: ${rest}\n`);
    }
  }
  const hidden = items.length - listed.length;
  if (hidden > 0) {
    const jobs = new Set(items.filter((i) => i.job !== '' && i.item.severity === 'confirm').map((i) => i.job))
      .size;
    out.push(
      `confirm  ${counted(hidden, 'default or assumption', 'defaults and assumptions')} to confirm in ${counted(jobs, 'job')}: see open-items.csv\n`,
    );
  }
  return out.join('');
}

/** One gap that several jobs share is one group; anything else is a group of its own. */
function grouped(items: readonly JobItem[]): readonly Group[] {
  const groups = new Map<string, { first: JobItem; jobs: Set<string> }>();
  for (const one of items) {
    const key = JSON.stringify([one.item.code, one.item.values]);
    const known = groups.get(key);
    if (known && one.job !== '' && !known.jobs.has(one.job)) known.jobs.add(one.job);
    else
      groups.set(known ? `${key} ${String(groups.size)}` : key, {
        first: one,
        jobs: new Set(one.job === '' ? [] : [one.job]),
      });
  }
  return [...groups.values()];
}

function jobsText(jobs: ReadonlySet<string>): string {
  const [one] = jobs;
  if (one === undefined) return '';
  return jobs.size === 1 ? `job ${printable(one, 60)}` : counted(jobs.size, 'job');
}

/**
 * The table of a batch.
 * @param lines one a job, in the order of the lists
 * @returns lines, each ended by a line feed
 */
export function batchTable(lines: readonly JobLine[]): string {
  return textTable(
    [
      { heading: 'job' },
      { heading: 'status' },
      { heading: 'protectors', align: 'right' },
      { heading: 'missing', align: 'right' },
      { heading: 'conflict', align: 'right' },
      { heading: 'confirm', align: 'right' },
      { heading: 'folder' },
    ],
    lines.map((l) => [
      l.job,
      l.status,
      String(l.protectors),
      String(l.missing),
      String(l.conflict),
      String(l.confirm),
      l.folder,
    ]),
  );
}

/**
 * For each draft one line that says why.
 * @param lines the jobs of the batch
 * @param items the open items of the batch
 * @returns lines, each ended by a line feed; `` where no pack is a draft
 */
export function draftsText(lines: readonly JobLine[], items: readonly JobItem[]): string {
  return lines
    .filter((l) => l.status === 'draft')
    .map((l) => `${draftReason(l, items)}\n`)
    .join('');
}

function draftReason(line: JobLine, items: readonly JobItem[]): string {
  const counts = [
    line.missing > 0 ? counted(line.missing, 'fact is missing', 'facts are missing') : '',
    line.conflict > 0 ? counted(line.conflict, 'conflict') : '',
  ].filter((s) => s !== '');
  const mine = items.filter((i) => i.job === line.job && i.item.severity !== 'confirm');
  const messages = mine.map((i) => printable(told(i.item).message, 160));
  const first = messages.slice(0, 2).join(' ');
  const more = messages.length > 2 ? ` And ${counted(messages.length - 2, 'more', 'more')}.` : '';
  return `${printable(line.job, 60)} is a draft: ${counts.join(', ')}. ${first}${more}`.trimEnd();
}
