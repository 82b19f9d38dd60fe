import type { Conductor } from '../../model/words.js';
import type { Given } from '../../model/rule.js';
import type { SpareDecision, WiringFacts, WiringRule } from '../wiring-facts.js';
import { ALL, practice, sources } from '../sources.js';

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

export const spareChannel = {
  id: 'wire/spare-channel',
  title: 'What a spare channel is wired to',
  why: 'A channel without a wire would look like a dead one.',
  sources: sources({
    of: ALL,
    also: practice(
      'A spare channel takes N away from its bond, else doubles a line: L1, or the high leg. DC never doubles.',
    ),
  }),
  facts: FACTS,
  decide(f: Given<WiringFacts, typeof FACTS>): SpareDecision {
    if (f.current === 'dc') return { uses: [], because: 'DC never doubles' };
    if (f.threePlusOne) return { uses: [], because: 'in a 3+1 part each channel has its own conductor' };
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
      because:
        uses[0]?.doubled === false
          ? 'N isn’t bonded to ground here, so a spare channel takes it'
          : 'a spare channel doubles a line',
    };
  },
} satisfies WiringRule<WiringFacts, SpareDecision>;
