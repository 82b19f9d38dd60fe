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

const FACTS = ['circuit', 'current', 'part'] as const;

const NO_TURBINE = reason('overcurrent-outside/turbine');

const BY_MAKER: readonly Cited[] = [
  practice(
    'As the maker of the turbine says, and never larger than the part allows: what a turbine drives into a fault hangs on its speed.',
  ),
];

export const overcurrentTurbine = {
  id: 'wire/overcurrent-turbine',
  title: 'Overcurrent device of a protector on a turbine',
  why: 'What a turbine drives into a failed protector hangs on its speed, and its maker alone knows it.',
  sources: sources({ 'nec-2017': BY_MAKER, 'nec-2020': BY_MAKER, 'nec-2023': BY_MAKER, iec: BY_MAKER }),
  facts: FACTS,
  ofPart: ['overcurrentMost', 'overcurrentLeast'],
  decide({ circuit, current, part }: Given<OvercurrentFacts, typeof FACTS>): OvercurrentDecision {
    if (circuit !== 'turbine') return { outcome: 'outside', because: NO_TURBINE };
    const dc = current === 'dc';
    if (!part) return unknownDevice(NO_PART, { dc });
    const most = ampsOf(part.overcurrentMost);
    const { overcurrentMost: amps, overcurrentLeast: leastAmps } = part;
    return unknownDevice(reason('overcurrent/by-maker-of-turbine', { most }), { amps, leastAmps, dc });
  },
} satisfies OvercurrentRule;
