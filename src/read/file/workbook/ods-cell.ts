import { WorkbookFault } from './fault.js';
import { numberText, powerOfTen } from './number-text.js';
import type { StoredCell } from './sheet.js';
import { unsavedFormula } from './unsaved-formula.js';
import type { Attributes } from './xml.js';

const text = (of: string): StoredCell => ({ text: of, isDate: false });

/**
 * What a cell of an OpenDocument sheet holds as text (ISO/IEC 26300-1, clause 19.385): its value as stored; what is shown counts where it
 * says more than the value does, such as a unit.
 * @param attributes of the cell
 * @param shown the paragraphs in it
 * @param mark of decimals
 * @throws WorkbookFault where a value is none of its type
 */
export function odsCell(attributes: Attributes, shown: string, mark: '.' | ','): StoredCell {
  const { 'value-type': type, value = '', formula } = attributes;
  if (formula !== undefined && type === undefined && shown === '')
    return text(unsavedFormula(formula.replace(/^[a-z]*:?=/i, '')));
  // What a formula that failed shows: some of it is a number of the program's own.
  if (/^Err:\d{3}$/.test(shown) && formula !== undefined) return text('#VALUE!');
  switch (type) {
    case 'float':
      return /^#[A-Z]/.test(shown) ? text(shown) : text(figure(numberOf(value), shown, mark));
    case 'currency':
      return text(numberText(numberOf(value), mark));
    case 'percentage':
      return text(`${numberText(numberOf(value) * 100, mark)}%`);
    case 'boolean':
      return text(attributes['boolean-value'] === 'true' ? 'TRUE' : 'FALSE');
    case 'date':
      return { text: (attributes['date-value'] ?? shown).replace('T', ' ').slice(0, 19), isDate: true };
    case 'time':
      return { text: timeOf(attributes['time-value'] ?? '') ?? shown, isDate: true };
    default:
      return text(shown === '' ? (attributes['string-value'] ?? '') : shown);
  }
}

function numberOf(value: string): number {
  const number = value === '' ? NaN : Number(value);
  if (!Number.isFinite(number)) throw new WorkbookFault('broken');
  return number;
}

/** A figure as it is shown, with the letters or signs of a unit behind it. */
const WITH_UNIT = /^([+-]?\d[\d.,' \u00a0\u202f]*?)(\s*(?:\p{L}|\u00b0|['"]).*)$/su;

function figure(value: number, shown: string, mark: '.' | ','): string {
  if (/^[+-]?\d(?:[.,]\d+)?E[+-]\d+$/.test(shown)) return powerOfTen(value);
  if (/^0\d+$/.test(shown) && Number(shown) === value) return shown;
  const plain = numberText(value, mark);
  const unit = WITH_UNIT.exec(shown);
  if (unit === null) return plain;
  const [, digits = '', behind = ''] = unit;
  // Shown in thousands with a unit, it is the shown figure that has this unit.
  return isRoundedTo(value, digits) ? `${plain}${behind}` : shown;
}

/** Whether a shown figure is this value, rounded to its decimals, whichever mark stands before them. */
function isRoundedTo(value: number, digits: string): boolean {
  return [/[, '\u00a0\u202f]/g, /[. '\u00a0\u202f]/g].some((groups) => {
    const plain = digits.replace(groups, '').replace(',', '.');
    const decimals = plain.split('.')[1]?.length ?? 0;
    return Math.abs(Number(plain) - value) <= 0.500001 * 10 ** -decimals;
  });
}

/** `PT08H30M00S` as `08:30:00`. */
function timeOf(duration: string): string | null {
  const match = /^PT(\d+)H(\d+)M(\d+)/.exec(duration);
  return match === null
    ? null
    : match
        .slice(1)
        .map((part) => part.padStart(2, '0'))
        .join(':');
}
