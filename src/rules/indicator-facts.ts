import type { Reason } from '../model/reason.js';
import type { RuleCard } from '../model/rule.js';
import type { Conductor, IndicatorCause, Shows, SystemState } from '../model/words.js';
import type { Circuit } from './wiring-facts.js';

/** Everything that an indicator rule may declare about one channel; plan/ fills it. */
export interface IndicatorFacts {
  readonly circuit: Circuit;
  readonly current: 'ac' | 'dc';
  readonly conductor: Conductor;
  /** True where this conductor is grounded: the grounded pole, the corner phase, N of a bonded system. */
  readonly grounded: boolean;
  /** True where nothing of this circuit is grounded, or only through an impedance. */
  readonly floating: boolean;
  /**
   * Of N between lines, where its system isn't solidly grounded: `held` near ground by an impedance, or `free`; of all else
   * undefined.
   */
  readonly liftedNeutral: 'held' | 'free' | undefined;
  /** True where the utility gives this AC conductor its voltage. */
  readonly fedByUtility: boolean;
  /** True where an inverter or a generator does. */
  readonly fedBySource: boolean;
  /** True where a turbine, not an array, drives this DC circuit. */
  readonly turbineDriven: boolean;
  /** True where an array and a turbine drive it together: neither night nor still air says that it is dead. */
  readonly sunAndWind: boolean;
  /** True where a rapid-shutdown box stands between the array and this input. */
  readonly rapidShutdown: boolean;
  /** False where the output of a turbine isn't stated: what stands here as phases may be direct current. */
  readonly turbineOutputKnown: boolean;
  /** Hz of the turbine; undefined: poles or speed not stated. */
  readonly frequency: number | undefined;
  /** True where the dc_grounding of a control circuit isn't stated. */
  readonly groundingUnknown: boolean;
  /** `light`, `flag` or `none`; undefined: no part chosen, or not stated. */
  readonly indicator: 'light' | 'flag' | 'none' | undefined;
  /** V; below it the light of the part stays dark. */
  readonly indicatorMinVoltage: number | undefined;
  /** V to ground where the conductor is energised, nominal; undefined: not known. */
  readonly usualVoltage: number | undefined;
}

/** What the indicator of a channel shows in each state. */
export interface Indication {
  readonly state: SystemState;
  readonly shows: Shows;
  readonly because: Reason;
  readonly cause: IndicatorCause;
}

export type IndicatorDecision =
  | { readonly outcome: 'shows'; readonly indications: readonly Indication[] }
  | { readonly outcome: 'outside'; readonly because: Reason };

/** A rule that says what the indicator of a channel shows. */
export interface IndicatorRule<F> extends RuleCard {
  readonly facts: readonly (keyof F)[];
  decide(facts: F): IndicatorDecision;
}

export type AnyIndicatorRule = IndicatorRule<IndicatorFacts>;
