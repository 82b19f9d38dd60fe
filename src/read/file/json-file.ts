import type { z } from 'zod';
import type { OpenItem } from '../../model/open-item.js';
import { JSON_KEY_TWICE, JSON_KEY_WRONG, JSON_NOT_VALID } from '../../model/messages/list-file.js';
import { itemAt, note } from '../../model/message.js';
import { visible } from '../../words/visible.js';
import { shownPath } from '../../words/shown-path.js';
import { keysTwice } from './json-keys.js';
import { readBytes } from './sources.js';

export type JsonReading<T> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly items: readonly OpenItem[] };

/** Line of the place that the parser names; JSON.parse says `position 12` or, in later versions, `line 2 column 5`. */
function lineOf(message: string, text: string): number {
  const line = /line (\d+)/.exec(message)?.[1];
  if (line !== undefined) return Number(line);
  const position = /position (\d+)/.exec(message)?.[1];
  if (position === undefined) return text.trimEnd().split('\n').length;
  return text.slice(0, Number(position)).split('\n').length;
}

/** Where the n-th element, the first is 0, of the next array begins; -1: it has none. */
function elementAt(text: string, from: number, n: number): number {
  const start = text.indexOf('[', from);
  let depth = 0;
  let count = 0;
  let isQuoted = false;
  for (let i = start + 1; start >= 0 && i < text.length; i += 1) {
    const c = text.charAt(i);
    if (isQuoted) {
      if (c === '\\') i += 1;
      else if (c === '"') isQuoted = false;
      continue;
    }
    if (depth === 0 && c === ']') return -1;
    if (depth === 0 && count === n && c !== ',' && c.trim() !== '') return i;
    if (c === '"') isQuoted = true;
    else if (c === '[' || c === '{') depth += 1;
    else if (c === ']' || c === '}') depth -= 1;
    else if (c === ',' && depth === 0) count += 1;
  }
  return -1;
}

/** The line on which the last key of a path stands, as well as can be told without a second parser; 0: not found. */
function lineOfKey(text: string, path: readonly PropertyKey[]): number {
  let from = 0;
  let to = text.length;
  for (const key of path) {
    const isIndex = typeof key === 'number';
    const at = isIndex ? elementAt(text, from, key) : text.indexOf(JSON.stringify(key), from);
    // A key that an element of an array lacks is that element’s fault, not that of the next which has it.
    if (at < 0 || at >= to) return from === 0 ? 0 : text.slice(0, from).split('\n').length;
    if (isIndex) {
      const next = elementAt(text, from, key + 1);
      if (next >= 0) to = next;
    }
    from = at;
  }
  return from === 0 ? 1 : text.slice(0, from).split('\n').length;
}

/** The value at a path, as JSON writes it. */
function foundAt(value: unknown, path: readonly PropertyKey[]): string {
  let found = value;
  for (const key of path) {
    if (typeof found !== 'object' || found === null || !Object.hasOwn(found, key)) return String(key);
    found = (found as Record<PropertyKey, unknown>)[key];
  }
  return typeof found === 'number' ? String(found) : JSON.stringify(found);
}

/**
 * Reads and validates a JSON file.
 * @param given its path
 * @param schema of its content
 * @returns the value, or one item for each fault; never throws
 */
export async function readJson<S extends z.ZodType>(
  given: string,
  schema: S,
): Promise<JsonReading<z.output<S>>> {
  const file = await readBytes(given);
  const path = shownPath(given);
  if (!file.ok) return { ok: false, items: [file.item] };
  const text = new TextDecoder().decode(file.bytes);
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch (error) {
    const message = error instanceof Error ? error.message : '';
    const line = lineOf(message, text);
    const item = itemAt(note(JSON_NOT_VALID, { path, found: visible(text.split('\n')[line - 1] ?? '') }), {
      file: path,
      line,
      column: '',
    });
    return { ok: false, items: [item] };
  }
  const twice = keysTwice(text).map(({ path: keys, line }) => {
    const key = keys.filter((k) => k !== '').join('.');
    return itemAt(note(JSON_KEY_TWICE, { path, key: visible(key) }), { file: path, line, column: key });
  });
  if (twice.length > 0) return { ok: false, items: twice };
  const parsed = schema.safeParse(value);
  if (parsed.success) return { ok: true, value: parsed.data };
  const items = parsed.error.issues.flatMap((issue) => {
    const wrong = (keys: readonly PropertyKey[], found: string, because: string): OpenItem => {
      const key = keys.map(String).join('.');
      const p = { path, key: visible(key), found: visible(found), because: visible(because) };
      return itemAt(note(JSON_KEY_WRONG, p), { file: path, line: lineOfKey(text, keys), column: key });
    };
    return issue.code === 'unrecognized_keys'
      ? issue.keys.map((key) => wrong([...issue.path, key], key, 'there is no such key'))
      : [wrong(issue.path, foundAt(value, issue.path), issue.message)];
  });
  return { ok: false, items };
}
