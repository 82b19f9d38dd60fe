import type { PairOfColours } from '../colours.js';
import type { BoxHazard, Conductor, Kind } from '../../model/words.js';

/** What a light or flag looks like, in plain words. */
export type PlainLook = 'lit' | 'dark' | 'flickers' | 'either' | 'good' | 'none' | 'unknown';

/** The states in which an owner looks at a light; the source decides how `source on` and `turning` are called. */
export interface StateWords {
  readonly always: string;
  readonly utilityOn: string;
  readonly utilityOff: string;
  readonly powerOn: string;
  readonly powerOff: string;
  readonly generatorOn: string;
  readonly generatorOff: string;
  readonly sun: string;
  readonly sunInverterOn: string;
  readonly night: string;
  readonly windTurning: string;
  readonly windStill: string;
  readonly waterTurning: string;
  readonly waterStill: string;
  /** Of control wires: power is theirs, not that of the house. */
  readonly controlOn: string;
  readonly controlOff: string;
}

/** From which side power comes to a box, or whither it goes. */
export const SIDES = [
  'sun',
  'wind',
  'water',
  'grid',
  'generator',
  'battery',
  'house',
  'control',
  'power',
] as const;
export type Side = (typeof SIDES)[number];

/** What an owner sees, and what to do then. */
interface Act {
  readonly see: string;
  /** `{number}`: the phone number. */
  readonly do: string;
}

/** Every string of the owner's sheet and the labels in one language. `{name}` stands for a value. */
export interface OwnerStrings {
  /** BCP 47 tag. */
  readonly language: string;
  readonly page: string;
  readonly of: string;
  readonly title: string;
  readonly subject: string;
  readonly keywords: readonly string[];
  readonly draftMark: string;
  readonly draftText: string;
  readonly notStated: string;
  readonly job: string;
  /** When to look, and how. */
  readonly when: string;
  readonly how: string;
  /** Where no protector is planned. */
  readonly none: string;
  /** Above the phone number; where there is none, what stands in its place. */
  readonly callHeading: string;
  readonly callUnknown: string;
  /** In the place of `{number}` in a sentence, where there is none. */
  readonly callWithout: string;
  /** `{number}`. */
  readonly callNumber: string;
  /** `{place}`. */
  readonly outdoors: string;
  readonly sides: { readonly [S in Side]: string };
  /** `{thing}`. */
  readonly at: string;
  /** Where a utility's power comes in. */
  readonly gridEntry: string;
  /** An equipment by its kind, with its article; `` where its kind says nothing to an owner. */
  readonly things: { readonly [K in Kind]: string };
  /** Of a light and of a flag. */
  readonly looks: { readonly [L in PlainLook | 'used']: string };
  readonly states: StateWords;
  readonly colours: PairOfColours;
  /** `{number}`, `{look}`. */
  readonly lightAlt: string;
  /** `{tag}`, `{states}`. */
  readonly pictureAlt: string;
  /** Of several tags. */
  readonly tagsAlt: string;
  /** Several lights or flags of one box, and a single one: `{numbers}`. */
  readonly flags: string;
  readonly flag: string;
  /** Over a flag as it should be, `{flags}`, and over one that is used up. */
  readonly goodHeading: string;
  readonly usedHeading: string;
  /** Over boxes that the company ticks on the first day. */
  readonly ourTicks: string;
  /** Where several protectors share a picture: `{lights}`, what each of them has. */
  readonly each: string;
  readonly lights: string;
  readonly light: string;
  /** A state that isn't drawn: all lights off, the same as drawn, or `{lights}` one by one; all with `{state}`. */
  readonly allOff: string;
  readonly sameState: string;
  readonly otherState: string;
  /** What a box's picture can't say by itself. */
  readonly boxes: {
    readonly firstDay: string;
    /** Of lights drawn as they were seen on the first day. */
    readonly seenFirstDay: string;
    /** Where a light of one number, or of several, was seen otherwise than it is drawn: `{lights}`, each with its look. */
    readonly seenElse: string;
    readonly ungrounded: string;
    readonly alternator: string;
    /** Behind it, where all of several lights blink. */
    readonly oneOff: string;
    readonly inverterOff: string;
    /** `{colour}`: how a good flag looks; of a single one, of two, of more. */
    readonly flagOne: string;
    readonly flagBoth: string;
    readonly flagAll: string;
    readonly flag: string;
    readonly flagUnknown: string;
    /** Of lights of control wires, off because their power is. */
    readonly controlOff: string;
    /** Of a protector on a roof. */
    readonly roof: string;
    readonly noIndicator: string;
    readonly outputUnknown: string;
    readonly lightsUnknown: string;
  };
  /** Stands once where lights are drawn that can't show that their part is used up. */
  readonly blindLights: string;
  readonly actHeading: string;
  readonly seeColumn: string;
  readonly doColumn: string;
  readonly acts: {
    readonly flag: Act;
    /** Where there are lights and flags. */
    readonly either: Act;
    readonly light: Act;
    /** Where a light should stay off. */
    readonly cameOn: Act;
    readonly ungrounded: Act;
    readonly heat: Act;
  };
  readonly warningWord: string;
  /** The first is the hazard. */
  readonly never: readonly string[];
  readonly limitsHeading: string;
  readonly limits: readonly string[];
  /** `{list}`: of several things, and of one. */
  readonly bare: string;
  readonly bareOne: string;
  readonly deference: string;
  /** Before a blank: the day on which the protectors were fitted. */
  readonly fitted: string;
  /** Once the record is back: when they were fitted, `{dates}`, and when the company looks again, `{date}`. */
  readonly fittedOn: string;
  readonly nextLook: string;
  /** Whether the sheet shows what is planned, what is there, or what isn't recorded in full. */
  readonly made: Readonly<Record<'planned' | 'open' | 'built', string>>;
  readonly logHeading: string;
  readonly logHow: string;
  readonly logColumns: readonly [string, string, string, string, string];
  readonly logYes: string;
  /** Before a blank. */
  readonly logYear: string;
  readonly months: readonly string[];
  readonly storm: string;
  readonly label: LabelStrings;
}

