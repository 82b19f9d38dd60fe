import { highestContinuousToGround, type ContinuousVoltage } from '../../electrical/continuous-voltage.js';
import type { PlacedNote } from '../../model/open-item.js';
import { reason } from '../../model/reason.js';
import type { Given, RatingDecision } from '../../model/rule.js';
import { about } from '../../model/message.js';
import { FACT_MESSAGES, RATE_MESSAGES } from '../../model/messages/rate.js';
import type { AnyRatingRule, RatingFacts } from '../rating-facts.js';
import { practice, sources, type Cited } from '../sources.js';

const FACTS = [
  'basis',
  'earthing',
  'tag',
  'port',
  'turbines',
  'current',
  'system',
  'systemField',
  'grounding',
  'whole',
  'alsoBorne',
  'unreadable',
  'thresholds',
] as const;
type Facts = Given<RatingFacts, typeof FACTS>;

const NO_SYSTEM_HERE = reason('ac-voltage/no-system-here');
const NOT_STATED = reason('ac-voltage/system-not-stated');
const NEEDED = reason('needed/conductor-voltage');

const CITED_UNDER_NEC: readonly Cited[] = [
  'uses-not-permitted',
  'voltage-to-ground',
  'high-leg-position',
  'voltage-ranges',
  practice('At least 115 % of the nominal voltage to ground.'),
];

export const acVoltage = {
  id: 'rate/ac-voltage',
  title: 'Highest continuous voltage of an AC system to ground',
  why: 'A protector must bear, day and night, the highest voltage that the wires really have.',
  sources: sources({
    'nec-2017': CITED_UNDER_NEC,
    'nec-2020': CITED_UNDER_NEC,
    'nec-2023': CITED_UNDER_NEC,
    iec: ['continuous-voltage'],
  }),
  answers: 'rate/mcov',
  facts: FACTS,
  decide(f: Facts): RatingDecision {
    const isPower = f.current === 'ac' && f.turbines.length === 0 && f.port !== 'terminals';
    if (!isPower) return { outcome: 'outside', because: NO_SYSTEM_HERE };
    if (!f.system) {
      const notes: PlacedNote[] = [];
      if (!f.unreadable.has(f.systemField)) {
        const p = { tag: f.tag, why: NEEDED };
        notes.push(about(FACT_MESSAGES[f.systemField], p, f.tag, f.systemField));
      }
      return { outcome: 'unknown', because: NOT_STATED, notes };
    }
    let found = highestOf(f, { system: f.system, whole: f.whole, grounding: f.grounding });
    // The higher where a run joins two systems that can't be joined, or an autotransformer makes one of two.
    for (const one of f.alsoBorne) {
      const other = highestOf(f, one);
      if (other.required > found.required) found = other;
    }
    const notes: PlacedNote[] = [];
    if (found.foreign) {
      const p = { tag: f.tag, system: f.system, basis: f.basis };
      notes.push(about(RATE_MESSAGES.foreignSystem, p, f.tag, f.systemField));
    }
    return { outcome: 'asks', value: found.required, working: found.working, notes };
  },
} satisfies AnyRatingRule;

function highestOf(
  { basis, earthing, thresholds }: Facts,
  { system, whole, grounding }: RatingFacts['alsoBorne'][number],
): ContinuousVoltage {
  const { continuousShare } = thresholds;
  return highestContinuousToGround({ system, whole, grounding, basis, earthing, continuousShare });
}
