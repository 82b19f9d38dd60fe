import { assumedWithstand } from '../../electrical/withstand.js';
import { taken, workingOf } from '../../electrical/working.js';
import type { Given, RatingDecision } from '../../model/rule.js';
import type { OvervoltageCategory } from '../../model/words.js';
import { cited } from '../../words/origin.js';
import type { AnyRatingRule, RatingFacts } from '../rating-facts.js';
import { ALL, sources } from '../sources.js';

const FACTS = ['tag', 'kind', 'impulseWithstand', 'overvoltageCategory', 'withstandVoltage'] as const;

export const withstand = {
  id: 'rate/withstand',
  title: 'Impulse withstand of the equipment behind a protector',
  why: 'A protector only helps if it holds the surge below what the equipment bears.',
  sources: sources({ of: ALL, cite: ['impulse-withstand', 'protection-level'] }),
  answers: 'rate/clamping',
  facts: FACTS,
  decide(f: Given<RatingFacts, typeof FACTS>): RatingDecision {
    const stated = f.impulseWithstand;
    if (stated) {
      const says = `Rated impulse withstand voltage of ${f.tag}`;
      const working = workingOf([], taken('Uw', says, stated.value, 'V', 'stated', cited(stated.origin)));
      return { outcome: 'asks', value: stated.value, working, notes: [] };
    }
    if (f.withstandVoltage === undefined) {
      return {
        outcome: 'unknown',
        because: 'neither a withstand nor a voltage to assume one by is known',
        notes: [],
      };
    }
    const usual: OvervoltageCategory = f.kind === 'service' || f.kind === 'panel' ? 'III' : 'II';
    const found = assumedWithstand({ voltage: f.withstandVoltage, category: f.overvoltageCategory ?? usual });
    return found.ok
      ? { outcome: 'asks', value: found.value, working: found.working, notes: [], assumed: true }
      : { outcome: 'unknown', because: 'the voltage is above the last row of the table', notes: [] };
  },
} satisfies AnyRatingRule;
