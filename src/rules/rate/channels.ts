import { reason } from '../../model/reason.js';
import type { Fit, Given } from '../../model/rule.js';
import type { AnyFitRule, FitFacts } from '../fit-facts.js';
import { practice, sources, type Cited } from '../sources.js';

const FACTS = ['conductors', 'spareRoom', 'oneHousing', 'part'] as const;

const PAIR_FOR_THREE_PHASES = practice(
  'Three phases on two-channel protectors take a pair, one phase doubled; DC never doubles.',
);
const CITED_UNDER_NEC: readonly Cited[] = ['each-ungrounded-conductor', PAIR_FOR_THREE_PHASES];

export const channels = {
  id: 'rate/channels',
  title: 'No channel of a part stays unwired',
  why: 'A channel that hangs on nothing shows a dark light that means nothing.',
  sources: sources({
    'nec-2017': CITED_UNDER_NEC,
    'nec-2020': CITED_UNDER_NEC,
    'nec-2023': CITED_UNDER_NEC,
    iec: [PAIR_FOR_THREE_PHASES],
  }),
  facts: FACTS,
  ofPart: ['channels'],
  accepts(f: Given<FitFacts, typeof FACTS>): Fit {
    const each = f.part.channels;
    if (f.oneHousing && each < f.conductors) {
      return {
        fits: false,
        because: reason('channels/too-few', { channels: each, conductors: f.conductors }),
        gap: 1,
      };
    }
    const spare = Math.ceil(f.conductors / each) * each - f.conductors;
    return spare <= f.spareRoom
      ? { fits: true }
      : {
          fits: false,
          because: reason('channels/unwired', {
            channels: each,
            conductors: f.conductors,
            unwired: spare - f.spareRoom,
          }),
          gap: 1,
        };
  },
} satisfies AnyFitRule;
