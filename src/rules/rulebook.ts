import type { PrintedRule } from '../model/rule.js';
import type { AnyFitRule, FitRuleId } from './fit-facts.js';
import { arrayPole } from './indicate/array-pole.js';
import { batteryPole } from './indicate/battery-pole.js';
import { controlCircuit } from './indicate/control-circuit.js';
import { floatingPair } from './indicate/floating-pair.js';
import { groundedConductor } from './indicate/grounded-conductor.js';
import { groundedSystemLine } from './indicate/grounded-system-line.js';
import { partLimit } from './indicate/part-limit.js';
import { turbinePhase } from './indicate/turbine-phase.js';
import { ungroundedSystemLine } from './indicate/ungrounded-system-line.js';
import type { AnyIndicatorRule } from './indicator-facts.js';
import { asked } from './place/asked.js';
import { battery } from './place/battery.js';
import { control } from './place/control.js';
import { dcInput } from './place/dc-input.js';
import { farEndExempt } from './place/far-end-exempt.js';
import { feeder } from './place/feeder.js';
import { generator } from './place/generator.js';
import { gridTieAc } from './place/grid-tie-ac.js';
import { inverterAc } from './place/inverter-ac.js';
import { longRun } from './place/long-run.js';
import { outbuilding } from './place/outbuilding.js';
import { service } from './place/service.js';
import { signal } from './place/signal.js';
import { wind } from './place/wind.js';
import { windPremises } from './place/wind-premises.js';
import type { OvercurrentRule } from './overcurrent-facts.js';
import type { AnyPlacementRule } from './placement-facts.js';
import { acVoltage } from './rate/ac-voltage.js';
import { arrayCurrent } from './rate/array-current.js';
import { arrayVoltage } from './rate/array-voltage.js';
import { batteryVoltage } from './rate/battery-voltage.js';
import { channels } from './rate/channels.js';
import { clamping } from './rate/clamping.js';
import { connection } from './rate/connection.js';
import { controlVoltage } from './rate/control-voltage.js';
import { discharge } from './rate/discharge.js';
import { enclosure } from './rate/enclosure.js';
import { faultCurrent } from './rate/fault-current.js';
import { indication } from './rate/indication.js';
import { inputLimit } from './rate/input-limit.js';
import { inverterLink } from './rate/inverter-link.js';
import { leadSize } from './rate/lead-size.js';
import { lightning } from './rate/lightning.js';
import { listing } from './rate/listing.js';
import { mcov } from './rate/mcov.js';
import { neutralPath } from './rate/neutral-path.js';
import { nominalCurrent } from './rate/nominal-current.js';
import { shortCircuit } from './rate/short-circuit.js';
import { turbineVoltage } from './rate/turbine-voltage.js';
import { type } from './rate/type.js';
import { withstand } from './rate/withstand.js';
import type { AnyRatingRule } from './rating-facts.js';
import { conductors } from './wire/conductors.js';
import { leads } from './wire/leads.js';
import { highLeg } from './wire/high-leg.js';
import { namesAndColours } from './wire/names-and-colours.js';
import { neutral } from './wire/neutral.js';
import { overcurrentAc } from './wire/overcurrent-ac.js';
import { overcurrentArray } from './wire/overcurrent-array.js';
import { overcurrentBattery } from './wire/overcurrent-battery.js';
import { overcurrentControl } from './wire/overcurrent-control.js';
import { overcurrentTurbine } from './wire/overcurrent-turbine.js';
import { spareChannel } from './wire/spare-channel.js';

/** The placement rules that the site alone decides, in the order in which their reasons are printed. */
export const PLACEMENT_RULES: readonly AnyPlacementRule[] = [
  service,
  feeder,
  windPremises,
  dcInput,
  inverterAc,
  wind,
  longRun,
  generator,
  outbuilding,
  battery,
  control,
  signal,
  asked,
];

/** The placement rule that needs the reach of what was chosen. */
export const REACH_RULE: AnyPlacementRule = gridTieAc;

