import { volts } from '../../model/quantity.js';
import { reason, type Reason } from '../../model/reason.js';
import type { Fit, Given } from '../../model/rule.js';
import type { DoubtFacts, AnyFitRule, FitFacts } from '../fit-facts.js';
import { sources, type Cited } from '../sources.js';

const FACTS = ['withstand', 'withstandAssumed', 'leadVoltage', 'part', 'thresholds'] as const;

const CITED_UNDER_NEC: readonly Cited[] = ['protection-rating', 'impulse-withstand'];

export const clamping = {
  id: 'rate/clamping',
  title: 'Protection level and leads against the withstand of the equipment',
  why: 'What the protector and its leads let through must stay below what the equipment bears.',
  sources: sources({
    'nec-2017': CITED_UNDER_NEC,
    'nec-2020': CITED_UNDER_NEC,
    'nec-2023': CITED_UNDER_NEC,
    iec: ['impulse-withstand', 'protection-level'],
  }),
  facts: FACTS,
  ofPart: ['up', 'upBasis', 'leadLength', 'leadDiameter'],
  accepts(f: Given<FitFacts, typeof FACTS>): Fit {
    const { up } = f.part;
    if (up === null) return { fits: false, because: reason('level/not-stated'), gap: 1 };
    if (f.withstand === undefined) return { fits: true };
    const reached = up + f.leadVoltage;
    const level = {
      basis: f.part.upBasis ?? 'Up',
      up: volts(up),
      leads: volts(f.leadVoltage),
      withstand: volts(f.withstand),
    };
    if (reached > f.withstand && !f.withstandAssumed) {
      return {
        fits: false,
        because: reason('level/above-withstand', level),
        gap: (reached - f.withstand) / f.withstand,
      };
    }
    const aim = f.thresholds.withstandShare * f.withstand;
    if (reached <= aim) return { fits: true };
    const share = reached > f.withstand ? null : f.thresholds.withstandShare * 100;
    return {
      fits: true,
      shortfall: reason('level/near-withstand', { ...level, share, assumed: f.withstandAssumed }),
    };
  },
  doubt(f: Pick<DoubtFacts, 'withstand'>): Reason | undefined {
    return f.withstand === undefined ? reason('withstand/not-known') : undefined;
  },
} satisfies AnyFitRule;
