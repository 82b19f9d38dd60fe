import { FIELDS } from '../../model/fields.js';
import type { Field } from '../../model/list.js';
import type { Note } from '../../model/open-item.js';
import type { Settings } from '../../model/settings.js';
import type { Kind } from '../../model/words.js';
import { note } from '../../model/message.js';
import { CELL_WRONG, UNIT_UNSURE } from '../../model/messages/list.js';
import type { DecimalMark } from './numbers.js';
import { visible } from '../../words/visible.js';
import type { Unit } from './units.js';

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
      /** Bare lengths wait for their job's unit: this is their value where that is feet (`value`: metres); null for all else. */
      readonly feet: number | readonly number[] | null;
      /** Something to confirm about the cell. */
      readonly note: Note | null;
      /** What the word of a kind states beside the kind. */
      readonly also?: { readonly field: Field; readonly value: unknown };
      /** The kinds that the word can mean, where it can mean several: what feeds the row says which. */
      readonly mayBe?: readonly Kind[];
    }
  /** `note` null: an item of the file says it already. `either`: the kinds that a word can mean; what else the row says may tell. */
  | { readonly is: 'wrong'; readonly note: Note | null; readonly either?: readonly Kind[] };

/** A cell that can't be understood: why, and what to do where that isn't obvious. */
export interface Wrong {
  readonly because: string;
  readonly hint?: string;
  readonly problem?: 'two-ways';
}

/** Says why a cell can't be understood, and what to do where that isn't obvious. */
export function wrong(because: string, hint?: string): Wrong {
  return hint === undefined ? { because } : { because, hint };
}

/** The note of a wrong cell. */
export function wrongCell(field: Field, text: string, wrong: Wrong): Note {
  const { expected, who } = FIELDS[field];
  return note(CELL_WRONG, {
    field,
    text: visible(text),
    expected,
    who,
    because: wrong.because,
    hint: wrong.hint ?? 'Correct the cell; leave it blank if it is not known.',
    ...(wrong.problem === undefined ? {} : { problem: wrong.problem }),
  });
}

/** The note of a bare figure that is read in the field's unit, and is more likely in another. */
export function unsureUnit(field: Field, text: string, units: string): Note {
  const { expected, who } = FIELDS[field];
  return note(UNIT_UNSURE, { field, text: visible(text), expected, who, units });
}