/** The placement rule that also asks at the other end of what it looks at. */
export const CONTROL_RULE: AnyPlacementRule = control;

/** The placement rule of panels that a feeder supplies. */
export const FEEDER_RULE: AnyPlacementRule = feeder;

/** The placement rule behind the exposure of a site to lightning. */
export const RISK_RULE: AnyPlacementRule = service;

/** The placement rule behind the critical length of arrays. */
export const CRITICAL_LENGTH_RULE: AnyPlacementRule = dcInput;

/** The placement rule that takes away. */
export const EXEMPTION_RULE: AnyPlacementRule = farEndExempt;

/** Rules about the continuous voltage; the highest that applies counts. */
export const VOLTAGE_RULES: readonly AnyRatingRule[] = [
  arrayVoltage,
  inputLimit,
  inverterLink,
  turbineVoltage,
  batteryVoltage,
  acVoltage,
  controlVoltage,
];

/** Rules about the continuous voltage that something else than their voltage hangs on. */
export const ARRAY_VOLTAGE_RULE: AnyRatingRule = arrayVoltage;
export const INVERTER_LINK_RULE: AnyRatingRule = inverterLink;

/** Rules about fault current; the one that applies counts. */
export const CURRENT_RULES: readonly AnyRatingRule[] = [faultCurrent, arrayCurrent];
export const NOMINAL_CURRENT_RULE: AnyRatingRule = nominalCurrent;
export const WITHSTAND_RULE = withstand;

/** The rules about parts by id: the compiler asks for each that another rule may name as its answer. */
const PART_RULES: { readonly [I in FitRuleId]: AnyFitRule & { readonly id: I } } = {
  'rate/mcov': mcov,
  'rate/clamping': clamping,
  'rate/discharge': discharge,
  'rate/short-circuit': shortCircuit,
  'rate/type': type,
  'rate/enclosure': enclosure,
  'rate/listing': listing,
  'rate/indication': indication,
  'rate/connection': connection,
  'rate/neutral-path': neutralPath,
  'rate/lightning': lightning,
  'rate/channels': channels,
  'rate/lead-size': leadSize,
};

/** Rules that hold a part against what a place asks, in the order in which they are named as reasons. */
export const FIT_RULES: readonly AnyFitRule[] = Object.values(PART_RULES);

/** Rules about parts of which a step of the plan says more. */
export const CLAMPING_RULE: AnyFitRule = clamping;
export const ENCLOSURE_RULE: AnyFitRule = enclosure;
export const INDICATION_RULE: AnyFitRule = indication;
export const LISTING_RULE: AnyFitRule = listing;
export const SHORT_CIRCUIT_RULE: AnyFitRule = shortCircuit;
export const TYPE_RULE: AnyFitRule = type;

/** Rules about lights; the first that applies says what a channel shows. */
export const INDICATOR_RULES: readonly AnyIndicatorRule[] = [
  partLimit,
  groundedConductor,
  turbinePhase,
  groundedSystemLine,
  ungroundedSystemLine,
  floatingPair,
  batteryPole,
  arrayPole,
  controlCircuit,
];

export const WIRING_RULES = { conductors, neutral, spareChannel, leads, namesAndColours, highLeg };

/** Rules about the overcurrent device of a protector; the one that applies counts. */
export const OVERCURRENT_RULES: readonly OvercurrentRule[] = [
  overcurrentAc,
  overcurrentArray,
  overcurrentBattery,
  overcurrentTurbine,
  overcurrentControl,
];
export const LEAD_SIZE_RULE: AnyFitRule = leadSize;

/** Every rule, for the rulebook. */
export const ALL_RULES: readonly PrintedRule[] = [
  ...PLACEMENT_RULES,
  gridTieAc,
  farEndExempt,
  ...VOLTAGE_RULES,
  nominalCurrent,
  ...CURRENT_RULES,
  withstand,
  ...FIT_RULES,
  conductors,
  neutral,
  spareChannel,
  leads,
  ...OVERCURRENT_RULES,
  namesAndColours,
  highLeg,
  ...INDICATOR_RULES,
];
