import type { OpenItem } from '../model/message.js';
import type { Reason } from '../model/reason.js';
import type { MessageTold } from './message-kit.js';
import { told } from './messages/told.js';
import { isReason, say } from './reasons/say.js';

type Json = Readonly<Record<string, unknown>>;

/** True for an object that isn't a list. */
export function isObject(value: unknown): value is Json {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

const data = ({ code, values }: Reason): Json => ({ code, values });

/**
 * Data with the English sentence of each reason beside it: `because` with `code` and `values` beside it; a reason that stands
 * under another name as `{ text, code, values }`.
 * @param value plain data
 */
export function withEnglish(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(withEnglish);
  if (!isObject(value)) return value;
  if (isReason(value)) return { text: say(value), ...data(value) };
  const out: Record<string, unknown> = {};
  for (const [key, inner] of Object.entries(value)) {
    if (key === 'because' && isReason(inner)) Object.assign(out, { because: say(inner) }, data(inner));
    else out[key] = withEnglish(inner);
  }
  return out;
}

/** An open item with its English sentences, as `plan.json` and `--json` have it. */
export function itemInEnglish(item: OpenItem): OpenItem & MessageTold {
  const { message, found, expected, hint } = told(item);
  const { code, severity, equipment, file, line, column, who, values } = item;
  return { code, severity, message, equipment, file, line, column, found, expected, hint, who, values };
}
