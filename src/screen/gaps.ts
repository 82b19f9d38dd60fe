import type { JobItem } from '../model/open-item.js';
import type { Sentence } from '../model/sentence.js';
import type { Severity } from '../model/words.js';
import { gapOf } from '../words/gap.js';
import { counted, printable } from './text-table.js';

/** A gap that runs through several jobs, wherever in each of them it shows. */
export interface Gap {
  readonly severity: Severity;
  /** Without a full stop: "No part in your catalogue that fits otherwise is listed for ungrounded systems". */
  readonly says: Sentence;
  /** In how many jobs. */
  readonly jobs: number;
}

/**
 * The gaps that run through a batch, so that the office closes each once.
 * @param items the open items of the batch
 * @returns those of two jobs or more, the widest first
 */
export function gapsOf(items: readonly JobItem[]): Gap[] {
  const gaps = new Map<
    string,
    { readonly severity: Severity; readonly says: Sentence; readonly jobs: Set<string> }
  >();
  for (const { job, item } of items) {
    if (job === '' || item.severity === 'confirm') continue;
    const found = gapOf(item);
    if (found === null) continue;
    const { key, says } = found;
    const gap = gaps.get(key) ?? { severity: item.severity, says, jobs: new Set<string>() };
    gaps.set(key, gap);
    gap.jobs.add(job);
  }
  return [...gaps.values()]
    .filter(({ jobs }) => jobs.size > 1)
    .map(({ severity, says, jobs }) => ({ severity, says, jobs: jobs.size }))
    .sort((a, b) => b.jobs - a.jobs);
}

/** A gap on one line: what it is, and in how many jobs. */
export function gapText({ says, jobs }: Gap): string {
  return `${printable(says)}: ${counted(jobs, 'job')}`;
}

/**
 * The gaps that run through a batch, for the screen.
 * @param items the open items of the batch
 * @returns a line each, ended by a line feed; `` where there is none
 */
export function gapsText(items: readonly JobItem[]): string {
  return gapsOf(items)
    .map((gap) => `${gap.severity}  ${gapText(gap)}\n`)
    .join('');
}
