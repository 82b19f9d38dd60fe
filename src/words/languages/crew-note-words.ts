import type { Reasons } from '../../model/reasons/reasons.js';
import type { BoxHazard, Conductor, Kind, SystemState } from '../../model/words.js';
import type { Sayings } from '../reasons/sayings.js';

type Family =
  | 'isolate'
  | 'restore'
  | 'live'
  | 'live-who'
  | 'measure-state'
  | 'reading-below'
  | 'reading-above'
  | 'ground-fault'
  | 'reading-due'
  | 'meter'
  | 'clothing'
  | 'ground-lead'
  | 'ground-terminal'
  | 'position'
  | 'overcurrent-note';

/** What wiring notes and the isolation page say of the plan's reasons, by their codes. */
type CrewCode =
  | Extract<keyof Reasons, `${Family}/${string}`>
  | 'wiring-note/current-not-known'
  | 'wiring-note/stay-charged'
  | 'wiring-note/thin-lead'
  | 'wiring-note/grounded-conductor'
  | 'neutral/no-channel-left';

/** A sentence of each code in one language: the compiler asks for each. */
export type CrewSayings = Sayings<Pick<Reasons, CrewCode>>;

/** A step of a wiring note: what is done, in bold. */
export type StepName =
  | 'measure'
  | 'lock'
  | 'prove'
  | 'mount'
  | 'connect'
  | 'lead'
  | 'torque'
  | 'photograph'
  | 'close'
  | 'energise'
  | 'look';

/** A light or a flag as it should look. */
export type NoteLook =
  'lit' | 'dark' | 'flickers' | 'flickersOrDark' | 'either' | 'good' | 'none' | 'unknown';

/** States as a crew calls them; `closed`: a battery's disconnect is. */
export type NoteState = Exclude<SystemState, 'ground-fault device open'> | 'closed';

/** Every string of the wiring notes and the isolation page in one language, but what stands by code. */
export interface CrewNoteWords {
  readonly language: 'en' | 'es';
  /** Before the last of several, between two of three, from one to another. */
  readonly and: string;
  readonly to: string;
  readonly or: string;
  readonly none: string;
  readonly kinds: { readonly [K in Kind]: string };
  /** A port by its name in the plan, its number left out; `dc-in` is that of a DC load or panel. */
  readonly ports: Readonly<Record<NotePort, string>>;
  readonly conductors: { readonly [C in Conductor]: string };
  readonly ground: string;
  /** Names that the settings give by default. */
  readonly called: Readonly<Record<'high leg' | 'grounded phase', string>>;
  readonly returnPole: string;
  readonly linePole: string;
  readonly second: string;
  readonly systems: Readonly<Record<'three-phase' | 'ac' | 'dc' | 'unknown' | 'delta' | 'high-leg', string>>;
  readonly groundings: Readonly<
    Record<
      | 'solid'
      | 'none'
      | 'corner'
      | 'impedance'
      | 'negative'
      | 'positive'
      | 'floating'
      | 'neutral'
      | 'not-known',
      string
    >
  >;
  readonly header: {
    readonly notes: string;
    readonly existing: (what: string) => string;
    readonly noPart: string;
    /** Behind a grounding that was taken for granted: numbers of its assumptions. */
    readonly verify: (numbers: string) => string;
    /** `tags`: of the first page. */
    readonly continued: (tags: string) => string;
  };
  readonly words: Readonly<Record<'danger' | 'warning' | 'staysLive', string>>;
  readonly hazards: { readonly [H in BoxHazard]: (volts: string) => string };
  readonly notKnownVolts: (current: string) => string;
  readonly sourcesUnknown: string;
  readonly twoSupplies: string;
  readonly gas: string;
  readonly picture: PictureWords;
  readonly device: DeviceWords;
  readonly looks: Readonly<Record<NoteLook, string>>;
  readonly states: { readonly [S in NoteState]: string };
  readonly table: TableWords;
  readonly steps: { readonly [S in StepName]: string };
  readonly say: StepWords;
  readonly isolation: IsolationWords;
}

