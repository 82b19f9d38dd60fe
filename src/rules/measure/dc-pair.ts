import type { MeasuringSettings } from '../../model/measuring-settings.js';
import { reason, type Reason } from '../../model/reason.js';
import type { MeasuredSource } from '../../model/reasons/measure.js';
import type { Conductor, DcGrounding } from '../../model/words.js';
import { groundedReading, readingOf, type Reading } from '../measuring-facts.js';

/** What is known of a DC pair that is measured. */
export interface DcPairFacts {
  readonly of: Exclude<MeasuredSource, 'control'>;
  readonly poles: DcGrounding | 'unknown';
  /** V, pole to pole; undefined: not known. */
  readonly low: number | undefined;
  /** V, pole to pole; the most that the plan expects; undefined: not known. */
  readonly high: number | undefined;
  /** The converters on it, and what each bears; V. */
  readonly bears: readonly { readonly tag: string; readonly volts: number }[];
  /** True where a rapid-shutdown box stands between the modules and this place. */
  readonly behindBox: boolean;
  readonly settings: MeasuringSettings;
}

const READS: Readonly<Record<DcPairFacts['of'], Reason>> = {
  sun: reason('reading/full-sun'),
  turbine: reason('reading/turbine'),
  both: reason('reading/sun-and-turbine'),
  battery: reason('reading/battery'),
};
const BELOW_ARRAY = reason('reading-below/array');
const BELOW_BATTERY = reason('reading-below/battery');
const FLOATING = reason('reading/floating-pole');
const NOT_KNOWN = reason('reading/grounding-not-known');
const LESS_SUN = reason('reading-due/less-sun');
const OPEN_BOX = reason('reading-due/open-box');
const STILL = reason('reading-due/turbine-still');

/**
 * What to measure at a DC pair: pole to pole with its sign, always, then each pole to ground.
 * @param f what is known; V
 * @returns the readings; of a pair that floats the poles have no low figure, and a ground fault shows
 * Source: common practice, no source.
 */
export function readDcPair(f: DcPairFacts): readonly Reading[] {
  const { high, above } = mostOf(f);
  const low = f.low !== undefined && high !== undefined && f.low > high ? undefined : f.low;
  const isBattery = f.of === 'battery';
  const band = { low, high };
  const below = low === undefined ? null : isBattery ? BELOW_BATTERY : BELOW_ARRAY;
  const due = dueOf(f);
  const whole = (wire: Conductor, to: Conductor | null, sign: '+' | '-'): Reading =>
    readingOf({ wire, to }, band, READS[f.of], { sign, below, above, due });
  const pair = whole('positive', 'negative', '+');
  if (f.poles === 'positive' || f.poles === 'negative') {
    const grounded = groundedReading(f.poles, 'pole', f.settings);
    return f.poles === 'negative'
      ? [pair, whole('positive', null, '+'), grounded]
      : [pair, grounded, whole('negative', null, '-')];
  }
  const { faultedPoleShare, otherPoleShare } = f.settings;
  const fault =
    f.poles === 'floating'
      ? reason('ground-fault/pair', { under: percent(faultedPoleShare), over: percent(otherPoleShare) })
      : null;
  const reads = f.poles === 'floating' ? FLOATING : NOT_KNOWN;
  const pole = (wire: Conductor, sign: '+' | '-'): Reading =>
    readingOf({ wire, to: null }, { low: undefined, high }, reads, { sign, above, fault });
  return [pair, pole('positive', '+'), pole('negative', '-')];
}

const percent = (share: number): number => Math.round(share * 100);

/** The most that may stand there: what the plan expects, and never more than a converter on it bears. What that bears says nothing of a string. */
function mostOf({ of, high, bears }: DcPairFacts): Pick<Reading, 'high' | 'above'> {
  if (high === undefined) return { high, above: null };
  let most = high;
  let above = reason('reading-above/source', { of });
  for (const { tag, volts } of bears) {
    if (volts >= most) continue;
    most = volts;
    above = reason('reading-above/converter-bears', { tag });
  }
  return { high: most, above };
}

function dueOf({ of, behindBox }: DcPairFacts): Reason | null {
  if (of === 'battery') return null;
  if (of === 'turbine') return STILL;
  return behindBox ? OPEN_BOX : LESS_SUN;
}
