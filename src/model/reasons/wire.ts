import type { Lead } from '../lead.js';
import type { Quantity } from '../quantity.js';
import type { None } from '../none.js';

/** How conductors, leads and lights come about: code and values. */
export interface WireReasons extends ConductorReasons, LeadReasons, LightReasons {}

interface ConductorReasons {
  'conductors/both-poles': None;
  'conductors/control-wires': None;
  'conductors/lines': None;
  'conductors/lines-and-neutral': None;
  'neutral/not-in-circuit': None;
  'neutral/ungrounded-system': None;
  'neutral/system-tt': None;
  'neutral/system-it': None;
  'neutral/linked-at-service': None;
  'neutral/away-from-link': None;
  'neutral/bonded-here': None;
  'neutral/spare-channel': None;
  'names/positive-ground': None;
  'names/iec': None;
  'names/nec': None;
  'names/nec-480': None;
  'names/high-leg': None;
  'names/no-high-leg': None;
  'names/grounded-phase': None;
  'names/grounded-pole': None;
  'spare-channel/direct-current': None;
  'spare-channel/three-plus-one': None;
  'spare-channel/takes-neutral': None;
  'spare-channel/doubles-line': None;
}

interface LeadReasons {
  'ground-lead/bonded-bar': None;
  /** Of a service that isn't solidly grounded. */
  'ground-lead/electrode-bar': None;
  'ground-lead/equipment-ground-bar': None;
  /** Of an enclosure that may have no bar. */
  'ground-lead/equipment-ground-terminal': None;
  'ground-lead/main-earthing-terminal': None;
  'ground-lead/protective-earth-bar': None;
  /** Of an enclosure that may have no bar. */
  'ground-lead/protective-earth-terminal': None;
  'leads/short': None;
  'leads/insulation-test': None;
  /** Each lead in either metal. */
  'smallest-lead/metals': { readonly copper: Lead; readonly aluminium: Lead };
  /** Values from memory. */
  'smallest-lead/earth-and-live': { readonly earth: Lead; readonly live: Lead };
  /** Values from memory: by the class of the part. */
  'smallest-lead/by-class': {
    readonly earth: Lead;
    readonly live: Lead;
    readonly earthOfT1: Lead;
    readonly liveOfT1: Lead;
  };
}

interface LightReasons {
  'light/sun': None;
  'light/sun-inverter-on': None;
  'light/night': None;
  'light/turbine': None;
  'light/turbine-still': None;
  'light/battery': None;
  'light/control-supply': None;
  'light/control-supply-off': None;
  'light/utility': None;
  'light/own-source': None;
  'light/nothing-feeds': None;
  /** Recorded at commissioning: neither is tied to ground. */
  'light/floating': { readonly neither: 'pole' | 'wire' };
  'light/grounding-not-known': None;
  'light/grounded': { readonly conductor: 'neutral' | 'phase' | 'pole' };
  'light/ground-fault-device-open': None;
  'light/ungrounded-system': None;
  /** N that an impedance holds near ground; N that nothing ties to it. */
  'light/neutral-held': None;
  'light/neutral-free': None;
  /** `frequency`: up to; null: not known. `least`: what the light needs; null: not stated. */
  'light/flickers': { readonly frequency: Quantity | null; readonly least: Quantity | null };
  'light/output-not-stated': None;
  'light/no-indicator': None;
  'light/flag': None;
  'light/below-its-voltage': { readonly needs: Quantity; readonly has: Quantity };
  'light-outside/array-pole': None;
  'light-outside/battery-pole': None;
  'light-outside/control-circuit': None;
  'light-outside/floating-pair': None;
  'light-outside/grounded-conductor': None;
  'light-outside/grounded-system-line': None;
  'light-outside/part-limit': None;
  'light-outside/turbine-phase': None;
  'light-outside/ungrounded-system-line': None;
}
