import type { CellFault } from '../../model/messages/record.js';
import type { FormRow } from '../../model/site-form-rows.js';
import { inOurUnit, readQuantity, unitOf, type Dimension } from '../cell/units.js';

/** A value, or why there is none. */
export type Read<T> = { readonly value: T } | { readonly fault: CellFault };

/** What figures of a form are read with. */
export interface FigureReading {
  readonly mark: FormRow['mark'];
  /** The unit of a bare figure, as the heading or the company has it. */
  readonly bare: string;
}

/**
 * Reads a figure with its unit.
 * @param text as typed
 * @param dimension that its unit must have
 * @param reading the decimal mark, and the unit of a bare figure
 * @returns m, V or A
 */
export function readFigure(text: string, dimension: Dimension, { mark, bare }: FigureReading): Read<number> {
  const read = readQuantity(text, mark);
  if (!read.ok)
    return {
      fault:
        read.problem === 'two-ways' || read.problem === 'shortened'
          ? read.problem
          : read.problem === 'unknown-unit'
            ? 'unit'
            : 'number',
    };
  const unit = read.unit ?? unitOf(bare);
  if (unit === null || unit.dimension !== dimension) return { fault: 'unit' };
  return { value: inOurUnit(read.figure, unit) };
}
