import { rectifiedVoltage } from '../../electrical/wind.js';
import { taken, workingOf } from '../../electrical/working.js';
import type { PlacedNote } from '../../model/open-item.js';
import type { Given, RatingDecision } from '../../model/rule.js';
import { isNec } from '../../model/editions.js';
import { volts } from '../../model/quantity.js';
import { reason } from '../../model/reason.js';
import { subject, type Working } from '../../model/step.js';
import { about } from '../../model/message.js';
import { FACT_MESSAGES, RATE_MESSAGES } from '../../model/messages/rate.js';
import type { AnyRatingRule, RatingFacts, TurbineFacts } from '../rating-facts.js';
import { clause } from '../clauses.js';
import { practice, sources, type Cited } from '../sources.js';

const FACTS = ['basis', 'turbines', 'converters'] as const;
type Facts = Given<RatingFacts, typeof FACTS>;

const NO_TURBINE = reason('turbine-voltage/no-turbine');
const NOT_KNOWN = reason('turbine-voltage/not-known');
const CURRENT_NEEDED = reason('needed/turbine-current');
const VOLTAGE_NEEDED = reason('needed/turbine-voltage');

const UNLOADED_LINE_TO_LINE = practice(
  'The open-circuit voltage at the highest unloaded speed, line to line, since the phases float.',
);
const CITED_UNDER_NEC: readonly Cited[] = ['voltage-to-ground', 'maker-instructions', UNLOADED_LINE_TO_LINE];

export const turbineVoltage = {
  id: 'rate/turbine-voltage',
  title: 'Highest voltage of a wind or hydro turbine',
  why: 'A turbine that spins freely gives far more voltage than one that is charging a battery.',
  sources: sources({
    'nec-2017': CITED_UNDER_NEC,
    'nec-2020': CITED_UNDER_NEC,
    'nec-2023': CITED_UNDER_NEC,
    iec: [UNLOADED_LINE_TO_LINE],
  }),
  answers: 'rate/mcov',
  facts: FACTS,
  decide(f: Facts): RatingDecision {
    if (f.turbines.length === 0) return { outcome: 'outside', because: NO_TURBINE };
    const notes: PlacedNote[] = [];
    let best: Working | undefined;
    let unknown = false;
    for (const turbine of f.turbines) {
      if (!turbine.output) {
        if (!turbine.unreadable.has('output')) {
          const p = { tag: turbine.tag, why: CURRENT_NEEDED };
          notes.push(about(FACT_MESSAGES.output, p, turbine.tag, 'output'));
        }
        unknown = true;
      }
      const voltage = turbine.openCircuitVoltage;
      if (!voltage) {
        if (!turbine.unreadable.has('open_circuit_voltage')) {
          const p = { tag: turbine.tag, why: VOLTAGE_NEEDED };
          notes.push(about(FACT_MESSAGES.open_circuit_voltage, p, turbine.tag, 'open_circuit_voltage'));
        }
        unknown = true;
        continue;
      }
      checkConverters(f, turbine, voltage.value, notes);
      const lineToLine = turbine.output === 'three-phase';
      const stated = subject('turbine-voltage/stated', { turbine: turbine.tag, lineToLine });
      const working = workingOf([], taken('Voc', stated, voltage.value, 'V', 'stated', voltage.origin));
      if (!best || working.value > best.value) best = working;
      if (turbine.output === 'three-phase') {
        const { tag } = turbine;
        const asking = isNec(f.basis) ? clause('uses-not-permitted', f.basis) : undefined;
        notes.push(
          asking
            ? about(RATE_MESSAGES.turbineFloats, { tag, clause: asking.clause }, tag, '')
            : about(RATE_MESSAGES.turbineUnearthed, { tag }, tag, ''),
        );
      }
    }
    if (unknown || !best) return { outcome: 'unknown', because: NOT_KNOWN, notes };
    return { outcome: 'asks', value: best.value, working: best, notes };
  },
} satisfies AnyRatingRule;

function checkConverters(f: Facts, turbine: TurbineFacts, open: number, notes: PlacedNote[]): void {
  const rectified = turbine.output === 'three-phase';
  const reached = rectified ? rectifiedVoltage({ lineToLine: open }).value : open;
  for (const converter of f.converters) {
    const most = converter.maxDcVoltage?.value;
    if (most === undefined || reached <= most) continue;
    const p = {
      tag: turbine.tag,
      reached: volts(reached),
      rectified,
      converter: converter.tag,
      most: volts(most),
    };
    notes.push(about(RATE_MESSAGES.rectifiedAbove, p, turbine.tag, 'open_circuit_voltage'));
  }
}
