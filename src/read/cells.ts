import { FIELDS, type FieldInfo } from '../model/fields.js';
import type { Field } from '../model/list.js';
import type { Note } from '../model/message.js';
import type { Settings } from '../model/settings.js';
import { CELL_WRONG } from '../text/messages/list.js';
import { note } from '../text/message-kit.js';
import type { DecimalMark } from '../text/numbers.js';
import { shown } from '../text/shown.js';
import type { Dimension, Unit } from '../text/units.js';
import { saysNothing, wordKey } from '../text/words.js';
import { formulaError, SPREADSHEET } from './damage.js';
import { readTextCell } from './text-cells.js';
import { readTyped, type Wrong } from './typed-cells.js';

/** What a column's cells are read with. */
export interface CellContext {
  readonly mark: DecimalMark;
  /** The unit in the heading, or in the line of units under it. */
  readonly unit: Unit | null;
  /** Degrees of a bare temperature. */
  readonly temperature: Settings['units']['temperature'];
  /** The company's words for the field, by word key. */
  readonly words: ReadonlyMap<string, string>;
}

/** A cell as read: nothing said, a value, or a message. */
export type CellReading =
  | { readonly is: 'blank' }
  | {
      readonly is: 'value';
      readonly value: unknown;
      /** A bare length waits for its job's unit: this is its value where that is feet (`value`: metres); null for all else. */
      readonly feet: number | null;
      /** Something to confirm about the cell. */
      readonly note: Note | null;
    }
  /** `note` null: an item of the file says it already. */
  | { readonly is: 'wrong'; readonly note: Note | null };

const BLANK: CellReading = { is: 'blank' };

/** The most characters of a cell that isn't free text; a figure, a word and a tag are shorter. */
const MOST_CHARACTERS = 120;

/** The dimension that a field's cells and heading may state; null: no unit. */
export function dimensionOf(field: Field): Dimension | null {
  const type = FIELDS[field].type;
  if (typeof type !== 'string') return null;
  switch (type) {
    case 'voltage':
    case 'control-voltage':
      return 'voltage';
    case 'current':
    case 'length':
    case 'temperature':
    case 'coefficient':
      return type;
    case 'kilometres':
      return 'length';
    case 'count':
      return 'pieces';
    case 'number':
      return field === 'rpm' ? 'speed' : field === 'flash_density' ? 'flash-density' : 'days';
    case 'text':
    case 'yesno':
    case 'connection':
    case 'chemistry':
    case 'mounting':
      return null;
  }
}

/** The note of a wrong cell. */
export function wrongCell(field: Field, text: string, wrong: Wrong, info: FieldInfo = FIELDS[field]): Note {
  return note(CELL_WRONG, {
    field,
    text: shown(text),
    expected: info.expected,
    who: info.who,
    because: wrong.because,
    hint: wrong.hint ?? 'Correct the cell; leave it blank if it is not known.',
  });
}

/** Words such as `none` mean something in some fields: those are asked before `none` is taken for nothing. */
function meansNothing(field: Field, text: string): boolean {
  if (!saysNothing(text)) return false;
  const type = FIELDS[field].type;
  return text === '' || typeof type === 'string' || !type.words.includes(wordKey(text));
}

/**
 * Reads one cell of a field.
 * @param field of the contract
 * @param text the cell as typed
 * @param context what the column's cells are read with
 */
export function readCell(field: Field, text: string, context: CellContext): CellReading {
  if (FIELDS[field].type === 'text') return readTextCell(field, text, context);
  const trimmed = text.trim();
  if (meansNothing(field, trimmed)) return BLANK;
  if (trimmed.includes('\ufffd')) return { is: 'wrong', note: null };
  const damage = formulaError(trimmed);
  if (damage !== null) {
    return {
      is: 'wrong',
      note: wrongCell(field, text, {
        because: damage,
        hint: SPREADSHEET,
      }),
    };
  }
  if (trimmed.length > MOST_CHARACTERS) {
    return { is: 'wrong', note: wrongCell(field, text, { because: `it has ${trimmed.length} characters` }) };
  }
  const reading = readTyped(field, context.words.get(wordKey(trimmed)) ?? trimmed, context);
  return 'because' in reading
    ? { is: 'wrong', note: wrongCell(field, text, reading) }
    : { is: 'value', value: reading.value, feet: reading.feet ?? null, note: null };
}
