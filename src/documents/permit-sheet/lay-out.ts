import type { MeasuredBlock } from '../../model/print.js';
import { heightOf, isDone, START, take } from './flow.js';
import type { Part, Place } from './flow.js';
import { GAP } from './paper.js';
import { OTHER_ORDERS, upTo, waysOf, type Way } from './ways.js';

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

/** What is to be laid out. Widths and heights in mm. */
export interface Contents {
  readonly room: { readonly width: number; readonly height: number };
  readonly drawings: readonly { readonly width: number; readonly height: number }[];
  /** Blocks over the whole width, in their order; the last of them may go into columns as well. */
  readonly wide: readonly MeasuredBlock[];
  /** Blocks that go into columns, in their order, by number of columns; the last of them is the last of `wide`. */
  readonly narrow: ReadonlyMap<number, readonly MeasuredBlock[]>;
  /** The same at the width that stands free beside the first drawing; undefined: it has no room beside it. */
  readonly beside: { readonly width: number; readonly blocks: readonly MeasuredBlock[] } | undefined;
  /** The same over the whole width, for what stands below a drawing: the legend. */
  readonly legend: readonly MeasuredBlock[];
}

/** Columns lower than this aren't worth the break; mm. */
const LEAST_BAND = 22;

class Panels {
  readonly done: { bands: Band[]; used: number }[] = [];
  splits = 0;

  constructor(private readonly height: number) {}

  /** Room below what the last panel has; mm. */
  get left(): number {
    const last = this.done.at(-1);
    if (last === undefined) return 0;
    return this.height - last.used - (last.bands.length > 0 ? GAP.band : 0);
  }

  get isFresh(): boolean {
    return this.done.at(-1)?.bands.length === 0;
  }

  begin(): void {
    this.done.push({ bands: [], used: 0 });
  }

  add(band: Band): void {
    const last = this.done.at(-1);
    if (last === undefined) return;
    last.used += band.height + (last.bands.length > 0 ? GAP.band : 0);
    last.bands.push(band);
  }
}

/** Widths of columns beside each other; mm. */
export function columnWidth(width: number, columns: number): number {
  return (width - (columns - 1) * GAP.column) / columns;
}

function filled(
  flow: readonly MeasuredBlock[],
  from: Place,
  count: number,
  height: number,
  forced: boolean,
): { columns: Part[][]; next: Place; height: number; splits: number } {
  const columns: Part[][] = [];
  let next = from;
  let highest = 0;
  let splits = 0;
  for (let i = 0; i < count; i += 1) {
    const taken = take(flow, next, height, { forced, beside: i > 0 });
    columns.push([...taken.parts]);
    next = taken.next;
    highest = Math.max(highest, taken.height);
    if (taken.splits) splits += 1;
  }
  return { columns, next, height: highest, splits };
}

/** Columns that are as low as hold all that is left; undefined: it doesn't go into the height. */
function balanced(
  flow: readonly MeasuredBlock[],
  from: Place,
  count: number,
  height: number,
): ReturnType<typeof filled> | undefined {
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
  return best.splits > whole.splits ? whole : best;
}

interface Laid {
  readonly panels: Panels;
  /** False: something is wider than its column. */
  readonly fits: boolean;
}