/** Ports without the number of an input. */
export type NotePort =
  | 'service'
  | 'feeder'
  | 'dc-input'
  | 'turbine-input'
  | 'dc-in'
  | 'battery'
  | 'ac-in'
  | 'ac-in-2'
  | 'ac-out'
  | 'output'
  | 'terminals';

interface PictureWords {
  readonly leads: string;
  readonly atMost: (length: string) => string;
  readonly manner: string;
  readonly byInstructions: string;
  readonly range: (range: string) => string;
  readonly neutralBar: string;
  readonly toNeutral: string;
  readonly alt: (tags: string, channels: string, ground: string) => string;
  readonly channelAlt: (channel: number, name: string, look: string) => string;
  /** Where two lights differ in when they are looked at. */
  readonly lights: string;
}

interface DeviceWords {
  readonly names: Readonly<Record<'breaker' | 'fuse' | 'either', string>>;
  readonly poles: (count: number) => string;
  readonly size: (least: string | null, most: string) => string;
  readonly atLeast: (size: string) => string;
  readonly sizeByInstructions: string;
  readonly volts: (volts: string) => string;
  readonly straight: string;
  readonly interrupts: (current: string) => string;
  readonly same: string;
  readonly notNeeded: string;
  readonly listedOnly: string;
  readonly circuitsOwn: string;
  readonly none: string;
  readonly circuitAtMost: (size: string) => string;
  readonly class2: string;
  readonly elseAtMost: (size: string) => string;
  readonly byTurbine: string;
  readonly unknown: string;
}

interface TableWords {
  readonly measure: string;
  readonly expect: string;
  readonly stop: string;
  readonly found: string;
  readonly tag: string;
  readonly place: string;
  readonly protects: string;
  readonly source: string;
  readonly torque: string;
  readonly lead: string;
  readonly serial: string;
  readonly outdoors: string;
  readonly noPlace: string;
  readonly upTo: (volts: string) => string;
  readonly between: (low: string, high: string) => string;
  readonly over: (volts: string) => string;
  readonly underOrOver: (low: string, high: string) => string;
  /** After the limits of a reading whose sign tells which pole is which. */
  readonly orOtherSign: (limits: string) => string;
  readonly notKnown: string;
  readonly toGround: (wire: string) => string;
  readonly fromTo: (wire: string, to: string) => string;
  readonly onUtility: string;
  readonly onOwn: string;
  readonly ifHighLeg: string;
}

interface StepWords {
  readonly eachSource: string;
  readonly outside: string;
  /** Where nothing may be opened before a voltage is known. */
  readonly notYet: string;
  readonly isolationSteps: (numbers: string, part: string) => string;
  readonly noSteps: string;
  readonly proveStep: (number: string) => string;
  /** Where no switch makes the conductors dead. */
  readonly coverModules: string;
  readonly asDrawn: string;
  readonly groundTo: (where: string) => string;
  readonly eachTerminal: (torque: string) => string;
  readonly lands: (fit: string, lands: string) => string;
  readonly byInstructions: string;
  readonly writeDown: string;
  readonly writeLength: string;
  readonly wayBack: string;
  readonly deviceLast: string;
  readonly light: (numbers: string, look: string) => string;
  readonly all: string;
  readonly state: (state: string, lights: string) => string;
}

interface IsolationWords {
  readonly heading: string;
  readonly partHeading: (part: string) => string;
  readonly unknown: (tags: string) => string;
  readonly dead: string;
  readonly back: string;
  readonly step: string;
  readonly does: string;
  readonly where: string;
  readonly lock: string;
  readonly by: string;
  readonly time: string;
  readonly testedDead: string;
  readonly undoes: string;
  readonly outsideHeading: string;
  readonly danger: string;
  /** Above a log without steps. */
  readonly findOrder: string;
}
