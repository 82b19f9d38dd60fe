import { z } from 'zod';
import { OVERCURRENT_DEVICES } from './catalogue.js';
import { SURENESSES } from './fact.js';
import { groundTerminalSchema } from './planned-ground.js';
import { boxIsolationSchema } from './planned-isolation.js';
import { measuringSchema } from './planned-measuring.js';
import { figure, saidSchema } from './said.js';
import {
  BOX_HAZARDS,
  CONDUCTORS,
  INDICATOR_CAUSES,
  PROTECTED_GROUNDINGS,
  PROTECTED_SYSTEMS,
  SHOWS,
  STATES,
  STRENGTHS,
} from './words.js';
import { wireSchema } from './wire.js';
import type { Step, StepSource } from './step.js';

const stepShape = z.object({
  symbol: z.string(),
  code: z.string(),
  values: z.custom<object>((value) => typeof value === 'object' && value !== null),
  value: z.number(),
  unit: z.string(),
  sure: z.enum(SURENESSES),
  uses: z.array(z.string()),
  source: z.custom<StepSource>((value) => typeof value === 'object' && value !== null),
});

/** A step as data; its words are made where it is printed. */
const stepSchema = z.custom<Step>((value) => stepShape.safeParse(value).success);

/** One calculation of a protector: what it computes, by which rule, and its steps; the last step is the result. */
export const calculationSchema = z.object({
  rule: z.string(),
  title: saidSchema,
  steps: z.array(stepSchema),
});

export const portRefSchema = z.object({ equipment: z.string(), port: z.string() });

/** The overcurrent device of one housing at one port. A and V. */
const overcurrentSchema = z.object({
  port: z.string(),
  device: z.enum([...OVERCURRENT_DEVICES, 'unknown']),
  /** Null: not known, or with `none` not asked; so the figures below. */
  poles: z.number().int().nullable(),
  /** Those that have a pole each, and the grounded one, which goes straight through; both empty: not known, or not asked. */
  conductors: z.array(z.enum(CONDUCTORS)).default([]),
  noneIn: z.array(z.enum(CONDUCTORS)).default([]),
  /** The largest. */
  amps: figure,
  /** The smallest; null: the catalogue states none. */
  leastAmps: figure,
  /** The least. */
  volts: figure,
  /** True where a slash rating won't do. */
  straight: z.boolean(),
  dc: z.boolean(),
  /** The least. */
  interrupting: figure,
  because: saidSchema,
});

const indicatorSchema = z.object({
  state: z.enum(STATES),
  shows: z.enum(SHOWS),
  because: saidSchema,
  cause: z.enum(INDICATOR_CAUSES),
});

const channelSchema = z.object({
  channel: z.number().int(),
  wire: wireSchema,
  /** `ground`, or `N` in a 3+1 part. */
  to: z.string(),
  /** Colour of the conductor by the settings, a word; `` none. */
  colour: z.string(),
  /** Its name by the settings, beside that of `wire`; `` none. */
  called: z.string().default(''),
  /** Of a plant whose positive pole is grounded: what the pole is for, and the nominal V of the plant; null: of no such plant. */
  pole: z
    .object({ use: z.enum(['line', 'return']), volts: figure })
    .nullable()
    .default(null),
  indicator: z.array(indicatorSchema),
});

const wiringSchema = z.object({
  groundTo: saidSchema,
  /** What lands on the terminal that is fitted where an enclosure has no ground bar; null: it has one. Plans of before don't say. */
  groundTerminal: groundTerminalSchema.nullable().default(null),
  fedFromTwoSupplies: z.boolean(),
  /** Plans of before measured otherwise, and so have none. */
  measuring: measuringSchema.default({ state: null, bands: [], meter: null, clothing: null }),
  /** Plans of before named the sources instead. */
  isolation: boxIsolationSchema.default({ part: null, steps: [], live: [], unknown: false }),
  /** What the gravest caution at its box is about: by the highest voltage of the plan there. */
  hazard: z.enum(BOX_HAZARDS).default('shock'),
  /** m; longest total lead length (IEC 60364-5-53 cl. 534.4.8), and what a further 0.1 m adds at most, as far as 1 m, in V. */
  leadLengthLimit: z.number(),
  /** True where beyond that length the level of the protector is above the withstand of the equipment, and so it is the limit. */
  leadLimitByWithstand: z.boolean().default(false),
  leadLengthPlanned: z.number(),
  voltsPerTenCentimetres: figure,
  smallestLead: saidSchema,
  /** Of the leads as planned, as the catalogue has it; `` without a part. */
  leadGauge: z.string(),
  /** As the catalogue has them; null: by the instructions of the part. */
  overcurrent: z.string().nullable(),
  torque: z.string().nullable(),
  wireRange: z.string().nullable(),
  notes: z.array(saidSchema),
  /** Conductors that have no channel, and why. */
  unprotected: z.array(z.object({ wire: wireSchema, because: saidSchema })),
});

