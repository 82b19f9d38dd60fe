import type { Given, PlacementDecision } from '../../model/rule.js';
import type { AnyPlacementRule, PlacementFacts } from '../placement-facts.js';
import { ALL, sources } from '../sources.js';

const FACTS = ['protect', 'mainPort'] as const;

export const asked = {
  id: 'place/asked',
  title: 'Where the list asks for a protector, or waives one',
  why: 'Whoever made the list asked for this.',
  sources: sources({
    of: ALL,
    also: { commonPractice: true, says: 'The equipment list itself asks or waives.' },
  }),
  strength: {
    'nec-2017': ['recommended'],
    'nec-2020': ['recommended'],
    'nec-2023': ['recommended'],
    iec: ['recommended'],
  },
  looksAt: {
    kinds: [
      'service',
      'panel',
      'load',
      'array',
      'combiner',
      'charge-controller',
      'grid-tie-inverter',
      'ac-module-branch',
      'inverter-charger',
      'battery',
      'wind-turbine',
      'hydro-turbine',
      'generator',
      'control-circuit',
    ],
    ports: ['service', 'feeder', 'dc-in', 'battery', 'ac-in', 'ac-in-2', 'ac-out', 'output', 'terminals'],
  },
  facts: FACTS,
  decide(f: Given<PlacementFacts, typeof FACTS>): PlacementDecision {
    if (f.protect === false) return { outcome: 'waived', because: 'the list says protect "no"' };
    if (f.protect === true && f.mainPort) {
      return { outcome: 'placed', strength: 'recommended', because: 'the list says protect "yes"' };
    }
    return {
      outcome: 'not-placed',
      because:
        f.protect === true
          ? 'the list asks for one at the main port, which is another'
          : 'the list doesn’t ask for one',
    };
  },
} satisfies AnyPlacementRule;
