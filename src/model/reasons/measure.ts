import type { Quantity } from '../quantity.js';
import type { None } from '../none.js';

/** What gives an AC place its voltage while it is measured; `any`: the figures are the same of both. */
export type MeasuredSupply = 'utility' | 'own' | 'any';

/** What gives a DC circuit, a turbine's phases or a control circuit its voltage. */
export type MeasuredSource = 'sun' | 'turbine' | 'both' | 'battery' | 'control';

/** A conductor that a sound system holds at ground: a pole, N, a phase, or the wire of a control circuit. */
export type GroundedConductor = 'pole' | 'neutral' | 'phase' | 'wire';

/** What a place is that is measured. */
export type MeasuredPlace = 'ac' | MeasuredSource;

/** In which state a place is measured: tags, and words of the contract. */
interface StateReasons {
  'measure-state/sources-on': {
    readonly of: MeasuredPlace;
    /** What gives the place its voltage. */
    readonly sources: readonly string[];
    /** Turbines that are stopped before. */
    readonly stops: readonly string[];
    /** What loads the turbine of this place, and what that can't work without. */
    readonly here: readonly string[];
    readonly needs: readonly string[];
    /** What stays on since it loads another turbine. */
    readonly loads: readonly string[];
    /** Batteries and supplies without which those load nothing; not in plans of before. */
    readonly kept?: readonly string[];
    readonly off: readonly string[];
    /** True where there are more than are named. */
    readonly more: { readonly loads: boolean; readonly off: boolean };
  };
  'measure-state/control': None;
  /** The voltage of these turbines isn't known. */
  'measure-state/do-not-open': { readonly turbines: readonly string[] };
}

/** What a reading is of: code and values. */
interface ReadingReasons {
  'reading/full-sun': None;
  'reading/turbine': None;
  'reading/sun-and-turbine': None;
  'reading/battery': None;
  /** A conductor that a sound system holds at ground. */
  'reading/grounded': { readonly what: GroundedConductor };
  'reading/neutral-to-earth': None;
  'reading/supply': { readonly nominal: Quantity; readonly supply: MeasuredSupply };
  /** Which of two lines is the high leg isn't known. */
  'reading/either-leg': {
    readonly nominal: Quantity;
    readonly highLeg: Quantity;
    readonly supply: MeasuredSupply;
  };
  /** To ground of a system that isn't solidly tied to it: by what it is; and whether it is one of the lines or N. */
  'reading/no-band': { readonly by: 'impedance' | 'nothing'; readonly what: 'lines' | 'neutral' };
  'reading/floating-pole': None;
  'reading/grounding-not-known': None;
  'reading/turbine-phases': None;
  'reading/turbine-to-ground': None;
  'reading/control': { readonly nominal: Quantity | null };
  'reading/not-known': None;
}

/** What a reading outside its band may mean, and when it is taken again: code and values. */
export interface MeasureReasons extends ReadingReasons, StateReasons {
  'reading-below/array': None;
  'reading-below/battery': None;
  'reading-below/utility': None;
  'reading-below/own-source': None;
  /** Of a delta, which has no N that could be open. */
  'reading-below/utility-delta': None;
  'reading-below/own-source-delta': None;
  'reading-above/grounded': { readonly what: GroundedConductor };
  'reading-above/supply': None;
  'reading-above/supply-delta': None;
  'reading-above/source': { readonly of: MeasuredSource };
  'reading-above/converter-bears': { readonly tag: string };
  'ground-fault/lines': None;
  'ground-fault/neutral': None;
  /** Shares of pole to pole, in percent. */
  'ground-fault/pair': { readonly under: number; readonly over: number };
  'reading-due/less-sun': None;
  'reading-due/open-box': None;
  'reading-due/turbine-still': None;
  /** `volts`: the least that it is rated for; null: not known. `beside`: for the other kind of current in the same enclosure; not in plans of before. */
  'meter/rated': {
    readonly category: 'CAT III' | 'CAT IV';
    readonly volts: Quantity | null;
    readonly current: 'ac' | 'dc' | null;
    readonly beside?: readonly { readonly volts: Quantity | null; readonly current: 'ac' | 'dc' | null }[];
  };
  /**
   * By the rules of a practice: NFPA 70E is of one of them. `faultCurrent`: null where one of this enclosure isn't known wholly; `known`:
   * then the highest of what is, null where nothing is; not in plans of before.
   */
  'clothing/settle-first': {
    readonly practice: 'nec' | 'iec';
    readonly most: Quantity;
    readonly faultCurrent: Quantity | null;
    readonly known?: Quantity | null;
  };
  'clothing/as-usual': { readonly practice: 'nec' | 'iec' };
}
