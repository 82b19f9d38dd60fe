import type { Fact } from '../../src/model/fact.js';
import type { JobList } from '../../src/model/list.js';
import { defaultSettings } from '../../src/model/settings.js';
import type { ListOptions } from '../../src/read/list/list-options.js';
import { readListText, type ReadResult } from '../../src/read/list/lists.js';

/** What a list says, without where and how it says it. Lengths and other figures to nine digits. */
export interface PlainJob {
  readonly job: string;
  readonly facts: Readonly<Record<string, unknown>>;
  readonly rows: readonly Readonly<Record<string, unknown>>[];
}

function plainFacts(facts: Readonly<Record<string, Fact<unknown> | undefined>>): Record<string, unknown> {
  const plain = (value: unknown): unknown =>
    typeof value === 'number' ? Number(value.toPrecision(9)) : value;
  return Object.fromEntries(
    Object.entries(facts)
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([field, fact]) => [field, plain(fact?.value)]),
  );
}

/** A job without places and cells as typed; a stated `quantity` of 1 is the default. */
export function plainJob(list: JobList): PlainJob {
  const rows = list.rows.map((row) => {
    const facts = plainFacts(row.facts);
    return facts['quantity'] === 1
      ? Object.fromEntries(Object.entries(facts).filter(([f]) => f !== 'quantity'))
      : facts;
  });
  return { job: list.job, facts: plainFacts(list.facts), rows };
}

/** All items of a reading, in the order of their lines. */
export function itemsOf(
  result: ReadResult,
): readonly { code: string; line: number; column: string; severity: string }[] {
  return [...result.unreadable, ...result.items, ...result.jobs.flatMap((j) => j.items)].sort(
    (a, b) => a.line - b.line,
  );
}

const settings = defaultSettings();

/** Reads one list with the default settings. */
export function read(content: string | Uint8Array, options: Partial<ListOptions> = {}): ReadResult {
  return readListText('list.csv', content, { settings, ...options });
}

/** `cell/wrong:2` of every item, in the order of lines. */
export function codes(result: ReadResult): string[] {
  return itemsOf(result).map((i) => `${i.code}:${i.line}`);
}
