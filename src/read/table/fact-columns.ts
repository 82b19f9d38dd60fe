import { FIELDS } from '../../model/fields.js';
import { LIMITS } from '../../model/limits.js';
import { note } from '../../model/message.js';
import { LIMIT_MESSAGES } from '../../model/messages/limits.js';
import type { Field } from '../../model/list.js';
import type { Settings } from '../../model/settings.js';
import type { ColumnMap } from './column-map.js';
import type { CellReading } from '../cell/cell-reading.js';
import { readCell } from '../cell/cells.js';
import { wordKey } from '../cell/yes-no.js';
import type { Column } from './columns.js';
import { isUnsettled } from './headings.js';
import type { DecimalMark } from '../cell/numbers.js';

/** A column that reads its cells, each different text once. */
export interface FactColumn<F extends Field> {
  readonly field: F;
  readonly heading: string;
  readonly index: number;
  readonly read: (text: string) => CellReading;
  /** What the company's words or those of the source say that a text stands for. */
  readonly stands: (text: string) => string | undefined;
}

/** Beyond so many different texts a column's cells are hardly ever the same. */
const MOST_REMEMBERED = 20_000;
const LONGEST_REMEMBERED = 80;

/** Looked at no further, so that a cell of any size costs nothing. */
function tooLarge(field: Field, characters: number): CellReading {
  const p = { field, characters, most: LIMITS.cell, who: FIELDS[field].who };
  return { is: 'wrong', note: note(LIMIT_MESSAGES.cell, p) };
}

/** The company's words for a field, by word key: a column map's go before the settings'. */
function wordsOf(settings: Settings, map: ColumnMap | undefined, field: Field): ReadonlyMap<string, string> {
  const words = [settings.words?.[field], map?.words?.[field]];
  return new Map(
    words.flatMap((of) =>
      Object.entries(of ?? {})
        .filter(([, to]) => !isUnsettled(to))
        .map(([from, to]) => [wordKey(from), to] as const),
    ),
  );
}

/**
 * Makes the readers of a table's columns.
 * @param columns those understood
 * @param mark the decimal mark of the file
 * @param settings for bare temperatures and the company's words
 * @param map for the company's words
 */
export function factColumns<F extends Field>(
  columns: readonly Column<F>[],
  mark: DecimalMark,
  settings: Settings,
  map: ColumnMap | undefined,
): FactColumn<F>[] {
  return columns.map(({ field, heading, index, unit }) => {
    const context = {
      mark,
      unit,
      temperature: settings.units.temperature,
      words: wordsOf(settings, map, field),
    };
    const remembered = new Map<string, CellReading>();
    const read = (text: string): CellReading => {
      const known = remembered.get(text);
      if (known !== undefined) return known;
      const reading =
        text.length > LIMITS.cell ? tooLarge(field, text.length) : readCell(field, text, context);
      if (text.length <= LONGEST_REMEMBERED && remembered.size < MOST_REMEMBERED)
        remembered.set(text, reading);
      return reading;
    };
    return { field, heading, index, read, stands: (text) => context.words.get(wordKey(text)) };
  });
}
