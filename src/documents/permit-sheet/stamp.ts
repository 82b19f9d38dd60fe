import type { Blank } from '../parts/blanks.js';
import { tagList } from '../../words/tag-list.js';

/** How far a permit sheet is, the first that holds. */
export const STAMPS = ['draft', 'after-check', 'when-filled', 'for-permit'] as const;
export type Stamp = (typeof STAMPS)[number];

/** What decides on the stamp. */
export interface StampFacts {
  /** False: something is missing or in conflict. */
  readonly submittable: boolean;
  /** Clauses behind required lines that nobody of the company has checked. */
  readonly unchecked: readonly string[];
  readonly blanks: readonly Blank[];
}

/** The stamp of the sheets of a job. */
export function stampOf({ submittable, unchecked, blanks }: StampFacts): Stamp {
  if (!submittable) return 'draft';
  if (unchecked.length > 0) return 'after-check';
  return blanks.length > 0 ? 'when-filled' : 'for-permit';
}

/** What the revision row says that the sheets are issued for: never more than the stamp beside it. */
const ISSUED: Readonly<Record<Stamp, string>> = {
  draft: 'Draft',
  'after-check': 'For check of clauses',
  'when-filled': 'To be filled in',
  'for-permit': 'Issued for permit',
};
export const issuedFor = (stamp: Stamp): string => ISSUED[stamp];

const ORDER: readonly Blank['what'][] = ['device', 'fault current', 'lead', 'ground', 'listing'];

/** What the sheets leave to fill in, by what it is: `fault current: P-1, P-3 to P-30`. */
export function blankWords(blanks: readonly Blank[]): string[] {
  return ORDER.flatMap((what) => {
    const tags = blanks.filter((blank) => blank.what === what).map((blank) => blank.tag);
    return tags.length === 0 ? [] : [`${what}: ${tagList(tags)}`];
  });
}

const blankCount = (blanks: readonly Blank[]): string =>
  blanks.length === 1 ? '1 blank' : `${String(blanks.length)} blanks`;

/** The words of a stamp and, on lines below, the blanks that each stamp names. */
export function stampWords(facts: StampFacts): { readonly stamp: string; readonly blanks: string[] } {
  const { blanks } = facts;
  const named = blankWords(blanks);
  switch (stampOf(facts)) {
    case 'draft':
      return { stamp: 'DRAFT, NOT FOR PERMIT', blanks: leftOf(blanks, named) };
    case 'after-check':
      return { stamp: 'FOR PERMIT AFTER CHECK OF CLAUSES', blanks: leftOf(blanks, named) };
    case 'when-filled':
      return { stamp: `FOR PERMIT WHEN FILLED: ${blankCount(blanks)}`, blanks: named };
    case 'for-permit':
      return { stamp: 'FOR PERMIT', blanks: [] };
  }
}

function leftOf(blanks: readonly Blank[], named: readonly string[]): string[] {
  return blanks.length === 0 ? [] : [`To fill in, ${blankCount(blanks)}`, ...named];
}
