import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { SEVERITIES, WHOS } from '../../src/model/words.js';
import { note, type MessageEntry } from '../../src/text/message-kit.js';

const folder = new URL('../../src/text/messages/', import.meta.url);
const files = readdirSync(folder).filter((name) => name.endsWith('.ts'));

/** Stands in for whatever a sentence needs: a word, a number or a list. */
class Anything extends Array<string> {
  override toString(): string {
    return 'thing';
  }
  toFixed(): string {
    return '1';
  }
  replace(): string {
    return 'thing';
  }
  startsWith(): boolean {
    return false;
  }
  toUpperCase(): string {
    return 'THING';
  }
}
const parameters = new Proxy({}, { get: () => Anything.of('thing') });

/** A parameter that is handed through whole is the stand-in itself. */
const asText = (value: unknown): string => String(value);

const isEntry = (value: unknown): value is MessageEntry<never> =>
  typeof value === 'object' && value !== null && 'code' in value && 'message' in value && 'hint' in value;

/** Every entry that a file exports, by itself or within a table of entries. */
async function entriesOf(
  file: string,
): Promise<{ file: string; name: string; entry: MessageEntry<never> }[]> {
  const module = (await import(new URL(file, folder).href)) as Record<string, unknown>;
  return Object.entries(module)
    .flatMap(([name, value]) =>
      isEntry(value) || typeof value !== 'object' || value === null
        ? [[name, value] as const]
        : Object.entries(value),
    )
    .flatMap(([name, entry]) => (isEntry(entry) ? [{ file, name, entry }] : []));
}

const catalogue = (await Promise.all(files.map(entriesOf))).flat();

describe('the message catalogue', () => {
  it('has entries in every file', () => {
    for (const file of files)
      expect(
        catalogue.filter((e) => e.file === file),
        file,
      ).not.toHaveLength(0);
  });

  it('gives each code once', () => {
    const codes = catalogue.map((e) => e.entry.code);
    expect(codes.filter((code, i) => codes.indexOf(code) !== i)).toEqual([]);
  });

  it.each(catalogue.map((e) => [`${e.file} ${e.name}`, e.entry] as const))('%s is whole', (_, entry) => {
    expect(entry.code).toMatch(/^[a-z][a-z0-9-]*\/[a-z0-9-]+(\/[a-z0-9-]+)?$/);
    expect(SEVERITIES).toContain(entry.severity);
    expect(entry.title).toMatch(/^[A-Za-z0-9].*[^.]$/);
    const made = note(entry as MessageEntry<object>, parameters);
    expect(made.message.trim()).toMatch(/([.?!)]|thing)$/);
    expect(made.message).not.toMatch(/undefined|NaN|\[object/);
    expect(asText(made.hint).trim()).not.toBe('');
    expect(asText(made.expected).trim()).not.toBe('');
    expect(WHOS.includes(made.who) || typeof entry.who === 'function').toBe(true);
  });
});
