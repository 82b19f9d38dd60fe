import { isNec } from '../../model/editions.js';
import { reason } from '../../model/reason.js';
import type { Given } from '../../model/rule.js';
import type { AcSystem } from '../../model/words.js';
import { sources, type Cited } from '../sources.js';
import type { HighLegDecision, WiringFacts, WiringRule } from '../wiring-facts.js';

const FACTS = ['basis', 'circuit', 'system', 'whole'] as const;

const NO_HIGH_LEG = reason('names/no-high-leg');
const HIGH_LEG = reason('names/high-leg');

/** Parts of a high-leg system that can hold its high leg, and that system. */
const HOLDS_HIGH_LEG: ReadonlySet<AcSystem | undefined> = new Set<AcSystem>([
  '240/120 high-leg',
  '240 delta',
  '240',
]);

const CITED_UNDER_NEC: readonly Cited[] = ['high-leg-marking', 'high-leg-position'];

export const highLeg = {
  id: 'wire/high-leg',
  title: 'The mark of a high leg',
  why: 'The high leg stands at nearly twice the voltage of the other lines, so nobody may take it for one of them.',
  sources: sources({
    'nec-2017': CITED_UNDER_NEC,
    'nec-2020': CITED_UNDER_NEC,
    'nec-2023': CITED_UNDER_NEC,
    iec: null,
  }),
  facts: FACTS,
  decide({ basis, circuit, system, whole }: Given<WiringFacts, typeof FACTS>): HighLegDecision {
    const holds = whole === '240/120 high-leg' && HOLDS_HIGH_LEG.has(system);
    return isNec(basis) && circuit === 'power' && holds
      ? { highLeg: 'L2', because: HIGH_LEG }
      : { highLeg: null, because: NO_HIGH_LEG };
  },
} satisfies WiringRule<WiringFacts, HighLegDecision>;
