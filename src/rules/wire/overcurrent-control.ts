import { reason } from '../../model/reason.js';
import type { Given } from '../../model/rule.js';
import {
  ampsOf,
  NO_PART,
  unknownDevice,
  type OvercurrentDecision,
  type OvercurrentFacts,
  type OvercurrentRule,
} from '../overcurrent-facts.js';
import { practice, sources, type Cited } from '../sources.js';

const FACTS = ['circuit', 'current', 'part', 'highest'] as const;

const NO_CIRCUIT = reason('overcurrent-outside/control');

const BY_SUPPLY: readonly Cited[] = [
  practice('The supply of a control circuit limits its current by itself (class 2); else as the part says.'),
];

export const overcurrentControl = {
  id: 'wire/overcurrent-control',
  title: 'Overcurrent device of a protector on a control circuit',
  why: 'A supply of class 2 can’t drive enough current to burn anything, another one can.',
  sources: sources({ 'nec-2017': BY_SUPPLY, 'nec-2020': BY_SUPPLY, 'nec-2023': BY_SUPPLY, iec: BY_SUPPLY }),
  facts: FACTS,
  ofPart: ['overcurrentMost', 'overcurrentLeast'],
  decide({ circuit, current, part, highest }: Given<OvercurrentFacts, typeof FACTS>): OvercurrentDecision {
    if (circuit !== 'control') return { outcome: 'outside', because: NO_CIRCUIT };
    const dc = current === 'dc';
    const asked = { dc, volts: highest ?? null };
    if (!part) return unknownDevice(NO_PART, asked);
    const most = ampsOf(part.overcurrentMost);
    const { overcurrentMost: amps, overcurrentLeast: leastAmps } = part;
    return unknownDevice(reason('overcurrent/by-supply-of-control', { most }), { ...asked, amps, leastAmps });
  },
} satisfies OvercurrentRule;
