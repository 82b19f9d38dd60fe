import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Plan } from '../../src/model/plan.js';
import { defaultSettings } from '../../src/model/settings.js';
import { planJob } from '../../src/plan/plan-job.js';
import { readCatalogueText } from '../../src/read/company/catalogue.js';
import { STOCK } from '../plan/plan-of.js';
import { read } from './plain.js';

/**
 * Two tidy lists, each of their delimiters and quotation marks broken in turn: removed, doubled, moved. The plan is the same, or the list is
 * asked about; never is it silently another.
 */

const settings = defaultSettings();
const { catalogue } = readCatalogueText('catalogue.csv', STOCK);

/** Names that are shown and decide nothing. */
const SHOWN = new Set([
  'place',
  'where',
  'because',
  'text',
  'substituted',
  'origin',
  'source',
  'line',
  'message',
]);

function plannedOf({ protectors, notPlaced, orders }: Plan): unknown {
  return { protectors, notPlaced, orders };
}

/** What is planned, without what it is called; null: the list is asked about. */
function plannedOrAsked(text: string): string | null {
  const result = read(text);
  if (result.unreadable.length > 0) return null;
  const plans = result.jobs.map((job) => planJob(job, { catalogue, settings }));
  // The job itself, not another that came of its name.
  if (plans.every((plan) => !plan.submittable)) return null;
  return JSON.stringify(plans.map(plannedOf), (key, value: unknown) => (SHOWN.has(key) ? undefined : value));
}

/** Where delimiters stand outside of quotation marks, and the marks. */
function marksOf(text: string, delimiter: string): { delimiters: number[]; quotes: number[] } {
  const delimiters: number[] = [];
  const quotes: number[] = [];
  let inside = false;
  for (let i = 0; i < text.length; i += 1) {
    const character = text[i];
    if (character === '"') {
      quotes.push(i);
      inside = !inside;
    } else if (character === delimiter && !inside) delimiters.push(i);
  }
  return { delimiters, quotes };
}

const removed = (text: string, at: number): string => text.slice(0, at) + text.slice(at + 1);
const put = (text: string, at: number, what: string): string => text.slice(0, at) + what + text.slice(at);

/** A figure that is cut, or joined to another, is another figure: a slip that no list shows. */
const OF_A_FIGURE = /[\d.]/;

/** The ways to break the character at a position. */
function brokenAt(text: string, at: number, next: number | undefined): [string, string][] {
  const character = text[at] ?? '';
  const broken: [string, string][] = [
    ['removed', removed(text, at)],
    ['doubled', put(text, at, character)],
  ];
  const [before = '', behind = ''] = [text[at - 1], text[at + 1]];
  if (!OF_A_FIGURE.test(before))
    broken.push(['moved to the left', put(removed(text, at), at - 1, character)]);
  // Behind the cell that it stood before, where its line goes on so far: two cells are joined.
  const joins =
    !'\n,;'.includes(before) && !'\n,;'.includes(behind) && !(/\d/.test(before) && /\d/.test(behind));
  if (joins && next !== undefined && !text.slice(at, next).includes('\n'))
    broken.push(['moved behind the next cell', put(removed(text, at), next - 1, character)]);
  return broken;
}

describe.each([
  ['sorrel-house.csv', ','],
  ['gate-hut.csv', ';'],
])('%s', (list, delimiter) => {
  const tidy = readFileSync(`fixtures/lists/tidy/${list}`, 'utf8');
  const whole = plannedOrAsked(tidy);
  const { delimiters, quotes } = marksOf(tidy, delimiter);
  const where = (at: number): string => {
    const before = tidy.slice(0, at).split('\n');
    return `line ${before.length}, character ${before.at(-1)?.length ?? 0}`;
  };
  const silentlyAnother = (marks: readonly number[], byCell: boolean): { made: number; silent: string[] } => {
    const silent: string[] = [];
    // Which of several delimiters in a row is missing shows no difference.
    const made = new Set<string>();
    for (const [i, at] of marks.entries()) {
      for (const [how, text] of brokenAt(tidy, at, byCell ? marks[i + 1] : undefined)) {
        if (made.has(text)) continue;
        made.add(text);
        const planned = plannedOrAsked(text);
        if (planned !== null && planned !== whole) silent.push(`${where(at)}: ${how}`);
      }
    }
    return { made: made.size, silent };
  };

  it('is planned without a question as it stands', () => {
    expect(whole).toContain('"part"');
  });
  it('with a delimiter broken is planned the same, or asked about', () => {
    const { made, silent } = silentlyAnother(delimiters, true);
    expect(made).toBeGreaterThan(200);
    expect(silent).toEqual([]);
  });
  it('with a quotation mark broken is planned the same, or asked about', () => {
    const { made, silent } = silentlyAnother(quotes, false);
    expect(made).toBeGreaterThanOrEqual(2 * quotes.length);
    expect(silent).toEqual([]);
  });
});
