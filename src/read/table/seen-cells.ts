import { lineEnds } from '../file/decode.js';
import { ROWS_A_STEP, STEP, type InSteps } from '../file/in-steps.js';
import { seeingText, type SeenText, type Unseen } from '../file/unseen.js';

/** All but what is seen as it stands. */
const TO_LOOK_AT = /[^\n\x20-\x7e]/;

/** So many different texts are remembered; cells of a column are often alike. */
const MOST_KNOWN = 10_000;

/** What was taken out of the cells of a sheet; each as {@link SeenText} has it. */
export type CellsSeen = Omit<SeenText, 'text'>;

/**
 * Takes out of the cells of a sheet what a reader can't see, as it is done with a text; in steps.
 * @param cells they are changed
 * @param lines row of each record
 */
export function* seeingCells(cells: string[][], lines: readonly number[]): InSteps<CellsSeen> {
  const known = new Map<string, SeenText>();
  let turning: Unseen | null = null;
  let control: Unseen | null = null;
  let walked = 0;
  for (const [r, record] of cells.entries()) {
    for (const [c, cell] of record.entries()) {
      walked += cell.length;
      if (!TO_LOOK_AT.test(cell)) continue;
      let seen = known.get(cell);
      if (seen === undefined) {
        seen = yield* seeingText(lineEnds(cell));
        if (known.size < MOST_KNOWN) known.set(cell, seen);
      }
      record[c] = seen.text;
      turning = together(turning, seen.turning, lines[r] ?? 0);
      control = together(control, seen.control, lines[r] ?? 0);
    }
    if (r % ROWS_A_STEP !== 0 && walked < STEP) continue;
    walked = 0;
    yield;
  }
  return { turning, control };
}

function together(before: Unseen | null, found: Unseen | null, line: number): Unseen | null {
  if (found === null) return before;
  return before === null ? { ...found, line } : { ...before, count: before.count + found.count };
}