/** Every string of the labels. */
export interface LabelStrings {
  readonly sheetTitle: string;
  /** Behind the title of a sheet of labels. */
  readonly made: Readonly<Record<'planned' | 'open' | 'built', string>>;
  readonly subject: string;
  /** Where a draft would have labels. */
  readonly noneOfDraft: string;
  readonly part: string;
  readonly serial: string;
  readonly fitted: string;
  readonly breaker: string;
  readonly nextCheck: string;
  readonly call: string;
  readonly wires: { readonly [C in Conductor]: string };
  /** The colour of a conductor, told apart from that of its light: `{colour}`. */
  readonly wire: string;
  /** After a conductor on a second channel. */
  readonly second: string;
  /** `{word}`: on or off, in the box beside it. */
  readonly firstDay: string;
  readonly stateDrawn: string;
  readonly liveWord: string;
  /** By the code of the reason in the plan. */
  readonly live: { readonly [L in LiveCode]: string };
  readonly liveElse: string;
  readonly sourcesUnknown: string;
  readonly dangerWord: string;
  readonly hazards: {
    readonly [H in BoxHazard | 'two-supplies']: { readonly is: string; readonly do: string };
  };
  readonly seeSheet: string;
}

/** What can stay live at a box, by the codes of the plan. */
export const LIVE_CODES = [
  'live/ahead-of-main',
  'live/line-side-of-service',
  'live/battery-terminals',
  'live/array-side',
  'live/array-conductors',
  'live/turbine-conductors',
  'live/turbine-side',
] as const;
export type LiveCode = (typeof LIVE_CODES)[number];
