import { FIELDS } from '../../model/fields.js';
import type { Field } from '../../model/list.js';
import { saysNothing, wordKey } from './yes-no.js';
import { unsureUnit, wrongCell, type CellContext, type CellReading } from './cell-reading.js';
import { formulaError, SPREADSHEET } from './damage.js';
import { readKind } from './kind-cell.js';
import { readTextCell, MOST_TEXT } from './text-cells.js';
import { readTyped } from './typed-cells.js';

const BLANK: CellReading = { is: 'blank' };

/** The most characters of a figure or a word. */
const MOST_CHARACTERS = 120;

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
  const most = FIELDS[field].type === 'connection' ? MOST_TEXT : MOST_CHARACTERS;
  if (trimmed.length > most) {
    return { is: 'wrong', note: wrongCell(field, text, { because: `it has ${trimmed.length} characters` }) };
  }
  const word = context.words.get(wordKey(trimmed)) ?? trimmed;
  if (field === 'kind') return readKind(text, word);
  const reading = readTyped(field, word, context);
  if ('because' in reading) return { is: 'wrong', note: wrongCell(field, text, reading) };
  const { value, feet, unsure } = reading;
  return { is: 'value', value, feet: feet ?? null, note: unsure ? unsureUnit(field, text, unsure) : null };
}
