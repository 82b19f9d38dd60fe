import type { Plan, PlannedProtector } from '../../../model/plan.js';
import { plain } from '../../../words/figures.js';
import { lengthUnitOf, longestLead, paperLength } from '../../../words/lengths.js';
import { channelsInShort } from '../../../words/protector-short.js';
import {
  dischargeHeld,
  leadsHeld,
  levelHeld,
  shortCircuitHeld,
  voltageHeld,
} from '../../parts/contents/code-figures.js';
import { askedCurrent, givenCurrent } from '../../parts/contents/paper-figures.js';
import type { CodeLine } from './code-line.js';

/** The DC runs against the critical length. */
function criticalText({ reasons }: PlannedProtector, plan: Plan): string {
  const unit = lengthUnitOf(plan);
  for (const { because } of reasons) {
    if (because.code !== 'dc-input/length-compared') continue;
    const { length, critical, shorter } = because.values;
    return `L ${paperLength(length.value, unit)} ${shorter ? '<' : '≥'} Lcrit ${paperLength(critical.value, unit)}`;
  }
  return '';
}

/** The runs that end there against the longest that one protector may serve. */
function runText({ reasons }: PlannedProtector, plan: Plan): string {
  const unit = lengthUnitOf(plan);
  const found = reasons.flatMap(({ because }) => {
    if (because.code !== 'long-run/longer-than-limit') return [];
    const { length, limit } = because.values;
    return [`run ${paperLength(length.value, unit)} > ${paperLength(limit.value, unit)}`];
  });
  return found.join('; ');
}

function riskText({ reasons }: PlannedProtector, plan: Plan): string {
  for (const { because } of reasons) {
    if (because.code === 'service/risk-compared') {
      const { level, limit, below } = because.values;
      const surroundings = plan.facts.find(({ field }) => field === 'surroundings');
      const where = surroundings === undefined ? '' : `, surroundings ${surroundings.text}, stated`;
      return `CRL ${plain(Math.round(level.value))} ${below ? '<' : '≥'} ${plain(limit.value)}${where}`;
    }
    if (because.code === 'service/no-single-dwelling') return 'not a single dwelling';
  }
  return '';
}

const connectionText = ({ partDetails, channels }: PlannedProtector): string =>
  partDetails === null
    ? ''
    : `${partDetails.connection === '3+1' ? '3+1' : 'to earth'}: ${channelsInShort({ channels })}`;

/** `In 40 kA ≥ 20 kA`: what the path from N to PE bears against what is asked of it. */
function neutralPathText({ figures }: PlannedProtector): string {
  return (figures?.neutralPath ?? [])
    .map(({ rating, has, least }) =>
      has === null
        ? `${rating} not stated, ${askedCurrent(least)} needed`
        : `${rating} ${givenCurrent(has)} ${has >= least ? '≥' : '<'} ${askedCurrent(least, has)}`,
    )
    .join(', ');
}

const isAc = (p: PlannedProtector): boolean => p.required.current === 'ac' && p.system !== 'three-phase';

/** The clauses of the IEC standards that a reviewer looks for. */
export const IEC_LINES: readonly CodeLine[] = [
  {
    subjects: ['transient-overvoltage-risk', 'calculated-risk-level'],
    title: 'Protector at the origin, by the risk level',
    here: riskText,
    places: true,
  },
  {
    subjects: ['pv-dc-protection'],
    title: 'DC side of PV: runs against the critical length',
    here: criticalText,
    places: true,
  },
  {
    subjects: ['pv-dc-both-ends', 'ten-metre-distance'],
    title: 'Both ends of a run over 10 m',
    here: runText,
    places: true,
  },
  {
    subjects: ['connection-types'],
    title: 'Connection by the earthing of the system',
    here: (p) => (isAc(p) ? connectionText(p) : ''),
  },
  {
    subjects: ['continuous-voltage'],
    title: 'Uc not below the table',
    here: (p) => (isAc(p) ? voltageHeld(p, 'Uc') : ''),
  },
  {
    subjects: ['cold-voltage'],
    title: 'Uc not below the highest PV voltage, cold',
    here: (p) => (p.system === 'dc' ? voltageHeld(p, 'Uc') : ''),
  },
  {
    subjects: ['protection-level', 'impulse-withstand'],
    title: 'Up with leads at most 80 % of the impulse withstand',
    here: (p) => levelHeld(p, 0.8),
  },
  {
    subjects: ['neutral-path-currents'],
    title: 'Path from N to PE of a 3+1 part',
    here: neutralPathText,
  },
  { subjects: ['discharge-currents'], title: 'Nominal discharge current', here: dischargeHeld },
  {
    subjects: ['short-circuit-current-rating'],
    title: 'Short-circuit rating not below the fault current',
    here: shortCircuitHeld,
  },
  {
    subjects: ['lead-routing', 'smallest-lead'],
    title: 'Leads: length and least size',
    here: (p, plan) => `at most ${longestLead(p.wiring, lengthUnitOf(plan))}, ${leadsHeld(p, 'earth')}`,
  },
];
