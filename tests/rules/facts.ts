import type { Part } from '../../src/model/catalogue.js';
import type { Fact } from '../../src/model/fact.js';
import type { RunFacts } from '../../src/model/rule.js';
import { defaultSettings, type Thresholds } from '../../src/model/settings.js';
import type { FitFacts } from '../../src/rules/fit-facts.js';
import type { IndicatorFacts } from '../../src/rules/indicator-facts.js';
import type { OvercurrentPlace } from '../../src/rules/lead-duty.js';
import type { OvercurrentFacts } from '../../src/rules/overcurrent-facts.js';
import type { PlacementFacts } from '../../src/rules/placement-facts.js';
import type {
  ArrayFacts,
  BatteryFacts,
  ConverterFacts,
  RatingFacts,
  TurbineFacts,
} from '../../src/rules/rating-facts.js';
import type { WiringFacts } from '../../src/rules/wiring-facts.js';

// Facts of a subject as plan/ would hand them to a rule: plain defaults, and what a case says otherwise.

/** The thresholds of a company without settings; rules are handed them, and hold none of their own. */
export const THRESHOLDS: Thresholds = defaultSettings().thresholds;

/** m; 100 ft: common practice, no source. */
export const LONG_NEC = THRESHOLDS.longRunNec;
/** m; IEC 60364-5-53 cl. 534.4.9, value from memory. */
export const LONG_IEC = THRESHOLDS.longRunIec;

/** A cell of the list. `column` is where a working says it stands. */
export function stated<T>(value: T, column = ''): Fact<T> {
  return {
    value,
    origin: { from: 'list', file: 'jobs.csv', line: 3, column },
    text: typeof value === 'string' || typeof value === 'number' ? String(value) : '',
  };
}

/** A run of AC indoors, 5 m long, from another panel: nothing to protect it from. */
export function run(some: Partial<RunFacts> = {}): RunFacts {
  return {
    unknownRow: '',
    lengthNotAsked: false,
    otherTag: 'OTHER',
    otherKind: 'panel',
    length: 5,
    outdoors: false,
    outdoorsByDefault: false,
    betweenBuildings: false,
    betweenByDefault: false,
    placesDiffer: false,
    unplaced: [],
    placeless: [],
    carries: 'ac',
    upstream: false,
    fromArray: false,
    arraysLength: undefined,
    ...some,
  };
}

/** The feeder port of a panel of a dwelling, nec-2023. */
export function placementFacts(some: Partial<PlacementFacts> = {}): PlacementFacts {
  return {
    basis: 'nec-2023',
    tag: 'E-1',
    kind: 'panel',
    port: 'feeder',
    occupancy: 'dwelling',
    unitOccupancy: 'dwelling',
    unitsFed: [],
    outdoors: false,
    worthProtecting: true,
    protect: undefined,
    mainPort: true,
    runs: [],
    runInDoubt: false,
    feeders: [],
    servicePlaceOf: '',
    servicePlaceUnknown: false,
    servicePlaceUnplaced: [],
    inputUse: 'fed',
    sourceKinds: [],
    unused: '',
    hasWind: false,
    windCarrier: false,
    windWithoutAc: false,
    controlVolts: undefined,
    connected: false,
    ownLength: undefined,
    drive: '',
    longRunLimit: some.basis === 'iec' ? LONG_IEC : LONG_NEC,
    controlVoltageLimit: THRESHOLDS.controlVoltage,
    riskLevel: undefined,
    criticalLength: undefined,
    arraysLength: undefined,
    serviceRequired: false,
    nearest: undefined,
    ...some,
  };
}

/** Ten crystalline modules of 40 V (own case), without a coefficient. */
export function array(some: Partial<ArrayFacts> = {}): ArrayFacts {
  return {
    tag: 'ARR-1',
    vocStc: stated(40, 'Voc'),
    iscStc: stated(10, 'Isc'),
    modulesInSeries: stated(10, 'Modules'),
    stringsInParallel: stated(2, 'Strings'),
    coefficient: undefined,
    cells: undefined,
    technology: undefined,
    optimizers: false,
    openCircuitVoltage: undefined,
    offBuildings: false,
    atDwelling: false,
    unreadable: new Set(),
    ...some,
  };
}

/** A three-phase wind turbine of 200 V line to line (own case). */
export function turbine(some: Partial<TurbineFacts> = {}): TurbineFacts {
  return {
    tag: 'WT-1',
    kind: 'wind-turbine',
    output: 'three-phase',
    openCircuitVoltage: stated(200, 'Voc'),
    unreadable: new Set(),
    ...some,
  };
}

/** A charge controller that states nothing. */
export function converter(some: Partial<ConverterFacts> = {}): ConverterFacts {
  return {
    tag: 'CC-1',
    kind: 'charge-controller',
    maxDcVoltage: undefined,
    isolated: undefined,
    acOut: undefined,
    unreadable: new Set(),
    ...some,
  };
}

/** A lead-acid battery of 48 V. */
export function battery(some: Partial<BatteryFacts> = {}): BatteryFacts {
  return {
    tag: 'BAT-1',
    voltage: stated(48, 'battery_voltage'),
    chemistry: stated('lead-acid', 'battery_chemistry'),
    cells: undefined,
    highest: undefined,
    unreadable: new Set(),
    ...some,
  };
}

