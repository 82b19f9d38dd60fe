import { reason } from '../../model/reason.js';
import type { Given, PlacementDecision } from '../../model/rule.js';
import { about } from '../../model/message.js';
import { PLACE_MESSAGES } from '../../model/messages/place.js';
import type { AnyPlacementRule, PlacementFacts } from '../placement-facts.js';
import { sources, type Cited } from '../sources.js';

const FACTS = ['tag', 'hasWind', 'windCarrier', 'windWithoutAc'] as const;

const HERE: PlacementDecision = {
  outcome: 'placed',
  strength: 'required',
  because: reason('wind-premises/here'),
};
const NO_TURBINE: PlacementDecision = { outcome: 'not-placed', because: reason('wind-premises/no-turbine') };
const ELSEWHERE: PlacementDecision = { outcome: 'not-placed', because: reason('wind-premises/elsewhere') };

const CITED_UNDER_NEC: readonly Cited[] = ['wind'];

export const windPremises = {
  id: 'place/wind-premises',
  title: 'Between a wind electric system and the loads',
  why: 'The electrical code asks for one protector between the wind turbine’s system and everything that it feeds.',
  sources: sources({
    'nec-2017': CITED_UNDER_NEC,
    'nec-2020': CITED_UNDER_NEC,
    'nec-2023': CITED_UNDER_NEC,
    iec: null,
  }),
  strength: {
    'nec-2017': ['required'],
    'nec-2020': ['required'],
    'nec-2023': ['required'],
    iec: null,
  },
  looksAt: {
    kinds: ['service', 'panel', 'inverter-charger', 'grid-tie-inverter', 'wind-turbine'],
    ports: ['service', 'feeder', 'ac-out', 'output'],
  },
  facts: FACTS,
  decide(f: Given<PlacementFacts, typeof FACTS>): PlacementDecision {
    if (f.windCarrier) return HERE;
    if (!f.hasWind) return NO_TURBINE;
    if (!f.windWithoutAc) return ELSEWHERE;
    return { ...ELSEWHERE, notes: [about(PLACE_MESSAGES.windWithoutAc, { tag: f.tag }, f.tag, '')] };
  },
} satisfies AnyPlacementRule;
