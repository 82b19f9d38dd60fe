import { ITEM_ORDER } from './item-groups.js';
import { byNaturalOrder } from './natural-order.js';
import type { OpenItem } from './open-item.js';
import { byGravity, type Severity } from './words.js';

const RANKS: ReadonlyMap<string, number> = new Map(
  ITEM_ORDER.flatMap((codes, rank) => codes.map((code) => [code, rank] as const)),
);

/** The group of a code in `ITEM_ORDER`; one that isn't there, of a plan of another version, stands last. */
export function rankOf(code: string): number {
  return RANKS.get(code) ?? ITEM_ORDER.length;
}

/** What places an item among others. */
interface Ranked {
  readonly severity: Severity;
  readonly code: string;
}

/** Compares for a sort that lists the gravest first, and of one severity what leads. */
export function byLead(a: Ranked, b: Ranked): number {
  if (a.code === b.code && a.severity === b.severity) return 0;
  return byGravity(a.severity, b.severity) || rankOf(a.code) - rankOf(b.code);
}

/** Letters, figures and what joins them: a text of values has such a word as it is. */
const PLAIN_WORD = /^[\w -]*$/;

/** The first value of an item where it is a plain word, and its name; undefined where it is something else. */
function firstWord(values: object): { readonly name: string; readonly word: string } | undefined {
  const of: Readonly<Record<string, unknown>> = { ...values };
  for (const name in of) {
    const word = of[name];
    return typeof word === 'string' && PLAIN_WORD.test(word) ? { name, word } : undefined;
  }
  return undefined;
}

/** Items alike in all else: by their values, so that the order is the same in every language. */
function byValues(a: OpenItem, b: OpenItem, texts: Map<OpenItem, string>): number {
  const first = firstWord(a.values);
  const other = first && firstWord(b.values);
  // Most differ in the field that they are about: what their texts would say too, at many times the cost.
  if (first && other && first.name === other.name && first.word !== other.word)
    return `${first.word}"` < `${other.word}"` ? -1 : 1;
  const x = valuesOf(a, texts);
  const y = valuesOf(b, texts);
  return x < y ? -1 : x > y ? 1 : 0;
}

function valuesOf(item: OpenItem, texts: Map<OpenItem, string>): string {
  let text = texts.get(item);
  if (text === undefined) {
    text = JSON.stringify(item.values);
    texts.set(item, text);
  }
  return text;
}

/**
 * The items of one job as they are listed everywhere.
 * @param items in any order; they are left as they are
 * @returns by severity, what leads, equipment in natural order, code, values, line
 */
export function inOrder(items: readonly OpenItem[]): OpenItem[] {
  const texts = new Map<OpenItem, string>();
  return [...items].sort(
    (a, b) =>
      byLead(a, b) ||
      byNaturalOrder(a.equipment, b.equipment) ||
      byNaturalOrder(a.code, b.code) ||
      byValues(a, b, texts) ||
      a.line - b.line,
  );
}
