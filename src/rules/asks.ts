import type { Part } from '../model/catalogue.js';
import type { Field } from '../model/list.js';
import type { PrintedRule } from '../model/rule.js';
import type { FitFacts } from './fit-facts.js';
import type { IndicatorFacts } from './indicator-facts.js';
import type { OvercurrentFacts } from './overcurrent-facts.js';
import type { PlacementFacts } from './placement-facts.js';
import type { RatingFacts } from './rating-facts.js';
import { ALL_RULES } from './rulebook.js';
import type { WiringFacts } from './wiring-facts.js';

/** Every fact that a rule can declare. */
type FactName =
  | keyof PlacementFacts
  | keyof RatingFacts
  | keyof FitFacts
  | keyof WiringFacts
  | keyof OvercurrentFacts
  | keyof IndicatorFacts;

const AC = ['ac_in', 'ac_in_2', 'ac_out'] as const;
const JOINED = ['connects_to'] as const;
const WHERE = ['place', 'building'] as const;
const RUN = [...JOINED, 'run_length'] as const;
const GROUNDED = [...AC, 'system_grounding', 'n_pe_link', 'dc_grounding'] as const;
const FAULT = ['fault_current', 'kva', 'impedance_percent'] as const;
const NONE = [] as const;

/**
 * The fields of the list that a fact of a rule is made of, what a row is and what it is joined to aside where that only finds the row;
 * none for what another rule, the settings or a part says.
 */
const FIELDS_OF: { readonly [F in FactName]: readonly Field[] } = {
  basis: ['basis'],
  earthing: ['earthing'],
  occupancy: ['occupancy'],
  unitOccupancy: ['building_occupancy', ...WHERE],
  unitsFed: ['building_occupancy', ...WHERE],
  tag: NONE,
  kind: ['kind'],
  port: NONE,
  outdoors: ['outdoors'],
  worthProtecting: ['worth_protecting'],
  protect: ['protect'],
  mainPort: NONE,
  runs: [...RUN, 'outdoors', ...WHERE],
  runInDoubt: JOINED,
  feeders: [...JOINED, ...WHERE],
  servicePlaceOf: [...RUN, ...WHERE],
  servicePlaceUnknown: RUN,
  servicePlaceUnplaced: WHERE,
  inputUse: [...JOINED, 'dc_inputs'],
  sourceKinds: [...JOINED, 'kind'],
  unused: AC,
  hasWind: ['kind'],
  windCarrier: ['kind'],
  windWithoutAc: ['kind'],
  controlVolts: ['control_voltage'],
  connected: JOINED,
  ownLength: ['run_length'],
  drive: ['kind', ...JOINED],
  longRunLimit: NONE,
  controlVoltageLimit: NONE,
  riskLevel: [
    'flash_density',
    'thunderstorm_days',
    'surroundings',
    'lv_overhead_km',
    'lv_underground_km',
    'hv_overhead_km',
    'hv_underground_km',
  ],
  criticalLength: ['flash_density', 'thunderstorm_days'],
  arraysLength: RUN,
  serviceRequired: NONE,
  nearest: [...RUN, ...WHERE],
  current: ['output', 'control_voltage'],
  arrays: [
    'voc_stc',
    'isc_stc',
    'modules_in_series',
    'strings_in_parallel',
    'modules',
    'string',
    'voc_coefficient',
    'cells',
    'module_technology',
    'optimizers',
    'open_circuit_voltage',
    'mounting',
  ],
  arrayGroups: JOINED,
  joined: [...JOINED, 'isc_stc', 'strings_in_parallel', 'backfeed_a'],
  turbines: ['output', 'open_circuit_voltage'],
  converters: ['max_dc_voltage', 'isolated', 'ac_out'],
  batteries: ['battery_voltage', 'battery_chemistry', 'cells', 'open_circuit_voltage', 'max_dc_voltage'],
  lowestTemp: ['lowest_temp'],
  lowestTempUnreadable: ['lowest_temp'],
  system: AC,
  whole: AC,
  alsoBorne: [...AC, 'system_grounding'],
  systemField: NONE,
  grounding: ['system_grounding'],
  controlVoltage: ['control_voltage'],
  regulated: ['supply'],
  impulseWithstand: ['impulse_withstand'],
  overvoltageCategory: ['overvoltage_category'],
  faultCurrent: FAULT,
  feederPlace: WHERE,
  lightning: ['lightning_protection'],
  inverterDcLink: NONE,
  unreadable: NONE,
  thresholds: NONE,
  withstandVoltage: [...AC, 'battery_voltage'],
  circuit: ['kind', ...JOINED],
  atService: ['kind'],
  phases: AC,
  mcov: NONE,
  nominalCurrent: NONE,
  sccr: NONE,
  withstand: NONE,
  withstandAssumed: NONE,
  leadVoltage: ['lead_length'],
  aheadOfDisconnect: ['ahead_of_disconnect'],
  listedFor: ['system_grounding'],
  conductors: NONE,
  spareRoom: NONE,
  oneHousing: NONE,
  leadPlaces: ['ahead_of_disconnect', 'rating_a', 'isc_stc', 'strings_in_parallel', 'backfeed_a'],
  classOneAsked: NONE,
  part: NONE,
  bondedHere: ['n_pe_link'],
  lines: AC,
  hasNeutral: AC,
  doubledFirst: AC,
  neutralAsked: NONE,
  threePlusOne: NONE,
  positiveGround: ['dc_grounding'],
  negativeGround: ['dc_grounding'],
  groundedConductor: GROUNDED,
  systems: AC,
  highLeg: AC,
  highest: NONE,
  arrayCurrent: ['isc_stc', 'strings_in_parallel', 'backfeed_a'],
  ownDevice: ['rating_a'],
  conductor: NONE,
  grounded: GROUNDED,
  floating: GROUNDED,
  liftedNeutral: ['system_grounding'],
  fedByUtility: ['kind', ...JOINED],
  fedBySource: ['kind', ...JOINED],
  turbineDriven: ['kind', ...JOINED],
  sunAndWind: ['kind', ...JOINED],
  rapidShutdown: ['rapid_shutdown'],
  turbineOutputKnown: ['output'],
  frequency: ['poles', 'rpm'],
  groundingUnknown: ['dc_grounding'],
  usualVoltage: NONE,
  indicator: NONE,
  indicatorMinVoltage: NONE,
};

function isFactName(name: string): name is FactName {
  return Object.hasOwn(FIELDS_OF, name);
}

/**
 * The rules that ask for a field of the list: one of the facts that each declares is made of it.
 * @param field of the contract
 * @returns ids, in the order of the rulebook
 */
export function rulesAskingField(field: Field): readonly string[] {
  const rules: readonly PrintedRule[] = ALL_RULES;
  return rules
    .filter(({ facts }) => facts.some((name) => isFactName(name) && FIELDS_OF[name].includes(field)))
    .map(({ id }) => id);
}

/**
 * The rules that ask for what a part of the catalogue states.
 * @param reads keys of a part
 * @returns ids, in the order of the rulebook
 */
export function rulesAskingPart(reads: readonly (keyof Part)[]): readonly string[] {
  const rules: readonly PrintedRule[] = ALL_RULES;
  return rules
    .filter(({ ofPart }) => ofPart?.some((key) => reads.includes(key)) === true)
    .map(({ id }) => id);
}
