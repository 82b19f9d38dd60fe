import type { NecCycle } from '../model/editions.js';
import { table } from './clause-kit.js';

/** Number of a clause under one cycle, and what it says there in our own words. */
export interface CycleClause {
  readonly clause: string;
  readonly says: string;
}

/** A subject of the NEC: its clause in each cycle; null: the cycle has none. No cycle borrows another one's sentence. */
export type NecEntry = {
  readonly standard?: string;
  /** The text wasn't at hand. */
  readonly sure?: 'memory';
} & { readonly [C in NecCycle]: CycleClause | null };

const USES_NOT_PERMITTED =
  'no protector on circuits over 1000 V, on ungrounded, impedance-grounded or corner-grounded systems unless listed for them, nor one rated below the highest continuous phase-to-ground voltage';
const LISTING = 'a protector is a listed device';
const SHORT_CIRCUIT_CURRENT_RATING =
  'a protector is marked with a short-circuit current rating and is not installed where the available fault current exceeds it';
const WORKING_INDICATION = 'a protector indicates that it is working';
const TYPE_1_PLACES =
  'a type 1 protector may stand on the supply side of the service disconnect, or on its load side';
const TYPE_2_PLACES =
  'a type 2 protector stands on the load side of the first overcurrent device of the service, building or separately derived system';
const TYPE_3_PLACES = 'a type 3 protector stands on the load side of branch-circuit overcurrent protection';
const EACH_UNGROUNDED_CONDUCTOR =
  'where protectors are used, each ungrounded conductor of the circuit has one';
const OUT_OF_REACH =
  'a protector is out of reach of unqualified persons, unless listed for accessible places';
const LEAD_ROUTING = 'the leads are no longer than necessary and without needless bends';
const SMALLEST_LEAD = 'leads are at least 14 AWG copper or 12 AWG aluminum';
const DWELLING_SERVICE_2020 =
  'the service of a dwelling unit has a type 1 or type 2 protector in or immediately beside the service equipment, also where that equipment is replaced';
const DWELLING_SERVICE_2023 =
  'the service of a dwelling unit, dormitory unit, guest room or patient sleeping room has a type 1 or type 2 protector of at least 10 kA in or immediately beside the service equipment, also where that equipment is replaced';
const DWELLING_SERVICE_EXCEPTION =
  'the protector may stand at each next level of distribution downstream instead';
const FEEDER =
  'a feeder to the distribution equipment of a dwelling unit, dormitory unit, guest room or patient sleeping room has a protector of at least 10 kA there';
const OUTSIDE_FEEDER =
  'an outside feeder or branch circuit to a dwelling unit, dormitory unit, guest room or patient sleeping room has a protector of at least 10 kA there';
const WIND = 'a protector stands between a wind electric system and the loads of the premises';
const ARRAY_GROUND_FAULT_2017 =
  'an array has ground-fault protection, which opens the grounded conductor or takes the array out of service';
const ARRAY_GROUND_FAULT_2020 =
  'an array over 30 V or 8 A has ground-fault protection, which opens the grounded conductor or takes the array out of service';
const MAXIMUM_PV_VOLTAGE =
  'DC circuits of PV systems: at most 600 V on one- and two-family dwellings, 1000 V on other buildings, 1500 V on the ground off any building';
const COLD_VOLTAGE =
  'the highest voltage is the sum of the modules in series, corrected for the lowest expected ambient temperature by the coefficient of the module';
const COLD_VOLTAGE_TABLE =
  'correction factors of crystalline silicon by lowest expected ambient temperature, down to -40 C';
const ARRAY_CURRENT =
  'the highest current of an array is 125 percent of the short-circuit currents of the strings in parallel';
const MAKER_INSTRUCTIONS = 'listed equipment is used by its instructions';
const LABELS =
  'hazard markings warn by words, colors or symbols, are not handwritten but for variable parts, and last';
const HIGH_LEG_POSITION = 'the high leg of a delta is phase B';
const HIGH_LEG_MARKING = 'the high leg of a delta is marked orange or by an equally good means';
const CONDUCTOR_COLOURS = 'grounded conductors are white or gray, or marked so';
const VOLTAGE_TO_GROUND =
  'the voltage to ground of an ungrounded circuit is the greatest to any other of its conductors';
const SLASH_RATING =
  'a breaker with a slash rating stands only on a solidly grounded system where neither of its voltages is exceeded; elsewhere a straight rating is asked';
