import { table, type ClauseSource } from './clause-kit.js';

const LOW_VOLTAGE_4_44 = { standard: 'IEC 60364-4-44', edition: '2007+A1:2015' };
const LOW_VOLTAGE_5_53 = { standard: 'IEC 60364-5-53', edition: '2019' };
const LOW_VOLTAGE_7_712 = { standard: 'IEC 60364-7-712', edition: '2017' };
const RISK = { standard: 'IEC 62305-2', edition: '2010' };
const memory = { sure: 'memory' } as const;

/** The clauses of `iec`. Editions are from memory where a clause is. */
export const IEC_CLAUSES = table<ClauseSource>()({
  'transient-overvoltage-risk': {
    ...LOW_VOLTAGE_4_44,
    clause: '443.4',
    says: 'protection against transient overvoltages is provided where they would touch safety, public services, business or many people; elsewhere by a risk assessment',
    ...memory,
  },
  'calculated-risk-level': {
    ...LOW_VOLTAGE_4_44,
    clause: '443.5',
    says: 'protection is provided where the calculated risk level, from flash density, lines and surroundings, is below 1000',
    ...memory,
  },
  'origin-of-installation': {
    ...LOW_VOLTAGE_5_53,
    clause: '534.4.1',
    says: 'a protector stands as near as possible to the origin of the installation',
    ...memory,
  },
  'connection-types': {
    ...LOW_VOLTAGE_5_53,
    clause: '534.4.3',
    says: 'by the earthing of the system: each live conductor to earth, or lines to neutral and neutral to earth',
    ...memory,
  },
  'continuous-voltage': {
    ...LOW_VOLTAGE_5_53,
    clause: 'Table 534.2',
    says: 'the least continuous operating voltage by the earthing of the system: 1.1 times the voltage between the two conductors that the protector lies between',
    ...memory,
  },
  'protection-level': {
    ...LOW_VOLTAGE_5_53,
    clause: '534.4.4.2',
    says: 'the protection level stays at or below 80 percent of the impulse withstand of the equipment',
  },
  'discharge-currents': {
    ...LOW_VOLTAGE_5_53,
    clause: '534.4.4.4',
    says: 'a nominal discharge current of at least 5 kA at the origin; with lightning protection an impulse current of at least 12.5 kA where none was computed',
    ...memory,
  },
  'neutral-path-currents': {
    ...LOW_VOLTAGE_5_53,
    clause: 'Table 534.4',
    says: 'in connection 3+1 the path from neutral to earth bears the nominal and impulse currents of all lines together',
    ...memory,
  },
  'short-circuit-current-rating': {
    ...LOW_VOLTAGE_5_53,
    clause: '534.4.4.6',
    says: 'the short-circuit rating of a protector, with the device ahead of it, is at least the prospective fault current there',
    ...memory,
  },
  'lead-routing': {
    ...LOW_VOLTAGE_5_53,
    clause: '534.4.8',
    says: 'line lead and earth lead together are at most 0.5 m long',
  },
  'ten-metre-distance': {
    ...LOW_VOLTAGE_5_53,
    clause: '534.4.9',
    says: 'farther than 10 m from a protector, equipment needs one more near to it',
    ...memory,
  },
  'smallest-lead': {
    ...LOW_VOLTAGE_5_53,
    clause: '534.4.10',
    says: 'the earth lead is at least 6 mm2 for class II and 16 mm2 for class I; live leads at least 2.5 and 6 mm2',
    ...memory,
  },
  'pv-dc-protection': {
    ...LOW_VOLTAGE_7_712,
    clause: '712.443',
    says: 'the DC side is protected where the runs reach the critical length, or where the AC side must be protected',
    ...memory,
  },
  'pv-dc-both-ends': {
    ...LOW_VOLTAGE_7_712,
    clause: '712.534',
    says: 'a DC run of more than 10 m between array and inverter has a protector at both ends',
    ...memory,
  },
  'pv-ac-protection': {
    ...LOW_VOLTAGE_7_712,
    clause: '712.534',
    says: 'the AC side of the inverter has a protector of its own where the one at the origin is more than 10 m away',
    ...memory,
  },
  'cold-voltage': {
    ...LOW_VOLTAGE_7_712,
    clause: 'Annex B',
    says: 'the highest open-circuit voltage by the coefficient of the module and the lowest temperature; 1.2 times the voltage at standard test conditions where they are not known',
    ...memory,
  },
  'array-current': {
    ...LOW_VOLTAGE_7_712,
    clause: 'Annex B',
    says: 'the highest short-circuit current is at least 1.25 times that at standard test conditions',
    ...memory,
  },
  'yearly-flashes': {
    ...RISK,
    clause: 'Annex A',
    says: 'collection areas of structures and lines, and the dangerous events of a year',
    ...memory,
  },
  'conductor-colours': {
    standard: 'IEC 60445',
    edition: '2021',
    clause: '6',
    says: 'brown, black and grey for line conductors, blue for neutral, green-yellow for protective earth',
    ...memory,
  },
  'handover-documents': {
    standard: 'IEC 62446-1',
    edition: '2016',
    clause: '4.3.5',
    says: 'the handover documents name every protector on both sides with place, type and rating, the bonding conductors, and any connection to a lightning protection system',
    ...memory,
  },
});

