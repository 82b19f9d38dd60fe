import { AC_SYSTEM_DATA } from '../../electrical/ac-systems.js';
import { isNec } from '../../model/editions.js';
import { amperes } from '../../model/quantity.js';
import { reason, type Reason } from '../../model/reason.js';
import type { Given } from '../../model/rule.js';
import { overcurrentWay } from '../lead-duty.js';
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
  type SystemBorne,
} from '../overcurrent-facts.js';
import { practice, sources, type Cited } from '../sources.js';

const FACTS = [...WAY_FACTS, 'groundedConductor', 'systems', 'highLeg', 'faultCurrent'] as const;
type Facts = Given<OvercurrentFacts, typeof FACTS>;

const NOT_AC = reason('overcurrent-outside/ac');
const SINGLE_AND_THREE = reason('overcurrent-note/single-and-three-phase');

const BY_PART = practice(
  'The circuit’s own device will do where it is no larger than the part allows; else the part has one of its own, a pole for each line, for the voltage between lines and the fault current there.',
);
const CITED_UNDER_NEC: readonly Cited[] = [
  'slash-rating',
  'no-device-in-grounded-conductor',
  'one-wire-a-terminal',
  'ahead-of-service-disconnect',
  BY_PART,
];

export const overcurrentAc = {
  id: 'wire/overcurrent-ac',
  title: 'Overcurrent device of a protector on alternating current',
  why: 'A protector that fails draws current until a device that can break it opens.',
  sources: sources({
    'nec-2017': CITED_UNDER_NEC,
    'nec-2020': CITED_UNDER_NEC,
    'nec-2023': CITED_UNDER_NEC,
    iec: [BY_PART],
  }),
  facts: FACTS,
  ofPart: ['overcurrentMost', 'overcurrentLeast', 'overcurrentDevice'],
  decide(f: Facts): OvercurrentDecision {
    if (f.circuit !== 'power') return { outcome: 'outside', because: NOT_AC };
    const nec = isNec(f.basis);
    const poled = polesIn(f.lines, f.groundedConductor);
    const asked = {
      poles: poled.poles,
      conductors: poled.conductors,
      noneIn: poled.noneIn,
      volts: f.systems.length === 0 ? null : Math.max(...f.systems.map(betweenLines)),
      straight: f.highLeg || f.systems.some(asksStraight),
      interrupting: f.faultCurrent ?? null,
      notes: notesOf(f, poled.conductors.length),
    };
    if (!f.part) return unknownDevice(NO_PART, asked);
    const way = overcurrentWay(f, f.part);
    const amps = f.part.overcurrentMost;
    if (way === 'ahead') return noDevice(reason('overcurrent/ahead-of-disconnect', { nec }));
    if (way === 'not-needed') return noDevice(NOT_NEEDED);
    if (way === 'circuit' && f.ownDevice !== undefined)
      return noDevice(
        reason('overcurrent/circuit-will-do', { rating: amperes(f.ownDevice), most: ampsOf(amps) }),
        { amps },
      );
    if (poled.poles === 0) return noDevice(reason('overcurrent/grounded-only', { nec }));
    return ownDevice(f.part, becauseOf(f), asked);
  },
} satisfies OvercurrentRule;

function becauseOf({ ownDevice: rating, part }: Facts): Reason {
  const most = ampsOf(part?.overcurrentMost);
  if (most === null) return SIZE_NOT_STATED;
  return rating === undefined
    ? reason('overcurrent/circuit-not-stated', { most })
    : reason('overcurrent/circuit-too-large', { rating: amperes(rating), most });
}

/** V; where the system isn’t solidly grounded a line may stand at the voltage between lines of the whole. */
function betweenLines({ system, whole, grounding }: SystemBorne): number {
  return grounding === 'solid'
    ? AC_SYSTEM_DATA[system].betweenConductors
    : AC_SYSTEM_DATA[whole ?? system].lineToLine;
}

const DELTAS: ReadonlySet<string> = new Set(['240 delta', '480 delta']);

function asksStraight({ system, grounding }: SystemBorne): boolean {
  return grounding !== 'solid' || DELTAS.has(system);
}

function notesOf({ basis, groundedConductor, lines }: Facts, poles: number): readonly Reason[] {
  const conductor = lines.find((line) => line === groundedConductor);
  if (conductor === undefined) return [];
  const nec = isNec(basis);
  const through = reason('overcurrent-note/straight-through', { conductor, nec });
  return poles > 1 && nec ? [through, SINGLE_AND_THREE] : [through];
}
