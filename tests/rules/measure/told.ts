import { say } from '../../../src/words/reasons/say.js';
import type { Reading } from '../../../src/rules/measuring-facts.js';

/** Readings as lines: `L1>ground: 110 to 127`, the sign behind what is read against. */
export function figuresOf(readings: readonly Reading[]): readonly string[] {
  return readings.map(({ wire, to, sign, low, high }) => {
    const signed = sign === null ? '' : ` ${sign}`;
    return `${wire}>${to ?? 'ground'}${signed}: ${low ?? '-'} to ${high ?? '-'}`;
  });
}

/** What is said of each reading: what it is, and what a reading outside means. */
export function saidOf(readings: readonly Reading[]): readonly string[] {
  return readings.map(({ reads, below, above, fault, due }) =>
    [reads, below, above, fault, due].map((one) => (one === null ? '-' : say(one))).join(' | '),
  );
}
