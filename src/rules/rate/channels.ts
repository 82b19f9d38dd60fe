import { reason } from '../../model/reason.js';
import type { Fit, Given } from '../../model/rule.js';
import type { AnyFitRule, FitFacts } from '../fit-facts.js';
import { ALL, practice, sources } from '../sources.js';

const FACTS = ['conductors', 'spareRoom', 'oneHousing', 'part'] as const;

export const channels = {
  id: 'rate/channels',
  title: 'No channel of a part stays unwired',
  why: 'A channel that hangs on nothing shows a dark light that means nothing.',
  sources: sources({
    of: ALL,
    cite: ['each-ungrounded-conductor'],
    also: practice(
      'Three phases on two-channel protectors take a pair, one phase doubled; DC never doubles.',
    ),
  }),
  facts: FACTS,
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
