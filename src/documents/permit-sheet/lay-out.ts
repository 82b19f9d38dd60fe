import type { MeasuredBlock } from '../../model/print.js';
import { heightOf, isDone, START, take } from './flow.js';
import type { Place } from './flow.js';
import { balanced, columnWidth, filled, Panels, TORN, type Panel } from './panels.js';
import { GAP } from './paper.js';
import { OTHER_ORDERS, upTo, waysOf, type Way } from './ways.js';

/** Contents laid out. */
export interface Layout {
  readonly panels: readonly Panel[];
  /** To compare with that of other contents of the same job: less is better. */
  readonly badness: number;
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
  /** Over the whole width, for what stands below the first drawing that leaves room for it: the legend. */
  readonly legend: readonly MeasuredBlock[];
}

/** Columns lower than this aren't worth the break; mm. */
const LEAST_BAND = 22;

/** How bad it is, by column, that a table which has room over the whole width stands in one of several columns. */
const NARROW = 1;

/** How bad it is that the legend stands on another sheet than a drawing. */
const LEGEND_AWAY = 8;

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
  const panels = new Panels(room.height * way.fill);
  if (way.narrowLast) panels.torn += NARROW * way.columns;
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
        panels.add(
          { height: band.height, columns: band.columns.map((parts) => ({ width, parts })) },
          band.filled,
        );
        panels.torn += band.torn;
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
      panels.add(
        { height: taken.height, columns: [{ width: room.width, parts: taken.parts }] },
        taken.height,
      );
      if (taken.splits) panels.torn += TORN.wide;
      place = taken.next;
    }
  };
  let isLegendPut = contents.legend.length === 0;
  const legendHeight = heightOf(contents.legend);
  const putLegend = (): void => {
    const { parts } = take(contents.legend, START, Infinity);
    panels.add({ height: legendHeight, columns: [{ width: room.width, parts }] }, legendHeight);
    isLegendPut = true;
  };
  for (const [index, drawing] of drawings.entries()) {
    panels.begin();
    if (index === 0 && beside !== undefined) {
      const taken = take(
        beside.blocks,
        START,
        Math.min(room.height, Math.max(drawing.height, way.besideHeight)),
      );
      const standing = beside.blocks.slice(0, taken.next.block + (taken.next.row > 0 ? 1 : 0));
      fits &&= standing.every((block) => block.fits);
      isLegendPut ||= taken.next.block >= legends;
      // The legend leads the flow beside a drawing; what else stands there is no more to be laid out.
      text = withoutLegend(taken.next, legends);
      if (taken.splits) panels.torn += TORN.over;
      const height = Math.max(drawing.height, taken.height);
      const columns = [
        { width: drawing.width, parts: [], drawing: index },
        { width: beside.width, parts: taken.parts },
      ];
      panels.add(
        { height, columns },
        (drawing.width * drawing.height + beside.width * taken.height) / room.width,
      );
    } else {
      const columns = [{ width: drawing.width, parts: [], drawing: index }];
      panels.add({ height: drawing.height, columns }, drawing.height);
    }
    if (!isLegendPut && legendHeight <= panels.leftOf(room.height)) putLegend();
    // What the next drawing leaves no room for stands below this one.
    if (index + 1 < drawings.length) putText(false);
  }
  if (!isLegendPut) {
    panels.torn += LEGEND_AWAY;
    putText(false);
    if (legendHeight > panels.leftOf(room.height)) panels.begin();
    putLegend();
  }
  if (way.text === 'first') putText(false);
  for (const [index, block] of wide.entries()) {
    putWide(block);
    if (way.text === 'between' && index === 0) putText(false);
  }
  putText(true);
  return { panels, fits };
}

/** A place of the flow beside a drawing, which the legend leads, in the flow without it. */
function withoutLegend(place: Place, legends: number): Place {
  return place.block < legends ? START : { ...place, block: place.block - legends };
}

/** A sheet that is emptier than this is a half-empty one, with some room for a rounding. */
const MOST_EMPTY = 0.45;

/** How empty the emptiest sheet is by area, and below its last line; 0 to 1. */
function emptiest({ panels }: Laid, height: number, panelsASheet: number): { area: number; below: number } {
  const empty = { area: 0, below: 0 };
  for (let at = 0; at < panels.done.length; at += panelsASheet) {
    const own = panels.done.slice(at, at + panelsASheet);
    const filled = own.reduce((all, panel) => all + panel.filled, 0) / panelsASheet;
    empty.area = Math.max(empty.area, 1 - filled / height);
    empty.below = Math.max(empty.below, 1 - Math.max(...own.map(({ used }) => used)) / height);
  }
  return empty;
}

/** How bad a layout is: sheets first, then a half-empty one, then tables that are torn and the emptiest sheet. */
function badness(laid: Laid, height: number, panelsASheet: number): number {
  const { area, below } = emptiest(laid, height, panelsASheet);
  return (
    (laid.fits ? 0 : 100_000) +
    Math.ceil(laid.panels.done.length / panelsASheet) * 1000 +
    Math.max(0, below - MOST_EMPTY) * 500 +
    Math.max(0, area - MOST_EMPTY) * 100 +
    area * 15 +
    laid.panels.torn
  );
}

/** Shares of a panel that may be filled, where all that there is leaves one half-empty. */
const FILLS = [0.95, 0.9, 0.85, 0.8, 0.75, 0.7, 0.65, 0.6, 0.55] as const;
/** What is emptier is tried anew. */
const WORTH_LEVELLING = 0.25;

/**
 * Lays drawing, tables and running text out on panels, in the best of several ways: as few sheets as can be, the emptiest
 * of them as full as can be, no table torn where that costs nothing.
 * @param contents as measured
 * @param columns numbers of columns that running text may have
 * @param panelsASheet panels that stand on one sheet
 */
export function layOut(contents: Contents, columns: readonly number[], panelsASheet: number): Layout {
  const { height } = contents.room;
  const tables = heightOf(contents.wide.slice(0, 1));
  const besides =
    contents.beside === undefined
      ? [0]
      : [0, height - GAP.band - tables, height].filter((h, i) => i === 0 || h > 0);
  const badnessOf = (laid: Laid): number => badness(laid, height, panelsASheet);
  const sheetsOf = ({ panels }: Laid): number => Math.ceil(panels.done.length / panelsASheet);
  const better = (best: Laid, ways: readonly Way[]): Laid =>
    ways
      .map((way) => lay(contents, way))
      .reduce((one, other) => (badnessOf(other) < badnessOf(one) ? other : one), best);
  const [first, ...others] = waysOf(columns, besides, upTo);
  if (first === undefined) return { panels: [], badness: 0 };
  let best = better(lay(contents, first), others);
  const used = best.panels.done.reduce((all, panel) => all + panel.used, 0);
  // All that can be saved is saved where what stands on the sheets wouldn't go on fewer.
  const mayBeFewer = Math.ceil(used / height / panelsASheet) < sheetsOf(best);
  if (mayBeFewer) {
    const inOrder = sheetsOf(best);
    const moved = better(
      best,
      OTHER_ORDERS.flatMap((order) => waysOf(columns, besides, order)),
    );
    if (sheetsOf(moved) < inOrder) best = moved;
  }
  if (emptiest(best, height, panelsASheet).area > WORTH_LEVELLING)
    best = better(
      best,
      FILLS.flatMap((fill) => waysOf(columns, besides, upTo, fill)),
    );
  return { panels: best.panels.done, badness: badnessOf(best) };
}
