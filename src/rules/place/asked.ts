import { reason } from '../../model/reason.js';
import type { Given, PlacementDecision } from '../../model/rule.js';
import type { AnyPlacementRule, PlacementFacts } from '../placement-facts.js';
import { sources, type Cited } from '../sources.js';

const FACTS = ['protect', 'mainPort'] as const;

const WAIVED: PlacementDecision = { outcome: 'waived', because: reason('asked/no') };
const PLACED: PlacementDecision = {
  outcome: 'placed',
  strength: 'recommended',
  because: reason('asked/yes'),
};
const ELSEWHERE: PlacementDecision = { outcome: 'not-placed', because: reason('asked/at-main-port') };
const NOT_ASKED: PlacementDecision = { outcome: 'not-placed', because: reason('asked/not-asked') };

const CITED_UNDER_EVERY_BASIS: readonly Cited[] = [
  { commonPractice: true, says: 'The equipment list itself asks or waives.' },
];

export const asked = {
  id: 'place/asked',
  title: 'Where the list asks for a protector, or waives one',
  why: 'Whoever made the list asked for this.',
  sources: sources({
    'nec-2017': CITED_UNDER_EVERY_BASIS,
    'nec-2020': CITED_UNDER_EVERY_BASIS,
    'nec-2023': CITED_UNDER_EVERY_BASIS,
    iec: CITED_UNDER_EVERY_BASIS,
  }),
  quiet: true,
  waives: true,
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
    if (f.protect === undefined) return NOT_ASKED;
    if (!f.protect) return WAIVED;
    return f.mainPort ? PLACED : ELSEWHERE;
  },
} satisfies AnyPlacementRule;
