import type { Strength } from '../../model/words.js';

/** A safety message after ANSI Z535.6 that a site or a box can have. */
export const CAUTION_NAMES = [
  'live',
  'arc',
  'lowVoltage',
  'sun',
  'acModules',
  'battery',
  'gas',
  'generator',
  'turbine',
  'twoSupplies',
  'thisBox',
  'strike',
  'usedUp',
  'insulation',
] as const;
export type CautionName = (typeof CAUTION_NAMES)[number];

/** What happens, what comes of it, and what to do. */
export interface CautionWords {
  readonly hazard: string;
  readonly consequence: string;
  readonly avoidance: string;
}

/** A check at each protector; which of them a job has, and at which protectors, the plan says. */
export const CHECK_NAMES = [
  'part',
  'faultCurrent',
  'meter',
  'readings',
  'locked',
  'bothSupplies',
  'dead',
  'channels',
  'groundBar',
  'groundTerminal',
  'leads',
  'torque',
  'wired',
  'outdoors',
  'lights',
  'flag',
  'label',
  'reconnected',
] as const;
export type CheckName = (typeof CHECK_NAMES)[number];

/** A port of an equipment, the number of a DC input apart. */
type PortWord =
  | 'service'
  | 'feeder'
  | 'dc-in'
  | 'dc-input'
  | 'battery'
  | 'ac-in'
  | 'ac-in-2'
  | 'ac-out'
  | 'output'
  | 'terminals';

/** Every string of the cover, the checks and the record of the crew's pack in one language. */
export interface CrewPackWords {
  /** BCP 47 tag. */
  readonly language: 'en' | 'es';
  readonly document: string;
  readonly page: string;
  readonly of: string;
  readonly draftMark: string;
  readonly title: (job: string) => string;
  readonly subject: string;
  readonly keywords: readonly string[];
  readonly notStated: string;
  /** Of tags in a row: `P-5 to P-30`. */
  readonly span: (first: string, last: string) => string;
  readonly and: string;
  readonly sections: {
    readonly cover: string;
    readonly drawing: string;
    readonly isolation: string;
    readonly notes: string;
    readonly record: string;
    readonly calculations: string;
    readonly rejected: string;
    readonly trace: string;
    readonly bare: string;
    readonly photos: string;
  };
  readonly cover: {
    readonly heading: string;
    readonly job: string;
    readonly address: string;
    readonly code: string;
    readonly earthing: (system: string) => string;
    readonly revision: string;
    readonly date: string;
    readonly company: string;
    readonly licence: string;
    readonly assumed: (basis: string) => string;
    readonly bases: { readonly nec: (edition: string) => string; readonly iec: string };
    readonly draft: (missing: number) => string;
    readonly draftDo: string;
    readonly deference: string;
    readonly contents: string;
    readonly pageHead: string;
    readonly fetch: string;
    readonly columns: {
      readonly part: string;
      readonly quantity: string;
      readonly at: string;
      readonly device: string;
      readonly leads: string;
    };
    readonly more: string;
    readonly groundTerminals: (count: number, tags: string) => string;
    readonly nothing: string;
    readonly noPart: string;
    readonly cautions: string;
  };
  readonly changes: {
    readonly heading: string;
    readonly none: string;
    readonly what: Readonly<Record<'tag' | 'part' | 'place' | 'strength' | 'mcov' | 'conductors', string>>;
    readonly was: (tag: string, what: string, before: string, now: string) => string;
    readonly gone: (tag: string, at: string) => string;
    readonly fresh: (tag: string, at: string) => string;
    readonly basis: (before: string, now: string) => string;
    readonly revision: (before: string, now: string) => string;
    readonly completed: string;
    readonly drafted: string;
    readonly settled: (count: number) => string;
    readonly raised: (count: number) => string;
    readonly more: (count: number) => string;
    readonly strengths: { readonly [S in Strength]: string };
    readonly notKnown: string;
    readonly existing: (what: string) => string;
    readonly noPart: string;
    readonly doubled: string;
  };
  readonly ports: Readonly<Record<PortWord, string>>;
  readonly device: {
    readonly poles: (count: number) => string;
    readonly names: Readonly<Record<'breaker' | 'fuse' | 'either', string>>;
    readonly none: string;
    readonly circuits: string;
    readonly supply: (amperes: string | null) => string;
    readonly circuitAtMost: (amperes: string) => string;
    readonly interrupts: (current: string) => string;
    readonly direct: string;
    readonly alternating: string;
    readonly straight: string;
    readonly byInstructions: string;
    readonly fillIn: string;
    /** Of a turbine, by its maker; `` where the part sets no limit, or no voltage is known. */
    readonly byTurbine: (size: string, volts: string) => string;
    readonly eachPort: string;
  };
  readonly lead: {
    readonly line: (gauge: string) => string;
    readonly ground: (gauge: string) => string;
    readonly both: (gauge: string) => string;
    readonly longest: (length: string) => string;
    readonly byInstructions: string;
  };
  readonly safetyWords: Readonly<Record<'danger' | 'warning' | 'caution' | 'notice', string>>;
  readonly cautions: { readonly [C in CautionName]: CautionWords };
  readonly checks: {
    readonly heading: string;
    readonly check: string;
    readonly notHere: string;
    readonly texts: { readonly [C in Exclude<CheckName, 'groundBar' | 'groundTerminal'>]: string };
    /** Where the ground lead goes, by the basis. */
    readonly groundBar: Readonly<Record<'nec' | 'iec', string>>;
    readonly groundTerminal: Readonly<Record<'nec' | 'iec', string>>;
    readonly onceHeading: string;
    readonly once: Readonly<Record<'latest' | 'equipment' | 'code' | 'sources' | 'back' | 'owner', string>>;
  };
  readonly record: {
    readonly heading: string;
    readonly how: string;
    readonly columns: Readonly<
      Record<'tag' | 'serial' | 'torque' | 'lead' | 'volts' | 'lights' | 'device' | 'initials', string>
    >;
    readonly units: Readonly<Record<'volts', string>>;
    readonly ground: Readonly<Record<'nec' | 'iec', string>>;
    readonly groundMeans: Readonly<Record<'nec' | 'iec', string>>;
    readonly atMost: (length: string) => string;
    readonly doNotOpen: string;
    readonly noLights: string;
    readonly flag: string;
    readonly nothing: string;
  };
  readonly signOff: {
    readonly heading: string;
    /** What is signed for. */
    readonly says: string;
    readonly columns: Readonly<Record<'name' | 'licence' | 'signature' | 'date', string>>;
    readonly who: Readonly<Record<'installer' | 'inspector' | 'owner', string>>;
  };
}