/** The feeder of a panel of 120/240 V, solidly grounded, nec-2023. */
export function ratingFacts(some: Partial<RatingFacts> = {}): RatingFacts {
  return {
    basis: 'nec-2023',
    earthing: 'TN',
    occupancy: 'dwelling',
    tag: 'E-1',
    kind: 'panel',
    port: 'feeder',
    current: 'ac',
    inputUse: 'fed',
    arrays: [],
    arrayGroups: some.arrays === undefined ? [] : [some.arrays.map((a) => a.tag)],
    joined: undefined,
    turbines: [],
    converters: [],
    batteries: [],
    lowestTemp: undefined,
    lowestTempUnreadable: false,
    system: '120/240',
    systemField: 'ac_in',
    grounding: 'solid',
    whole: undefined,
    alsoBorne: [],
    controlVoltage: undefined,
    regulated: false,
    impulseWithstand: undefined,
    overvoltageCategory: undefined,
    faultCurrent: undefined,
    feederPlace: '',
    lightning: 'none',
    inverterDcLink: true,
    unreadable: new Set(),
    thresholds: THRESHOLDS,
    withstandVoltage: undefined,
    ...some,
  };
}

/** An invented part that states a usual figure everywhere (own case). */
export function part(some: Partial<Part> = {}): Part {
  return {
    part: 'QX-1',
    maker: 'Invented',
    description: '',
    channels: 2,
    mcovAc: 150,
    mcovDc: 150,
    up: 700,
    upBasis: 'VPR',
    nominalCurrent: 20_000,
    maximumCurrent: 50_000,
    impulseCurrent: null,
    neutralNominalCurrent: null,
    neutralImpulseCurrent: null,
    sccr: 100_000,
    sccrDc: 10_000,
    type: 2,
    iecClass: null,
    connection: 'to-ground',
    enclosure: '4X',
    listedFor: [],
    listing: 'UL 1449',
    listingFile: '',
    indicator: 'light',
    indicatorMinVoltage: null,
    indicatorColor: '',
    leakage: null,
    leadLength: null,
    leadGauge: '',
    leadDiameter: null,
    leadArea: null,
    overcurrent: '',
    overcurrentMost: null,
    overcurrentLeast: null,
    overcurrentDevice: null,
    leadByInstructions: null,
    wireRange: '',
    wireRanges: [],
    torque: '',
    price: null,
    currency: '',
    goodFlag: '',
    usedFlag: '',
    file: 'catalogue.csv',
    line: 2,
    ...some,
  };
}

/** An AC port of which nothing is stated. */
export function leadPlace(some: Partial<OvercurrentPlace> = {}): OvercurrentPlace {
  return {
    circuit: 'power',
    aheadOfDisconnect: false,
    ownDevice: undefined,
    arrayCurrent: undefined,
    ...some,
  };
}

/** A panel of 120/240 V, solidly grounded, nec-2023, whose own device isn't stated; the part allows 30 A. */
export function overcurrentFacts(some: Partial<OvercurrentFacts> = {}): OvercurrentFacts {
  return {
    ...leadPlace(),
    basis: 'nec-2023',
    part: { overcurrentMost: 30, overcurrentLeast: null, overcurrentDevice: null },
    lines: ['L1', 'L2'],
    groundedConductor: undefined,
    systems: [{ system: '120/240', whole: '120/240', grounding: 'solid' }],
    highLeg: false,
    highest: undefined,
    faultCurrent: undefined,
    current: 'ac',
    ...some,
  };
}

/** A panel of 120/240 V, nec-2023, indoors, behind the disconnect, and the invented part. */
export function fitFacts(some: Partial<FitFacts> = {}): FitFacts {
  return {
    basis: 'nec-2023',
    earthing: 'TN',
    current: 'ac',
    circuit: 'power',
    atService: false,
    phases: 1,
    mcov: 138,
    nominalCurrent: 10_000,
    sccr: undefined,
    withstand: undefined,
    withstandAssumed: false,
    leadVoltage: 200,
    aheadOfDisconnect: false,
    outdoors: false,
    listedFor: undefined,
    lightning: 'none',
    conductors: 2,
    spareRoom: 2,
    oneHousing: false,
    leadPlaces: [leadPlace()],
    classOneAsked: false,
    part: part(),
    thresholds: THRESHOLDS,
    ...some,
  };
}

/** A panel of 120/240 V away from the service, nec-2023. */
export function wiringFacts(some: Partial<WiringFacts> = {}): WiringFacts {
  return {
    basis: 'nec-2023',
    earthing: 'TN',
    circuit: 'power',
    current: 'ac',
    system: '120/240',
    grounding: 'solid',
    whole: undefined,
    atService: false,
    bondedHere: false,
    lines: ['L1', 'L2'],
    hasNeutral: true,
    doubledFirst: 'L1',
    neutralAsked: false,
    threePlusOne: false,
    positiveGround: false,
    negativeGround: false,
    classOneAsked: false,
    ...some,
  };
}

/** L1 of a solidly grounded system that the utility feeds, on a part with a light. */
export function indicatorFacts(some: Partial<IndicatorFacts> = {}): IndicatorFacts {
  return {
    circuit: 'power',
    current: 'ac',
    conductor: 'L1',
    grounded: false,
    floating: false,
    liftedNeutral: undefined,
    fedByUtility: true,
    fedBySource: false,
    turbineDriven: false,
    sunAndWind: false,
    rapidShutdown: false,
    frequency: undefined,
    turbineOutputKnown: true,
    groundingUnknown: false,
    indicator: 'light',
    indicatorMinVoltage: undefined,
    usualVoltage: 120,
    ...some,
  };
}
