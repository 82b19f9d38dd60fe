import { FIELDS } from '../../model/fields.js';
import type { Field } from '../../model/list.js';
import { CREW_LANGUAGES, isCrewLanguage } from '../../words/crew-language.js';
import { isOwnerLanguage, OWNER_LANGUAGE_CODES } from '../../words/languages.js';
import { CELL_CUT, LANGUAGE_UNKNOWN } from '../../model/messages/list.js';
import { note } from '../../model/message.js';
import { visible } from '../../words/visible.js';
import { readYesNo, saysNothing, wordKey } from './yes-no.js';
import { wrongCell, type CellContext, type CellReading } from './cell-reading.js';
import { CUT_LENGTH, damagedName, formulaError, shortenedName, SPREADSHEET } from './damage.js';

/** More than any name, address or remark on a list has; a document prints it whole. */
export const MOST_TEXT = 4000;

/** Names that others refer to: a date or a power of ten made of one breaks the reference. */
const NAMES = new Set<Field>(['tag', 'model', 'protector', 'serial']);

/** `no` in these says that there is none; it is no name of a part. */
const NO_IS_NOTHING = new Set<Field>(['existing', 'protector']);

/** Words that the planner compares. */
const IN_LOWER_CASE = new Set<Field>(['owner_language', 'crew_language', 'supply']);

/** What crystalline silicon is called; NEC Table 690.7(A) is for any of it. */
const CRYSTALLINE = new Set([
  'crystalline',
  'crystalline-silicon',
  'c-si',
  'mono',
  'mono-si',
  'mono-c-si',
  'monocrystalline',
  'monocrystalline-silicon',
  'mono-crystalline',
  'poly',
  'poly-si',
  'polycrystalline',
  'polycrystalline-silicon',
  'poly-crystalline',
  'multicrystalline',
  'multi-si',
]);

/**
 * Reads a cell of free text.
 * @param field of the contract, of type `text`
 * @param text the cell as typed
 * @param context what the column's cells are read with
 */
export function readTextCell(field: Field, text: string, context: CellContext): CellReading {
  const trimmed = text.trim();
  if (saysNothing(trimmed) || (NO_IS_NOTHING.has(field) && readYesNo(trimmed) === false))
    return { is: 'blank' };
  const damage = formulaError(trimmed) ?? nameDamage(field, trimmed);
  if (damage !== null) {
    return {
      is: 'wrong',
      note: wrongCell(field, text, {
        because: damage,
        hint: SPREADSHEET,
      }),
    };
  }
  if (trimmed.length > MOST_TEXT)
    return { is: 'wrong', note: wrongCell(field, text, { because: `it has ${trimmed.length} characters` }) };
  const word = context.words.size === 0 ? undefined : context.words.get(wordKey(trimmed));
  const value = textValue(field, word ?? trimmed);
  const cut = text.length === CUT_LENGTH;
  const { expected, who } = FIELDS[field];
  const at = { field, text: visible(text), expected, who };
  const unspoken =
    (field === 'owner_language' && !isOwnerLanguage(value)) ||
    (field === 'crew_language' && !isCrewLanguage(value));
  const languages = (field === 'crew_language' ? CREW_LANGUAGES : OWNER_LANGUAGE_CODES).join(' or ');
  const told = unspoken ? note(LANGUAGE_UNKNOWN, { ...at, languages }) : cut ? note(CELL_CUT, at) : null;
  return { is: 'value', value, feet: null, note: told };
}

/** The id of a job may be a date; shortened to powers of ten it may be that of several jobs. */
function nameDamage(field: Field, text: string): string | null {
  if (field === 'job') return shortenedName(text);
  return NAMES.has(field) ? damagedName(text) : null;
}

function textValue(field: Field, text: string): string {
  if (field === 'module_technology') return CRYSTALLINE.has(wordKey(text)) ? 'crystalline' : text;
  return IN_LOWER_CASE.has(field) ? text.toLowerCase() : text;
}
