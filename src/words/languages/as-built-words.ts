/** What can be otherwise at a housing than it was planned. */
export const CHANGED = [
  'outcome',
  'part',
  'place',
  'lead',
  'gauge',
  'device',
  'ground',
  'faultCurrent',
  'volts',
  'light',
  'fact',
  'level',
  'margin',
  'reach',
] as const;
export type Changed = (typeof CHANGED)[number];

/** What a record can lack of a housing. */
export const LACKED = [
  'outcome',
  'part',
  'serial',
  'lead',
  'torque',
  'volts',
  'light',
  'reading',
  'device',
  'date',
  'name',
  'fact',
  'plan',
  'other',
] as const;
export type Lacked = (typeof LACKED)[number];

/** Why a photo of the record isn't printed. */
export const UNPRINTED = ['missing', 'too-much', 'another', 'no-picture'] as const;
export type Unprinted = (typeof UNPRINTED)[number];

/** How a light or flag can be seen. */
export const SEEN_LOOKS = ['lit', 'dark', 'flickers', 'good', 'used'] as const;
export type SeenLook = (typeof SEEN_LOOKS)[number];

/** Every string of a pack that says how far the work is, in the crew's language. */
export interface AsBuiltWords {
  /** In the margin, behind the name of the document. */
  readonly margin: Readonly<Record<'planned' | 'open' | 'built' | 'deviating', string>>;
  /** On the cover: how far the work is. */
  readonly state: string;
  readonly states: {
    readonly planned: string;
    readonly open: (missing: number, conflicts: number) => string;
    readonly built: string;
    readonly deviating: (count: number) => string;
  };
  readonly done: string;
  readonly section: string;
  readonly changed: {
    readonly heading: string;
    readonly none: string;
    readonly columns: Readonly<Record<'tag' | 'what' | 'planned' | 'found' | 'result', string>>;
    readonly what: { readonly [C in Changed]: string };
    readonly outcomes: Readonly<
      Record<'fitted' | 'moved' | 'notFitted' | 'kept' | 'replaced' | 'removed', string>
    >;
    readonly reach: Readonly<Record<'whole' | 'none' | 'unknown', string>>;
    /** Between a least and a most. */
    readonly band: (low: string, high: string) => string;
    readonly holds: string;
    readonly fails: string;
    readonly unknown: string;
    readonly notAccepted: string;
    readonly accepted: (by: string, date: string) => string;
    readonly paper: (paper: string) => string;
  };
  readonly open: {
    readonly heading: string;
    readonly how: string;
    readonly columns: Readonly<Record<'tag' | 'missing' | 'conflict', string>>;
    readonly lacked: { readonly [L in Lacked]: string };
    readonly job: string;
  };
  readonly due: {
    readonly heading: string;
    readonly columns: Readonly<Record<'tag' | 'what' | 'on', string>>;
    readonly check: string;
    /** In place of a day: as soon as it can be seen. */
    readonly whenSeen: string;
    readonly reading: (what: string, state: string) => string;
    readonly none: string;
  };
  readonly found: {
    /** Above the record that is filled in. */
    readonly how: string;
    readonly by: string;
    readonly dateCode: (code: string) => string;
    readonly noSerial: string;
    /** Where a wiring note has no room for what the record holds. */
    readonly seeRecord: string;
    readonly instruments: string;
    readonly change: string;
    /** Before the serial of what hung there before. */
    readonly replaced: string;
  };
  /** A light or flag as it was seen. */
  readonly looks: Readonly<Record<SeenLook, string>>;
  readonly photos: {
    readonly caption: (tag: string, file: string) => string;
    readonly notPrinted: string;
    readonly because: { readonly [U in Unprinted]: string };
  };
}
