import { table } from './clause-kit.js';

/** A subject of the NEC: its number by cycle (a cycle without it is no key), and what it says. */
export interface NecEntry {
  readonly standard?: string;
  readonly clauses: Readonly<Record<string, string>>;
  readonly says: string;
  /** Where a cycle says it in another way. */
  readonly saysIn?: Readonly<Record<string, string>>;
  /** The text wasn't at hand. */
  readonly sure?: 'memory';
}

/** A clause that has the same number in the 2017, 2020 and 2023 cycles. */
function everyCycle(number: string): Readonly<Record<string, string>> {
  return { '2017': number, '2020': number, '2023': number };
}

/** The clauses of NFPA 70 by cycle. */
export const NEC_CLAUSES = table<NecEntry>()({
  'uses-not-permitted': {
    clauses: { '2017': '285.3', '2020': '242.6', '2023': '242.12' },
    says: 'no protector on circuits over 1000 V, on ungrounded, impedance-grounded or corner-grounded systems unless listed for them, nor one rated below the highest continuous phase-to-ground voltage',
  },
  listing: {
    clauses: { '2017': '285.6', '2020': '242.8', '2023': '242.6' },
    says: 'a protector is a listed device',
  },
  'short-circuit-current-rating': {
    clauses: { '2017': '285.7', '2020': '242.10', '2023': '242.8' },
    says: 'a protector is marked with a short-circuit current rating and is not installed where the available fault current exceeds it',
  },
  'working-indication': {
    clauses: { '2023': '242.9' },
    says: 'a protector indicates that it is working',
  },
  'type-1-places': {
    clauses: { '2017': '285.23', '2020': '242.12', '2023': '242.13' },
    says: 'a type 1 protector may stand on the supply side of the service disconnect, or on its load side',
  },
  'type-2-places': {
    clauses: { '2017': '285.24', '2020': '242.14', '2023': '242.14' },
    says: 'a type 2 protector stands on the load side of the first overcurrent device of the service, building or separately derived system',
  },
  'type-3-places': {
    clauses: { '2017': '285.25', '2020': '242.16', '2023': '242.16' },
    says: 'a type 3 protector stands on the load side of branch-circuit overcurrent protection',
  },
  'each-ungrounded-conductor': {
    clauses: { '2017': '285.4', '2020': '242.20', '2023': '242.20' },
    says: 'where protectors are used, each ungrounded conductor of the circuit has one',
  },
  'out-of-reach': {
    clauses: { '2017': '285.11', '2020': '242.22', '2023': '242.22' },
    says: 'a protector is out of reach of unqualified persons, unless listed for accessible places',
  },
  'lead-routing': {
    clauses: { '2017': '285.12', '2020': '242.24', '2023': '242.24' },
    says: 'the leads are no longer than necessary and without needless bends',
  },
  'smallest-lead': {
    clauses: { '2017': '285.26', '2020': '242.28', '2023': '242.28' },
    says: 'leads are at least 14 AWG copper or 12 AWG aluminum',
  },
  'dwelling-service': {
    clauses: { '2020': '230.67', '2023': '230.67' },
    says: 'the service of a dwelling unit has a type 1 or type 2 protector in or immediately beside the service equipment, also where that equipment is replaced',
    saysIn: {
      '2023':
        'the service of a dwelling unit, dormitory unit, guest room or patient sleeping room has a type 1 or type 2 protector of at least 10 kA in or immediately beside the service equipment, also where that equipment is replaced',
    },
  },
  'dwelling-service-exception': {
    clauses: { '2020': '230.67(B) exception', '2023': '230.67(B) exception' },
    says: 'the protector may stand at each next level of distribution downstream instead',
  },
  feeder: {
    clauses: { '2023': '215.18' },
    says: 'a feeder to the distribution equipment of a dwelling unit, dormitory unit, guest room or patient sleeping room has a protector of at least 10 kA there',
  },
  'outside-feeder': {
    clauses: { '2023': '225.42' },
    says: 'an outside feeder or branch circuit to a dwelling unit, dormitory unit, guest room or patient sleeping room has a protector of at least 10 kA there',
  },
  wind: {
    clauses: everyCycle('694.7(D)'),
    says: 'a protector stands between a wind electric system and the loads of the premises',
  },
  'array-ground-fault': {
    clauses: everyCycle('690.41(B)'),
    says: 'an array has ground-fault protection, which opens the grounded conductor or takes the array out of service',
    saysIn: {
      '2020':
        'an array over 30 V or 8 A has ground-fault protection, which opens the grounded conductor or takes the array out of service',
      '2023':
        'an array over 30 V or 8 A has ground-fault protection, which opens the grounded conductor or takes the array out of service',
    },
  },
  'maximum-pv-voltage': {
    clauses: everyCycle('690.7'),
    says: 'DC circuits of PV systems: at most 600 V on one- and two-family dwellings, 1000 V on other buildings, 1500 V on the ground',
  },
  'cold-voltage': {
    clauses: everyCycle('690.7(A)'),
    says: 'the highest voltage is the sum of the modules in series, corrected for the lowest expected ambient temperature',
  },
  'cold-voltage-table': {
    clauses: everyCycle('Table 690.7(A)'),
    says: 'correction factors of crystalline silicon by lowest expected ambient temperature, down to -40 C',
  },
  'array-current': {
    clauses: everyCycle('690.8(A)'),
    says: 'the highest current of an array is 125 percent of the short-circuit currents of the strings in parallel',
    sure: 'memory',
  },
  'maker-instructions': {
    clauses: everyCycle('110.3(B)'),
    says: 'listed equipment is used by its instructions',
  },
  labels: {
    clauses: everyCycle('110.21(B)'),
    says: 'hazard markings warn by words, colors or symbols, are not handwritten but for variable parts, and last',
  },
  'high-leg-position': {
    clauses: everyCycle('408.3(E)'),
    says: 'the high leg of a delta is phase B',
  },
  'high-leg-marking': {
    clauses: everyCycle('110.15'),
    says: 'the high leg of a delta is marked orange or by an equally good means',
    sure: 'memory',
  },
  'conductor-colours': {
    clauses: everyCycle('200.6'),
    says: 'grounded conductors are white or gray, or marked so',
    sure: 'memory',
  },
  'voltage-to-ground': {
    clauses: everyCycle('Article 100'),
    says: 'the voltage to ground of an ungrounded circuit is the greatest to any other of its conductors',
  },
  'lightning-protection': {
    standard: 'NFPA 780',
    clauses: everyCycle('chapter 4'),
    says: 'a structure with a lightning protection system has protectors of at least 20 kA at the service entrance',
    sure: 'memory',
  },
});
