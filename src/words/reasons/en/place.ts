import type { PlaceReasons } from '../../../model/reasons/place.js';
import type { Sayings } from '../sayings.js';

/** Why rules place a protector, or don't, in English. */
export const PLACE: Sayings<PlaceReasons> = {
  'service-place/reason': ({ reason, panel }, say) =>
    `${say(reason)} (at ${panel}, which stands at this service)`,
  'control-end/refused': ({ circuit, reason }, say) => `${circuit}: ${say(reason)}`,
  'control-end/placed': ({ circuit, reason }, say) =>
    `the other end of the control circuit ${circuit}: ${say(reason)}`,
  'asked/excepted': ({ reason }, say) =>
    `${say(reason)}, and each next panel has a protector (230.67(B) exception)`,
};
