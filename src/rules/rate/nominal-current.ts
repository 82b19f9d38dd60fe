import { taken, workingOf } from '../../electrical/working.js';
import type { Given, RatingDecision } from '../../model/rule.js';
import { isNec } from '../../model/editions.js';
import type { AnyRatingRule, RatingFacts } from '../rating-facts.js';
import { NEC, practice, sources } from '../sources.js';

const FACTS = ['basis', 'occupancy', 'port', 'feederPlace', 'lightning', 'thresholds'] as const;

export const nominalCurrent = {
  id: 'rate/nominal-current',
  title: 'Nominal discharge current that a place asks for',
  why: 'Where the strongest surges come in, a protector must bear more of them.',
  sources: sources(
    { of: ['nec-2023'], cite: ['dwelling-service', 'feeder', 'outside-feeder'] },
    { of: ['nec-2017', 'nec-2020'], also: practice('10 kA at a service.') },
    {
      of: NEC,
      cite: ['nominal-discharge-current', 'lightning-protection'],
      also: practice('3 kA elsewhere; 10 kA at the service of another building than 230.67 names.'),
    },
    { of: ['iec'], cite: ['discharge-currents'] },
  ),
  answers: 'rate/discharge',
  facts: FACTS,
  decide(f: Given<RatingFacts, typeof FACTS>): RatingDecision {
    const t = f.thresholds;
    const asks = (
      value: number,
      says: string,
      sure: 'published' | 'memory' | 'common practice',
      source: string,
    ): RatingDecision => ({
      outcome: 'asks',
      value,
      working: workingOf([], taken('In', says, value, 'A', sure, source)),
      notes: [],
    });
    if (!isNec(f.basis)) {
      return asks(
        t.nominalCurrentIec,
        'Nominal discharge current, at least',
        'memory',
        'IEC 60364-5-53 cl. 534.4.4.4, value from memory',
      );
    }
    if (f.port === 'service' && f.lightning !== 'none') {
      return asks(
        t.lightningNominalCurrentNec,
        'Nominal discharge current at a service with a lightning protection system',
        'memory',
        'NFPA 780, value from memory',
      );
    }
    if (f.port === 'service') {
      // 230.67 knows dwelling and sleeping units only; elsewhere its figure is the trade's.
      return f.basis === 'nec-2023' && f.occupancy !== 'other'
        ? asks(
            t.serviceNominalCurrent,
            'Nominal discharge current at a service',
            'published',
            'NEC 2023, 230.67',
          )
        : asks(
            t.serviceNominalCurrent,
            'Nominal discharge current at a service',
            'common practice',
            'common practice, no source',
          );
    }
    if (f.feederPlace && f.basis === 'nec-2023') {
      return asks(
        t.serviceNominalCurrent,
        'Nominal discharge current at a panel that a feeder supplies',
        'published',
        'NEC 2023, 215.18 and 225.42',
      );
    }
    return asks(
      t.otherNominalCurrentNec,
      'Nominal discharge current, at least',
      'common practice',
      'common practice, no source',
    );
  },
} satisfies AnyRatingRule;
