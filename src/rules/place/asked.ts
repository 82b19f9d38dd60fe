import { reason } from '../../model/reason.js';
import { about } from '../../model/message.js';
import { PLACE_MESSAGES } from '../../model/messages/place.js';
import type { Given, PlacementDecision } from '../../model/rule.js';
import { KINDS_WITH_MAIN_PORT, PROTECTABLE_PORTS } from '../main-ports.js';
import type { AnyPlacementRule, PlacementFacts } from '../placement-facts.js';
import { sources, type Cited } from '../sources.js';

const FACTS = ['tag', 'kind', 'protect', 'mainPort', 'drive'] as const;

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
  looksAt: { kinds: KINDS_WITH_MAIN_PORT, ports: PROTECTABLE_PORTS },
  facts: FACTS,
  decide(f: Given<PlacementFacts, typeof FACTS>): PlacementDecision {
    if (f.protect === undefined) return NOT_ASKED;
    if (!f.protect) return WAIVED;
    if (f.drive !== '' && f.kind !== 'pump-drive') return atMotor(f.tag, f.drive);
    return f.mainPort ? PLACED : ELSEWHERE;
  },
} satisfies AnyPlacementRule;

/** What a drive gives its motor are switched pulses: they would wear out a protector that is made for a sine wave. */
function atMotor(tag: string, drive: string): PlacementDecision {
  return {
    outcome: 'not-placed',
    because: reason('drive/switched-pulses', { drive }),
    notes: [about(PLACE_MESSAGES.askedAtMotor, { tag, drive }, tag, 'protect')],
  };
}
