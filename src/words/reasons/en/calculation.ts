import type { CalculationReasons, FeedingLine, RatingRuleId } from '../../../model/reasons/calculation.js';
import { measure } from '../../figures.js';
import type { Sayings } from '../sayings.js';

/** What each rating rule works out: its title on the rulebook's page; a test holds one for each of the rulebook. */
export const RATING_TITLES: Readonly<Record<RatingRuleId, string>> = {
  'rate/ac-voltage': 'Highest continuous voltage of an AC system to ground',
  'rate/array-current': 'Short-circuit current of an array',
  'rate/array-voltage': 'Highest voltage of an array to ground',
  'rate/battery-voltage': 'Highest charge voltage of a battery bus',
  'rate/control-voltage': 'Highest voltage of a control circuit',
  'rate/fault-current': 'Fault current at an AC port or a battery bus',
  'rate/input-limit': 'Highest voltage that a converter’s input bears',
  'rate/inverter-link': 'An array lifted by the DC link of its inverter',
  'rate/nominal-current': 'Nominal discharge current that a place asks for',
  'rate/turbine-voltage': 'Highest voltage of a wind or hydro turbine',
  'rate/withstand': 'Impulse withstand of the equipment behind a protector',
};

const LINES: Readonly<Record<FeedingLine, string>> = {
  'lv-overhead': 'low-voltage overhead line',
  'lv-underground': 'low-voltage cable',
  'hv-overhead': 'high-voltage overhead line',
  'hv-underground': 'high-voltage cable',
};

/** A plan that another version wrote may name a rule that this one doesn’t know. */
const titleOf = (rule: RatingRuleId): string => RATING_TITLES[rule] ?? rule;

/** The titles of calculations, in English. */
export const CALCULATION: Sayings<CalculationReasons> = {
  'calculation/of-rule': ({ rule }) => titleOf(rule),
  'calculation/deciding': ({ rule }) => `${titleOf(rule)}: this one decides`,
  'calculation/converter-limit': ({ converter, reached }) =>
    `Highest DC voltage that ${converter} bears; the array reaches ${measure(reached)}`,
  'calculation/code-limit': ({ reached }) =>
    `Highest DC voltage that 690.7 allows here; the array reaches ${measure(reached)}`,
  'calculation/leads': ({ atHalfMetre, atOneMetre }) =>
    `Voltage of the leads as planned (at 0.5 m ${measure(atHalfMetre)}, at 1 m ${measure(atOneMetre)})`,
  'calculation/level-between': () => 'Level between two conductors',
  'calculation/reach': ({ margin }) => `Reach along the cable, with a margin of ${measure(margin)}`,
  'calculation/flash-density': () => 'Ground flash density',
  'calculation/risk-level': () => 'Calculated risk level',
  'calculation/strikes-to-line': ({ line }) =>
    `Yearly strikes to the ${LINES[line]}; those to the structure aren’t counted, no fact gives its dimensions`,
  'calculation/strikes-near-line': ({ line }) => `Yearly strikes near the ${LINES[line]}`,
  'calculation/critical-length': ({ at }) => `Critical length at ${at}`,
};
