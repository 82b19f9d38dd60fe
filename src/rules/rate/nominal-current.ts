import { COMMON_PRACTICE, taken, workingOf } from '../../electrical/working.js';
import type { Sureness } from '../../model/fact.js';
import { reason, type Reason } from '../../model/reason.js';
import type { Given, RatingDecision } from '../../model/rule.js';
import { subject, type StepSubject } from '../../model/step.js';
import { since, isNec } from '../../model/editions.js';
import type { AnyRatingRule, RatingFacts } from '../rating-facts.js';
import { practice, sources, type Cited } from '../sources.js';

const FACTS = ['basis', 'occupancy', 'port', 'feederPlace', 'lightning', 'thresholds'] as const;

const LEAST = subject('nominal-current/least');
const SERVICE = subject('nominal-current/service');
const PROTECTED_SERVICE = subject('nominal-current/service-with-lightning-protection');
const FED_PANEL = subject('nominal-current/fed-panel');
const BY_IEC = reason('source/nominal-current-iec');
const BY_LIGHTNING = reason('source/nominal-current-lightning');
const BY_SERVICE = reason('source/nominal-current-service');
const BY_FEEDER = reason('source/nominal-current-feeder');

const LEAST_ELSEWHERE = practice(
  '3 kA elsewhere; 10 kA at the service of another building than 230.67 names.',
);
const CITED_BEFORE_NEC_2023: readonly Cited[] = [
  practice('10 kA at a service.'),
  'nominal-discharge-current',
  'lightning-protection',
  LEAST_ELSEWHERE,
];

export const nominalCurrent = {
  id: 'rate/nominal-current',
  title: 'Nominal discharge current that a place asks for',
  why: 'Where the strongest surges come in, a protector must bear more of them.',
  sources: sources({
    'nec-2017': CITED_BEFORE_NEC_2023,
    'nec-2020': CITED_BEFORE_NEC_2023,
    'nec-2023': [
      'dwelling-service',
      'feeder',
      'outside-feeder',
      'nominal-discharge-current',
      'lightning-protection',
      LEAST_ELSEWHERE,
    ],
    iec: ['discharge-currents'],
  }),
  answers: 'rate/discharge',
  facts: FACTS,
  decide(f: Given<RatingFacts, typeof FACTS>): RatingDecision {
    const t = f.thresholds;
    if (!isNec(f.basis)) return asks(t.nominalCurrentIec, LEAST, 'memory', BY_IEC);
    if (f.port === 'service' && f.lightning !== 'none')
      return asks(t.lightningNominalCurrentNec, PROTECTED_SERVICE, 'memory', BY_LIGHTNING);
    if (f.port === 'service') {
      // 230.67 knows dwelling and sleeping units only; elsewhere its figure is the trade's.
      return since(f.basis, 'nec-2023') && f.occupancy !== 'other'
        ? asks(t.serviceNominalCurrent, SERVICE, 'published', BY_SERVICE)
        : asks(t.serviceNominalCurrent, SERVICE, 'common practice', COMMON_PRACTICE);
    }
    if (f.feederPlace && since(f.basis, 'nec-2023'))
      return asks(t.serviceNominalCurrent, FED_PANEL, 'published', BY_FEEDER);
    return asks(t.otherNominalCurrentNec, LEAST, 'common practice', COMMON_PRACTICE);
  },
} satisfies AnyRatingRule;

function asks(value: number, what: StepSubject, sure: Sureness, source: Reason): RatingDecision {
  const working = workingOf([], taken('In', what, value, 'A', sure, source));
  return { outcome: 'asks', value, working, notes: [] };
}
