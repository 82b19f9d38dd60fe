import type { OpenItem } from '../model/message.js';
import { CHOOSE_MESSAGES } from '../model/messages/choose.js';
import type { Sentence } from '../model/sentence.js';

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
  if (NONE_FITS.has(item.code) && 'nearest' in item.values) return catalogueGap(String(item.values.nearest));
  const field = /^fact\/(.+)$/.exec(item.code)?.[1];
  return field === undefined ? null : gap(`${field.replaceAll('-', '_')} isn't stated`);
}

const gap = (says: string): GapTold => ({ key: says, says: says as Sentence });

/**
 * What a catalogue lacks, by the part that comes nearest.
 * @param nearest `PART (what it fails; ...)`
 */
function catalogueGap(nearest: string): GapTold | null {
  const why = /^.*? \((.*)\)$/.exec(nearest)?.[1];
  // What fails in several ways is a matter of its place.
  if (why === undefined || why.includes('; ')) return null;
  const listed = /^isn’t (listed for .*)$/.exec(why)?.[1];
  if (listed !== undefined) return gap(`No part in your catalogue that fits otherwise is ${listed}`);
  const rating = /^(\D+?) [\d.,]+ k?[VA] < /.exec(why)?.[1];
  if (rating !== undefined) return gap(`No part in your catalogue that fits otherwise has enough ${rating}`);
  return gap(`No part in your catalogue fits everything asked for: ${why}`);
}
