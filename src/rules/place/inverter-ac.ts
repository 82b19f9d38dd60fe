import type { Given, PlacementDecision } from '../../model/rule.js';
import type { AnyPlacementRule, PlacementFacts } from '../placement-facts.js';
import { ALL, practice, sources } from '../sources.js';

const FACTS = ['port', 'unused'] as const;

export const inverterAc = {
  id: 'place/inverter-ac',
  title: 'At the AC ports of an inverter-charger',
  why: 'An inverter stands between two sets of wires, and a surge may come along either.',
  sources: sources({
    of: ALL,
    also: practice(
      'Every ungrounded conductor of AC in and AC out; one two-channel protector can serve both ports of a single-phase inverter.',
    ),
  }),
  strength: {
    'nec-2017': ['recommended'],
    'nec-2020': ['recommended'],
    'nec-2023': ['recommended'],
    iec: ['recommended'],
  },
  looksAt: { kinds: ['inverter-charger'], ports: ['ac-in', 'ac-in-2', 'ac-out'] },
  facts: FACTS,
  decide(f: Given<PlacementFacts, typeof FACTS>): PlacementDecision {
    if (f.unused === 'stated')
      return { outcome: 'not-placed', because: 'the list says that this port is unused' };
    if (f.unused === 'nothing-named') {
      return {
        outcome: 'not-placed',
        because: 'the list names no system for this port, and nothing on it connects there',
      };
    }
    return {
      outcome: 'placed',
      strength: 'recommended',
      because: `the ${f.port} port of an inverter-charger is in use`,
    };
  },
} satisfies AnyPlacementRule;
