import { reason } from '../../model/reason.js';
import type { Given } from '../../model/rule.js';
import type { NeutralDecision, WiringFacts, WiringRule } from '../wiring-facts.js';
import { practice, sources, type Cited } from '../sources.js';

const FACTS = [
  'basis',
  'earthing',
  'circuit',
  'current',
  'hasNeutral',
  'grounding',
  'atService',
  'bondedHere',
] as const;

const NO_NEUTRAL = reason('neutral/not-in-circuit');
const UNGROUNDED = reason('neutral/ungrounded-system');
const TT = reason('neutral/system-tt');
const IT = reason('neutral/system-it');
const LINKED = reason('neutral/linked-at-service');
const AWAY = reason('neutral/away-from-link');
const BONDED = reason('neutral/bonded-here');
const SPARE = reason('neutral/spare-channel');

const CITED_UNDER_NEC: readonly Cited[] = [
  practice('A spare channel takes N away from its bond; else the note says that N isn’t protected there.'),
];

export const neutral = {
  id: 'wire/neutral',
  title: 'Whether the neutral has a channel',
  why: 'Away from the place where it is tied to ground, the neutral can be lifted by a surge like any other wire.',
  sources: sources({
    'nec-2017': CITED_UNDER_NEC,
    'nec-2020': CITED_UNDER_NEC,
    'nec-2023': CITED_UNDER_NEC,
    iec: ['origin-of-installation', practice('N at every place but beside its link to ground.')],
  }),
  facts: FACTS,
  decide(f: Given<WiringFacts, typeof FACTS>): NeutralDecision {
    if (f.current === 'dc' || f.circuit !== 'power' || !f.hasNeutral) {
      return { neutral: 'none', because: NO_NEUTRAL };
    }
    if (f.grounding === 'none') return { neutral: 'asked', because: UNGROUNDED };
    if (f.basis === 'iec') {
      if (f.earthing === 'TT') return { neutral: 'asked', because: TT };
      if (f.earthing === 'IT') return { neutral: 'asked', because: IT };
      return f.atService && f.bondedHere
        ? { neutral: 'bonded', because: LINKED }
        : { neutral: 'asked', because: AWAY };
    }
    return f.bondedHere
      ? { neutral: 'bonded', because: BONDED }
      : {
          neutral: 'optional',
          because: SPARE,
        };
  },
} satisfies WiringRule<WiringFacts, NeutralDecision>;
