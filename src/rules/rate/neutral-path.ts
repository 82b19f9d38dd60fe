import { kiloamperes } from '../../model/quantity.js';
import { reason, type Reason } from '../../model/reason.js';
import type { Fit, Given } from '../../model/rule.js';
import { isNec } from '../../model/editions.js';
import type { AnyFitRule, FitFacts, FitPlace } from '../fit-facts.js';
import { sources } from '../sources.js';

const FACTS = [
  'basis',
  'earthing',
  'current',
  'circuit',
  'atService',
  'lightning',
  'phases',
  'part',
  'thresholds',
] as const;

export const neutralPath = {
  id: 'rate/neutral-path',
  title: 'The path from neutral to ground of a 3+1 part',
  why: 'The surges of all lines leave through that one path, so it must bear more than each of them.',
  sources: sources({ 'nec-2017': null, 'nec-2020': null, 'nec-2023': null, iec: ['neutral-path-currents'] }),
  facts: FACTS,
  ofPart: ['connection', 'neutralImpulseCurrent', 'neutralNominalCurrent'],
  outside(f: Pick<FitPlace, 'basis' | 'earthing' | 'current' | 'circuit'>): Reason | undefined {
    if (isNec(f.basis)) return reason('neutral-path/nec');
    const isTt = f.earthing === 'TT' && f.current === 'ac' && f.circuit === 'power';
    return isTt ? undefined : reason('neutral-path/no-tt');
  },
  accepts(f: Given<FitFacts, typeof FACTS>): Fit {
    // Of a part with each channel to ground rate/connection says that it is none for this.
    if (f.part.connection !== '3+1') return { fits: true };
    const asked = neutralPathAsked(f);
    for (const { rating, has, least } of asked) {
      if (has === null || has >= least) continue;
      const because = reason('neutral-path/below', {
        rating,
        has: kiloamperes(has),
        asked: kiloamperes(least),
      });
      return { fits: false, because, gap: (least - has) / least };
    }
    const unstated = asked.filter((one) => one.has === null);
    const each = unstated.map(({ rating, least }) => ({ rating, asked: kiloamperes(least) }));
    return each.length === 0
      ? { fits: true }
      : { fits: true, shortfall: reason('neutral-path/not-stated', { each }) };
  },
} satisfies AnyFitRule;

/** What is asked of that path, of a 3+1 part in a TT system, and what the part has. */
export function neutralPathAsked(
  f: Pick<FitFacts, 'atService' | 'lightning' | 'phases' | 'part' | 'thresholds'>,
): readonly NeutralPathAsked[] {
  const { neutralPathCurrent: nominal, neutralPathImpulseCurrent: impulse } = f.thresholds;
  const by = f.phases === 3 ? 'three' : 'single';
  const asked: NeutralPathAsked[] = [{ rating: 'In', has: f.part.neutralNominalCurrent, least: nominal[by] }];
  if (f.atService && f.lightning !== 'none')
    asked.push({ rating: 'Iimp', has: f.part.neutralImpulseCurrent, least: impulse[by] });
  return asked;
}

/** One rating of that path, A; `has`: null is not stated. */
export interface NeutralPathAsked {
  readonly rating: 'In' | 'Iimp';
  readonly has: number | null;
  readonly least: number;
}
