import { metres, quantity, volts } from '../model/quantity.js';
import { reason } from '../model/reason.js';
import { subject, type Step, type StepSubject, type Working } from '../model/step.js';
import { computed, taken, workingOf } from './working.js';

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
  /** V of the equipment that a service or panel feeds, by which the withstand was assumed: the working says so. */
  readonly fedAt?: number;
  /** True where that stands between lines; else it is to neutral. */
  readonly fedLineToLine?: boolean;
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
 * Source: OVE Fachinformation E09:2022 Annex C; that the level counts with its leads: IEC 62305-4 Annex (value from memory).
 */
export function reachFigures(input: ReachInput): ReachFigures {
  const { up, leads, withstand, slope, leastReach, limit } = input;
  if (up + leads > withstand) return { kind: 'none', distance: 0 };
  if (up + leads <= withstand / 2) return { kind: 'unlimited', distance: limit };
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

const SOURCE = reason('source/reach');
const EFFECTIVE = reason('source/effective-level');
const TABLE = reason('source/withstand-table');
const ON_THIS_PAGE = reason('source/on-this-page');
const ASSUMED = reason('source/assumed-on-these-pages');
const LEVEL = subject('reach/level');
const LEADS = subject('reach/leads');
const WITHSTAND = subject('reach/withstand');

/** The case of the rule with its figures, and what its formula rests on. */
function caseOf(input: ReachInput, kind: ReachFigures['kind']): readonly [StepSubject, readonly string[]] {
  const levels = {
    level: volts(input.up),
    leads: volts(input.leads),
    withstand: volts(input.withstand),
  };
  switch (kind) {
    case 'none':
      return [subject('reach/none', levels), ['Up', 'Ul', 'Uw']];
    case 'unlimited':
      return [subject('reach/unlimited', levels), ['Up', 'Ul', 'Uw']];
    case 'metres':
      return [
        subject('reach/metres', {
          ...levels,
          slope: quantity(input.slope, 'V/m'),
          least: metres(input.leastReach),
          limit: metres(input.limit),
        }),
        ['Uw', 'Up', 'Ul'],
      ];
  }
}

function withstandStep({ withstand, withstandAssumed, fedAt, fedLineToLine }: ReachInput): Step {
  if (fedAt !== undefined) {
    const fed = subject('reach/fed-withstand', {
      voltage: volts(fedAt),
      to: fedLineToLine === true ? 'line' : 'neutral',
    });
    return taken('Uw', fed, withstand, 'V', 'assumption', TABLE);
  }
  return withstandAssumed
    ? taken('Uw', WITHSTAND, withstand, 'V', 'assumption', ASSUMED)
    : taken('Uw', WITHSTAND, withstand, 'V');
}

/**
 * Distance along the cable that a protector covers.
 *
 * Level and leads above the withstand: none. Level and leads at most half the withstand: not limited by oscillation; induction along
 * the run isn't counted. Else the margin over the slope, at least the least reach. Never past the long-run limit; the caller keeps it
 * inside one building.
 * @param input V, V/m, m
 * @returns the case, m, the margin in V and the working
 * Source: OVE Fachinformation E09:2022 Annex C; the least reach is its convention; that the level counts with its leads: IEC 62305-4
 * Annex (value from memory).
 */
export function protectiveDistance(input: ReachInput): Reach {
  const { kind, distance } = reachFigures(input);
  const margin = input.withstand - input.up - input.leads;
  const steps = [
    taken('Up', LEVEL, input.up, 'V'),
    taken('Ul', LEADS, input.leads, 'V', 'computed', ON_THIS_PAGE),
    withstandStep(input),
  ];
  const [what, uses] = caseOf(input, kind);
  const result = computed('lp', what, {
    value: distance,
    unit: 'm',
    sure: kind === 'unlimited' ? 'memory' : 'published',
    uses,
    source: kind === 'unlimited' ? EFFECTIVE : SOURCE,
  });
  return { kind, distance, margin, working: workingOf(steps, result) };
}
