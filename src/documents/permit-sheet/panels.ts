import type { MeasuredBlock } from '../../model/print.js';
import { isDone, take } from './flow.js';
import type { Part, Place } from './flow.js';
import { GAP } from './paper.js';

/** A column of a band. */
export interface Column {
  /** mm. */
  readonly width: number;
  readonly parts: readonly Part[];
  /** Index of the drawing that stands in it; undefined: none. */
  readonly drawing?: number;
}

/** Columns beside each other; mm. */
export interface Band {
  readonly height: number;
  readonly columns: readonly Column[];
}

/** Bands below each other. */
export interface Panel {
  readonly bands: readonly Band[];
  /** mm that they take. */
  readonly used: number;
}

/** How bad it is that a table or list goes on in the column beside, and on another sheet; that one over the whole width does. */
export const TORN = { beside: 2, over: 4, wide: 12 } as const;

/** Panels as they are filled, one after the other. */
export class Panels {
  readonly done: { bands: Band[]; used: number; filled: number }[] = [];
  torn = 0;

  /** @param height that may be filled, mm; a drawing may be higher */
  constructor(private readonly height: number) {}

  /** Room below what the last panel has; mm. */
  get left(): number {
    return this.leftOf(this.height);
  }

  /** Room below what the last panel has, were it so high; mm. */
  leftOf(height: number): number {
    const last = this.done.at(-1);
    if (last === undefined) return 0;
    return height - last.used - (last.bands.length > 0 ? GAP.band : 0);
  }

  get isFresh(): boolean {
    return this.done.at(-1)?.bands.length === 0;
  }

  begin(): void {
    this.done.push({ bands: [], used: 0, filled: 0 });
  }

  /** @param filled height of the same area over the whole width, mm */
  add(band: Band, filled: number): void {
    const last = this.done.at(-1);
    if (last === undefined) return;
    const gap = last.bands.length > 0 ? GAP.band : 0;
    last.used += band.height + gap;
    last.filled += filled + gap;
    last.bands.push(band);
  }
}

/** Widths of columns beside each other; mm. */
export function columnWidth(width: number, columns: number): number {
  return (width - (columns - 1) * GAP.column) / columns;
}

/** Columns beside each other as they were filled. */
interface Filled {
  readonly columns: readonly (readonly Part[])[];
  readonly next: Place;
  /** Of the highest; mm. */
  readonly height: number;
  /** On the average; mm. */
  readonly filled: number;
  readonly torn: number;
}

/** Fills columns one after the other. */
export function filled(
  flow: readonly MeasuredBlock[],
  from: Place,
  count: number,
  height: number,
  forced: boolean,
): Filled {
  const columns: Part[][] = [];
  let next = from;
  let highest = 0;
  let all = 0;
  let torn = 0;
  for (let i = 0; i < count; i += 1) {
    const taken = take(flow, next, height, { forced });
    columns.push([...taken.parts]);
    next = taken.next;
    highest = Math.max(highest, taken.height);
    all += taken.height;
    if (taken.splits) torn += i < count - 1 ? TORN.beside : TORN.over;
  }
  return { columns, next, height: highest, filled: all / count, torn };
}

/** Columns that are as low as hold all that is left; undefined: it doesn't go into the height. */
export function balanced(
  flow: readonly MeasuredBlock[],
  from: Place,
  count: number,
  height: number,
): Filled | undefined {
  const whole = filled(flow, from, count, height, false);
  if (!isDone(flow, whole.next)) return undefined;
  let best = whole;
  let low = 0;
  let high = height;
  while (high - low > 0.5) {
    const middle = (low + high) / 2;
    const tried = filled(flow, from, count, middle, false);
    if (isDone(flow, tried.next)) [best, high] = [tried, middle];
    else low = middle;
  }
  // A table torn between columns only to level them isn't worth it.
  return best.torn > whole.torn ? whole : best;
}
