import { controlCircuitVoltage } from '../../electrical/control.js';
import { statedAt } from '../../electrical/working.js';
import type { Given, RatingDecision } from '../../model/rule.js';
import { about } from '../../model/message.js';
import { FACT_MESSAGES } from '../../model/messages/rate.js';
import { reason } from '../../model/reason.js';
import type { AnyRatingRule, RatingFacts } from '../rating-facts.js';
import { practice, sources, type Cited } from '../sources.js';

const FACTS = [
  'port',
  'tag',
  'controlVoltage',
  'regulated',
  'lowestTemp',
  'unreadable',
  'thresholds',
] as const;

const NO_CIRCUIT = reason('control-voltage/no-circuit');
const NOT_STATED = reason('control-voltage/not-stated');
const NEEDED = reason('needed/control-part');

const CITED_UNDER_EVERY_BASIS: readonly Cited[] = [
  practice(
    'DC: 115 % of the nominal, or the charge voltage of a lead-acid battery of that nominal unless the supply is regulated; AC: 125 % of the nominal.',
  ),
];

export const controlVoltage = {
  id: 'rate/control-voltage',
  title: 'Highest voltage of a control circuit',
  why: 'A control circuit that hangs on a battery follows that battery while it is charged.',
  sources: sources({
    'nec-2017': CITED_UNDER_EVERY_BASIS,
    'nec-2020': CITED_UNDER_EVERY_BASIS,
    'nec-2023': CITED_UNDER_EVERY_BASIS,
    iec: CITED_UNDER_EVERY_BASIS,
  }),
  answers: 'rate/mcov',
  facts: FACTS,
  decide(f: Given<RatingFacts, typeof FACTS>): RatingDecision {
    if (f.port !== 'terminals') return { outcome: 'outside', because: NO_CIRCUIT };
    if (!f.controlVoltage) {
      const p = { tag: f.tag, why: NEEDED };
      const asked = !f.unreadable.has('control_voltage');
      return {
        outcome: 'unknown',
        because: NOT_STATED,
        notes: asked ? [about(FACT_MESSAGES.control_voltage, p, f.tag, 'control_voltage')] : [],
      };
    }
    const found = controlCircuitVoltage({
      control: f.controlVoltage.value,
      regulated: f.regulated,
      continuousShare: f.thresholds.continuousShare,
      acShare: f.thresholds.controlAcShare,
      lowestTemp: f.lowestTemp?.value,
    });
    const working = statedAt(found.working, { U: f.controlVoltage.origin });
    return { outcome: 'asks', value: found.value, working, notes: [] };
  },
} satisfies AnyRatingRule;
