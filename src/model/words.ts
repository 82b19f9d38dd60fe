/** The words that the contract fixes: kinds, bases, AC systems, ports, states. Types and lists only. */

export const EARTHINGS = ['TN', 'TT', 'IT'] as const;
export type Earthing = (typeof EARTHINGS)[number];

export const OCCUPANCIES = ['dwelling', 'sleeping', 'other'] as const;
export type Occupancy = (typeof OCCUPANCIES)[number];

export const KINDS = [
  'service',
  'panel',
  'transfer-switch',
  'array',
  'combiner',
  'charge-controller',
  'grid-tie-inverter',
  'ac-module-branch',
  'inverter-charger',
  'battery',
  'wind-turbine',
  'hydro-turbine',
  'generator',
  'load',
  'control-circuit',
  'signal-line',
  'other',
  'disconnect',
  'transformer',
  'dc-load',
  'dc-panel',
  'diversion-load',
  'ac-battery',
  'pump-drive',
] as const;
export type Kind = (typeof KINDS)[number];

/** Kinds that stand out of doors unless their row says otherwise. */
export const OUTDOORS_BY_DEFAULT: ReadonlySet<Kind> = new Set<Kind>([
  'array',
  'combiner',
  'wind-turbine',
  'hydro-turbine',
]);

export const AC_SYSTEMS = [
  '120',
  '277',
  '347',
  '120/240',
  '120/208',
  '208Y/120',
  '240',
  '208',
  '480',
  '240/120 high-leg',
  '240 delta',
  '480Y/277',
  '480 delta',
  '600Y/347',
  '230',
  '400Y/230',
] as const;
export type AcSystem = (typeof AC_SYSTEMS)[number];
/** What a cell of `ac_in`, `ac_in_2` or `ac_out` can hold. */
export type AcPortUse = AcSystem | 'unused';

export const SYSTEM_GROUNDINGS = ['solid', 'none', 'corner', 'impedance'] as const;
export type SystemGrounding = (typeof SYSTEM_GROUNDINGS)[number];

export const DC_GROUNDINGS = ['negative', 'positive', 'floating'] as const;
export type DcGrounding = (typeof DC_GROUNDINGS)[number];

/** What comes to a protector: an AC system, the phases of a turbine, or a current whose system has no name. */
export const PROTECTED_SYSTEMS = [...AC_SYSTEMS, 'three-phase', 'ac', 'dc'] as const;
export type ProtectedSystem = (typeof PROTECTED_SYSTEMS)[number];

/**
 * How the circuit of a protector is grounded: an AC system, a pole of a DC pair, a wire of a control circuit; `not-known`: the
 * list says nothing, or contradicts itself.
 */
export const PROTECTED_GROUNDINGS = [...SYSTEM_GROUNDINGS, ...DC_GROUNDINGS, 'neutral', 'not-known'] as const;
export type ProtectedGrounding = (typeof PROTECTED_GROUNDINGS)[number];

export const BATTERY_CHEMISTRIES = ['lead-acid', 'lfp', 'nicd'] as const;
export type BatteryChemistry = (typeof BATTERY_CHEMISTRIES)[number];

export const OVERVOLTAGE_CATEGORIES = ['I', 'II', 'III', 'IV'] as const;
export type OvervoltageCategory = (typeof OVERVOLTAGE_CATEGORIES)[number];

export const LIGHTNING_PROTECTIONS = ['none', 'isolated', 'attached'] as const;
export type LightningProtection = (typeof LIGHTNING_PROTECTIONS)[number];

export const STRENGTHS = ['required', 'recommended', 'optional'] as const;
export type Strength = (typeof STRENGTHS)[number];

/** How a job stands to a rule, at a protector or at a port. */
export const STANDINGS = ['met', 'not met', 'to confirm', 'open', 'does not apply'] as const;
export type Standing = (typeof STANDINGS)[number];

/** Gravest first: in this order items are listed everywhere. */
export const SEVERITIES = ['conflict', 'missing', 'confirm'] as const;
export type Severity = (typeof SEVERITIES)[number];

/** Compares for a sort that lists the gravest first. */
export function byGravity(a: Severity, b: Severity): number {
  return SEVERITIES.indexOf(a) - SEVERITIES.indexOf(b);
}

export const WHOS = ['office', 'designer', 'installer', 'owner', 'utility', 'maker'] as const;
/** Who can supply a fact. */
export type Who = (typeof WHOS)[number];

/**
 * The ports of the contract in the order in which protectors are numbered; `dc-in` stands for `dc-in-1`..., `dc-bus` for the port
 * `dc-in` of a load, panel or diversion load on a DC bus.
 */
export const PORT_CLASSES = [
  'service',
  'feeder',
  'dc-in',
  'dc-bus',
  'battery',
  'ac-in',
  'ac-in-2',
  'ac-out',
  'output',
  'terminals',
] as const;
export type PortClass = (typeof PORT_CLASSES)[number];
export type PortName = Exclude<PortClass, 'dc-bus'> | `dc-in-${number}`;

export const CONDUCTORS = ['positive', 'negative', 'L1', 'L2', 'L3', 'N'] as const;
export type Conductor = (typeof CONDUCTORS)[number];

export const STATES = [
  'always',
  'utility on',
  'source on',
  'source off',
  'sun',
  'sun, inverter on',
  'night',
  'turning',
  'still',
  'ground-fault device open',
] as const;
/** The state of the system in which an indicator is looked at. */
export type SystemState = (typeof STATES)[number];

/** `good`: a flag that looks as the catalogue says of a new part. */
export const SHOWS = ['lit', 'dark', 'flickers', 'either', 'good'] as const;
export type Shows = (typeof SHOWS)[number];

/** Gravest first. */
export const BOX_HAZARDS = ['shock', 'arc', 'low-voltage'] as const;
/** What the gravest caution at a box is about. */
export type BoxHazard = (typeof BOX_HAZARDS)[number];

export const INDICATOR_CAUSES = [
  'energised',
  'de-energised',
  'grounded-conductor',
  'ground-fault-device-open',
  'floating',
  'ungrounded-system',
  'neutral-at-rest',
  'sunlight',
  'sunlight-inverter-on',
  'no-sunlight',
  'battery-connected',
  'turning-alternator',
  'turning-dc',
  'output-unknown',
  'standing-still',
  'below-indicator-voltage',
  'flag',
  'no-indicator',
] as const;
/** Why an indicator shows what it shows; the owner's sheet turns it into plain words in its own language. */
export type IndicatorCause = (typeof INDICATOR_CAUSES)[number];