function lay(contents: Contents, way: Way): Laid {
  const { room, drawings } = contents;
  const wide = way.narrowLast ? contents.wide.slice(0, -1) : contents.wide;
  const inOrder = (blocks: readonly MeasuredBlock[]): MeasuredBlock[] => {
    const own = way.narrowLast ? blocks : blocks.slice(0, -1);
    return way.order(own.length).flatMap((index) => own[index] ?? []);
  };
  const narrow = inOrder(contents.narrow.get(way.columns) ?? []);
  const legends = contents.legend.length;
  const beside = contents.beside && {
    ...contents.beside,
    blocks: [...contents.beside.blocks.slice(0, legends), ...inOrder(contents.beside.blocks.slice(legends))],
  };
  const width = columnWidth(room.width, way.columns);
  const panels = new Panels(room.height);
  let text = START;
  let fits = narrow.every((block) => block.fits) && wide.every((block) => block.fits);
  const putText = (isLast: boolean): void => {
    while (!isDone(narrow, text)) {
      if (panels.done.length === 0) panels.begin();
      if (panels.left < LEAST_BAND) {
        if (!isLast) return;
        panels.begin();
      }
      const level = balanced(narrow, text, way.columns, panels.left);
      const band = level ?? filled(narrow, text, way.columns, panels.left, panels.isFresh);
      if (band.height > 0) {
        panels.add({ height: band.height, columns: band.columns.map((parts) => ({ width, parts })) });
        panels.splits += band.splits;
        text = band.next;
      }
      if (isDone(narrow, text)) return;
      if (!isLast) return;
      panels.begin();
    }
  };
  const putWide = (block: MeasuredBlock): void => {
    const flow = [block];
    let place = START;
    while (!isDone(flow, place)) {
      if (panels.done.length === 0) panels.begin();
      const isWhole = heightOf(flow) <= panels.left && place === START;
      const maySplit = isWhole || way.tears || panels.isFresh;
      const taken = maySplit ? take(flow, place, panels.left, { forced: panels.isFresh }) : undefined;
      if (taken === undefined || taken.parts.length === 0) {
        putText(false);
        panels.begin();
        continue;
      }
      panels.add({ height: taken.height, columns: [{ width: room.width, parts: taken.parts }] });
      if (taken.splits) panels.splits += 1;
      place = taken.next;
    }
  };
  for (const [index, drawing] of drawings.entries()) {
    panels.begin();
    const legend = index === 0 ? contents.legend : [];
    if (index === 0 && beside !== undefined) {
      const taken = take(
        beside.blocks,
        START,
        Math.min(room.height, Math.max(drawing.height, way.besideHeight)),
      );
      const standing = beside.blocks.slice(0, taken.next.block + (taken.next.row > 0 ? 1 : 0));
      fits &&= standing.every((block) => block.fits) && taken.next.block >= legend.length;
      // The legend leads the flow beside a drawing; what else stands there is no more to be laid out.
      text = withoutLegend(taken.next, contents.legend.length);
      if (taken.splits) panels.splits += 1;
      panels.add({
        height: Math.max(drawing.height, taken.height),
        columns: [
          { width: drawing.width, parts: [], drawing: index },
          { width: beside.width, parts: taken.parts },
        ],
      });
    } else {
      panels.add({ height: drawing.height, columns: [{ width: drawing.width, parts: [], drawing: index }] });
      const taken = take(legend, START, Number.POSITIVE_INFINITY);
      if (taken.parts.length > 0)
        panels.add({ height: taken.height, columns: [{ width: room.width, parts: taken.parts }] });
    }
    // What the next drawing leaves no room for stands below this one.
    if (index + 1 < drawings.length) putText(false);
  }
  if (way.textFirst) putText(false);
  for (const block of wide) putWide(block);
  putText(true);
  return { panels, fits };
}

/** A place of the flow beside a drawing, which the legend leads, in the flow without it. */
function withoutLegend(place: Place, legends: number): Place {
  return place.block < legends ? START : { ...place, block: place.block - legends };
}

/** How bad a layout is: sheets first, then what stands empty on all but the last, then tables that are torn. */
function badness({ panels, fits }: Laid, height: number, panelsASheet: number): number {
  const sheets = Math.ceil(panels.done.length / panelsASheet);
  const empty = panels.done.slice(0, -1).reduce((all, panel) => all + (height - panel.used) / height, 0);
  return (fits ? 0 : 10_000) + sheets * 100 + empty * 10 + panels.splits * 3;
}

/**
 * Lays drawing, tables and running text out on panels, in the best of several ways: as few sheets as can be, no half-empty
 * one before the last, no table torn where that costs nothing.
 * @param contents as measured
 * @param columns numbers of columns that running text may have
 * @param panelsASheet panels that stand on one sheet
 */
export function layOut(contents: Contents, columns: readonly number[], panelsASheet: number): Panel[] {
  const { height } = contents.room;
  const tables = heightOf(contents.wide.slice(0, 1));
  const besides =
    contents.beside === undefined
      ? [0]
      : [0, height - GAP.band - tables, height].filter((h, i) => i === 0 || h > 0);
  const bestOf = (laid: readonly Laid[]): Laid =>
    laid.reduce((best, one) => (badnessOf(one) < badnessOf(best) ? one : best));
  const badnessOf = (laid: Laid): number => badness(laid, height, panelsASheet);
  const best = bestOf(waysOf(columns, besides, upTo).map((way) => lay(contents, way)));
  const used = best.panels.done.reduce((all, panel) => all + panel.used, 0);
  // All that can be saved is saved where what stands on the sheets wouldn't go on fewer.
  if (Math.ceil(used / height) >= best.panels.done.length) return best.panels.done;
  const others = OTHER_ORDERS.flatMap((order) => waysOf(columns, besides, order)).map((way) =>
    lay(contents, way),
  );
  return bestOf([best, ...others]).panels.done;
}
