import { rectifiedVoltage } from '../../electrical/wind.js';
import { taken, workingOf } from '../../electrical/working.js';
import type { Working } from '../../model/fact.js';
import type { PlacedNote } from '../../model/message.js';
import type { Given, RatingDecision } from '../../model/rule.js';
import { isNec } from '../../model/editions.js';
import { figure } from '../../words/figures.js';
import { about } from '../../model/message.js';
import { FACT_MESSAGES, RATE_MESSAGES } from '../../model/messages/rate.js';
import { cited } from '../../words/origin.js';
import type { AnyRatingRule, RatingFacts, TurbineFacts } from '../rating-facts.js';
import { ALL, practice, sources } from '../sources.js';

const FACTS = ['basis', 'turbines', 'converters'] as const;
type Facts = Given<RatingFacts, typeof FACTS>;

export const turbineVoltage = {
  id: 'rate/turbine-voltage',
  title: 'Highest voltage of a wind or hydro turbine',
  why: 'A turbine that spins freely gives far more voltage than one that is charging a battery.',
  sources: sources({
    of: ALL,
    cite: ['voltage-to-ground', 'maker-instructions'],
    also: practice(
      'The open-circuit voltage at the highest unloaded speed, line to line, since the phases float.',
    ),
  }),
  answers: 'rate/mcov',
  facts: FACTS,
  decide(f: Facts): RatingDecision {
    if (f.turbines.length === 0) return { outcome: 'outside', because: 'no turbine is behind this port' };
    const notes: PlacedNote[] = [];
    let best: Working | undefined;
    let unknown = false;
    for (const turbine of f.turbines) {
      if (!turbine.output) {
        if (!turbine.unreadable.has('output')) {
          const p = {
            tag: turbine.tag,
            why: 'whether it gives alternating or direct current decides the protector',
          };
          notes.push(about(FACT_MESSAGES.output, p, turbine.tag, 'output'));
        }
        unknown = true;
      }
      const voltage = turbine.openCircuitVoltage;
      if (!voltage) {
        if (!turbine.unreadable.has('open_circuit_voltage')) {
          const p = {
            tag: turbine.tag,
            why: 'only the maker knows the voltage at the highest unloaded speed',
          };
          notes.push(about(FACT_MESSAGES.open_circuit_voltage, p, turbine.tag, 'open_circuit_voltage'));
        }
        unknown = true;
        continue;
      }
      checkConverters(f, turbine, voltage.value, notes);
      const says = `Open-circuit voltage of ${turbine.tag} at the highest unloaded speed${turbine.output === 'three-phase' ? ', line to line' : ''}`;
      const working = workingOf([], taken('Voc', says, voltage.value, 'V', 'stated', cited(voltage.origin)));
      if (!best || working.value > best.value) best = working;
      if (turbine.output === 'three-phase') {
        const entry = isNec(f.basis) ? RATE_MESSAGES.turbineFloats : RATE_MESSAGES.turbineUnearthed;
        notes.push(about(entry, { tag: turbine.tag }, turbine.tag, ''));
      }
    }
    if (unknown || !best)
      return { outcome: 'unknown', because: 'the voltage of a turbine isn’t known', notes };
    return { outcome: 'asks', value: best.value, working: best, notes };
  },
} satisfies AnyRatingRule;

function checkConverters(f: Facts, turbine: TurbineFacts, volts: number, notes: PlacedNote[]): void {
  const reached = turbine.output === 'three-phase' ? rectifiedVoltage({ lineToLine: volts }).value : volts;
  for (const converter of f.converters) {
    const most = converter.maxDcVoltage?.value;
    if (most === undefined || reached <= most) continue;
    const p = {
      tag: turbine.tag,
      volts: `${figure(reached, 'V')}${turbine.output === 'three-phase' ? ' behind the rectifier' : ''}`,
      converter: converter.tag,
      most: figure(most, 'V'),
    };
    notes.push(about(RATE_MESSAGES.rectifiedAbove, p, turbine.tag, 'open_circuit_voltage'));
  }
}
