import type { Calculation, PlannedProtector } from '../../../model/plan.js';
import { figure } from '../../../words/figures.js';
import { paperLength, reachWords, type LengthUnit } from '../../../words/lengths.js';
import { operand } from './operand.js';

type Step = Calculation['steps'][number];
type Figures = PlannedProtector['figures'];
type ReachValues = Extract<Step, { readonly code: 'reach/metres' }>['values'];

const FOOT = 0.3048;

/** How far a protector covers, worked out. */
export interface ReachLine {
  readonly working: string;
  /** The lead voltage as the working has it: the whole line rounds it once. */
  readonly leads: string | undefined;
}

/** `(1500 V - 600 V - 192 V) / 25 V/m = 28.3 m`; where a bound held instead, `= 4.7 m, not below 10 m`. */
function byOscillation(values: ReachValues, figures: Figures, unit: LengthUnit): ReachLine {
  const { level, leads, withstand, slope, least, limit } = values;
  const quotient = (volts: number): number => (withstand.value - level.value - volts) / slope.value;
  const exact = quotient(leads.value);
  const isBelow = exact < least.value;
  const isAbove = exact > limit.value;
  const told = (metres: number): string => paperLength(metres, unit, 'down');
  const used = operand(leads.value, (volts) => {
    const of = quotient(volts);
    if (of < 0 || of < least.value !== isBelow || of > limit.value !== isAbove) return false;
    return isBelow || isAbove || told(of) === reachWords(figures, unit);
  });
  const perLength = unit === 'ft' ? figure(slope.value * FOOT, 'V/ft') : figure(slope.value, 'V/m');
  const margin = `(${figure(withstand.value, 'V')} - ${figure(level.value, 'V')} - ${used} V) / ${perLength}`;
  if (isBelow) {
    const metric = unit === 'ft' ? ` (${figure(least.value, 'm')})` : '';
    const working = `${margin}: less than the least reach of the method, ${told(least.value)}${metric}`;
    return { working, leads: used };
  }
  const bound = isAbove ? `; no more than ${told(limit.value)} counts` : '';
  return { working: `${margin} = ${told(quotient(Number(used)))}${bound}`, leads: used };
}

/**
 * How far along its cable a protector covers, in a line whose printed figures give the printed result.
 * @param last step of its calculation, figures in V, V/m and m
 * @param unit the job’s unit of length
 */
export function reachLine(last: Step, figures: Figures, unit: LengthUnit): ReachLine {
  switch (last.code) {
    case 'reach/unlimited': {
      const { level, leads, withstand } = last.values;
      const used = operand(leads.value, (volts) => level.value + volts <= withstand.value / 2);
      const isCut = (figures?.reach ?? null) !== null;
      const bound = isCut ? `; no more than ${paperLength(last.value, unit, 'down')} counts` : '';
      const working = `${figure(level.value, 'V')} + ${used} V ≤ ${figure(withstand.value, 'V')} / 2${bound}`;
      return { working, leads: used };
    }
    case 'reach/none': {
      const { level, leads, withstand } = last.values;
      const used = operand(leads.value, (volts) => level.value + volts > withstand.value);
      const working = `${figure(level.value, 'V')} + ${used} V > ${figure(withstand.value, 'V')}`;
      return { working, leads: used };
    }
    case 'reach/metres':
      return byOscillation(last.values, figures, unit);
    default:
      return { working: '', leads: undefined };
  }
}
