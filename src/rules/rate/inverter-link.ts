import { arrayFloorFromInverter } from '../../electrical/continuous-voltage.js';
import type { Given, RatingDecision } from '../../model/rule.js';
import { volts } from '../../model/quantity.js';
import { reason } from '../../model/reason.js';
import type { Working } from '../../model/step.js';
import { about } from '../../model/message.js';
import { FACT_MESSAGES, RATE_MESSAGES } from '../../model/messages/rate.js';
import type { AnyRatingRule, ConverterFacts, RatingFacts } from '../rating-facts.js';
import { practice, sources, type Cited } from '../sources.js';

const FACTS = ['basis', 'tag', 'arrays', 'inputUse', 'port', 'converters', 'inverterDcLink'] as const;

const TURNED_OFF = reason('inverter-link/turned-off');
const NO_ARRAY = reason('inverter-link/no-array');
const NO_INVERTER = reason('inverter-link/no-inverter');
const NOT_STATED = reason('inverter-link/system-not-stated');
const NEEDED = reason('needed/inverter-system');

const CITED_UNDER_EVERY_BASIS: readonly Cited[] = [
  practice(
    'Derived: the poles of an array follow the peak of the AC side of an inverter without isolation; ask the maker.',
  ),
];

export const inverterLink = {
  id: 'rate/inverter-link',
  title: 'An array lifted by the DC link of its inverter',
  why: 'An inverter without isolation can lift the wires of the array above what the modules give by themselves.',
  sources: sources({
    'nec-2017': CITED_UNDER_EVERY_BASIS,
    'nec-2020': CITED_UNDER_EVERY_BASIS,
    'nec-2023': CITED_UNDER_EVERY_BASIS,
    iec: CITED_UNDER_EVERY_BASIS,
  }),
  answers: 'rate/mcov',
  facts: FACTS,
  decide(f: Given<RatingFacts, typeof FACTS>): RatingDecision {
    if (!f.inverterDcLink) return { outcome: 'outside', because: TURNED_OFF };
    const fromArray = f.arrays.length > 0 || (f.port === 'dc-in' && f.inputUse !== 'fed');
    if (!fromArray) return { outcome: 'outside', because: NO_ARRAY };
    const inverters = f.converters.filter((c) => c.kind === 'grid-tie-inverter' && c.isolated !== true);
    if (inverters.length === 0) return { outcome: 'outside', because: NO_INVERTER };
    let best: { working: Working; inverter: ConverterFacts } | undefined;
    for (const inverter of inverters) {
      if (!inverter.acOut) continue;
      const floor = arrayFloorFromInverter({ system: inverter.acOut, basis: f.basis });
      if (!best || floor.value > best.working.value) best = { working: floor.working, inverter };
    }
    if (!best) {
      const notes = inverters
        .filter((c) => !c.unreadable.has('ac_out'))
        .map((c) => {
          const p = { tag: c.tag, why: NEEDED };
          return about(FACT_MESSAGES.ac_out, p, c.tag, 'ac_out');
        });
      return { outcome: 'unknown', because: NOT_STATED, notes };
    }
    const p = { tag: f.tag, inverter: best.inverter.tag, least: volts(best.working.value) };
    return {
      outcome: 'asks',
      value: best.working.value,
      working: best.working,
      notes: [],
      whereItDecides: [about(RATE_MESSAGES.liftedByInverter, p, best.inverter.tag, 'isolated')],
    };
  },
} satisfies AnyRatingRule;
