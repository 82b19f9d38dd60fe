import { COMMON_PRACTICE, taken, workingOf } from '../../electrical/working.js';
import type { Source, Sureness } from '../../model/fact.js';
import { reason, type Reason } from '../../model/reason.js';
import type { Given, RatingDecision } from '../../model/rule.js';
import { subject, type StepSubject } from '../../model/step.js';
import { since, isNec, type Basis } from '../../model/editions.js';
import type { AnyRatingRule, RatingFacts } from '../rating-facts.js';
import { citing, practice, sources, type Cited } from '../sources.js';

const FACTS = ['basis', 'occupancy', 'port', 'feederPlace', 'lightning', 'thresholds'] as const;

const LEAST = subject('nominal-current/least');
const SERVICE = subject('nominal-current/service');
const PROTECTED_SERVICE = subject('nominal-current/service-with-lightning-protection');
const FED_PANEL = subject('nominal-current/fed-panel');
const BY_IEC = reason('source/nominal-current-iec');
const BY_LIGHTNING = reason('source/nominal-current-lightning');
const BY_SERVICE = reason('source/nominal-current-service');

const AT_SERVICE = practice('10 kA at a service.');
const LEAST_ELSEWHERE = practice(
  '3 kA elsewhere; 10 kA at the service of another building than 230.67 names.',
);
const CITED_BEFORE_NEC_2023: readonly Cited[] = [
  AT_SERVICE,
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
    const cites = (one: Cited): readonly Source[] => citing(f.basis, one, 'nominal-discharge-current');
    if (f.port === 'service' && f.lightning !== 'none') {
      const figure = t.lightningNominalCurrentNec;
      return asks(figure, PROTECTED_SERVICE, 'memory', BY_LIGHTNING, cites('lightning-protection'));
    }
    const atService = t.serviceNominalCurrent;
    if (f.port === 'service') {
      // 230.67 knows dwelling and sleeping units only; elsewhere its figure is the trade's.
      return since(f.basis, 'nec-2023') && f.occupancy !== 'other'
        ? asks(atService, SERVICE, 'published', BY_SERVICE, cites('dwelling-service'))
        : asks(atService, SERVICE, 'common practice', COMMON_PRACTICE, cites(practiceAt(f.basis)));
    }
    if (f.feederPlace !== '' && since(f.basis, 'nec-2023')) {
      const outside = f.feederPlace === 'outside';
      const by = reason('source/nominal-current-feeder', { outside });
      return asks(atService, FED_PANEL, 'published', by, cites(outside ? 'outside-feeder' : 'feeder'));
    }
    return asks(t.otherNominalCurrentNec, LEAST, 'common practice', COMMON_PRACTICE, cites(LEAST_ELSEWHERE));
  },
} satisfies AnyRatingRule;

/** Under the cycle whose clause has the figure, the trade's is that of other buildings. */
function practiceAt(basis: Basis): Cited {
  return since(basis, 'nec-2023') ? LEAST_ELSEWHERE : AT_SERVICE;
}

function asks(
  value: number,
  what: StepSubject,
  sure: Sureness,
  source: Reason,
  cites?: readonly Source[],
): RatingDecision {
  const working = workingOf([], taken('In', what, value, 'A', sure, source));
  return cites
    ? { outcome: 'asks', value, working, notes: [], cites }
    : { outcome: 'asks', value, working, notes: [] };
}