const NO_DEVICE_IN_GROUNDED =
  'no overcurrent device stands in a grounded conductor, unless it opens all conductors of the circuit at once';
const ONE_WIRE_A_TERMINAL = 'a terminal takes one conductor, unless it is identified for more';
const AHEAD_OF_SERVICE_DISCONNECT =
  'what may be connected ahead of the service disconnect: type 1 protectors too';
const ARRAY_OVERCURRENT =
  'no overcurrent device is asked for where conductors and equipment bear the sum of the currents of all sources that can reach them';
const ARRAY_CONDUCTORS = 'conductors of an array carry 125 percent of its highest current';
const SMALL_CONDUCTORS =
  'overcurrent devices of at most 15 A for 14 AWG, 20 A for 12 AWG, 30 A for 10 AWG copper; of 15 A for 12 AWG, 25 A for 10 AWG aluminum';
const AMPACITY = 'ampacities of conductors by size, metal and temperature of their insulation and terminals';
const NEXT_STANDARD_SIZE =
  'where the ampacity is no standard size of device, the next larger one may protect the conductor';
const LEADS_BY_INSTRUCTIONS =
  'the conductors to listed equipment such as a protector may be sized by the instructions that come with it';
const LIGHTNING_PROTECTION =
  'a structure with a lightning protection system has protectors of at least 20 kA at the service entrance';

