import type { OpenItem } from '../model/open-item.js';
import type { Sentence } from '../model/sentence.js';
import { gapOf } from './gap.js';
import { sharedOf, told } from './messages/told.js';

/** An open item as one of those that tell the same fact. */
export interface SharedFact {
  /** What tells one fact from another. */
  readonly key: string;
  readonly says: Sentence;
  /** What it is about at its own place: tags, a run, a port; none: the job or the batch. */
  readonly about: readonly string[];
}

/** The fact that an open item tells, apart from the place where it shows. */
export function sharedFact(item: OpenItem): SharedFact {
  const shared = sharedOf(item);
  const { message, hint } = told(item);
  const about = shared?.about ?? (item.equipment === '' ? [] : [item.equipment]);
  const gap = shared ? undefined : gapOf(item)?.says;
  const says = shared?.fact ?? (gap === undefined ? message : (`${gap}.` as Sentence));
  return { key: JSON.stringify([item.severity, item.who, item.code, says, hint]), says, about };
}
