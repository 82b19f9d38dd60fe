import type { Sureness } from '../../model/fact.js';
import type { SourceReasons } from '../../model/reasons/source.js';
import type { StepSource } from '../../model/step.js';

/** What a source's sentence says of how sure the figure is; null: nothing. */
type Said<C extends keyof SourceReasons> = Sureness | null | ((values: SourceReasons[C]) => Sureness | null);

const whereFromMemory = (isFromMemory: boolean): Sureness | null => (isFromMemory ? 'memory' : null);

/** By the code of the source, for sentences in every language; the compiler asks for each. */
const SAID: { readonly [C in keyof SourceReasons]: Said<C> } = {
  'source/clause': null,
  'source/practice': 'common practice',
  'source/from-memory': 'memory',
  'source/common-practice': 'common practice',
  'source/as-stated': 'stated',
  'source/places': null,
  'source/of-each': null,
  'source/on-this-page': 'computed',
  'source/assumed-on-these-pages': 'assumption',
  'source/cold-factor-table': null,
  'source/cold-voltage-annex': 'memory',
  'source/maker-coefficient': ({ practice }) => whereFromMemory(practice === 'iec'),
  'source/string-voltage': null,
  'source/pv-limit': null,
  'source/array-current': 'memory',
  'source/rectifier': 'computed',
  'source/pole-pairs': 'computed',
  'source/voltage-range': 'memory',
  'source/continuous-voltage-table': 'memory',
  'source/uses-not-permitted': null,
  'source/inverter-link': null,
  'source/parallel-sources': 'computed',
  'source/one-at-a-time': 'computed',
  'source/transformer-impedance': 'memory',
  'source/feeding-source-not-stated': 'computed',
  'source/nominal-current-iec': 'memory',
  'source/nominal-current-lightning': 'memory',
  'source/nominal-current-service': null,
  'source/nominal-current-feeder': null,
  'source/withstand-table': null,
  'source/withstand-entry': 'computed',
  'source/critical-length': ({ read }) => whereFromMemory(!read),
  'source/risk-level': null,
  'source/surroundings-factor': 'memory',
  'source/thunderstorm-days': null,
  'source/thunderstorm-days-power': 'memory',
  'source/lightning-annex': 'memory',
  'source/lightning-table': 'memory',
  'source/wire-inductance': 'memory',
  'source/lead-in-level': 'memory',
  'source/current-wave': null,
  'source/lead-voltage': 'computed',
  'source/reach': null,
  'source/effective-level': 'memory',
  'source/level-between': 'computed',
  'source/smallest-lead-nec': null,
  'source/smallest-lead-iec': 'memory',
};

/**
 * What the sentence of a step's source says itself of how sure the figure is.
 * @param source of the step
 * @returns null where it says nothing of it: a place in a file, and whatever another version wrote
 */
export function saidSureness(source: StepSource): Sureness | null {
  if (!('code' in source) || !Object.hasOwn(SAID, source.code)) return null;
  const said = SAID[source.code as keyof SourceReasons] as Said<never>;
  return typeof said === 'function' ? said(source.values as never) : said;
}
