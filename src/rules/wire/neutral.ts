import type { Given } from '../../model/rule.js';
import type { NeutralDecision, WiringFacts, WiringRule } from '../wiring-facts.js';
import { NEC, practice, sources } from '../sources.js';

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

export const neutral = {
  id: 'wire/neutral',
  title: 'Whether the neutral has a channel',
  why: 'Away from the place where it is tied to ground, the neutral can be lifted by a surge like any other wire.',
  sources: sources(
    {
      of: ['iec'],
      cite: ['origin-of-installation'],
      also: practice('N at every place but beside its link to ground.'),
    },
    {
      of: NEC,
      also: practice(
        'A spare channel takes N away from its bond; else the note says that N isn’t protected there.',
      ),
    },
  ),
  facts: FACTS,
  decide(f: Given<WiringFacts, typeof FACTS>): NeutralDecision {
    if (f.current === 'dc' || f.circuit !== 'power' || !f.hasNeutral) {
      return { neutral: 'none', because: 'this circuit has no neutral' };
    }
    if (f.grounding === 'none')
      return { neutral: 'asked', because: 'the system is ungrounded, so N floats like the lines' };
    if (f.basis === 'iec') {
      if (f.earthing === 'TT')
        return { neutral: 'asked', because: 'in a TT system lines go to N and N goes to ground' };
      if (f.earthing === 'IT') return { neutral: 'asked', because: 'in an IT system N floats' };
      return f.atService && f.bondedHere
        ? { neutral: 'bonded', because: 'N is linked to ground at this service' }
        : { neutral: 'asked', because: 'in a TN system N is protected away from its link to ground' };
    }
    return f.bondedHere
      ? { neutral: 'bonded', because: 'N is bonded to ground here' }
      : {
          neutral: 'optional',
          because: 'N isn’t bonded to ground here: a spare channel takes it, none is asked for it',
        };
  },
} satisfies WiringRule<WiringFacts, NeutralDecision>;
