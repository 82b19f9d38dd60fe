import type { Said } from '../reason.js';

/** Why rules place a protector, or don't: code and values. */
export interface PlaceReasons {
  /** A panel that stands at the service: the service's protector is its own. */
  'service-place/reason': { readonly reason: Said; readonly panel: string };
  'control-end/refused': { readonly circuit: string; readonly reason: Said };
  'control-end/placed': { readonly circuit: string; readonly reason: Said };
  'asked/excepted': { readonly reason: Said };
}