/** Standards and books that hold under every basis. */
export const OTHER_CLAUSES = table<ClauseSource>()({
  'impulse-withstand': {
    standard: 'IEC 60664-1',
    edition: '2020',
    clause: 'Table F.1',
    says: 'rated impulse voltage of equipment by its voltage to neutral and its overvoltage category',
  },
  'voltage-ranges': {
    standard: 'ANSI C84.1',
    edition: '2020',
    clause: 'Table 1',
    says: 'range B: the highest lasting voltage of a 120 V system is 127 V, and in proportion',
    ...memory,
  },
  'surge-waves': {
    standard: 'IEEE C62.41.2',
    edition: '2002',
    clause: 'Annex A',
    says: 'the 8/20 us current wave and the 1.2/50 us voltage wave as formulas',
  },
  'protection-rating': {
    standard: 'UL 1449',
    edition: '5th edition',
    clause: 'voltage protection rating',
    says: 'a voltage protection rating is measured at 6 kV and 3 kA with leads of 6 in, and rounded up to a fixed list',
    ...memory,
  },
  'nominal-discharge-current': {
    standard: 'UL 1449',
    edition: '5th edition',
    clause: 'nominal discharge current',
    says: 'a protector is marked with a nominal discharge current of 3, 5, 10 or 20 kA',
    ...memory,
  },
  'signal-lines': {
    standard: 'IEEE C62.72',
    edition: '2016',
    clause: 'scope',
    says: 'power protectors do not serve data, telephone and antenna lines',
    ...memory,
  },
  'lead-inductance': {
    standard: 'Rosa, Bulletin of the Bureau of Standards 4(2)',
    edition: '1908',
    clause: 'p. 301',
    says: 'self-inductance of a straight round wire',
    ...memory,
  },
  'wire-gauge': {
    standard: 'ASTM B258',
    edition: '2018',
    clause: 'scope',
    says: 'diameters of the American wire gauge',
  },
  'oscillation-distance': {
    standard: 'OVE Fachinformation E09',
    edition: '2022',
    clause: 'Annex C',
    says: 'how far along the cable a protector covers: the margin between withstand and level over 25 V/m; no limit at half the withstand',
  },
  'flash-density-days': {
    standard: 'IEC 62305-2',
    edition: '2006',
    clause: 'Annex A',
    says: 'a tenth of the thunderstorm days of a year as ground flash density',
  },
  'signal-words': {
    standard: 'ANSI Z535.4 and Z535.6',
    edition: '2011',
    clause: 'signal words',
    says: 'danger, warning, caution and notice, by the harm that follows',
  },
});
