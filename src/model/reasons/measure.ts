import type { Quantity } from '../quantity.js';
import type { None } from '../none.js';

/** What gives an AC place its voltage while it is measured; `any`: the figures are the same of both. */
export type MeasuredSupply = 'utility' | 'own' | 'any';

/** What gives a DC circuit, a turbine's phases or a control circuit its voltage. */
export type MeasuredSource = 'sun' | 'turbine' | 'both' | 'battery' | 'control';

/** What a reading is of: code and values. */
interface ReadingReasons {
  'reading/full-sun': None;
  'reading/turbine': None;
  'reading/sun-and-turbine': None;
  'reading/battery': None;
  /** A conductor that a sound system holds at ground. */
  'reading/grounded': { readonly what: 'pole' | 'neutral' | 'phase' | 'wire' };
  'reading/neutral-to-earth': None;
  'reading/supply': { readonly nominal: Quantity; readonly supply: MeasuredSupply };
  /** Which of two lines is the high leg isn't known. */
  'reading/either-leg': {
    readonly nominal: Quantity;
    readonly highLeg: Quantity;
    readonly supply: MeasuredSupply;
  };
  /** To ground of a system that isn't tied to it. */
  'reading/no-band': None;
  'reading/floating-pole': None;
  'reading/grounding-not-known': None;
  'reading/turbine-phases': None;
  'reading/turbine-to-ground': None;
  'reading/control': { readonly nominal: Quantity | null };
  'reading/not-known': None;
}

/** What a reading outside its band may mean, and when it is taken again: code and values. */
export interface MeasureReasons extends ReadingReasons {
  'reading-below/array': None;
  'reading-below/battery': None;
  'reading-below/utility': None;
  'reading-below/own-source': None;
  'reading-above/grounded': None;
  'reading-above/supply': None;
  'reading-above/source': { readonly of: MeasuredSource };
  'reading-above/converter-bears': { readonly tag: string };
  'ground-fault/lines': None;
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
  /** By the rules of a practice: NFPA 70E is of one of them. */
  'clothing/settle-first': {
    readonly practice: 'nec' | 'iec';
    readonly most: Quantity;
    readonly faultCurrent: Quantity | null;
  };
  'clothing/as-usual': { readonly practice: 'nec' | 'iec' };
}
