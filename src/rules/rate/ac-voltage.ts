import { highestContinuousToGround } from '../../electrical/continuous-voltage.js';
import type { PlacedNote } from '../../model/message.js';
import type { Given, RatingDecision } from '../../model/rule.js';
import { about } from '../../model/message.js';
import { FACT_MESSAGES, RATE_MESSAGES } from '../../model/messages/rate.js';
import type { AnyRatingRule, RatingFacts } from '../rating-facts.js';
import { ALL, NEC, practice, sources } from '../sources.js';

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
  'unreadable',
  'thresholds',
] as const;

export const acVoltage = {
  id: 'rate/ac-voltage',
  title: 'Highest continuous voltage of an AC system to ground',
  why: 'A protector must bear, day and night, the highest voltage that the wires really have.',
  sources: sources(
    { of: ALL, cite: ['uses-not-permitted', 'voltage-to-ground', 'high-leg-position', 'continuous-voltage'] },
    { of: NEC, cite: ['voltage-ranges'], also: practice('At least 115 % of the nominal voltage to ground.') },
  ),
  answers: 'rate/mcov',
  facts: FACTS,
  decide(f: Given<RatingFacts, typeof FACTS>): RatingDecision {
    const isPower = f.current === 'ac' && f.turbines.length === 0 && f.port !== 'terminals';
    if (!isPower) return { outcome: 'outside', because: 'this port is on no AC system of the site' };
    if (!f.system) {
      const notes: PlacedNote[] = [];
      if (!f.unreadable.has(f.systemField)) {
        const p = { tag: f.tag, why: 'the voltage to ground of its conductors depends on it' };
        notes.push(about(FACT_MESSAGES[f.systemField], p, f.tag, f.systemField));
      }
      return { outcome: 'unknown', because: 'the AC system isn’t stated', notes };
    }
    const found = highestContinuousToGround({
      system: f.system,
      grounding: f.grounding,
      basis: f.basis,
      earthing: f.earthing,
      continuousShare: f.thresholds.continuousShare,
    });
    const notes: PlacedNote[] = [];
    if (found.foreign) {
      const p = { tag: f.tag, system: f.system, basis: f.basis };
      notes.push(about(RATE_MESSAGES.foreignSystem, p, f.tag, f.systemField));
    }
    return { outcome: 'asks', value: found.required, working: found.working, notes };
  },
} satisfies AnyRatingRule;
