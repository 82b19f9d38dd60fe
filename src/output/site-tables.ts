import { FACT_HEADINGS, READING_HEADINGS, RECORD_HEADINGS } from '../site-forms/headings.js';
import type { SiteForms } from '../site-forms/rows.js';
import { csvText } from './csv.js';
import type { FileToWrite } from './whole-file.js';

function table<H extends string>(
  headings: readonly H[],
  rows: readonly Readonly<Record<H, string | number>>[],
): string {
  return csvText(
    headings,
    rows.map((row) => headings.map((heading) => row[heading])),
  );
}

/**
 * `site-record.csv`, `site-readings.csv` and `site-facts.csv` of a job: what a crew fills in, with what the plan knows.
 * @param forms of the job
 */
export function siteTables({ record, readings, facts }: SiteForms): readonly FileToWrite[] {
  return [
    { name: 'site-record.csv', content: table(RECORD_HEADINGS, record) },
    { name: 'site-readings.csv', content: table(READING_HEADINGS, readings) },
    { name: 'site-facts.csv', content: table(FACT_HEADINGS, facts) },
  ];
}
