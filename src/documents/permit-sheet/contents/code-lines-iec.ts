import type { Plan, PlannedProtector } from '../../../model/plan.js';
import { plain } from '../../../words/figures.js';
import { lengthUnitOf, paperLength } from '../../../words/lengths.js';
import { channelsInShort } from '../../../words/protector-short.js';
import { dischargeHeld, leadsHeld, levelHeld, shortCircuitHeld, voltageHeld } from './code-figures.js';
import type { CodeLine } from './code-line.js';

/** What is counted against the limits of lengths, by the reasons of a protector. */
function lengthText({ reasons }: PlannedProtector, plan: Plan): string {
  const told = (metres: number): string => paperLength(metres, lengthUnitOf(plan));
  const found = reasons.flatMap(({ because, strength }) => {
    if (strength !== 'required') return [];
    switch (because.code) {
      case 'dc-input/length-compared': {
        const { length, critical, shorter } = because.values;
        return [`L ${told(length.value)} ${shorter ? '<' : '≥'} Lcrit ${told(critical.value)}`];
      }
      case 'long-run/longer-than-limit': {
        const { length, limit } = because.values;
        return [`run ${told(length.value)} > ${told(limit.value)}`];
      }
      default:
        return [];
    }
  });
  return found.join('; ');
}

function riskText({ reasons }: PlannedProtector): string {
  for (const { because } of reasons) {
    if (because.code === 'service/risk-compared') {
      const { level, limit, below } = because.values;
      return `CRL ${plain(Math.round(level.value))} ${below ? '<' : '≥'} ${plain(limit.value)}`;
    }
    if (because.code === 'service/no-single-dwelling') return 'not a single dwelling';
  }
  return '';
}

const connectionText = ({ partDetails, channels }: PlannedProtector): string =>
  partDetails === null
    ? ''
    : `${partDetails.connection === '3+1' ? '3+1' : 'to earth'}: ${channelsInShort({ channels })}`;

const isAc = (p: PlannedProtector): boolean => p.required.current === 'ac' && p.system !== 'three-phase';

/** The clauses of the IEC standards that a reviewer looks for. */
export const IEC_LINES: readonly CodeLine[] = [
  {
    subjects: ['transient-overvoltage-risk', 'calculated-risk-level', 'origin-of-installation'],
    title: 'Protector at the origin, by the risk level',
    here: riskText,
    places: true,
  },
  {
    subjects: ['pv-dc-protection'],
    title: 'DC side of PV: runs against the critical length',
    here: lengthText,
    places: true,
  },
  {
    subjects: ['pv-dc-both-ends', 'ten-metre-distance'],
    title: 'Both ends of a run over 10 m',
    here: lengthText,
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
  { subjects: ['discharge-currents'], title: 'Nominal discharge current', here: dischargeHeld },
  {
    subjects: ['short-circuit-current-rating'],
    title: 'Short-circuit rating not below the fault current',
    here: shortCircuitHeld,
  },
  {
    subjects: ['lead-routing', 'smallest-lead'],
    title: 'Leads: length and least size',
    here: (p, plan) => leadsHeld(p, lengthUnitOf(plan)),
  },
];
