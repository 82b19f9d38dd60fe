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
  /** Its HTML: made for the layout that is printed alone, since hundreds are tried. */
  readonly html: () => string;
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
}

/** Between two blocks of a column; mm. */
const BLOCK_GAP = 3;
/** A table or list begins with so many rows at least. */
const LEAST_BEGUN = 2;
/** It goes on elsewhere with so many at least, or with two of this height together, mm: fewer are lost there. */
const LEAST_LEFT = 3;
const LEAST_LEFT_HEIGHT = 20;

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

/** Height of the sentences that close a table or list: they stand below its last rows; mm. */
function closingHeight(groups: readonly MeasuredGroup[], table: number): number {
  const later = groups.slice(table + 1);
  const end = later.findIndex((group) => group.kind !== 'text');
  // What leads to another table goes with that.
  return end < 0 ? later.reduce((all, group) => all + sum(group.rows), 0) : 0;
}

/**
 * How many rows go into a height, with as many left over as may stand alone; 0: none.
 * @param closing what must stand below the last of them, mm
 */
function rowsThatFit(rows: MeasuredGroup['rows'], room: number, closing: number): number {
  let height = 0;
  let count = 0;
  for (const [index, row] of rows.entries()) {
    height += row.height;
    if (height + (index === rows.length - 1 ? closing : 0) > room) break;
    count += 1;
  }
  if (count === rows.length) return count;
  const least = sum(rows.slice(-LEAST_BEGUN)) >= LEAST_LEFT_HEIGHT ? LEAST_BEGUN : LEAST_LEFT;
  const fitting = Math.min(count, rows.length - least);
  return fitting >= LEAST_BEGUN ? fitting : 0;
}

/** True where a heading or sentence goes into a height together with the beginning of what it leads to. */
function leadFits(groups: readonly MeasuredGroup[], from: number, room: number): boolean {
  const leads = groups.slice(from).some(isTable);
  let height = 0;
  for (const [index, group] of groups.entries()) {
    if (index < from) continue;
    if (isTable(group)) {
      const left = room - height - group.head - group.tail;
      return rowsThatFit(group.rows, left, closingHeight(groups, index)) > 0;
    }
    height += sum(group.rows);
    if (group.kind === 'text' && !leads) break;
  }
  return height <= room;
}

/** The heading that a group stands under, for a column in which it goes on. */
function headingAgain(block: MeasuredBlock, group: number): MeasuredGroup | undefined {
  for (let before = group - 1; before >= 0; before -= 1)
    if (block.groups[before]?.kind === 'heading') return block.groups[before];
  return undefined;
}

/** Rows of one group, as they stand in a column. */
interface Piece {
  readonly heading: MeasuredGroup | undefined;
  readonly group: MeasuredGroup;
  readonly from: number;
  readonly to: number;
}

function htmlOf({ heading, group, from, to }: Piece): string {
  const again = heading ? `<p class="continued">${escapeText(heading.words)} (continued)</p>` : '';
  const rows = group.rows
    .slice(from, to)
    .map((row) => row.html)
    .join('');
  return isTable(group) ? `${again}${group.open}${rows}${group.close}` : rows;
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
  { forced = false }: Taking = {},
): Taken {
  const parts: { name: string; html: () => string; pieces: Piece[] }[] = [];
  let place = from;
  let height = 0;
  let hasRows = false;
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
    const isForced = forced && !hasRows;
    let heading: MeasuredGroup | undefined;
    let to = group.rows.length;
    if (isTable(group)) {
      heading = begins ? headingAgain(block, place.group) : undefined;
      const fixed = gap + (heading ? sum(heading.rows) : 0) + group.head;
      const closing = closingHeight(block.groups, place.group);
      const rows = group.rows.slice(place.row);
      const fitting = rowsThatFit(rows, room - height - fixed - group.tail, closing) || (isForced ? 1 : 0);
      if (fitting === 0) return full(place.row > 0);
      to = place.row + fitting;
      hasRows = true;
      height += fixed + sum(rows.slice(0, fitting)) + group.tail;
    } else {
      if (!isForced && !leadFits(block.groups, place.group, room - height - gap)) return full(false);
      height += gap + sum(group.rows.slice(place.row));
    }
    const piece = { heading, group, from: place.row, to };
    const open = parts.at(-1);
    if (begins || open === undefined) {
      const pieces = [piece];
      parts.push({ name: block.name, pieces, html: () => pieces.map(htmlOf).join('') });
    } else open.pieces.push(piece);
    if (to < group.rows.length) {
      place = { ...place, row: to };
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
