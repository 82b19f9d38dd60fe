type Json = Readonly<Record<string, unknown>>;

/** What stands beside the texts of a plan of this version, and in none of version 1. */
const ADDED = new Set([
  'code',
  'values',
  'uses',
  'cites',
  'wire',
  'systemCode',
  'groundingCode',
  'stopAtAny',
]);

function textsAlone(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(textsAlone);
  if (typeof value !== 'object' || value === null) return value;
  if ('text' in value && 'code' in value && 'values' in value) return value.text;
  const kept = Object.entries(value).filter(([key]) => !ADDED.has(key));
  return Object.fromEntries(kept.map(([key, inner]) => [key, textsAlone(inner)]));
}

/**
 * A plan as version 1 had it: texts alone, its items left out, since they have codes of their own.
 * @param text of a `plan.json` of this version
 */
export function versionOne(text: string): Json {
  return { ...(textsAlone(JSON.parse(text)) as Json), version: 1, openItems: [] };
}
