import { isNec } from '../../model/editions.js';
import { amperes } from '../../model/quantity.js';
import { reason, type Reason } from '../../model/reason.js';
import type { Given } from '../../model/rule.js';
import { leadDuty, overcurrentWay } from '../lead-duty.js';
import {
  ampsOf,
  NO_PART,
  NOT_NEEDED,
  SIZE_NOT_STATED,
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

const FACTS = [...WAY_FACTS, 'highest'] as const;
type Facts = Given<OvercurrentFacts, typeof FACTS>;

const NO_ARRAY = reason('overcurrent-outside/array');

const BOTH_POLES = practice(
  'Devices on the array side have a pole in each conductor: one that is grounded through a ground-fault device isn’t solidly grounded.',
);
const CITED_UNDER_NEC: readonly Cited[] = ['array-overcurrent', 'array-conductors', BOTH_POLES];

export const overcurrentArray = {
  id: 'wire/overcurrent-array',
  title: 'Overcurrent device of a protector that arrays reach',
  why: 'In daylight an array drives current through a failed protector, and no breaker trips at a current that is no more than it was made for.',
  sources: sources({
    'nec-2017': CITED_UNDER_NEC,
    'nec-2020': CITED_UNDER_NEC,
    'nec-2023': CITED_UNDER_NEC,
    iec: [BOTH_POLES],
  }),
  facts: FACTS,
  ofPart: ['overcurrentMost', 'overcurrentLeast', 'overcurrentDevice'],
  decide(f: Facts): OvercurrentDecision {
    if (f.circuit !== 'array') return { outcome: 'outside', because: NO_ARRAY };
    const asked = {
      dc: true,
      ...polesIn(f.lines, undefined),
      volts: f.highest ?? null,
      interrupting: f.arrayCurrent ?? null,
    };
    if (!f.part) return unknownDevice(NO_PART, asked);
    const way = overcurrentWay(f, f.part);
    if (way === 'not-needed') return noDevice(NOT_NEEDED, { dc: true });
    if (way === 'array') return noDevice(arrayBelow(f, f.part), { dc: true, amps: f.part.overcurrentMost });
    return ownDevice(f.part, becauseOf(f), asked);
  },
} satisfies OvercurrentRule;

function arrayBelow(f: Facts, part: NonNullable<Facts['part']>): Reason {
  const duty = leadDuty(f, part);
  return reason('overcurrent/array-below', {
    current: amperes(f.arrayCurrent ?? 0),
    most: ampsOf(part.overcurrentMost),
    ampacity: ampsOf(duty.of === 'current' ? duty.amperes : undefined),
    nec: isNec(f.basis),
  });
}

function becauseOf({ arrayCurrent, part }: Facts): Reason {
  const most = ampsOf(part?.overcurrentMost);
  if (most === null) return SIZE_NOT_STATED;
  return arrayCurrent === undefined
    ? reason('overcurrent/array-not-known', { most })
    : reason('overcurrent/array-above', { current: amperes(arrayCurrent), most });
}
