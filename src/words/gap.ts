import type { OpenItem } from '../model/open-item.js';
import { CHOOSE_MESSAGES } from '../model/messages/choose.js';
import { reason, type ReasonCode } from '../model/reason.js';
import type { Sentence } from '../model/sentence.js';
import { isReason, say } from './reasons/say.js';

/** What is the same about an item wherever it shows. */
export interface GapTold {
  readonly key: string;
  /** Without a full stop: "No part in your catalogue that fits otherwise is listed for ungrounded systems". */
  readonly says: Sentence;
}

const NONE_FITS: ReadonlySet<string> = new Set([
  CHOOSE_MESSAGES.noneFits.code,
  CHOOSE_MESSAGES.noneThreePlusOne.code,
]);

/** What is the same about an item wherever it shows; null where it is a matter of its one place. */
export function gapOf(item: OpenItem): GapTold | null {
  if (NONE_FITS.has(item.code)) return 'nearest' in item.values ? catalogueGap(item.values.nearest) : null;
  const field = /^fact\/(.+)$/.exec(item.code)?.[1];
  return field === undefined ? null : gap(`${field.replaceAll('-', '_')} isn’t stated`);
}

const gap = (says: string): GapTold => ({ key: says, says: says as Sentence });

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
function catalogueGap(nearest: unknown): GapTold | null {
  if (!isReason(nearest) || nearest.code !== 'choice/nearest') return null;
  const [why, ...others] = nearest.values.failures;
  // What fails in several ways is a matter of its place.
  if (!isReason(why) || others.length > 0) return null;
  if (why.code === 'listing/other-system') {
    return gap(`No part in your catalogue that fits otherwise ${say(reason('listing/is-for', why.values))}`);
  }
  const rating = RATINGS[why.code];
  const direct = why.code === 'short-circuit/below' && why.values.current === 'dc' ? 'DC ' : '';
  if (rating !== undefined)
    return gap(`No part in your catalogue that fits otherwise has enough ${direct}${rating}`);
  return gap(`No part in your catalogue fits everything asked for: ${say(why)}`);
}
