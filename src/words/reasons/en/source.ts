import type { SourceReasons } from '../../../model/reasons/source.js';
import { cited } from '../../origin.js';
import { standardName } from '../../standard.js';
import type { Sayings } from '../sayings.js';

const MEMORY = 'value from memory';
const ANNEX_B = `IEC 60364-7-712:2017 Annex B, ${MEMORY}`;
const RISK = 'IEC 60364-4-44:2007+A1:2015 cl. 443.5';

/** The cycle of a basis of the NEC: `2023`. */
const cycle = (basis: string): string => basis.slice('nec-'.length);

/** Where the figures of steps come from, in English. */
export const SOURCE: Sayings<SourceReasons> = {
  'source/clause': (v) => `${v.memory ? 'see ' : ''}${standardName(v)}, ${v.clause}`,
  'source/practice': ({ practice }) => `common practice: ${practice}`,
  'source/from-memory': () => MEMORY,
  'source/common-practice': () => 'common practice, no source',
  'source/as-stated': () => 'as stated',
  'source/places': ({ places }) => places.map(cited).join('; '),
  'source/of-each': ({ each }) => each.map(({ tag, place }) => `${tag}: ${cited(place)}`).join('; '),
  'source/on-this-page': () => 'computed on this page',
  'source/assumed-on-these-pages': () => 'assumption on these pages',
  'source/cold-factor-table': () => 'NEC Table 690.7(A), same in the 2017, 2020 and 2023 editions',
  'source/cold-voltage-annex': () => ANNEX_B,
  'source/maker-coefficient': ({ practice }) =>
    practice === 'iec'
      ? `the maker’s coefficient, ${ANNEX_B}`
      : 'the maker’s coefficient, NEC 690.7(A) and 110.3(B)',
  'source/string-voltage': () =>
    'NEC 690.7(A): sum of the modules in series, corrected for the lowest temperature',
  'source/pv-limit': ({ basis }) => `NEC ${cycle(basis)} 690.7`,
  'source/array-current': ({ practice }) =>
    `${practice === 'iec' ? 'IEC 60364-7-712:2017 Annex B' : 'NEC 690.8(A)'}, ${MEMORY}`,
  'source/rectifier': () => 'computed: rectifier without load',
  'source/pole-pairs': () => 'computed: pole pairs × turns a second',
  'source/voltage-range': () => `ANSI C84.1-2020, range B, ${MEMORY}`,
  'source/continuous-voltage-table': () => `IEC 60364-5-53:2019 Table 534.2, ${MEMORY}`,
  'source/uses-not-permitted': ({ basis, clause }) =>
    `NEC ${cycle(basis)} ${clause}: not below the highest continuous voltage to ground`,
  'source/inverter-link': () => 'derived by this project from the circuit of an inverter without isolation',
  'source/transformer-impedance': () =>
    'kVA and impedance, with an unlimited supply ahead (IEC 60076-1, value from memory)',
  'source/one-at-a-time': () =>
    'computed: sources that can feed together add, of those that exclude each other the highest counts',
  'source/parallel-sources': () => 'computed: sources in parallel add',
  'source/feeding-source-not-stated': () => 'computed: which source feeds it isn’t stated',
  'source/nominal-current-iec': () => `IEC 60364-5-53 cl. 534.4.4.4, ${MEMORY}`,
  'source/nominal-current-lightning': () => `NFPA 780, ${MEMORY}`,
  'source/nominal-current-service': () => 'NEC 2023, 230.67',
  'source/nominal-current-feeder': ({ outside }) => `NEC 2023, ${outside ? '225.42' : '215.18'}`,
  'source/withstand-table': () => 'IEC 60664-1:2020 Table F.1',
  'source/withstand-entry': () => 'computed on these pages, or the nominal voltage of the system',
  'source/critical-length': ({ read }) => `IEC 60364-7-712:2017 cl. 712.443${read ? '' : `, ${MEMORY}`}`,
  'source/risk-level': () => RISK,
  'source/surroundings-factor': () => `${RISK}, ${MEMORY}`,
  'source/thunderstorm-days': () => 'IEC 62305-2:2006 Annex A',
  'source/thunderstorm-days-power': () => `IEEE 1410, ${MEMORY}`,
  'source/lightning-annex': () => `IEC 62305-2:2010 Annex A, ${MEMORY}`,
  'source/lightning-table': ({ table }) => `IEC 62305-2:2010 Table ${table}, ${MEMORY}`,
  'source/wire-inductance': () =>
    `Rosa, Bulletin of the Bureau of Standards 4(2), 1908, p. 301; Grover, ${MEMORY}`,
  'source/lead-in-level': () => `UL 1449, 5th edition: a VPR is measured with leads of 6 in, ${MEMORY}`,
  'source/current-wave': () => 'IEEE C62.41.2-2002',
  'source/lead-voltage': () => 'computed; adding the two peaks is conservative',
  'source/effective-level': () => `IEC 62305-4 Annex: level and leads count together, ${MEMORY}`,
  'source/level-between': () => 'computed; no source compares it with anything',
  'source/reach': () => 'OVE Fachinformation E09:2022 Annex C',
  'source/smallest-lead-nec': () => 'NEC 242.28 (285.26 in 2017)',
  'source/smallest-lead-iec': () => `IEC 60364-5-53:2019 cl. 534.4.10, ${MEMORY}`,
};
