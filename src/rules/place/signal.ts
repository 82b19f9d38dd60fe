import { reason } from '../../model/reason.js';
import type { Given, PlacementDecision } from '../../model/rule.js';
import { about } from '../../model/message.js';
import { PLACE_MESSAGES } from '../../model/messages/place.js';
import type { AnyPlacementRule, PlacementFacts } from '../placement-facts.js';
import { sources, type Cited } from '../sources.js';

const FACTS = ['tag'] as const;

const OUTSIDE_PLAN = reason('signal/outside-plan');

const CITED_UNDER_EVERY_BASIS: readonly Cited[] = ['signal-lines'];

export const signal = {
  id: 'place/signal',
  title: 'Data, telephone and antenna lines are outside this plan',
  why: 'A data or telephone line needs a protector of another kind.',
  sources: sources({
    'nec-2017': CITED_UNDER_EVERY_BASIS,
    'nec-2020': CITED_UNDER_EVERY_BASIS,
    'nec-2023': CITED_UNDER_EVERY_BASIS,
    iec: CITED_UNDER_EVERY_BASIS,
  }),
  strength: {
    'nec-2017': [],
    'nec-2020': [],
    'nec-2023': [],
    iec: [],
  },
  looksAt: { kinds: ['signal-line'], ports: ['terminals'] },
  facts: FACTS,
  decide(f: Given<PlacementFacts, typeof FACTS>): PlacementDecision {
    return {
      outcome: 'not-placed',
      because: OUTSIDE_PLAN,
      notes: [about(PLACE_MESSAGES.signalLine, { tag: f.tag }, f.tag, '')],
    };
  },
} satisfies AnyPlacementRule;
