import type { IndicatorCause, Kind } from '../../model/words.js';

/** What a light looks like, in plain words. */
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
  readonly place: string;
  readonly date: string;
  /** `{count}`. */
  readonly intro: readonly string[];
  readonly introOne: readonly string[];
  readonly introNone: readonly string[];
  readonly lightsHeading: string;
  readonly lightsHow: readonly string[];
  readonly whichColumn: string;
  readonly whereColumn: string;
  readonly picturesColumn: string;
  readonly lookColumn: string;
  /** A picture that several protectors share: `{number}`. */
  readonly look: string;
  /** `{tag}`, `{states}`. */
  readonly pictureAlt: string;
  /** `{number}`, `{look}`. */
  readonly lightAlt: string;
  /** `{number}`. */
  readonly light: string;
  readonly outdoors: string;
  /** `{good}` in the words of the catalogue. */
  readonly goodFlag: string;
  /** `{used}` in the words of the catalogue. */
  readonly usedFlag: string;
  readonly looks: { readonly [L in PlainLook]: string };
  readonly states: StateWords;
  /** What a protector guards: `{thing}`, `{tag}`. */
  readonly guards: string;
  /** An equipment by its kind, with its article. */
  readonly things: { readonly [K in Kind]: string };
  readonly guardsFirst: string;
  readonly twoSupplies: string;
  readonly notesHeading: string;
  /** `{letter}`. */
  readonly noteMark: string;
  /** `{letters}`; a line may end between two notes, not between the word and its first letter. */
  readonly noteInLine: string;
  readonly causes: { readonly [C in IndicatorCause]: string };
  readonly lightsUnknown: string;
  readonly actHeading: string;
  readonly seeColumn: string;
  readonly doColumn: string;
  readonly soonColumn: string;
  readonly acts: readonly { readonly see: string; readonly do: string; readonly soon: string }[];
  /** Stands with `acts` where a protector has flags. */
  readonly actFlag: { readonly see: string; readonly do: string; readonly soon: string };
  /** Before a blank in which the look of the first day is written. */
  readonly firstDay: string;
  readonly neverHeading: string;
  readonly warningWord: string;
  readonly never: readonly string[];
  readonly limitsHeading: string;
  readonly limits: readonly string[];
  /** `{list}`. */
  readonly bare: string;
  readonly deference: string;
  readonly callHeading: string;
  readonly callUnknown: string;
  readonly nameField: string;
  readonly phoneField: string;
  readonly emailField: string;
  readonly addressField: string;
  readonly logHeading: string;
  readonly logHow: string;
  readonly logColumns: readonly [string, string, string, string];
  readonly months: readonly string[];
  readonly label: {
    readonly sheetTitle: string;
    readonly title: string;
    readonly guards: string;
    readonly lights: string;
    readonly date: string;
    readonly twoSuppliesHazard: string;
    readonly twoSuppliesAvoid: string;
    /** Signal word of a box with a hazardous voltage. */
    readonly dangerWord: string;
    readonly shockHazard: string;
    readonly arcHazard: string;
    readonly arcAvoid: string;
    readonly lowVoltageHazard: string;
    readonly shockAvoid: string;
    readonly seeSheet: string;
  };
}
