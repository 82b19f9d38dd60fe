type Json = Readonly<Record<string, unknown>>;

const isObject = (value: unknown): value is Json =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** What stands beside the texts of a plan of this version, and in none of version 1. */
const ADDED: ReadonlySet<string> = new Set([
  'code',
  'values',
  'wire',
  'systemCode',
  'groundingCode',
  'measuring',
  'isolation',
  'groundTerminal',
  'uses',
  'cites',
]);

function textsAlone(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(textsAlone);
  if (!isObject(value)) return value;
  if ('text' in value && 'code' in value && 'values' in value) return value['text'];
  const texts = Object.entries(value).filter(([key]) => !ADDED.has(key));
  return Object.fromEntries(texts.map(([key, inner]) => [key, textsAlone(inner)]));
}

/**
 * A plan as version 1 had it: texts alone, but for open items, which had codes then too.
 * @param text of a `plan.json` of this version
 */
export function versionOne(text: string): Json {
  const { openItems, ...rest } = JSON.parse(text) as Json;
  const items = (openItems as readonly Json[]).map((item) =>
    Object.fromEntries(Object.entries(item).filter(([key]) => key !== 'values')),
  );
  const entries = Object.entries(textsAlone(rest) as Json).flatMap(([key, value]) =>
    key === 'notPlaced' ? [[key, value] as const, ['openItems', items] as const] : [[key, value] as const],
  );
  return { ...Object.fromEntries(entries), version: 1 };
}
