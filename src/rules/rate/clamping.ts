import type { Fit, Given } from '../../model/rule.js';
import { figure } from '../../words/figures.js';
import type { AnyFitRule, FitFacts } from '../fit-facts.js';
import { ALL, NEC, sources } from '../sources.js';

const FACTS = ['withstand', 'withstandAssumed', 'leadVoltage', 'part', 'thresholds'] as const;

export const clamping = {
  id: 'rate/clamping',
  title: 'Protection level and leads against the withstand of the equipment',
  why: 'What the protector and its leads let through must stay below what the equipment bears.',
  sources: sources(
    { of: NEC, cite: ['protection-rating'] },
    { of: ALL, cite: ['impulse-withstand', 'protection-level'] },
  ),
  facts: FACTS,
  accepts(f: Given<FitFacts, typeof FACTS>): Fit {
    const { up } = f.part;
    if (up === null) return { fits: false, because: 'neither VPR nor Up is stated', gap: 1 };
    if (f.withstand === undefined) return { fits: true };
    const reached = up + f.leadVoltage;
    const compared = `${f.part.upBasis ?? 'Up'} ${figure(up, 'V')} + leads ${figure(f.leadVoltage, 'V')}`;
    if (reached > f.withstand && !f.withstandAssumed) {
      return {
        fits: false,
        because: `${compared} > withstand ${figure(f.withstand, 'V')}`,
        gap: (reached - f.withstand) / f.withstand,
      };
    }
    const aim = f.thresholds.withstandShare * f.withstand;
    if (reached <= aim) return { fits: true };
    const share =
      reached > f.withstand ? 'the whole' : `${figure(f.thresholds.withstandShare * 100, '%')} of the`;
    return {
      fits: true,
      shortfall: `${compared} > ${share} ${f.withstandAssumed ? 'assumed ' : ''}withstand of ${figure(f.withstand, 'V')}`,
    };
  },
} satisfies AnyFitRule;
