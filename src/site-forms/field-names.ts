import {
  FILLED_FACT,
  FILLED_READING,
  FILLED_RECORD,
  type FactCells,
  type FilledFact,
  type FilledReading,
  type FilledRecord,
  type ReadingCells,
} from '../model/site-form-headings.js';
import type { SiteForms } from './rows.js';

/** A field of the form: which cell of which row it stands for. */
export type FieldOf =
  | { readonly of: 'record'; readonly row: number; readonly heading: FilledRecord }
  | { readonly of: 'readings'; readonly row: number; readonly heading: FilledReading }
  | { readonly of: 'facts'; readonly row: number; readonly heading: FilledFact };

/** Fields that count for every row that something was written into and whose own is blank. */
export const ALL_FIELDS = (['date', 'name', 'licence', 'instrument'] as const).map((heading) => ({
  name: `all.${heading}`,
  heading,
}));

/** What a part of a name holds as it is: a full stop separates parts (ISO 32000-1, 12.7.3.2). */
const PLAIN = /^[A-Za-z0-9_-]{1,40}$/;

/** Words as a part of a name: `sun, inverter on` is `sun-inverter-on`. */
const part = (text: string): string => text.replace(/[^A-Za-z0-9_]+/g, '-').replace(/^-|-$/g, '');

/** `P-3.serial`. */
function recordName(tag: string, heading: FilledRecord): string {
  return `${tag}.${heading}`;
}

/** `P-3.1.light.sun`; of volts with the other point: `P-3.1.volts.sun.ground`; beside it `P-3.1.light.sun_why_not`. */
function readingName(cells: ReadingCells, heading: FilledReading): string {
  const { protector, channel, conductor, kind, state, to } = cells;
  const at = channel === '' ? part(String(conductor)) : String(channel);
  const parts = [String(protector), at, String(kind), part(String(state))];
  if (to !== '') parts.push(part(String(to)));
  return `${parts.join('.')}${heading === 'found' ? '' : `_${heading}`}`;
}

/** `A2.ARR-E.found`; a tag that a name can't hold is told by the number of its row, with a sign that no such tag has: `A2.~3.found`. */
function factName({ assumption, tag }: FactCells, index: number, heading: FilledFact): string {
  const about = tag === '' ? '~site' : PLAIN.test(tag) ? tag : `~${String(index + 1)}`;
  return `${assumption}.${about}.${heading}`;
}

/**
 * The fields of a form by name, in the order in which they are filled in: those of each housing, its readings after it, then the
 * assumptions.
 * @param forms of a job
 * @throws Error where two cells would have one name: nothing would tell them apart when the form comes back
 */
export function fieldsOf({ record, readings, facts }: SiteForms): ReadonlyMap<string, FieldOf> {
  const fields = new Map<string, FieldOf>();
  const add = (name: string, field: FieldOf): void => {
    if (fields.has(name)) throw new Error(`two fields of a form have the name ${name}`);
    fields.set(name, field);
  };
  for (const [row, { protector }] of record.entries()) {
    for (const heading of FILLED_RECORD) add(recordName(protector, heading), { of: 'record', row, heading });
    for (const [reading, cells] of readings.entries()) {
      if (cells.protector !== protector) continue;
      for (const heading of FILLED_READING)
        add(readingName(cells, heading), { of: 'readings', row: reading, heading });
    }
  }
  for (const [row, cells] of facts.entries())
    for (const heading of FILLED_FACT) add(factName(cells, row, heading), { of: 'facts', row, heading });
  return fields;
}
