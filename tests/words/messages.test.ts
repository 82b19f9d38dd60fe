import { told } from '../../src/words/messages/told.js';
import { describe, expect, it } from 'vitest';
import type { DataSheetFault, PhotoFault } from '../../src/model/messages/batch.js';
import type { RangeFault, RecordFault } from '../../src/model/messages/register.js';
import { SEVERITIES, WHOS } from '../../src/model/words.js';
import { allEntries, MESSAGE_FILES } from './message-entries.js';

/** Stands in for whatever a sentence needs: a word, a number, a list, a quantity or other data with parts of its own. */
class Anything extends Array<unknown> {
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
const anything = (): unknown =>
  new Proxy(Anything.of('thing'), {
    get(target, key, receiver): unknown {
      if (key === 'value') return 1;
      const isPart = typeof key === 'string' && (key === '0' || !(key in target));
      return isPart ? anything() : Reflect.get(target, key, receiver);
    },
  });
/** What must be a word of an enumeration, since each word has a sentence of its own. */
const WORDS: Readonly<Record<string, unknown>> = {
  fault: 'bytes' satisfies PhotoFault,
  sheet: 'no-pdf' satisfies DataSheetFault,
  field: 'phone',
  recordFault: 'no-json' satisfies RecordFault,
  rangeFault: 'lengths' satisfies RangeFault,
};
const parameters = new Proxy({}, { get: (_, key) => WORDS[String(key)] ?? anything() });

/** A parameter that is handed through whole is the stand-in itself. */
const asText = (value: unknown): string => String(value);

const catalogue = await allEntries();

describe('the message catalogue', () => {
  it('has entries in every file', () => {
    for (const file of MESSAGE_FILES)
      expect(
        catalogue.filter((e) => e.file === file),
        file,
      ).not.toHaveLength(0);
  });

  it('gives each code once', () => {
    const codes = catalogue.map((e) => e.entry.kind.code);
    expect(codes.filter((code, i) => codes.indexOf(code) !== i)).toEqual([]);
  });

  it.each(catalogue.map((e) => [`${e.file} ${e.name}`, e.entry] as const))('%s is whole', (_, entry) => {
    const { kind, words } = entry;
    expect(kind.code).toMatch(/^[a-z][a-z0-9-]*\/[a-z0-9-]+(\/[a-z0-9-]+)?$/);
    expect(SEVERITIES).toContain(kind.severity);
    expect(words.title).toMatch(/^[A-Za-z0-9].*[^.]$/);
    const made = told({ code: kind.code, values: parameters });
    expect(made.message.trim()).toMatch(/([.?!)]|thing)$/);
    expect(made.message).not.toMatch(/undefined|NaN|\[object/);
    expect(asText(made.hint).trim()).not.toBe('');
    expect(asText(made.expected).trim()).not.toBe('');
    expect([...WHOS, 'given']).toContain(kind.who);
  });
});
