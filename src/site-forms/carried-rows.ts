import { z } from 'zod';
import type { HiddenField } from '../model/print.js';
import {
  FACT_HEADINGS,
  READING_HEADINGS,
  RECORD_HEADINGS,
  type FactHeading,
  type ReadingHeading,
  type RecordHeading,
} from '../model/site-form-headings.js';
import { blankCells, type SiteForms } from './rows.js';

/** The field of a form that carries its rows unseen. */
export const ROWS_FIELD = 'form.rows';

/** Cells that the plan knows, in their order; all others are filled in. */
const KNOWN = {
  record: ['protector', 'part_planned', 'place'] satisfies readonly RecordHeading[],
  readings: [
    'protector',
    'channel',
    'conductor',
    'kind',
    'from',
    'to',
    'state',
    'low',
    'high',
    'expected',
  ] satisfies readonly ReadingHeading[],
  facts: ['assumption', 'tag', 'fact', 'assumed'] satisfies readonly FactHeading[],
};

/** More rows no job has; whoever sends more sends no form of ours. */
const MOST_ROWS = 100_000;
/** Characters of a cell that the plan knows. */
const LONGEST = 1_000_000;

const cellsOf = (count: number): z.ZodType<(string | number)[][]> =>
  z.array(z.array(z.union([z.string().max(LONGEST), z.number()])).length(count)).max(MOST_ROWS);

const carriedSchema = z.object({
  version: z.literal(1),
  job: z.string().max(LONGEST),
  plan: z.string().max(32),
  record: cellsOf(KNOWN.record.length),
  readings: cellsOf(KNOWN.readings.length),
  facts: cellsOf(KNOWN.facts.length),
});

/** What a form carries unseen: whose it is, and its rows as they were asked, so that nothing else is needed to read it back. */
export function carriedRows({ job, plan, record, readings, facts }: SiteForms): HiddenField {
  const carried: z.infer<typeof carriedSchema> = {
    version: 1,
    job,
    plan,
    record: record.map((row) => KNOWN.record.map((heading) => row[heading as RecordHeading])),
    readings: readings.map((row) => KNOWN.readings.map((heading) => row[heading as ReadingHeading])),
    facts: facts.map((row) => KNOWN.facts.map((heading) => row[heading as FactHeading])),
  };
  return { name: ROWS_FIELD, value: JSON.stringify(carried) };
}

/**
 * The rows that a form carries, as they were given out.
 * @param text of the field; whoever sent the form may have written it
 * @returns undefined where it is none of ours, or damaged
 */
export function rowsCarried(text: string): SiteForms | undefined {
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch {
    return undefined;
  }
  const { data } = carriedSchema.safeParse(json);
  if (!data) return undefined;
  const head = { job: data.job, plan: data.plan };
  const known = (headings: readonly string[], cells: readonly (string | number)[]): object =>
    Object.fromEntries(headings.map((heading, i) => [heading, cells[i] ?? '']));
  const texts = (headings: readonly string[], cells: readonly (string | number)[]): object =>
    known(headings, cells.map(String));
  return {
    ...head,
    record: data.record.map((cells) => ({
      ...blankCells(RECORD_HEADINGS),
      ...head,
      ...texts(KNOWN.record, cells),
    })),
    readings: data.readings.map((cells) => ({
      ...blankCells(READING_HEADINGS),
      ...head,
      ...known(KNOWN.readings, cells),
    })),
    facts: data.facts.map((cells) => ({
      ...blankCells(FACT_HEADINGS),
      ...head,
      ...texts(KNOWN.facts, cells),
    })),
  };
}
