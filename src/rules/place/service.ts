import { isNec, since } from '../../model/editions.js';
import { IEC_60364_4_44_2015_RISK_LIMIT as RISK_LIMIT } from '../../electrical/exposure.js';
import { bare } from '../../model/quantity.js';
import { reason } from '../../model/reason.js';
import type { Given, PlacementDecision } from '../../model/rule.js';
import { about } from '../../model/message.js';
import { PLACE_MESSAGES } from '../../model/messages/place.js';
import type { AnyPlacementRule, PlacementFacts } from '../placement-facts.js';
import { citing, practice, sources, type Cited } from '../sources.js';
import { riskAsksForProtection } from '../supply-risk.js';

const FACTS = ['basis', 'tag', 'occupancy', 'unitsFed', 'riskLevel'] as const;

const HERE = {
  outcome: 'placed',
  strength: 'recommended',
  because: reason('service/here'),
} as const satisfies PlacementDecision;
const NO_SINGLE_DWELLING: PlacementDecision = {
  outcome: 'placed',
  strength: 'required',
  because: reason('service/no-single-dwelling'),
};
const RISK_UNKNOWN = reason('service/risk-unknown');

const NEAR_INCOMING_FEED = practice(
  'As near to the incoming feed as possible: top of the panel, or at the meter with the utility’s consent.',
);
const CITED_SINCE_NEC_2020: readonly Cited[] = ['dwelling-service', 'type-2-places', NEAR_INCOMING_FEED];

export const service = {
  id: 'place/service',
  title: 'At the utility service',
  why: 'Most surges from outside come in where the power company’s wires come in.',
  sources: sources({
    'nec-2017': [NEAR_INCOMING_FEED],
    'nec-2020': CITED_SINCE_NEC_2020,
    'nec-2023': CITED_SINCE_NEC_2020,
    iec: ['transient-overvoltage-risk', 'calculated-risk-level', 'origin-of-installation'],
  }),
  strength: {
    'nec-2017': ['recommended'],
    'nec-2020': ['required', 'recommended'],
    'nec-2023': ['required', 'recommended'],
    iec: ['required', 'recommended'],
  },
  looksAt: { kinds: ['service'], ports: ['service'] },
  facts: FACTS,
  decide(f: Given<PlacementFacts, typeof FACTS>): PlacementDecision {
    if (!isNec(f.basis)) return underIec(f);
    if (!isNamed(f, f.occupancy)) return since(f.basis, 'nec-2020') ? byPracticeAlone(f) : HERE;
    return {
      outcome: 'placed',
      strength: 'required',
      because: reason('service/of-unit', { unit: f.occupancy }),
    };
  },
} satisfies AnyPlacementRule;

/** True of what 230.67 names: dwelling units since 2020, sleeping units since 2023. */
function isNamed({ basis }: Pick<PlacementFacts, 'basis'>, occupancy: PlacementFacts['occupancy']): boolean {
  return (
    (occupancy === 'dwelling' && since(basis, 'nec-2020')) ||
    (occupancy === 'sleeping' && since(basis, 'nec-2023'))
  );
}

/** 230.67 asks of the units that it names alone; elsewhere one is common practice, and the clause doesn't apply. */
function byPracticeAlone(f: Given<PlacementFacts, typeof FACTS>): PlacementDecision {
  const { basis, occupancy, tag } = f;
  const units = f.unitsFed.filter(({ unit }) => isNamed(f, unit)).map(({ tag }) => tag);
  const doubts =
    units.length === 0 ? [] : [about(PLACE_MESSAGES.serviceOfUnitElsewhere, { tag, units }, tag, '')];
  return {
    ...HERE,
    notes: doubts,
    cites: citing(basis, NEAR_INCOMING_FEED),
    unasked: {
      because: reason('service/not-of-clause', { occupancy, units }),
      cites: citing(basis, 'dwelling-service'),
    },
  };
}

function underIec(f: Given<PlacementFacts, typeof FACTS>): PlacementDecision {
  if (f.occupancy !== 'dwelling') return NO_SINGLE_DWELLING;
  if (f.riskLevel === undefined) {
    return {
      outcome: 'placed',
      strength: 'recommended',
      because: RISK_UNKNOWN,
      notes: [about(PLACE_MESSAGES.riskUnknown, { tag: f.tag }, '', 'flash_density')],
    };
  }
  const below = riskAsksForProtection(f.riskLevel);
  return {
    outcome: 'placed',
    strength: below ? 'required' : 'recommended',
    because: reason('service/risk-compared', { level: bare(f.riskLevel), limit: bare(RISK_LIMIT), below }),
  };
}
