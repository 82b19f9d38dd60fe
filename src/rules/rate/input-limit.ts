import { taken, workingOf } from '../../electrical/working.js';
import type { Given, RatingDecision } from '../../model/rule.js';
import type { PortClass } from '../../model/words.js';
import { about } from '../../model/message.js';
import { FACT_MESSAGES } from '../../model/messages/rate.js';
import { reason, type Reason } from '../../model/reason.js';
import { subject } from '../../model/step.js';
import type { AnyRatingRule, ConverterFacts, RatingFacts } from '../rating-facts.js';
import { practice, sources, type Cited } from '../sources.js';

const FACTS = ['inputUse', 'arrays', 'turbines', 'converters', 'port'] as const;

const NO_DC_INPUT = reason('input-limit/no-dc-input');
const NO_CONVERTER = reason('input-limit/no-converter');
const SOURCE_LISTED = reason('input-limit/source-listed');
const NOT_KNOWN = reason('input-limit/not-known');
const UNFED = reason('input-limit/combiner-unfed');
const NEEDED = reason('needed/input-bound');

const BOUND_BY_CONVERTER = practice(
  'A source may not give more than its converter bears, so that figure bounds it.',
);
const CITED_UNDER_NEC: readonly Cited[] = ['maker-instructions', BOUND_BY_CONVERTER];

export const inputLimit = {
  id: 'rate/input-limit',
  title: 'Highest voltage that a converter’s input bears',
  why: 'Where the list doesn’t say what feeds an input, the most that the input bears is the safe figure.',
  sources: sources({
    'nec-2017': CITED_UNDER_NEC,
    'nec-2020': CITED_UNDER_NEC,
    'nec-2023': CITED_UNDER_NEC,
    iec: [BOUND_BY_CONVERTER],
  }),
  answers: 'rate/mcov',
  facts: FACTS,
  decide(f: Given<RatingFacts, typeof FACTS>): RatingDecision {
    const isBare = f.arrays.length === 0 && f.turbines.length === 0;
    const isInput = f.port === 'dc-in' && (f.inputUse !== 'fed' || isBare);
    const isUnfed = f.port === 'output' && isBare && f.converters.length > 0;
    if (!isInput && !isUnfed) return { outcome: 'outside', because: whyOutside(f.port, isBare) };
    const limit = highest(f.converters);
    if (limit?.maxDcVoltage) {
      const fact = limit.maxDcVoltage;
      const bears = subject('input-limit/converter', { converter: limit.tag });
      const working = workingOf([], taken('Umax', bears, fact.value, 'V', 'stated', fact.origin));
      // Only where no source names the converter does it bound what comes: a combiner is such a source.
      const named = isUnfed || f.inputUse === 'fed';
      return { outcome: 'asks', value: fact.value, working, notes: [], ...(named && { bound: UNFED }) };
    }
    const notes = f.converters
      .filter((c) => !c.unreadable.has('max_dc_voltage'))
      .map((c) => {
        const p = { tag: c.tag, why: NEEDED };
        return about(FACT_MESSAGES.max_dc_voltage, p, c.tag, 'max_dc_voltage');
      });
    return { outcome: 'unknown', because: NOT_KNOWN, notes };
  },
} satisfies AnyRatingRule;

function whyOutside(port: PortClass, isBare: boolean): Reason {
  if (port !== 'dc-in' && port !== 'output') return NO_DC_INPUT;
  return isBare ? NO_CONVERTER : SOURCE_LISTED;
}

/** Of several converters behind one source the one that bears most: so much may stand there. */
function highest(converters: readonly ConverterFacts[]): ConverterFacts | undefined {
  let most: ConverterFacts | undefined;
  for (const one of converters) {
    if (one.maxDcVoltage && one.maxDcVoltage.value > (most?.maxDcVoltage?.value ?? 0)) most = one;
  }
  return most;
}
