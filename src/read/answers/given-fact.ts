import type { Fact } from '../../model/fact.js';
import type { CellReading } from '../cell/cell-reading.js';
import { valueIn } from './readers.js';

/** What a file of equipment facts states of one field of one row. */
export interface GivenFact {
  readonly text: string;
  readonly reading: CellReading & { readonly is: 'value' };
  readonly origin: { readonly file: string; readonly line: number; readonly column: string };
}

/** A cable of a schedule; its ends are tags. */
export interface Cable {
  readonly from: string;
  readonly to: string;
  readonly length: GivenFact;
}

/** The fact that a row takes; a bare length is in the unit of its job. */
export function givenFact({ text, reading, origin }: GivenFact, feet: boolean): Fact<unknown> {
  return { value: valueIn(reading, feet), text, origin: { from: 'equipment-facts', ...origin } };
}
