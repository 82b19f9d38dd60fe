import type { MeasuredBlock, MeasuredGroup } from '../../model/print.js';
import { escapeText } from '../drawing/svg.js';

/** Where in a flow of blocks the next piece stands. */
export interface Place {
  readonly block: number;
  readonly group: number;
  readonly row: number;
}

/** What stands of one block in a column. */
export interface Part {
  /** Name of the block. */
  readonly name: string;
  readonly html: string;
}

/** What a column took of a flow. */
export interface Taken {
  readonly parts: readonly Part[];
  /** mm. */
  readonly height: number;
  readonly next: Place;
  /** True where a table or list goes on elsewhere. */
  readonly splits: boolean;
}

/** How a column is filled. */
export interface Taking {
  /** True: no column is higher than this one, so that what is higher still stands there all the same. */
  readonly forced?: boolean;
  /** True: the column before it stands beside it. */
  readonly beside?: boolean;
}

/** Between two blocks of a column; mm. */
const BLOCK_GAP = 3;
/** A table or list goes on elsewhere with so many rows at least, and leaves as many. */
const LEAST_ROWS = 2;

export const START: Place = { block: 0, group: 0, row: 0 };

/** True where nothing of the flow is left. */
export function isDone(flow: readonly MeasuredBlock[], place: Place): boolean {
  return place.block >= flow.length;
}

function after(flow: readonly MeasuredBlock[], { block, group }: Place): Place {
  const groups = flow[block]?.groups.length ?? 0;
  return group + 1 < groups ? { block, group: group + 1, row: 0 } : { block: block + 1, group: 0, row: 0 };
}

const sum = (rows: MeasuredGroup['rows']): number => rows.reduce((all, row) => all + row.height, 0);
const isTable = ({ kind }: MeasuredGroup): boolean => kind === 'table' || kind === 'list';

/** What must stand at least from a heading or sentence on to what it leads to; mm. */
function leadHeight(groups: readonly MeasuredGroup[], from: number): number {
  let height = 0;
  for (const group of groups.slice(from)) {
    if (isTable(group)) return height + group.head + sum(group.rows.slice(0, LEAST_ROWS));
    height += sum(group.rows);
    if (group.kind === 'text' && !groups.slice(from).some(isTable)) return height;
  }
  return height;
}

/** How many rows go into a height, with as many left over as may stand alone; 0: none. */
function rowsThatFit(rows: MeasuredGroup['rows'], room: number): number {
  let height = 0;
  let count = 0;
  for (const row of rows) {
    height += row.height;
    if (height > room) break;
    count += 1;
  }
  const left = rows.length - count;
  if (left === 0) return count;
  const fitting = left < LEAST_ROWS ? count - (LEAST_ROWS - left) : count;
  return fitting >= LEAST_ROWS ? fitting : 0;
}

/** The heading that a group stands under, for a column in which it goes on. */
function headingAgain(block: MeasuredBlock, group: number): { html: string; height: number } {
  const heading = block.groups.slice(0, group).findLast((g) => g.kind === 'heading');
  if (heading === undefined) return { html: '', height: 0 };
  const html = `<p class="continued">${escapeText(heading.words)} (continued)</p>`;
  return { html, height: sum(heading.rows) };
}

/**
 * Puts as much of a flow into a column as goes there; no row is torn, no heading stands alone, and a table that goes on
 * has its heading and its head again.
 * @param flow blocks as measured at the width of the column
 * @param from where to go on
 * @param room of the column, mm
 */
export function take(
  flow: readonly MeasuredBlock[],
  from: Place,
  room: number,
  { forced = false, beside = false }: Taking = {},
): Taken {
  const parts: { name: string; html: string }[] = [];
  let place = from;
  let height = 0;
  const full = (splits: boolean): Taken => ({ parts, height, next: place, splits });
  while (!isDone(flow, place)) {
    const block = flow[place.block];
    const group = block?.groups[place.group];
    if (block === undefined || group === undefined) {
      place = { block: place.block + 1, group: 0, row: 0 };
      continue;
    }
    const begins = parts.length === 0 || (place.group === 0 && place.row === 0);
    const gap = begins && parts.length > 0 ? BLOCK_GAP : 0;
    const isForced = forced && parts.length === 0;
    let html: string;
    let rows = group.rows.slice(place.row);
    if (isTable(group)) {
      // The numbers of a list go on by themselves from the column beside.
      const isTold = begins && place.group > 0 && !(beside && group.kind === 'list');
      const again = isTold ? headingAgain(block, place.group) : { html: '', height: 0 };
      const fixed = gap + again.height + group.head;
      const fitting = rowsThatFit(rows, room - height - fixed - group.tail) || (isForced ? 1 : 0);
      if (fitting === 0) return full(place.row > 0);
      rows = rows.slice(0, fitting);
      html = `${again.html}${group.open}${rows.map((row) => row.html).join('')}${group.close}`;
      height += fixed + sum(rows) + group.tail;
    } else {
      if (!isForced && height + gap + leadHeight(block.groups, place.group) > room) return full(false);
      html = rows.map((row) => row.html).join('');
      height += gap + sum(rows);
    }
    const open = parts.at(-1);
    if (begins || open === undefined) parts.push({ name: block.name, html });
    else open.html += html;
    if (place.row + rows.length < group.rows.length) {
      place = { ...place, row: place.row + rows.length };
      return full(true);
    }
    place = after(flow, place);
  }
  return full(false);
}

/** The height of blocks that stand whole below each other; mm. */
export function heightOf(flow: readonly MeasuredBlock[]): number {
  return take(flow, START, Number.POSITIVE_INFINITY).height;
}
