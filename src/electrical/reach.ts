import type { Step, Working } from '../model/fact.js';
import { shown, taken, workingOf } from './working.js';

export interface ReachInput {
  /** V; protection level Up (or VPR). */
  readonly up: number;
  /** V; voltage of the leads. */
  readonly leads: number;
  /** V; impulse withstand of the equipment. */
  readonly withstand: number;
  /** V/m; oscillation allowance along the cable: the setting `reachSlope`. */
  readonly slope: number;
  /** m; least reach above half the withstand: the setting `leastReach`. */
  readonly leastReach: number;
  /** m; the long-run limit, past which no reach goes. */
  readonly limit: number;
  /** True where the withstand is an assumption by overvoltage category, and the working says so. */
  readonly withstandAssumed?: boolean;
}

/** Which case of the rule it is, and how far along the cable a protector covers. */
export interface ReachFigures {
  readonly kind: 'none' | 'unlimited' | 'metres';
  /** m; 0 for `none`; the limit for `unlimited`, which oscillation doesn't cut short. */
  readonly distance: number;
}

/**
 * Distance along the cable that a protector covers, without the working: for ranking many parts.
 * @param input V, V/m, m
 * @returns the case and m, never negative, never past the limit
 * Source: OVE Fachinformation E09:2022 Annex C.
 */
export function reachFigures(input: ReachInput): ReachFigures {
  const { up, leads, withstand, slope, leastReach, limit } = input;
  if (up + leads > withstand) return { kind: 'none', distance: 0 };
  if (up <= withstand / 2) return { kind: 'unlimited', distance: limit };
  return {
    kind: 'metres',
    distance: Math.min(Math.max((withstand - up - leads) / slope, leastReach), limit),
  };
}

export interface Reach extends ReachFigures {
  /** V; withstand less level less leads; negative for `none`. */
  readonly margin: number;
  readonly working: Working;
}

const UW = 'Impulse withstand of the equipment';
const SOURCE = 'OVE Fachinformation E09:2022 Annex C';

interface Wording {
  readonly says: string;
  readonly formula: string;
  readonly substituted: string;
}

function wording(input: ReachInput, kind: ReachFigures['kind']): Wording {
  const up = shown(input.up);
  const leads = shown(input.leads);
  const withstand = shown(input.withstand);
  const slope = shown(input.slope);
  const least = shown(input.leastReach);
  const limit = shown(input.limit);
  switch (kind) {
    case 'none':
      return {
        says: 'Reach: none, level and leads exceed the withstand',
        formula: '0 m where Up + Ul > Uw',
        substituted: `${up} V + ${leads} V > ${withstand} V`,
      };
    case 'unlimited':
      return {
        says: 'Reach: not limited by oscillation, the level is at most half the withstand; up to the long-run limit',
        formula: 'no limit where Up <= Uw / 2',
        substituted: `${up} V <= ${withstand} V / 2`,
      };
    case 'metres':
      return {
        says: `Reach along the cable, at least ${least} m, at most ${limit} m`,
        formula: `min(max((Uw - Up - Ul) / (${slope} V/m), ${least} m), ${limit} m)`,
        substituted: `min(max((${withstand} V - ${up} V - ${leads} V) / (${slope} V/m), ${least} m), ${limit} m)`,
      };
  }
}

function resultStep(input: ReachInput, kind: ReachFigures['kind'], distance: number): Step {
  const { says, formula, substituted } = wording(input, kind);
  return {
    symbol: 'lp',
    says,
    formula,
    substituted,
    value: distance,
    unit: 'm',
    sure: 'published',
    source: SOURCE,
  };
}

/**
 * Distance along the cable that a protector covers.
 *
 * Level and leads above the withstand: none. Level at most half the withstand: not limited by oscillation. Else the margin
 * over the slope, at least the least reach. Never past the long-run limit; the caller keeps it inside one building.
 * @param input V, V/m, m
 * @returns the case, m, the margin in V and the working
 * Source: OVE Fachinformation E09:2022 Annex C; the least reach is its convention.
 */
export function protectiveDistance(input: ReachInput): Reach {
  const { kind, distance } = reachFigures(input);
  const margin = input.withstand - input.up - input.leads;
  const steps = [
    taken('Up', 'Protection level of the protector', input.up, 'V'),
    taken('Ul', 'Voltage of the leads', input.leads, 'V', 'computed', 'computed on this page'),
    input.withstandAssumed
      ? taken('Uw', UW, input.withstand, 'V', 'assumption', 'assumption on these pages')
      : taken('Uw', UW, input.withstand, 'V'),
  ];
  return { kind, distance, margin, working: workingOf(steps, resultStep(input, kind, distance)) };
}
