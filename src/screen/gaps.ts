import { reason, type ReasonCode } from '../model/reason.js';
import { isReason, say } from '../words/reasons/say.js';
import type { OpenItem, JobItem } from '../model/message.js';
import type { Severity } from '../model/words.js';
import { CHOOSE_MESSAGES } from '../model/messages/choose.js';
import { counted, printable } from './text-table.js';

/** A gap that runs through several jobs, wherever in each of them it shows. */
export interface Gap {
  readonly severity: Severity;
  /** Without a full stop: "No part in your catalogue that fits otherwise is listed for ungrounded systems". */
  readonly says: string;
  /** In how many jobs. */
  readonly jobs: number;
}

const NONE_FITS: ReadonlySet<string> = new Set([
  CHOOSE_MESSAGES.noneFits.code,
  CHOOSE_MESSAGES.noneThreePlusOne.code,
]);

/** What is the same about an item wherever it shows; null where it is a matter of its one place. */
function gapOf(item: OpenItem): string | null {
  if (NONE_FITS.has(item.code)) return 'nearest' in item.values ? catalogueGap(item.values.nearest) : null;
  const field = /^fact\/(.+)$/.exec(item.code)?.[1];
  return field === undefined ? null : `${field.replaceAll('-', '_')} isn't stated`;
}

/** Ratings by the reason that says that a part has too little of it. */
const RATINGS: Readonly<Partial<Record<ReasonCode, string>>> = {
  'mcov/below': 'MCOV',
  'discharge/below': 'In',
  'short-circuit/below': 'SCCR',
  'impulse/below': 'Iimp',
};

/**
 * What a catalogue lacks, by the part that comes nearest.
 * @param nearest the part and what it fails, as the plan has it
 */
function catalogueGap(nearest: unknown): string | null {
  if (!isReason(nearest) || nearest.code !== 'choice/nearest') return null;
  const [why, ...others] = nearest.values.failures;
  // What fails in several ways is a matter of its place.
  if (!why || others.length > 0) return null;
  if (why.code === 'listing/other-system') {
    return `No part in your catalogue that fits otherwise ${say(reason('listing/is-for', why.values))}`;
  }
  const rating = RATINGS[why.code];
  const direct = why.code === 'short-circuit/below' && why.values.current === 'dc' ? 'DC ' : '';
  if (rating !== undefined)
    return `No part in your catalogue that fits otherwise has enough ${direct}${rating}`;
  return `No part in your catalogue fits everything asked for: ${say(why)}`;
}

/**
 * The gaps that run through a batch, so that the office closes each once.
 * @param items the open items of the batch
 * @returns those of two jobs or more, the widest first
 */
export function gapsOf(items: readonly JobItem[]): Gap[] {
  const gaps = new Map<
    string,
    { readonly severity: Severity; readonly says: string; readonly jobs: Set<string> }
  >();
  for (const { job, item } of items) {
    if (job === '' || item.severity === 'confirm') continue;
    const says = gapOf(item);
    if (says === null) continue;
    const gap = gaps.get(says) ?? { severity: item.severity, says, jobs: new Set<string>() };
    gaps.set(says, gap);
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
