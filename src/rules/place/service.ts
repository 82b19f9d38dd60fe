import type { Given, PlacementDecision } from '../../model/rule.js';
import { about } from '../../model/message.js';
import { PLACE_MESSAGES } from '../../model/messages/place.js';
import type { AnyPlacementRule, PlacementFacts } from '../placement-facts.js';
import { NEC, practice, sources } from '../sources.js';
import { riskAsksForProtection } from '../supply-risk.js';

const FACTS = ['basis', 'tag', 'occupancy', 'riskLevel'] as const;

export const service = {
  id: 'place/service',
  title: 'At the utility service',
  why: 'Most surges from outside come in where the power company’s wires come in.',
  sources: sources(
    { of: ['nec-2020', 'nec-2023'], cite: ['dwelling-service', 'type-2-places'] },
    {
      of: NEC,
      also: practice(
        'As near to the incoming feed as possible: top of the panel, or at the meter with the utility’s consent.',
      ),
    },
    { of: ['iec'], cite: ['transient-overvoltage-risk', 'calculated-risk-level', 'origin-of-installation'] },
  ),
  strength: {
    'nec-2017': ['recommended'],
    'nec-2020': ['required', 'recommended'],
    'nec-2023': ['required', 'recommended'],
    iec: ['required', 'recommended'],
  },
  looksAt: { kinds: ['service'], ports: ['service'] },
  facts: FACTS,
  decide(f: Given<PlacementFacts, typeof FACTS>): PlacementDecision {
    const unit = f.occupancy === 'dwelling' || (f.occupancy === 'sleeping' && f.basis === 'nec-2023');
    switch (f.basis) {
      case 'nec-2017':
        return { outcome: 'placed', strength: 'recommended', because: 'a utility service is here' };
      case 'nec-2020':
      case 'nec-2023':
        return unit
          ? {
              outcome: 'placed',
              strength: 'required',
              because: `a utility service of a ${unitName(f.occupancy)} is here`,
            }
          : { outcome: 'placed', strength: 'recommended', because: 'a utility service is here' };
      case 'iec':
        return underIec(f);
    }
  },
} satisfies AnyPlacementRule;

function unitName(occupancy: PlacementFacts['occupancy']): string {
  return occupancy === 'sleeping' ? 'building with sleeping rooms' : 'dwelling unit';
}

function underIec(f: Given<PlacementFacts, typeof FACTS>): PlacementDecision {
  if (f.occupancy !== 'dwelling') {
    return {
      outcome: 'placed',
      strength: 'required',
      because: 'a service of a building that isn’t a single dwelling is here',
    };
  }
  if (f.riskLevel === undefined) {
    return {
      outcome: 'placed',
      strength: 'recommended',
      because: 'a utility service is here; the calculated risk level isn’t known',
      notes: [about(PLACE_MESSAGES.riskUnknown, { tag: f.tag }, '', 'flash_density')],
    };
  }
  const level = Math.round(f.riskLevel);
  return riskAsksForProtection(f.riskLevel)
    ? {
        outcome: 'placed',
        strength: 'required',
        because: `the calculated risk level is ${level}, below 1000`,
      }
    : {
        outcome: 'placed',
        strength: 'recommended',
        because: `the calculated risk level is ${level}, not below 1000`,
      };
}
