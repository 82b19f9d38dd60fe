import { reason } from '../../model/reason.js';
import type { Given, PlacementDecision } from '../../model/rule.js';
import { KINDS_WITH_MAIN_PORT, PROTECTABLE_PORTS } from '../main-ports.js';
import type { AnyPlacementRule, PlacementFacts } from '../placement-facts.js';
import { practice, sources, type Cited } from '../sources.js';

const FACTS = ['kind', 'worthProtecting', 'protect'] as const;

const WORTH_PROTECTING: PlacementDecision = {
  outcome: 'not-placed',
  because: reason('exempt/worth-protecting'),
};
const SERVICE: PlacementDecision = { outcome: 'not-placed', because: reason('exempt/service') };
const WAIVED: PlacementDecision = { outcome: 'waived', because: reason('exempt/nothing-worth-protecting') };

const DIVERSION: PlacementDecision = { outcome: 'waived', because: reason('exempt/diversion-load') };

const CITED_UNDER_EVERY_BASIS: readonly Cited[] = [
  practice('Both ends of a long run, unless nothing at that end is worth protecting.'),
];

export const farEndExempt = {
  id: 'place/far-end-exempt',
  title: 'Nothing at a far end that holds nothing worth protecting',
  why: 'Where nothing would be harmed, a protector has nothing to do.',
  sources: sources({
    'nec-2017': CITED_UNDER_EVERY_BASIS,
    'nec-2020': CITED_UNDER_EVERY_BASIS,
    'nec-2023': CITED_UNDER_EVERY_BASIS,
    iec: CITED_UNDER_EVERY_BASIS,
  }),
  quiet: true,
  waives: true,
  strength: {
    'nec-2017': [],
    'nec-2020': [],
    'nec-2023': [],
    iec: [],
  },
  looksAt: { kinds: KINDS_WITH_MAIN_PORT, ports: PROTECTABLE_PORTS },
  facts: FACTS,
  decide(f: Given<PlacementFacts, typeof FACTS>): PlacementDecision {
    // It burns what nothing else takes: nobody need protect it, but the list may ask for that.
    if (f.kind === 'diversion-load' && f.protect !== true) return DIVERSION;
    if (f.worthProtecting) return WORTH_PROTECTING;
    return f.kind === 'service' ? SERVICE : WAIVED;
  },
} satisfies AnyPlacementRule;
