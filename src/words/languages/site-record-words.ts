import type { FilledRecord, Outcome, ReplacedFor } from '../../model/site-form-headings.js';

/** Every string of the form that a crew fills in, in one language. */
export interface SiteRecordWords {
  readonly document: string;
  readonly title: (job: string) => string;
  readonly subject: string;
  readonly keywords: readonly string[];
  readonly heading: string;
  /** Before the fingerprint of the plan. */
  readonly plan: string;
  readonly how: readonly string[];
  readonly allHeading: string;
  readonly allHow: string;
  /** What a housing is headed with: `P-3: part XX-1`. */
  readonly housing: (tag: string, part: string) => string;
  readonly noPart: string;
  readonly record: { readonly [H in FilledRecord]: string };
  /** What is written into some of them, beside their labels. */
  readonly hints: { readonly [H in FilledRecord]?: string };
  readonly outcomes: { readonly [O in Outcome]: string };
  readonly reasons: { readonly [R in ReplacedFor]: string };
  readonly readings: {
    readonly heading: string;
    readonly columns: Readonly<
      Record<'channel' | 'what' | 'state' | 'expected' | 'found' | 'whyNot' | 'date' | 'name', string>
    >;
    readonly none: string;
    readonly closed: string;
    readonly kinds: Readonly<Record<'light' | 'flag', string>>;
    readonly faultState: string;
    readonly volts: (low: string, high: string) => string;
    readonly upTo: (volts: string) => string;
    readonly notKnown: string;
    /** A flag that says that its part is used up. */
    readonly used: string;
    /** What a tooltip says of the cells of a reading. */
    readonly tips: Readonly<Record<'volts' | 'look' | 'whyNot' | 'date' | 'name', string>>;
  };
  readonly facts: {
    readonly heading: string;
    readonly how: string;
    readonly columns: Readonly<
      Record<'number' | 'what' | 'tag' | 'assumed' | 'found' | 'by' | 'date' | 'photo', string>
    >;
    readonly site: string;
    readonly none: string;
  };
}
