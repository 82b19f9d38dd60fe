import type { OpenItem } from '../model/open-item.js';
import type { Reason } from '../model/reason.js';
import type { Step } from '../model/step.js';
import type { MessageTold } from './message-kit.js';
import { told } from './messages/told.js';
import { isReason, say } from './reasons/say.js';
import { stepTold } from './steps/told.js';

type Json = Readonly<Record<string, unknown>>;

/** True for an object that isn't a list. */
export function isObject(value: unknown): value is Json {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

const data = ({ code, values }: Reason): Json => ({ code, values });

/** Fields that hold one reason, which `plan.json` has as its sentence, with `code` and `values` beside it. */
export const SENTENCE_FIELDS: ReadonlySet<string> = new Set(['because', 'title']);

/** True for a step of a calculation, as data or as `plan.json` has it. */
export function isStep(value: Json): value is Json & Step {
  return 'symbol' in value && 'sure' in value && isReason(value);
}

/** A step with its English words beside its data; the data of its source as `cites`. */
function stepInEnglish(step: Step): Json {
  const { symbol, code, values, value, unit, sure, uses, source: cites } = step;
  const { says, formula, substituted, source } = stepTold(step);
  return { symbol, says, formula, substituted, value, unit, sure, source, code, values, uses, cites };
}

/**
 * Data with the English sentence of each reason beside it: `because` and `title` with `code` and `values` beside them, `sources`
 * with their data as `cites`, a step with its words; a reason that stands under another name as `{ text, code, values }`.
 * @param value plain data
 */
export function withEnglish(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(withEnglish);
  if (!isObject(value)) return value;
  if (isStep(value)) return stepInEnglish(value);
  if (isReason(value)) return { text: say(value), ...data(value) };
  const out: Record<string, unknown> = {};
  for (const [key, inner] of Object.entries(value)) {
    if (SENTENCE_FIELDS.has(key) && isReason(inner)) Object.assign(out, { [key]: say(inner) }, data(inner));
    else if (key === 'sources' && Array.isArray(inner) && inner.every(isReason))
      Object.assign(out, { sources: inner.map((of) => say(of)), cites: inner.map(data) });
    // Of what is met there is nothing to say.
    else out[key] = key === 'because' && inner === null ? '' : withEnglish(inner);
  }
  return out;
}

/** An open item with its English sentences, as `plan.json` and `--json` have it. */
export function itemInEnglish(item: OpenItem): OpenItem & MessageTold {
  const { message, found, expected, hint } = told(item);
  const { code, severity, equipment, file, line, column, who, values } = item;
  return { code, severity, message, equipment, file, line, column, found, expected, hint, who, values };
}