/** One housing of the plan: what it is, why it is there, what it asks, how it is wired, and what its lights show. */
export const protectorSchema = z.object({
  tag: z.string(),
  part: z.string().nullable(),
  /** What the list says is there already; null: new. */
  existing: z.string().nullable(),
  /** True where the list's `protector` chose the part. */
  byHand: z.boolean(),
  serial: z.string(),
  /** Which housing of how many of its placement. */
  housing: z.object({ number: z.number().int(), of: z.number().int() }),
  place: z.string(),
  building: z.string(),
  outdoors: z.boolean(),
  /** One line: what it guards. */
  protects: saidSchema,
  /** Where in or at the equipment it sits (nearest to the incoming feed, at the input terminals...). */
  position: saidSchema,
  ports: z.array(portRefSchema),
  strength: z.enum(STRENGTHS),
  reasons: z.array(
    z.object({
      rule: z.string(),
      strength: z.enum(STRENGTHS),
      because: saidSchema,
      sources: z.array(saidSchema),
    }),
  ),
  /** Null: not stated. */
  system: z.enum(PROTECTED_SYSTEMS).nullable(),
  /** Null: of a turbine whose output isn't stated. */
  grounding: z.enum(PROTECTED_GROUNDINGS).nullable(),
  required: z.object({
    current: z.enum(['dc', 'ac']).nullable(),
    mcov: figure,
    in: figure,
    /** A; the fault current there. Null: not known, not all of it, or not asked. */
    sccr: figure,
    /** A; what is known of it where something that feeds it isn't: no bound. */
    sccrAtLeast: figure.default(null),
    /** Tags of converters that may add to that current, and nobody states how much. */
    backfeedUnknown: z.array(z.string()).default([]),
    /** UL types that may stand here; empty: not asked. */
    types: z.array(z.number()),
    /** NEMA types that may stand here; empty: indoors, not asked. */
    enclosures: z.array(z.string()),
    /** Number of conductors that must have a channel. */
    conductors: z.number().int(),
    listedFor: z.string().nullable(),
  }),
  figures: z
    .object({
      mcov: figure,
      up: figure,
      upBasis: z.string().nullable(),
      leadVoltage: figure,
      leadVoltageAtHalfMetre: figure,
      leadVoltageAtOneMetre: figure,
      impulseWithstand: figure,
      /** True where the withstand is assumed by overvoltage category. */
      withstandAssumed: z.boolean(),
      /** V; withstand less Up less lead voltage. */
      margin: figure,
      in: figure,
      imax: figure,
      sccr: figure,
      reach: figure,
      /** `14 AWG Cu`, several metals joined; null: not known. */
      smallestLead: z.string().nullable().default(null),
      smallestGroundLead: z.string().nullable().default(null),
      /**
       * What else the smallest leads rest on: a device whose size isn't known, or (under `iec`) a device or current of `amps` that no
       * figure holds them against; the part's instructions against a device or current of `amps`; or a supply of class 2, else a device
       * of at most `amps` (a control circuit); null: nothing.
       */
      leadsRestOn: z
        .object({
          on: z.enum(['device', 'instructions', 'supply']),
          amps: figure,
          /** True where leads of the planned gauge bear `amps` without the part's instructions. Plans of before didn't say. */
          plannedBear: z.boolean().default(false),
        })
        .nullable()
        .default(null),
      /** A; what the path from neutral to earth of a 3+1 part must bear, and what it bears; empty: none is asked. Plans of before had none. */
      neutralPath: z
        .array(z.object({ rating: z.enum(['In', 'Iimp']), has: figure, least: z.number() }))
        .default([]),
      /** V; what the reach was held against, of what a service or panel feeds; null: not known. Plans of before had none. */
      reachWithstand: figure.default(null),
      /** V; between two conductors that each have a channel to ground, at most; null: there is one such conductor. */
      levelBetween: figure.default(null),
    })
    .nullable(),
  /** The chosen part as the catalogue has it; null: no part. */
  partDetails: z
    .object({
      maker: z.string(),
      description: z.string(),
      channels: z.number().int(),
      type: z.number().nullable(),
      iecClass: z.string().nullable(),
      connection: z.string(),
      enclosure: z.string(),
      listing: z.string(),
      listingFile: z.string(),
      /** Systems for which it is listed beside solidly grounded ones. Plans of before didn't say. */
      listedFor: z.array(z.string()).default([]),
      indicator: z.string().nullable(),
      indicatorColor: z.string(),
      indicatorMinVoltage: figure,
      /** How its flag looks while it is good, and once it is used up, as the catalogue has it; `` not stated, or no flag. */
      goodFlag: z.string().default(''),
      usedFlag: z.string().default(''),
      /** A; four significant digits. */
      leakage: figure,
    })
    .nullable(),
  /** One a port that the housing serves; empty: of a plan that an earlier shuntbook wrote. */
  overcurrent: z.array(overcurrentSchema).default([]),
  channels: z.array(channelSchema),
  wiring: wiringSchema,
  calculations: z.array(calculationSchema),
  rejected: z.array(z.object({ part: z.string(), rule: z.string(), because: saidSchema })),
});
