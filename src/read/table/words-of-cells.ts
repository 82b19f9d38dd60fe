import { FIELDS } from '../../model/fields.js';
import type { Field } from '../../model/list.js';
import type { Settings } from '../../model/settings.js';
import { visible } from '../../words/visible.js';
import { nearestKind } from '../cell/kind-cell.js';
import { nearestWord } from '../cell/word-cells.js';
import type { CellReading } from '../cell/cell-reading.js';
import type { ColumnMap } from './column-map.js';
import { factColumns } from './fact-columns.js';
import type { Table } from './table.js';
import type { WordReading } from './word-reading.js';

/** So many words a column are told. */
const MOST_WORDS = 200;
/** What is longer is no word. */
const LONGEST = 120;
/** Where a field has so few words, all of them are offered. */
const FEW = 4;

/** True for a field whose cells hold one of a few words. */
function holdsWords(field: Field): boolean {
  const { type } = FIELDS[field];
  return typeof type === 'object' || type === 'yesno' || type === 'mounting';
}

/**
 * The words of a list in its columns of kinds, systems and yes and no that aren't understood, or are by the words of a column map or of
 * the settings.
 * @param table the list
 * @param settings for words of the company
 * @param map for words of the source
 */
export function wordsOfCells(
  table: Pick<Table<Field>, 'columns' | 'mark' | 'rows' | 'shifted'>,
  settings: Settings,
  map: ColumnMap | undefined,
): readonly WordReading[] {
  const columns = table.columns.filter(({ field }) => holdsWords(field));
  return factColumns(columns, table.mark, settings, map).flatMap(
    ({ field, heading, index, read, stands }) => {
      const counts = new Map<string, number>();
      for (const [r, row] of table.rows.entries()) {
        const text = row[index]?.trim() ?? '';
        if (text === '' || text.length > LONGEST || table.shifted.has(r)) continue;
        const count = counts.get(text);
        if (count !== undefined) counts.set(text, count + 1);
        else if (counts.size < MOST_WORDS) counts.set(text, 1);
      }
      return [...counts].flatMap(([text, cells]): WordReading[] => {
        const reading = read(text);
        const means = stands(text) ?? null;
        if (reading.is === 'blank' || (reading.is === 'value' && means === null)) return [];
        const taken = reading.is === 'value';
        const nearest = taken ? null : nearestOf(field, text, reading);
        return [{ field, heading, text: visible(text), cells, means, taken, nearest }];
      });
    },
  );
}

function nearestOf(field: Field, text: string, reading: CellReading): string | null {
  const { type } = FIELDS[field];
  if (field === 'kind')
    return reading.is === 'wrong' && reading.either !== undefined
      ? reading.either.join(' or ')
      : nearestKind(text);
  if (type === 'yesno') return 'yes or no';
  if (typeof type !== 'object') return null;
  return nearestWord(field, text, type.words) ?? (type.words.length <= FEW ? type.words.join(' or ') : null);
}
