import type { Field } from '../../model/list.js';
import type { Settings } from '../../model/settings.js';
import type { CellReading } from '../cell/cell-reading.js';
import type { DecimalMark } from '../cell/numbers.js';
import type { ColumnMap } from '../table/column-map.js';
import { factColumns } from '../table/fact-columns.js';

/** Reads a text as a cell of a list under the field's plain heading. */
export type AnswerReader = (field: Field, text: string, mark: DecimalMark) => CellReading;

/**
 * Makes the reader of answers: what a list's cell may say an answer may, typed and checked alike.
 * @param settings for bare temperatures and the company's words
 * @param map for the company's words
 */
export function answerReader(settings: Settings, map: ColumnMap | undefined): AnswerReader {
  const readers = new Map<string, (text: string) => CellReading>();
  return (field, text, mark) => {
    const key = `${field}|${mark}`;
    let read = readers.get(key);
    if (read === undefined) {
      const column = { field, heading: field, index: 0, unit: null, dimension: null };
      const [made] = factColumns([column], mark, settings, map);
      if (made === undefined) throw new Error(`no reader for ${field}`);
      readers.set(key, (read = made.read));
    }
    return read(text);
  };
}

/** The value of a reading in our units; a bare length waited for what its job takes it in. */
export function valueIn(reading: CellReading & { readonly is: 'value' }, feet: boolean): unknown {
  return feet && reading.feet !== null ? reading.feet : reading.value;
}

/** Two values of one field that say the same. */
export function sameValue(a: unknown, b: unknown): boolean {
  if (typeof a === 'number' && typeof b === 'number')
    return Math.abs(a - b) <= 1e-9 * Math.max(1, Math.abs(a));
  return a === b || (typeof a === 'object' && JSON.stringify(a) === JSON.stringify(b));
}