/** The clauses of NFPA 70 by cycle. */
export const NEC_CLAUSES = table<NecEntry>()({
  'uses-not-permitted': {
    'nec-2017': { clause: '285.3', says: USES_NOT_PERMITTED },
    'nec-2020': { clause: '242.6', says: USES_NOT_PERMITTED },
    'nec-2023': { clause: '242.12', says: USES_NOT_PERMITTED },
  },
  listing: {
    'nec-2017': { clause: '285.6', says: LISTING },
    'nec-2020': { clause: '242.8', says: LISTING },
    'nec-2023': { clause: '242.6', says: LISTING },
  },
  'short-circuit-current-rating': {
    'nec-2017': { clause: '285.7', says: SHORT_CIRCUIT_CURRENT_RATING },
    'nec-2020': { clause: '242.10', says: SHORT_CIRCUIT_CURRENT_RATING },
    'nec-2023': { clause: '242.8', says: SHORT_CIRCUIT_CURRENT_RATING },
  },
  'working-indication': {
    'nec-2017': null,
    'nec-2020': null,
    'nec-2023': { clause: '242.9', says: WORKING_INDICATION },
  },
  'type-1-places': {
    'nec-2017': { clause: '285.23', says: TYPE_1_PLACES },
    'nec-2020': { clause: '242.12', says: TYPE_1_PLACES },
    'nec-2023': { clause: '242.13', says: TYPE_1_PLACES },
  },
  'type-2-places': {
    'nec-2017': { clause: '285.24', says: TYPE_2_PLACES },
    'nec-2020': { clause: '242.14', says: TYPE_2_PLACES },
    'nec-2023': { clause: '242.14', says: TYPE_2_PLACES },
  },
  'type-3-places': {
    'nec-2017': { clause: '285.25', says: TYPE_3_PLACES },
    'nec-2020': { clause: '242.16', says: TYPE_3_PLACES },
    'nec-2023': { clause: '242.16', says: TYPE_3_PLACES },
  },
  'each-ungrounded-conductor': {
    'nec-2017': { clause: '285.4', says: EACH_UNGROUNDED_CONDUCTOR },
    'nec-2020': { clause: '242.20', says: EACH_UNGROUNDED_CONDUCTOR },
    'nec-2023': { clause: '242.20', says: EACH_UNGROUNDED_CONDUCTOR },
  },
  'out-of-reach': {
    'nec-2017': { clause: '285.11', says: OUT_OF_REACH },
    'nec-2020': { clause: '242.22', says: OUT_OF_REACH },
    'nec-2023': { clause: '242.22', says: OUT_OF_REACH },
  },
  'lead-routing': {
    'nec-2017': { clause: '285.12', says: LEAD_ROUTING },
    'nec-2020': { clause: '242.24', says: LEAD_ROUTING },
    'nec-2023': { clause: '242.24', says: LEAD_ROUTING },
  },
  'smallest-lead': {
    'nec-2017': { clause: '285.26', says: SMALLEST_LEAD },
    'nec-2020': { clause: '242.28', says: SMALLEST_LEAD },
    'nec-2023': { clause: '242.28', says: SMALLEST_LEAD },
  },
  'dwelling-service': {
    'nec-2017': null,
    'nec-2020': { clause: '230.67', says: DWELLING_SERVICE_2020 },
    'nec-2023': { clause: '230.67', says: DWELLING_SERVICE_2023 },
  },
  'dwelling-service-exception': {
    'nec-2017': null,
    'nec-2020': { clause: '230.67(B) exception', says: DWELLING_SERVICE_EXCEPTION },
    'nec-2023': { clause: '230.67(B) exception', says: DWELLING_SERVICE_EXCEPTION },
  },
  feeder: {
    'nec-2017': null,
    'nec-2020': null,
    'nec-2023': { clause: '215.18', says: FEEDER },
  },
  'outside-feeder': {
    'nec-2017': null,
    'nec-2020': null,
    'nec-2023': { clause: '225.42', says: OUTSIDE_FEEDER },
  },
  wind: {
    'nec-2017': { clause: '694.7(D)', says: WIND },
    'nec-2020': { clause: '694.7(D)', says: WIND },
    'nec-2023': { clause: '694.7(D)', says: WIND },
  },
  'array-ground-fault': {
    'nec-2017': { clause: '690.41(B)', says: ARRAY_GROUND_FAULT_2017 },
    'nec-2020': { clause: '690.41(B)', says: ARRAY_GROUND_FAULT_2020 },
    'nec-2023': { clause: '690.41(B)', says: ARRAY_GROUND_FAULT_2020 },
  },
  'maximum-pv-voltage': {
    'nec-2017': { clause: '690.7', says: MAXIMUM_PV_VOLTAGE },
    'nec-2020': { clause: '690.7', says: MAXIMUM_PV_VOLTAGE },
    'nec-2023': { clause: '690.7', says: MAXIMUM_PV_VOLTAGE },
  },
  // 690.7(A) was read, its items weren't.
  'cold-voltage': {
    sure: 'memory',
    'nec-2017': { clause: '690.7(A)(1)', says: COLD_VOLTAGE },
    'nec-2020': { clause: '690.7(A)(1)', says: COLD_VOLTAGE },
    'nec-2023': { clause: '690.7(A)(1)', says: COLD_VOLTAGE },
  },
  'cold-voltage-table': {
    'nec-2017': { clause: 'Table 690.7(A)', says: COLD_VOLTAGE_TABLE },
    'nec-2020': { clause: 'Table 690.7(A)', says: COLD_VOLTAGE_TABLE },
    'nec-2023': { clause: 'Table 690.7(A)', says: COLD_VOLTAGE_TABLE },
  },
  'array-current': {
    sure: 'memory',
    'nec-2017': { clause: '690.8(A)', says: ARRAY_CURRENT },
    'nec-2020': { clause: '690.8(A)', says: ARRAY_CURRENT },
    'nec-2023': { clause: '690.8(A)', says: ARRAY_CURRENT },
  },
  'maker-instructions': {
    'nec-2017': { clause: '110.3(B)', says: MAKER_INSTRUCTIONS },
    'nec-2020': { clause: '110.3(B)', says: MAKER_INSTRUCTIONS },
    'nec-2023': { clause: '110.3(B)', says: MAKER_INSTRUCTIONS },
  },
  labels: {
    'nec-2017': { clause: '110.21(B)', says: LABELS },
    'nec-2020': { clause: '110.21(B)', says: LABELS },
    'nec-2023': { clause: '110.21(B)', says: LABELS },
  },
  'high-leg-position': {
    'nec-2017': { clause: '408.3(E)', says: HIGH_LEG_POSITION },
    'nec-2020': { clause: '408.3(E)', says: HIGH_LEG_POSITION },
    'nec-2023': { clause: '408.3(E)', says: HIGH_LEG_POSITION },
  },
  'high-leg-marking': {
    sure: 'memory',
    'nec-2017': { clause: '110.15', says: HIGH_LEG_MARKING },
    'nec-2020': { clause: '110.15', says: HIGH_LEG_MARKING },
    'nec-2023': { clause: '110.15', says: HIGH_LEG_MARKING },
  },
  'conductor-colours': {
    sure: 'memory',
    'nec-2017': { clause: '200.6', says: CONDUCTOR_COLOURS },
    'nec-2020': { clause: '200.6', says: CONDUCTOR_COLOURS },
    'nec-2023': { clause: '200.6', says: CONDUCTOR_COLOURS },
  },
  'voltage-to-ground': {
    'nec-2017': { clause: 'Article 100', says: VOLTAGE_TO_GROUND },
    'nec-2020': { clause: 'Article 100', says: VOLTAGE_TO_GROUND },
    'nec-2023': { clause: 'Article 100', says: VOLTAGE_TO_GROUND },
  },
  'slash-rating': {
    'nec-2017': { clause: '240.85', says: SLASH_RATING },
    'nec-2020': { clause: '240.85', says: SLASH_RATING },
    'nec-2023': { clause: '240.85', says: SLASH_RATING },
  },
  'no-device-in-grounded-conductor': {
    'nec-2017': { clause: '240.22', says: NO_DEVICE_IN_GROUNDED },
    'nec-2020': { clause: '240.22', says: NO_DEVICE_IN_GROUNDED },
    'nec-2023': { clause: '240.22', says: NO_DEVICE_IN_GROUNDED },
  },
  'one-wire-a-terminal': {
    'nec-2017': { clause: '110.14(A)', says: ONE_WIRE_A_TERMINAL },
    'nec-2020': { clause: '110.14(A)', says: ONE_WIRE_A_TERMINAL },
    'nec-2023': { clause: '110.14(A)', says: ONE_WIRE_A_TERMINAL },
  },
  'ahead-of-service-disconnect': {
    sure: 'memory',
    'nec-2017': { clause: '230.82(4)', says: AHEAD_OF_SERVICE_DISCONNECT },
    'nec-2020': { clause: '230.82(4)', says: AHEAD_OF_SERVICE_DISCONNECT },
    'nec-2023': { clause: '230.82(4)', says: AHEAD_OF_SERVICE_DISCONNECT },
  },
  'array-overcurrent': {
    'nec-2017': { clause: '690.9(A)', says: ARRAY_OVERCURRENT },
    'nec-2020': { clause: '690.9(A)', says: ARRAY_OVERCURRENT },
    'nec-2023': { clause: '690.9(A)', says: ARRAY_OVERCURRENT },
  },
  'array-conductors': {
    sure: 'memory',
    'nec-2017': { clause: '690.8(B)', says: ARRAY_CONDUCTORS },
    'nec-2020': { clause: '690.8(B)', says: ARRAY_CONDUCTORS },
    'nec-2023': { clause: '690.8(B)', says: ARRAY_CONDUCTORS },
  },
  'small-conductors': {
    'nec-2017': { clause: '240.4(D)', says: SMALL_CONDUCTORS },
    'nec-2020': { clause: '240.4(D)', says: SMALL_CONDUCTORS },
    'nec-2023': { clause: '240.4(D)', says: SMALL_CONDUCTORS },
  },
  ampacity: {
    sure: 'memory',
    'nec-2017': { clause: 'Table 310.15(B)(16)', says: AMPACITY },
    'nec-2020': { clause: 'Table 310.16', says: AMPACITY },
    'nec-2023': { clause: 'Table 310.16', says: AMPACITY },
  },
  'next-standard-size': {
    sure: 'memory',
    'nec-2017': { clause: '240.4(B)', says: NEXT_STANDARD_SIZE },
    'nec-2020': { clause: '240.4(B)', says: NEXT_STANDARD_SIZE },
    'nec-2023': { clause: '240.4(B)', says: NEXT_STANDARD_SIZE },
  },
  'leads-by-instructions': {
    'nec-2017': { clause: '240.21(B)(1)(1)b exception', says: LEADS_BY_INSTRUCTIONS },
    'nec-2020': { clause: '240.21(B)(1)(1)b exception', says: LEADS_BY_INSTRUCTIONS },
    'nec-2023': { clause: '240.21(B)(1)(1)b exception', says: LEADS_BY_INSTRUCTIONS },
  },
  'lightning-protection': {
    standard: 'NFPA 780',
    sure: 'memory',
    'nec-2017': { clause: 'chapter 4', says: LIGHTNING_PROTECTION },
    'nec-2020': { clause: 'chapter 4', says: LIGHTNING_PROTECTION },
    'nec-2023': { clause: 'chapter 4', says: LIGHTNING_PROTECTION },
  },
});
