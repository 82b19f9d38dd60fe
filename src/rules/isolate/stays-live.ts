import { reason, type Reason } from '../../model/reason.js';
import type { Kind, PortClass } from '../../model/words.js';

/** What stays live after all steps, and who can make it dead. */
export interface StaysLive {
  readonly what: Reason;
  readonly who: Reason;
  /** True where the protector's own conductors stay live. */
  readonly here: boolean;
}

/** What is known of a port of the equipment at which a housing sits. */
export interface LivePortFacts {
  readonly port: PortClass;
  readonly kind: Kind;
  /** True where the protector is at this port; false: it is at another one of the same equipment. */
  readonly own: boolean;
  /** True where the place is ahead of the main disconnect of its service. */
  readonly aheadOfMain: boolean;
  /** True where modules are among what feeds the port. */
  readonly sun: boolean;
  /** True where a wind turbine is among what feeds the port. */
  readonly wind: boolean;
  /** True where a hydro turbine is among what feeds the port. */
  readonly water: boolean;
}

const UTILITY = reason('live-who/utility');
const AHEAD: StaysLive = {
  what: reason('live/ahead-of-main'),
  who: reason('live-who/utility-first'),
  here: true,
};
const LINE_SIDE: StaysLive = { what: reason('live/line-side-of-service'), who: UTILITY, here: false };
const BATTERY: StaysLive = {
  what: reason('live/battery-terminals'),
  who: reason('live-who/nobody-battery'),
  here: false,
};
const NO_SWITCH = reason('live-who/nobody-array');
const ARRAY: StaysLive = { what: reason('live/array-conductors'), who: NO_SWITCH, here: true };
const ARRAY_SIDE: StaysLive = { what: reason('live/array-side'), who: NO_SWITCH, here: false };
const TURNING = reason('live/turbine-conductors');
const WIND = reason('live-who/locked-rotor');
const HYDRO = reason('live-who/shut-water');
const TURBINE_SIDE = reason('live/turbine-side');
const WIND_SIDE: StaysLive = { what: TURBINE_SIDE, who: WIND, here: false };
const HYDRO_SIDE: StaysLive = { what: TURBINE_SIDE, who: HYDRO, here: false };

/**
 * What no step of the isolation makes dead at a place: the utility's side of a service, a battery up to its first device, in daylight
 * all between the modules and the opened disconnect, a turbine's own conductors whenever it turns, and its line up to the opened
 * disconnect at the other end too.
 * Source: common practice, no source.
 */
export function staysLive(facts: LivePortFacts): readonly StaysLive[] {
  const { port, kind, own, aheadOfMain, sun, wind, water } = facts;
  if (port === 'service') return [own && aheadOfMain ? AHEAD : LINE_SIDE];
  if (kind === 'battery' || kind === 'ac-battery') return [BATTERY];
  if (port === 'output' && (kind === 'wind-turbine' || kind === 'hydro-turbine')) {
    return [{ what: TURNING, who: kind === 'wind-turbine' ? WIND : HYDRO, here: own }];
  }
  return [
    ...(sun ? [own && port === 'output' ? ARRAY : ARRAY_SIDE] : []),
    ...(wind ? [WIND_SIDE] : []),
    ...(water ? [HYDRO_SIDE] : []),
  ];
}
