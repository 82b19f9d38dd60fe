import { PlanSchema, type Plan } from '../model/plan.js';
import { reason, type Reason } from '../model/reason.js';
import { isObject, itemInEnglish, SENTENCE_FIELDS, withEnglish } from '../words/english-beside.js';
import { isReason } from '../words/reasons/say.js';
import { protectorInEnglish } from '../words/protector-in-english.js';
import { withBasis } from './basis-of-lengths.js';
import { earlierProtector } from './earlier-protector.js';
import { jsonText } from './json.js';
import { eachOf, protectorData } from './protector-data.js';

type Json = Readonly<Record<string, unknown>>;

/** What stands beside a sentence as its data. */
const BESIDE: ReadonlySet<string> = new Set(['code', 'values']);

/**
 * The text of `plan.json`: data, and beside it the English sentences; keys in the order of the schema, figures rounded to 0.01,
 * but for a step's and a leakage's, which keep four significant digits; unknown figures null.
 * @param plan a plan
 * @throws Error where the plan isn't what the schema says: nothing wrong is ever written
 */
export function planJson(plan: Plan): string {
  const { openItems, accepted, ...rest } = PlanSchema.parse(plan);
  const items = openItems.map(itemInEnglish);
  const settled = accepted?.map((item) => ({ ...itemInEnglish(item), by: item.by, date: item.date }));
  const written = withEnglish({ ...rest, protectors: rest.protectors.map(protectorInEnglish) }) as Json;
  // The items stand where the schema has them: behind what has no protector.
  const entries = Object.entries(written).flatMap(([key, value]) =>
    key === 'notPlaced'
      ? [[key, value], ['openItems', items], ...(settled ? [['accepted', settled]] : [])]
      : [[key, value]],
  );
  return jsonText(Object.fromEntries(entries) as Json);
}

const asWritten = (text: string): Reason => reason('earlier/as-written', { text });

/** A step of a `plan.json`; what an earlier shuntbook wrote has words and no code. */
function stepData(step: Json): Json {
  const { symbol, value, unit, sure, says, formula, substituted, source, code, values, uses, cites } = step;
  if (code !== undefined) return { symbol, code, values, value, unit, sure, uses, source: cites };
  return {
    symbol,
    code: 'earlier/as-written',
    values: { says, formula, substituted },
    value,
    unit,
    sure,
    uses: symbolsIn(String(formula)),
    source: asWritten(String(source)),
  };
}

/** The symbols that a formula of an earlier shuntbook names: its text is all that it wrote. */
function symbolsIn(formula: string): readonly string[] {
  return [...new Set(formula.match(/[\p{L}/][\p{L}\d/,']*/gu) ?? [])];
}

/**
 * The data of what a `plan.json` holds: the sentences left out again; of an earlier version the sentences are all there is.
 * @param value as parsed
 * @param basis of the plan, as it stands there
 */
function withoutEnglish(value: unknown, basis: unknown): unknown {
  if (Array.isArray(value)) return value.map((one: unknown) => withoutEnglish(one, basis));
  if (!isObject(value)) return value;
  if ('symbol' in value && 'substituted' in value) return stepData(value);
  if ('text' in value && isReason(value)) return withBasis(value, basis);
  const { cites }: Json = value;
  const out: Record<string, unknown> = {};
  for (const [key, inner] of Object.entries(value)) {
    if (SENTENCE_FIELDS.has(key) && typeof inner === 'string' && isReason(value))
      out[key] = withBasis(value, basis);
    else if (key === 'because' && inner === '') out[key] = null;
    else if (key === 'title' && 'steps' in value) out[key] = asWritten(String(inner));
    else if (key === 'sources' && Array.isArray(inner))
      out[key] = cites ?? inner.map((text: unknown) => asWritten(String(text)));
    else if (!(BESIDE.has(key) && isReason(value)) && key !== 'cites')
      out[key] = withoutEnglish(inner, basis);
  }
  return out;
}

/** An item of a `plan.json`; what an earlier shuntbook wrote has sentences and no values. */
function itemData(item: unknown): unknown {
  if (!isObject(item) || 'values' in item) return item;
  const { message, found, expected, hint } = item;
  return { ...item, values: { asWritten: { message, found, expected, hint } } };
}

/** What stands in a `plan.json`. */
export interface ReadPlan {
  readonly plan: Plan;
  /** Version of the file: below 2 it was made by an earlier shuntbook. */
  readonly version: number;
}

/**
 * Reads the parsed text of a `plan.json`, of this version or an earlier one.
 * @param json what `JSON.parse` gave
 * @returns the plan; undefined where it is none
 */
export function readPlan(json: unknown): ReadPlan | undefined {
  if (!isObject(json)) return undefined;
  const version = json['version'];
  if (version !== 1 && version !== 2) return undefined;
  const { openItems, accepted, ...rest } = json;
  const items = Array.isArray(openItems) ? openItems.map(itemData) : openItems;
  const data = withoutEnglish(rest, json['basis']) as Json;
  const protectors = eachOf(data['protectors'], version === 1 ? earlierProtector : protectorData);
  const plan = PlanSchema.safeParse({
    ...data,
    version: 2,
    protectors,
    openItems: items,
    ...(accepted === undefined ? {} : { accepted }),
  });
  return plan.success ? { plan: plan.data, version } : undefined;
}
