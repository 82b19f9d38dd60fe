import { isNec } from '../../model/editions.js';
import { reason } from '../../model/reason.js';
import type { Given } from '../../model/rule.js';
import { overcurrentWay } from '../lead-duty.js';
import {
  ampsOf,
  NO_PART,
  NOT_NEEDED,
  WAY_FACTS,
  noDevice,
  ownDevice,
  polesIn,
  unknownDevice,
  type OvercurrentDecision,
  type OvercurrentFacts,
  type OvercurrentRule,
} from '../overcurrent-facts.js';
import { practice, sources, type Cited } from '../sources.js';

const FACTS = [...WAY_FACTS, 'groundedConductor', 'highest', 'faultCurrent'] as const;

const NO_BUS = reason('overcurrent-outside/battery');

const ITS_OWN = practice(
  'A protector on a battery bus has a device of its own for direct current, in each pole that isn’t grounded, for the highest charge voltage and the fault current of the batteries.',
);
const CITED_UNDER_NEC: readonly Cited[] = ['no-device-in-grounded-conductor', ITS_OWN];

export const overcurrentBattery = {
  id: 'wire/overcurrent-battery',
  title: 'Overcurrent device of a protector on a battery bus',
  why: 'A battery drives thousands of amperes through a failed protector until something opens.',
  sources: sources({
    'nec-2017': CITED_UNDER_NEC,
    'nec-2020': CITED_UNDER_NEC,
    'nec-2023': CITED_UNDER_NEC,
    iec: [ITS_OWN],
  }),
  facts: FACTS,
  ofPart: ['overcurrentMost', 'overcurrentLeast', 'overcurrentDevice'],
  decide(f: Given<OvercurrentFacts, typeof FACTS>): OvercurrentDecision {
    if (f.circuit !== 'battery') return { outcome: 'outside', because: NO_BUS };
    const asked = {
      dc: true,
      ...polesIn(f.lines, f.groundedConductor),
      volts: f.highest ?? null,
      interrupting: f.faultCurrent ?? null,
    };
    if (!f.part) return unknownDevice(NO_PART, asked);
    if (overcurrentWay(f, f.part) === 'not-needed') return noDevice(NOT_NEEDED, { dc: true });
    if (asked.poles === 0)
      return noDevice(reason('overcurrent/grounded-only', { nec: isNec(f.basis) }), { dc: true });
    const because = reason('overcurrent/of-battery-bus', { most: ampsOf(f.part.overcurrentMost) });
    return ownDevice(f.part, because, asked);
  },
} satisfies OvercurrentRule;
