import { reason } from '../../model/reason.js';
import type { Given } from '../../model/rule.js';
import type { ConductorsDecision, WiringFacts, WiringRule } from '../wiring-facts.js';
import { practice, sources, type Cited } from '../sources.js';

const FACTS = ['circuit', 'current', 'lines', 'hasNeutral', 'neutralAsked'] as const;

const BOTH_POLES = reason('conductors/both-poles');
const CONTROL_WIRES = reason('conductors/control-wires');
const LINES = reason('conductors/lines');
const LINES_AND_NEUTRAL = reason('conductors/lines-and-neutral');

const A_GROUNDED_POLE_TOO = practice(
  'Positive and negative both get one, also when the negative is grounded: the ground-fault device (0.5 to 1 A) opens in a surge.',
);
const CITED_UNDER_NEC: readonly Cited[] = [
  'each-ungrounded-conductor',
  'array-ground-fault',
  A_GROUNDED_POLE_TOO,
];

export const conductors = {
  id: 'wire/conductors',
  title: 'Conductors that have a channel of their own',
  why: 'Each wire that can carry a surge needs its own way to ground.',
  sources: sources({
    'nec-2017': CITED_UNDER_NEC,
    'nec-2020': CITED_UNDER_NEC,
    'nec-2023': CITED_UNDER_NEC,
    iec: [A_GROUNDED_POLE_TOO],
  }),
  facts: FACTS,
  decide(f: Given<WiringFacts, typeof FACTS>): ConductorsDecision {
    if (f.current === 'dc') {
      return {
        conductors: ['positive', 'negative'],
        because: BOTH_POLES,
      };
    }
    if (f.circuit === 'control') {
      return { conductors: ['L1', 'N'], because: CONTROL_WIRES };
    }
    return f.neutralAsked && f.hasNeutral
      ? { conductors: [...f.lines, 'N'], because: LINES_AND_NEUTRAL }
      : { conductors: f.lines, because: LINES };
  },
} satisfies WiringRule<WiringFacts, ConductorsDecision>;
