import type { Part } from '../model/catalogue.js';
import type { Reason } from '../model/reason.js';
import type { FitRule } from '../model/rule.js';
import type { Thresholds } from '../model/settings.js';
import type { Basis } from '../model/editions.js';
import type { OvercurrentPlace } from './lead-duty.js';
import type { Earthing, LightningProtection } from '../model/words.js';

/** What one placement asks, and one part held against it; plan/ fills it. */
export interface FitFacts {
  readonly basis: Basis;
  readonly earthing: Earthing;
  readonly current: 'ac' | 'dc';
  /** `power`: AC of the site; `turbine`, `control`: of a turbine or a control circuit. */
  readonly circuit: 'power' | 'turbine' | 'control' | 'battery' | 'array';
  readonly atService: boolean;
  /** Of the AC system there; 1 of a split phase, of two wires and of DC. */
  readonly phases: 1 | 3;
  /** V. */
  readonly mcov: number;
  /** A. */
  readonly nominalCurrent: number;
  /** A; the least that is known where `sccrKnown` is false. */
  readonly sccr: number | undefined;
  readonly withstand: number | undefined;
  readonly withstandAssumed: boolean;
  /** V; of this part's leads as planned. */
  readonly leadVoltage: number;
  readonly aheadOfDisconnect: boolean;
  readonly outdoors: boolean;
  readonly listedFor: 'ungrounded' | 'impedance' | 'corner' | undefined;
  readonly lightning: LightningProtection;
  /** Conductors that must have a channel. */
  readonly conductors: number;
  /** Channels that may be left after those: to N, or to double a conductor. */
  readonly spareRoom: number;
  /** True where ports share one protector: every conductor must fit one housing. */
  readonly oneHousing: boolean;
  /** What each port tells of the overcurrent device ahead of the leads. */
  readonly leadPlaces: readonly OvercurrentPlace[];
  /** True where the leads of a class T1 part are asked for, whatever the part is. */
  readonly classOneAsked: boolean;
  readonly part: Part;
  readonly thresholds: Thresholds;
}

/** What is known of a place before anything is rated. */
export type FitPlace = Pick<
  FitFacts,
  'basis' | 'earthing' | 'circuit' | 'atService' | 'outdoors' | 'lightning'
> & {
  readonly current: 'ac' | 'dc' | undefined;
};

/** What is known where a part was accepted: also why the fault current isn't known; undefined: it is, or isn't asked. */
export interface DoubtFacts extends FitFacts {
  readonly sccrUnknown: Reason | undefined;
}

/** The rules about parts: a rule that rates names the one that answers it. */
export type FitRuleId =
  | 'rate/mcov'
  | 'rate/clamping'
  | 'rate/discharge'
  | 'rate/short-circuit'
  | 'rate/type'
  | 'rate/enclosure'
  | 'rate/listing'
  | 'rate/indication'
  | 'rate/connection'
  | 'rate/neutral-path'
  | 'rate/lightning'
  | 'rate/channels'
  | 'rate/lead-size';

export type AnyFitRule = FitRule<FitFacts, FitPlace, DoubtFacts, FitRuleId>;
