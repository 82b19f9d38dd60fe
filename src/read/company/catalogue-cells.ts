import type { Part } from '../../model/catalogue.js';
import type { DecimalMark } from '../cell/numbers.js';
import { inOurUnit, readQuantity, readWireSize, type Unit } from '../cell/units.js';
import { readYesNo, saysNothing, wordKey } from '../cell/yes-no.js';
import { PART_FIELDS, type PartField, type PartFieldType } from './catalogue-fields.js';
import { formulaError } from '../cell/damage.js';
import type { Wrong } from '../cell/cell-reading.js';
import { quantityProblem } from '../cell/quantity-problem.js';

/** Columns of one kind of current; a cell that states the other contradicts its column. */
const CURRENT_OF = new Map<PartField, 'ac' | 'dc'>([
  ['mcov_ac', 'ac'],
  ['mcov_dc', 'dc'],
  ['sccr_ka', 'ac'],
  ['sccr_dc_ka', 'dc'],
]);

/** V, A, m: no protector has a larger figure (common practice, no source); 20000 in a column of kA is a slip of the unit. */
const LARGEST = 1e6;

export type PartValue = string | number | boolean | Part['listedFor'];

/**
 * Reads one cell of the catalogue.
 * @param field of the catalogue
 * @param text the cell as typed
 * @param unit of the heading
 * @param mark the decimal mark of the file
 * @returns null where it says nothing; V, A, m
 */
export function readPartCell(
  field: PartField,
  text: string,
  unit: Unit | null,
  mark: DecimalMark,
): Wrong | { readonly value: PartValue } | null {
  const trimmed = text.trim();
  if (trimmed === '') return null;
  const type: PartFieldType = PART_FIELDS[field].type;
  // `none` is a word of `indicator`; anywhere else it says nothing.
  if (saysNothing(trimmed) && !(type.is === 'words' && type.words.includes(trimmed.toLowerCase())))
    return null;
  const damage = formulaError(trimmed);
  if (damage !== null) return { because: damage };
  if (trimmed.length > 4000 || (type.is !== 'text' && trimmed.length > 120))
    return { because: `it has ${trimmed.length} characters` };
  switch (type.is) {
    case 'text':
      return { value: trimmed };
    case 'gauge': {
      const whole =
        unit === null || /[a-z#]/i.test(trimmed) || trimmed.includes('/') ? trimmed : `${trimmed} mm2`;
      return readWireSize(whole) === null
        ? { because: 'it is not a wire size with its unit' }
        : { value: whole };
    }
    case 'yes-no': {
      const value = readYesNo(trimmed);
      return value === null ? { because: 'it is neither yes nor no' } : { value };
    }
    case 'words': {
      const key = wordKey(trimmed);
      const bare = type.prefix === null ? key : key.replace(type.prefix, '');
      const value = type.words.find((w) => wordKey(w) === bare);
      return value === undefined ? { because: 'there is no such word' } : { value };
    }
    case 'several': {
      const words = trimmed
        .split(/[;,/]|\s+/)
        .map(wordKey)
        .filter((w) => w !== '');
      const known = (['ungrounded', 'impedance', 'corner'] as const).filter((w) => words.includes(w));
      return known.length === new Set(words).size
        ? { value: known }
        : { because: 'one of its words is not known' };
    }
    case 'count':
    case 'figure':
      return figureCell(field, type, trimmed, unit, mark);
  }
}

function figureCell(
  field: PartField,
  type: Extract<PartFieldType, { is: 'count' | 'figure' }>,
  text: string,
  heading: Unit | null,
  mark: DecimalMark,
): Wrong | { readonly value: number } {
  const reading = readQuantity(text, mark);
  if (!reading.ok) return quantityProblem(reading);
  if (type.is === 'count') {
    const whole = reading.unit === null || reading.unit.dimension === 'pieces';
    return whole && Number.isSafeInteger(reading.figure) && reading.figure >= 1
      ? { value: reading.figure }
      : { because: 'it is not a whole number of 1 or more' };
  }
  if (reading.figure < 0 || (reading.figure === 0 && type.dimension !== null))
    return { because: 'it is not more than zero' };
  const unit = reading.unit ?? heading;
  if (unit === null) return inRange(reading.figure * type.bare);
  if (unit.dimension !== type.dimension) return { because: `${unit.symbol} is not its unit` };
  const current = CURRENT_OF.get(field);
  if (current !== undefined && unit.current !== null && unit.current !== current)
    return {
      because: `it is stated as ${unit.current.toUpperCase()}, and the column is of ${current.toUpperCase()}`,
    };
  return inRange(inOurUnit(reading.figure, unit));
}

function inRange(value: number): Wrong | { readonly value: number } {
  return value > LARGEST ? { because: 'it is larger than any such figure; look at its unit' } : { value };
}
