import { itemAt, note } from '../../model/message.js';
import { RECORD_MESSAGES, type CellFault } from '../../model/messages/record.js';
import type { OpenItem } from '../../model/open-item.js';
import { cellOf, cellPlace, type AnyHeading, type FormRow } from '../../model/site-form-rows.js';
import { visible } from '../../words/visible.js';
import type { Dimension } from '../cell/units.js';
import { readFigure, type Read } from './figures.js';

/** No name, place or remark is longer. */
const LONGEST = 4000;
/** What a message shows of a cell. */
const SHOWN = 120;

/** Reads the cells of one row; what isn't understood is an item, and counts as blank. */
export interface RowReader {
  readonly text: (heading: AnyHeading) => string;
  /** Several, joined by `; `. */
  readonly texts: (heading: AnyHeading) => string[];
  readonly figure: (heading: AnyHeading, dimension: Dimension, bare: string) => number | null;
  readonly by: <T>(heading: AnyHeading, read: (text: string) => Read<T>) => T | undefined;
  readonly items: readonly OpenItem[];
}

/**
 * Opens a row.
 * @param row as it came back
 * @param equipment that items of it are about: the protector; `` the job
 */
export function rowReader(row: FormRow, equipment: string): RowReader {
  const items: OpenItem[] = [];
  const wrong = (heading: AnyHeading, text: string, fault: CellFault): void => {
    const shown = visible(text.slice(0, SHOWN));
    items.push(
      itemAt(
        note(RECORD_MESSAGES.cellWrong, { heading, text: shown, cellFault: fault }),
        cellPlace(row, heading),
        equipment,
        heading,
      ),
    );
  };
  const text = (heading: AnyHeading): string => {
    const typed = cellOf(row, heading);
    if (typed.length <= LONGEST) return visible(typed);
    wrong(heading, typed, 'too-long');
    return '';
  };
  const by = <T>(heading: AnyHeading, read: (text: string) => Read<T>): T | undefined => {
    const typed = text(heading);
    if (typed === '') return undefined;
    const found = read(typed);
    if ('value' in found) return found.value;
    wrong(heading, typed, found.fault);
    return undefined;
  };
  return {
    text,
    texts: (heading) =>
      text(heading)
        .split(/[;\n]/)
        .map((one) => one.trim())
        .filter((one) => one !== ''),
    by,
    figure: (heading, dimension, bare) =>
      by(heading, (typed) => {
        const read = readFigure(typed, dimension, { mark: row.mark, bare: row.units[heading] ?? bare });
        return 'value' in read && read.value < 0 ? { fault: 'negative' } : read;
      }) ?? null,
    items,
  };
}
