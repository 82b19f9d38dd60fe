import type { QuantityReading } from './units.js';
import { wrong, type Wrong } from './cell-reading.js';

/** What is wrong with a figure, in words. */
export function quantityProblem(reading: Extract<QuantityReading, { ok: false }>): Wrong {
  switch (reading.problem) {
    case 'two-ways':
      return {
        because: 'it can be read two ways, with a decimal mark or with a mark between thousands',
        hint: 'Write it without marks between thousands; of a list, --decimal or the column map may state its decimal mark.',
        problem: 'two-ways',
      };
    case 'shortened':
      return wrong(
        'a spreadsheet has shortened it to powers of ten',
        'Show the whole number in the spreadsheet and export it again.',
      );
    case 'grouping':
      return wrong('its marks do not stand where a decimal mark or marks between thousands stand');
    case 'no-number':
      return wrong('it is not a number');
    case 'unknown-unit':
      return wrong('what follows the number is not a unit that is known here');
  }
}
