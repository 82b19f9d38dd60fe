import type { MeasuredBlock, RenderedDocument } from '../../model/print.js';
import { oneLine } from '../drawing/one-line.js';
import type { OneLine } from '../drawing/one-line.js';
import { isNec } from '../../model/editions.js';
import type { Prepared } from '../parts/shell.js';
import { checkedView, metadataOf, styleOf } from '../parts/shell.js';
import { permitBlocks } from './blocks.js';
import type { Block, Blocks } from './blocks.js';
import { blanksOf } from '../parts/blanks.js';
import { wordRuns } from '../parts/contents/runs.js';
import { heightOf } from './flow.js';
import { layOut } from './lay-out.js';
import type { Contents } from './lay-out.js';
import { columnWidth } from './panels.js';
import type { Panel } from './panels.js';
import { GAP, permitPage, roomOf } from './paper.js';
import type { Room } from '../drawing/one-line/figure.js';
import type { PermitPage } from './paper.js';
import { footLines, titleStrip, type TitleStrip } from './title-strip.js';
import { PermitSheetSchema } from './view.js';
import type { SheetView } from './view.js';
import { watermark } from './watermark.js';

const SUBJECT = 'Surge protection: one-line drawing, schedule, calculations and clauses for the permit';

/** A column beside the drawing narrower than this holds no notes; mm. */
const LEAST_BESIDE = 70;

/** Sheets of a job, laid out. */
interface LaidOut {
  readonly sheets: readonly SheetView[];
  readonly style: string;
  readonly strip: TitleStrip;
}

/** A drawing with the sheets that it leads to. */
interface Tried {
  readonly drawing: OneLine;
  /** Height of the legend over the whole width; mm. */
  readonly legend: number;
  readonly panels: readonly Panel[];
  readonly badness: number;
}

function cssOf(page: PermitPage): string {
  const bottom = page.strip === 'bottom';
  return `@page { size: ${page.width}mm ${page.height}mm; }
:root {
  --sheet-width: ${page.width}mm; --sheet-height: ${page.height}mm;
  --sheet-left: ${page.left}mm; --sheet-edge: ${page.edge}mm; --sheet-padding: ${page.padding}mm;
  --strip-width: ${bottom ? 'auto' : `${page.stripSize}mm`}; --strip-height: ${bottom ? `${page.stripSize}mm` : 'auto'};
}`;
}

/** Blocks at one width, for the browser to measure. */
interface Setting {
  readonly width: number;
  readonly blocks: readonly Block[];
}

/** The measured blocks of each setting, in their order. */
type Measuring = (settings: readonly Setting[]) => Promise<readonly (readonly MeasuredBlock[])[]>;

/** Measures blocks in the browser; what was measured at a width before isn't set again. */
function measuring({ templates, context }: Prepared, style: string): Measuring {
  const known = new Map<Block, { readonly html: string; readonly at: Map<number, MeasuredBlock> }>();
  const entryOf = (block: Block): { readonly html: string; readonly at: Map<number, MeasuredBlock> } => {
    const html = (): string => templates.render(block.template, block.view);
    const entry = known.get(block) ?? { html: html(), at: new Map<number, MeasuredBlock>() };
    known.set(block, entry);
    return entry;
  };
  return async (settings) => {
    const asked = settings.flatMap(({ width, blocks }) =>
      blocks.map((block) => ({ block, width })).filter(({ block }) => !entryOf(block).at.has(width)),
    );
    const blocks = asked.map(({ block: { name }, block, width }) => ({
      name,
      id: name,
      width,
      html: entryOf(block).html,
    }));
    const page = templates.render('permit-sheet/measure', { language: 'en', title: 'Blocks', style, blocks });
    const found = blocks.length === 0 ? [] : await context.measure(page);
    if (found.length !== asked.length)
      throw new Error(`${found.length} of ${asked.length} blocks were measured`);
    asked.forEach(({ block, width }, index) => {
      const one = found[index];
      if (one) entryOf(block).at.set(width, one);
    });
    return settings.map(({ width, blocks: own }) =>
      own.flatMap((block) => entryOf(block).at.get(width) ?? []),
    );
  };
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

async function laidOut(given: Prepared): Promise<LaidOut> {
  const { plan, context } = given;
  const page = permitPage(plan, context.settings);
  const room = roomOf(page);
  const family = isNec(plan.basis) ? 'ieee-315' : 'iec-60617';
  const names = ['base', 'drawing', 'kit-type', 'kit-tables', 'kit-fill', 'permit-frame', 'permit-blocks'];
  const style = styleOf(
    given,
    page.strip === 'bottom' ? [...names, 'permit-strip-bottom'] : names,
    cssOf(page),
  );
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
  const count = Math.max(1, Math.ceil(panels.length / page.panels));
  const { prefix, first } = context.settings.permitSheets;
  const sheets = Array.from({ length: count }, (_, index): SheetView => {
    const own = panels.slice(index * page.panels, (index + 1) * page.panels);
    const title = titleOf(own);
    return {
      number: `${prefix}${String(first + index)}`,
      index: index + 1,
      of: count,
      first: index === 0,
      title,
      titlePieces: wordRuns(title),
      panels: own.map(({ bands }) => ({
        bands: bands.map(({ columns }) => ({
          columns: columns.map(({ width, parts, drawing: drawn }) => ({
            width,
            parts: parts.map(({ name, html }) => ({ name, html: html() })),
            drawing: drawn === undefined ? '' : (drawing.sheets[drawn]?.svg ?? ''),
          })),
        })),
      })),
    };
  });
  const strip = titleStrip(plan, context, blanksOf(plan));
  const foot = footLines(strip);
  const lines =
    page.strip === 'bottom'
      ? `\n:root { --strip-name: ${foot.name}; --strip-address: ${foot.address}; }`
      : '';
  return { sheets, style: `${style}${lines}`, strip };
}

function documentOf(
  given: Prepared,
  { style, strip }: LaidOut,
  sheets: readonly SheetView[],
  fileName: string,
): RenderedDocument {
  const { plan, templates } = given;
  const title = `Permit sheets, job ${plan.job}`;
  const view = checkedView('permit-sheet', PermitSheetSchema, {
    language: 'en',
    title,
    style,
    strip,
    watermark: watermark(),
    sheets: [...sheets],
  });
  return {
    fileName,
    html: templates.render('permit-sheet/sheets', view),
    metadata: metadataOf(given, title, SUBJECT, ['surge protection', 'permit'], 'en'),
  };
}

/** The permit sheets as one combined file. */
export async function permitSheet(given: Prepared): Promise<RenderedDocument> {
  const laid = await laidOut(given);
  return documentOf(given, laid, laid.sheets, 'permit-sheet.pdf');
}

/** The permit sheets as a file each; names are ASCII and under 60 characters. */
export async function separatePermitSheets(given: Prepared): Promise<RenderedDocument[]> {
  const laid = await laidOut(given);
  return laid.sheets.map((sheet) =>
    documentOf(given, laid, [{ ...sheet, first: true }], `permit-sheet-${String(sheet.index)}.pdf`),
  );
}
