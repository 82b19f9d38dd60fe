import type { Conductor } from '../../model/words.js';
import { reason } from '../../model/reason.js';
import type { Given } from '../../model/rule.js';
import type { SpareDecision, WiringFacts, WiringRule } from '../wiring-facts.js';
import { practice, sources, type Cited } from '../sources.js';

const FACTS = [
  'current',
  'circuit',
  'lines',
  'hasNeutral',
  'neutralAsked',
  'bondedHere',
  'doubledFirst',
  'threePlusOne',
] as const;

const DIRECT_CURRENT = reason('spare-channel/direct-current');
const THREE_PLUS_ONE = reason('spare-channel/three-plus-one');
const TAKES_NEUTRAL = reason('spare-channel/takes-neutral');
const DOUBLES_LINE = reason('spare-channel/doubles-line');

const CITED_UNDER_EVERY_BASIS: readonly Cited[] = [
  practice(
    'A spare channel takes N away from its bond, else doubles a line: L1, or the high leg. DC never doubles.',
  ),
];

export const spareChannel = {
  id: 'wire/spare-channel',
  title: 'What a spare channel is wired to',
  why: 'A channel without a wire would look like a dead one.',
  sources: sources({
    'nec-2017': CITED_UNDER_EVERY_BASIS,
    'nec-2020': CITED_UNDER_EVERY_BASIS,
    'nec-2023': CITED_UNDER_EVERY_BASIS,
    iec: CITED_UNDER_EVERY_BASIS,
  }),
  facts: FACTS,
  decide(f: Given<WiringFacts, typeof FACTS>): SpareDecision {
    if (f.current === 'dc') return { uses: [], because: DIRECT_CURRENT };
    if (f.threePlusOne) return { uses: [], because: THREE_PLUS_ONE };
    const uses: { conductor: Conductor; doubled: boolean }[] = [];
    if (f.circuit === 'power' && f.hasNeutral && !f.neutralAsked && !f.bondedHere) {
      uses.push({ conductor: 'N', doubled: false });
    }
    const lines: readonly Conductor[] = f.circuit === 'control' ? ['L1'] : f.lines;
    const first = lines.includes(f.doubledFirst) ? [f.doubledFirst] : [];
    for (const line of [...first, ...lines.filter((l) => l !== f.doubledFirst)]) {
      uses.push({ conductor: line, doubled: true });
    }
    return {
      uses,
      because: uses[0]?.doubled === false ? TAKES_NEUTRAL : DOUBLES_LINE,
    };
  },
} satisfies WiringRule<WiringFacts, SpareDecision>;
