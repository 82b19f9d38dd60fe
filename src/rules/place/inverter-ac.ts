import { reason } from '../../model/reason.js';
import type { Given, PlacementDecision } from '../../model/rule.js';
import type { AnyPlacementRule, PlacementFacts } from '../placement-facts.js';
import { practice, sources, type Cited } from '../sources.js';

const FACTS = ['kind', 'port', 'unused'] as const;

const UNUSED: PlacementDecision = { outcome: 'not-placed', because: reason('port/unused') };
const NOTHING_NAMED: PlacementDecision = { outcome: 'not-placed', because: reason('port/nothing-named') };

const CITED_UNDER_EVERY_BASIS: readonly Cited[] = [
  practice(
    'Every ungrounded conductor of AC in and AC out; one two-channel protector can serve both ports of a single-phase inverter.',
  ),
];

export const inverterAc = {
  id: 'place/inverter-ac',
  title: 'At the AC ports of an inverter-charger or an AC battery',
  why: 'An inverter stands between two sets of wires, and a surge may come along either.',
  sources: sources({
    'nec-2017': CITED_UNDER_EVERY_BASIS,
    'nec-2020': CITED_UNDER_EVERY_BASIS,
    'nec-2023': CITED_UNDER_EVERY_BASIS,
    iec: CITED_UNDER_EVERY_BASIS,
  }),
  strength: {
    'nec-2017': ['recommended'],
    'nec-2020': ['recommended'],
    'nec-2023': ['recommended'],
    iec: ['recommended'],
  },
  looksAt: { kinds: ['inverter-charger', 'ac-battery'], ports: ['ac-in', 'ac-in-2', 'ac-out'] },
  facts: FACTS,
  decide(f: Given<PlacementFacts, typeof FACTS>): PlacementDecision {
    if (f.unused === 'stated') return UNUSED;
    if (f.unused === 'nothing-named') return NOTHING_NAMED;
    const because = reason('inverter-ac/in-use', { port: f.port, kind: f.kind });
    return { outcome: 'placed', strength: 'recommended', because };
  },
} satisfies AnyPlacementRule;
