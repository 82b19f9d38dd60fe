import { z } from 'zod';
import { BASES, DEFAULT_CYCLE } from './editions.js';
import { FIELD_NAMES } from './fields.js';
import type { Field } from './list.js';
import { APPENDICES } from './appendices.js';
import { measuringSettings } from './measuring-settings.js';
import { settledSchema } from './settled.js';

/** Sizes of permit sheets, in landscape: ANSI B, A3, ANSI A, A4, ARCH D. */
const PERMIT_PAPERS = ['tabloid', 'a3', 'letter', 'a4', 'arch-d'] as const;
export type PermitPaper = (typeof PERMIT_PAPERS)[number];

const hexColour = z.string().regex(/^#[0-9a-fA-F]{6}$/, 'a colour such as #1f4e79');

/** Colours of conductors, by name of the conductor; words, printed as text and drawn as a stripe. */
const conductorColours = z.strictObject({
  positive: z.string(),
  negative: z.string(),
  L1: z.string(),
  L2: z.string(),
  L3: z.string(),
  N: z.string(),
  ground: z.string(),
});

/** Colours of the lines and N of AC systems. */
const lineColours = conductorColours.pick({ L1: true, L2: true, L3: true, N: true });

/** Names that stand beside those of the plan, by conductor; empty: none. */
const conductorNames = z.strictObject({
  positive: z.string().default(''),
  negative: z.string().default(''),
  L1: z.string().default(''),
  L2: z.string().default(''),
  L3: z.string().default(''),
  N: z.string().default(''),
});

/** A clause as the papers name it, of the standards of a basis, with who read it in the edition in force and when. */
const checkedClause = z.strictObject({
  basis: z.enum(BASES),
  clause: z.string().min(1),
  by: z.string().min(1),
  date: z.iso.date(),
});
export type CheckedClause = z.infer<typeof checkedClause>;

/** A figure so large that no product of two is beyond a number; no threshold is near it. */
const figure = z.number().max(1e6);

/** Thresholds of the rules: never literals in a rule. SI units; each default's source stands beside it. */
const thresholds = z.strictObject({
  /** m; 100 ft: common practice, no source. */
  longRunNec: figure.positive().default(30.48),
  /** m; IEC 60364-5-53 cl. 534.4.9 and 60364-7-712. */
  longRunIec: figure.positive().default(10),
  /** m; a panel no farther than this from the service is the service's place: common practice, no source. */
  servicePlaceRun: figure.nonnegative().default(3),
  /** Share of the nominal voltage to ground that MCOV must bear: common practice, no source. */
  continuousShare: figure.min(1).default(1.15),
  /** Share of the nominal voltage of an AC control circuit: common practice, no source. */
  controlAcShare: figure.min(1).default(1.25),
  /** Share of the impulse withstand that is aimed at: IEC 60364-5-53 cl. 534.4.4.2. */
  withstandShare: figure.positive().max(1).default(0.8),
  /** A; NEC 230.67 (2023), before: common practice, no source. */
  serviceNominalCurrent: figure.positive().default(10_000),
  /** A; common practice, no source. */
  otherNominalCurrentNec: figure.positive().default(3_000),
  /** A; IEC 60364-5-53 cl. 534.4.4.4, value from memory. */
  nominalCurrentIec: figure.positive().default(5_000),
  /** A; that goes first at an AC end of a run outdoors or between buildings: common practice, no source. */
  outdoorEndNominalCurrent: figure.positive().default(10_000),
  /** A; NFPA 780, value from memory. */
  lightningNominalCurrentNec: figure.positive().default(20_000),
  /** A; IEC 60364-5-53 cl. 534.4.4.4, value from memory. */
  lightningImpulseCurrentIec: figure.positive().default(12_500),
  /** A; In of the path from neutral to ground of a 3+1 part: IEC 60364-5-53 Table 534.4, value from memory. */
  neutralPathCurrent: z
    .strictObject({ single: figure.positive().default(10_000), three: figure.positive().default(20_000) })
    .prefault({}),
  /** A; Iimp of that path where class T1 is asked for: IEC 60364-5-53 Table 534.4, value from memory. */
  neutralPathImpulseCurrent: z
    .strictObject({ single: figure.positive().default(25_000), three: figure.positive().default(50_000) })
    .prefault({}),
  /** Share of Isc that a DC short-circuit current rating must bear: NEC 690.8(A), IEC 60364-7-712 Annex B, values from memory. */
  shortCircuitShare: figure.min(1).default(1.25),
  /** m; total lead length where neither list nor catalogue states one: IEC 60364-5-53 cl. 534.4.8. */
  leadLength: figure.positive().default(0.5),
  /** m; total lead length beyond which a person confirms: IEC 60364-5-53 cl. 534.4.8. */
  longLead: figure.positive().default(0.5),
  /** m; total lead length that iec never exceeds: IEC 60364-5-53 cl. 534.4.8, value from memory. */
  longestLeadIec: figure.positive().default(1),
  /** A; peak at which a VPR is measured: UL 1449. */
  leadPeakNec: figure.positive().default(3_000),
  /** A; In of IEC 60364-5-53. */
  leadPeakIec: figure.positive().default(5_000),
  /** V; a control circuit is at most this: common practice, no source. */
  controlVoltage: figure.positive().default(60),
  /** V AC and DC; above either a box is marked DANGER: common practice, no source. */
  dangerAc: figure.nonnegative().default(30),
  dangerDc: figure.nonnegative().default(60),
  /** m; least reach of a protector whose level is above half the withstand: convention of OVE E09:2022. */
  leastReach: figure.nonnegative().default(10),
  /** V/m; oscillation allowance along the cable: OVE E09:2022 Annex C. */
  reachSlope: figure.positive().default(25),
});

/** The company's settings: a JSON file; every key has a default. */
export const SettingsSchema = z.strictObject({
  $schema: z.string().optional(),
  company: z
    .strictObject({
      name: z.string().default(''),
      address: z.string().default(''),
      phone: z.string().default(''),
      email: z.string().default(''),
      /** Licence line printed on permit sheets. */
      licence: z.string().default(''),
      /** Path of a PNG, JPEG or SVG beside the settings file. */
      logo: z.string().default(''),
      accent: hexColour.default('#1f4e79'),
    })
    .prefault({}),
  /** Paper of the running documents; by default letter with nec and A4 with iec. */
  paper: z.enum(['by-basis', 'letter', 'A4']).default('by-basis'),
  /** Paper of the permit sheets; by default 11 x 17 in with nec and A3 with iec. */
  permitPaper: z.enum(['by-basis', ...PERMIT_PAPERS]).default('by-basis'),
  /** Numbers of the permit sheets, E-601, E-602: US National CAD Standard, value from memory. */
  permitSheets: z
    .strictObject({
      prefix: z
        .string()
        .regex(/^[A-Za-z0-9.-]{0,8}$/, 'at most 8 letters, digits, points or hyphens')
        .default('E-'),
      first: z.number().int().min(1).max(9000).default(601),
    })
    .prefault({}),
  /** Clauses that someone of the company has read against the edition in force. */
  checkedClauses: z.array(checkedClause).prefault([]),
  /** What is printed behind permit sheets and pack without being asked for on the command line. */
  appendices: z.array(z.enum(APPENDICES)).prefault([]),
  /** What a bare number of a list means. */
  units: z
    .strictObject({
      length: z.enum(['by-basis', 'ft', 'm']).default('by-basis'),
      temperature: z.enum(['C', 'F']).default('C'),
    })
    .prefault({}),
  /** By field: words of the company and the words that they stand for, in every list; a column map's words go before. */
  words: z
    .partialRecord(z.enum(FIELD_NAMES as readonly [Field, ...Field[]]), z.record(z.string(), z.string()))
    .optional(),
  /** The basis of a job that states none. */
  basis: z.enum(BASES).default(DEFAULT_CYCLE),
  ownerLanguage: z.string().default('en'),
  /** Of what the crew holds in its hands, where neither a job nor the command line names one. */
  crewLanguage: z.string().default('en'),
  /** Defaults that the company settled once, so that no job asks to confirm them. */
  settled: settledSchema.prefault([]),
  thresholds: thresholds.prefault({}),
  /** Bands of the readings before a protector is connected. */
  measuring: measuringSettings.prefault({}),
  /** Raise the voltage of an array on a grid-tie inverter that isn't stated to be isolated (derived; ask the maker). */
  inverterDcLink: z.boolean().default(true),
  /** Colours by basis; NEC 200.6 and 110.15 leave most to practice, IEC 60445 fixes them. */
  conductorColours: z
    .strictObject({
      nec: conductorColours.prefault({
        positive: 'red',
        negative: 'black',
        L1: 'black',
        L2: 'red',
        L3: 'blue',
        N: 'white',
        ground: 'green',
      }),
      /** Lines and N of systems of 480 or 600 V between lines: common practice, no source. */
      nec480: lineColours.prefault({ L1: 'brown', L2: 'orange', L3: 'yellow', N: 'gray' }),
      necHighLeg: z.string().default('orange'),
      /** A phase, or the negative of a battery's bus, that is solidly grounded: NEC 200.6, value from memory. */
      necGrounded: z.string().default('white or gray'),
      /** Poles of a plant whose positive is grounded: none is taken for granted. */
      positiveGround: z
        .strictObject({ positive: z.string().default(''), negative: z.string().default('') })
        .prefault({}),
      iec: conductorColours.prefault({
        positive: 'red',
        negative: 'white',
        L1: 'brown',
        L2: 'black',
        L3: 'grey',
        N: 'blue',
        ground: 'green-yellow',
      }),
    })
    .prefault({}),
  /** Names of conductors by basis, beside those of the plan; IEC 60445 (value from memory). */
  conductorNames: z
    .strictObject({
      nec: conductorNames.prefault({}),
      nec480: conductorNames.pick({ L1: true, L2: true, L3: true, N: true }).prefault({}),
      necHighLeg: z.string().default('high leg'),
      necGrounded: z.string().default('grounded phase'),
      iec: conductorNames.prefault({ positive: 'L+', negative: 'L-' }),
    })
    .prefault({}),
  labels: z
    .strictObject({
      columns: z.number().int().min(1).max(6).default(2),
      rows: z.number().int().min(1).max(12).default(3),
      /** mm. */
      marginTop: figure.nonnegative().default(12.7),
      marginLeft: figure.nonnegative().default(4),
      gapColumns: figure.nonnegative().default(4.8),
      gapRows: figure.nonnegative().default(0),
    })
    .prefault({}),
  /** Plates that the code asks for (NEC 408.3(F), 110.24), behind the labels. */
  plates: z.boolean().default(false),
});

export type Settings = z.infer<typeof SettingsSchema>;
export type Thresholds = Settings['thresholds'];

/** The settings of a company that has no settings file. */
export function defaultSettings(): Settings {
  return SettingsSchema.parse({});
}
