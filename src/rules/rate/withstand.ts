import { assumedWithstand } from '../../electrical/withstand.js';
import { taken, workingOf } from '../../electrical/working.js';
import { reason } from '../../model/reason.js';
import type { Given, RatingDecision } from '../../model/rule.js';
import { subject } from '../../model/step.js';
import type { OvervoltageCategory } from '../../model/words.js';
import type { AnyRatingRule, RatingFacts } from '../rating-facts.js';
import { sources, type Cited } from '../sources.js';

const FACTS = ['tag', 'kind', 'impulseWithstand', 'overvoltageCategory', 'withstandVoltage'] as const;

const NOTHING_KNOWN = reason('withstand/nothing-known');
const ABOVE_TABLE = reason('withstand/above-table');

const CITED_UNDER_NEC: readonly Cited[] = ['impulse-withstand'];

export const withstand = {
  id: 'rate/withstand',
  title: 'Impulse withstand of the equipment behind a protector',
  why: 'A protector only helps if it holds the surge below what the equipment bears.',
  sources: sources({
    'nec-2017': CITED_UNDER_NEC,
    'nec-2020': CITED_UNDER_NEC,
    'nec-2023': CITED_UNDER_NEC,
    iec: ['impulse-withstand', 'protection-level'],
  }),
  answers: 'rate/clamping',
  facts: FACTS,
  decide(f: Given<RatingFacts, typeof FACTS>): RatingDecision {
    const stated = f.impulseWithstand;
    if (stated) {
      const rated = subject('withstand/stated', { equipment: f.tag });
      const working = workingOf([], taken('Uw', rated, stated.value, 'V', 'stated', stated.origin));
      return { outcome: 'asks', value: stated.value, working, notes: [] };
    }
    if (f.withstandVoltage === undefined) {
      return { outcome: 'unknown', because: NOTHING_KNOWN, notes: [] };
    }
    const usual: OvervoltageCategory = f.kind === 'service' || f.kind === 'panel' ? 'III' : 'II';
    const found = assumedWithstand({ voltage: f.withstandVoltage, category: f.overvoltageCategory ?? usual });
    return found.ok
      ? { outcome: 'asks', value: found.value, working: found.working, notes: [], assumed: true }
      : { outcome: 'unknown', because: ABOVE_TABLE, notes: [] };
  },
} satisfies AnyRatingRule;
