import { isUnsavedFormula } from '../file/workbook/unsaved-formula.js';

/** What a spreadsheet leaves in a cell whose formula failed. */
const ERROR_VALUE = /^#(?:REF!|N\/A|VALUE!|DIV\/0!|NAME\?|NUM!|NULL!|SPILL!|CALC!|FIELD!)$/i;
const TOO_NARROW = /^#{3,}$/;
const SHORTENED = /^[+-]?\d(?:[.,]\d+)?E[+-]\d{2,}$/;
/** Title case, as a spreadsheet writes what it took for a date: `1-Mar`, `Mar-01`; `MAR-01` is a tag. */
const DATE_BY_NAME = /^(?:\d{1,2}-)?(?:Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec)(?:-\d{2,4})?$/;
const DATE_BY_FIGURES =
  /^(?:\d{4}-\d{2}-\d{2}|\d{1,2}\/\d{1,2}\/(?:\d{2}|\d{4})|\d{1,2}\.\d{1,2}\.\d{4})(?: \d{1,2}:\d{2}(?::\d{2})?)?$/;

/** With seconds, as no one types a tag. */
const TIME_OF_DAY = /^\d{2}:\d{2}:\d{2}$/;

/** What to do about it. */
export const SPREADSHEET = 'Put the spreadsheet right (format the column as text) and export it again.';

/** Older spreadsheets cut a cell at this many characters. */
export const CUT_LENGTH = 255;

/**
 * The error of a formula that stands in a cell instead of what it should hold.
 * @param text the cell, trimmed
 * @returns what happened, in words, or null
 */
export function formulaError(text: string): string | null {
  if (!text.startsWith('#')) return null;
  if (isUnsavedFormula(text))
    return 'it is a formula that no program has worked out yet; open the workbook and save it';
  if (ERROR_VALUE.test(text)) return 'it is the error of a formula in a spreadsheet';
  return TOO_NARROW.test(text) ? 'the column was too narrow in the spreadsheet' : null;
}

/**
 * What a spreadsheet made of a long number, or of a code with an E in it: several numbers become one text.
 * @param text a name, trimmed
 * @returns what happened, in words, or null
 */
export function shortenedName(text: string): string | null {
  return text.length <= 20 && SHORTENED.test(text)
    ? 'a spreadsheet has shortened a long number or a code with an E in it'
    : null;
}

/**
 * What a spreadsheet made of a name: a date, or a number shortened to powers of ten.
 * @param text a tag, a model or another name, trimmed
 * @returns what happened, in words, or null
 */
export function damagedName(text: string): string | null {
  if (text.length < 3 || text.length > 20) return null;
  const shortened = shortenedName(text);
  if (shortened !== null) return shortened;
  if (
    TIME_OF_DAY.test(text) ||
    DATE_BY_FIGURES.test(text) ||
    (DATE_BY_NAME.test(text) && text.includes('-'))
  ) {
    return 'a spreadsheet seems to have made a date of it';
  }
  return null;
}
