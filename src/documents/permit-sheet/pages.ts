import type { RenderedDocument } from '../../model/print.js';
import { oneLine } from '../drawing/one-line.js';
import type { OneLine } from '../drawing/one-line.js';
import { isNec } from '../../model/editions.js';
import type { Prepared } from '../parts/shell.js';
import { permitBlocks } from './blocks.js';
import type { Block, Blocks } from './blocks.js';
import { blanksOf } from '../parts/blanks.js';
import { heightOf } from './flow.js';
import { layOut } from './lay-out.js';
import type { Contents } from './lay-out.js';
import { columnWidth } from './panels.js';
import type { Panel } from './panels.js';
import { GAP, permitPage, roomOf } from './paper.js';
import type { Room } from '../drawing/one-line/figure.js';
import type { PermitPage } from './paper.js';
import { measuring, type Measuring } from './measuring.js';
import { sheetDocument, sheetStyle, sheetViews, withStrip } from './sheet-document.js';
import type { LaidOut, SheetFile } from './sheet-document.js';
import { titleStrip } from './title-strip.js';

const SUBJECT = 'Surge protection: one-line drawing, schedule, calculations and clauses for the permit';

/** A column beside the drawing narrower than this holds no notes; mm. */
const LEAST_BESIDE = 70;

/** A drawing with the sheets that it leads to. */
interface Tried {
  readonly drawing: OneLine;
  /** Height of the legend over the whole width; mm. */
  readonly legend: number;
  readonly panels: readonly Panel[];
  readonly badness: number;
}

/** Measures the blocks at every width that they may have. */
async function contentsOf(
  measured: Measuring,
  page: PermitPage,
  drawing: OneLine,
  blocks: Blocks,
): Promise<Contents> {
  const room = roomOf(page);
  const legend: Block[] =
    drawing.legend.length === 0
      ? []
      : [{ name: 'legend', template: 'contents/legend', view: { entries: drawing.legend } }];
  const [first] = drawing.sheets;
  const free = first === undefined ? 0 : room.width - first.width - GAP.column;
  const beside = free >= LEAST_BESIDE ? free : undefined;
  const [wide = [], below = [], next = [], ...narrow] = await measured([
    { width: room.width, blocks: blocks.wide },
    { width: room.width, blocks: legend },
    { width: beside ?? room.width, blocks: beside === undefined ? [] : [...legend, ...blocks.narrow] },
    ...page.columns.map((count) => ({ width: columnWidth(room.width, count), blocks: blocks.narrow })),
  ]);
  return {
    room,
    drawings: drawing.sheets,
    wide,
    legend: below,
    narrow: new Map(page.columns.map((count, i) => [count, narrow[i] ?? []])),
    beside: beside === undefined ? undefined : { width: beside, blocks: next },
  };
}

const TITLES: { readonly [block: string]: string } = {
  schedule: 'schedule',
  calculations: 'calculations',
  codes: 'code table',
  assumptions: 'assumptions',
  notes: 'notes',
};

/** What stands on a sheet, for its title. */
function titleOf(panels: readonly Panel[]): string {
  const columns = panels.flatMap((panel) => panel.bands.flatMap((band) => band.columns));
  const names = new Set(columns.flatMap((column) => column.parts.map((part) => part.name)));
  const drawn = columns.some((column) => column.drawing !== undefined) ? ['one-line drawing'] : [];
  const said = [
    ...drawn,
    ...Object.entries(TITLES).flatMap(([name, title]) => (names.has(name) ? [title] : [])),
  ];
  return `Surge protection: ${said.slice(0, 3).join(', ') || 'notes'}`;
}

/** Sheets are laid out once for all who ask: the addendum is numbered behind them. */
const laid = new WeakMap<Prepared, Promise<LaidOut>>();

/** The permit sheets of a job, laid out. */
export function laidOut(given: Prepared): Promise<LaidOut> {
  const known = laid.get(given) ?? layingOut(given);
  laid.set(given, known);
  return known;
}

async function layingOut(given: Prepared): Promise<LaidOut> {
  const { plan, context } = given;
  const page = permitPage(plan, context.settings);
  const room = roomOf(page);
  const family = isNec(plan.basis) ? 'ieee-315' : 'iec-60617';
  const style = sheetStyle(given, page);
  const blocks = permitBlocks(plan, context, page);
  const measured = measuring(given, style);
  const tried = async (first: Room): Promise<Tried> => {
    const drawing = await oneLine(plan, { first, next: room }, family);
    const contents = await contentsOf(measured, page, drawing, blocks);
    const { panels, badness } = layOut(contents, page.columns, page.panels);
    return { drawing, legend: heightOf(contents.legend), panels, badness };
  };
  const whole = await tried(room);
  const needed = whole.legend + GAP.band;
  // A drawing that takes a sheet to itself may be drawn lower, so that the legend stands below it.
  const isFull = (whole.drawing.sheets[0]?.height ?? 0) + needed > room.height;
  const lower = isFull ? await tried({ ...room, height: room.height - needed }) : whole;
  const { drawing, panels } = lower.badness < whole.badness ? lower : whole;
  const { prefix, first } = context.settings.permitSheets;
  const sheets = sheetViews(panels, { ...page, prefix, first, drawings: drawing.sheets, titleOf });
  const strip = titleStrip(plan, context, blanksOf(plan));
  return { sheets, style: withStrip(style, page, strip), strip };
}

const fileOf = ({ plan }: Prepared, fileName: string): SheetFile => ({
  fileName,
  title: `Permit sheets, job ${plan.job}`,
  subject: SUBJECT,
});

/** The permit sheets as one combined file. */
export async function permitSheet(given: Prepared): Promise<RenderedDocument> {
  const whole = await laidOut(given);
  return sheetDocument(given, whole, whole.sheets, fileOf(given, 'permit-sheet.pdf'));
}

/** The permit sheets as a file each; names are ASCII and under 60 characters. */
export async function separatePermitSheets(given: Prepared): Promise<RenderedDocument[]> {
  const whole = await laidOut(given);
  return whole.sheets.map((sheet) =>
    sheetDocument(
      given,
      whole,
      [{ ...sheet, first: true }],
      fileOf(given, `permit-sheet-${String(sheet.index)}.pdf`),
    ),
  );
}
