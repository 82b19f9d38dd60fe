import type { RenderedDocument } from '../../model/print.js';
import { wordRuns } from '../parts/contents/runs.js';
import type { Prepared } from '../parts/shell.js';
import { checkedView, metadataOf, styleOf } from '../parts/shell.js';
import type { Panel } from './panels.js';
import type { PermitPage } from './paper.js';
import { footLines, type TitleStrip } from './title-strip.js';
import { PermitSheetSchema } from './view.js';
import type { SheetView } from './view.js';
import { watermark } from './watermark.js';

/** Sheets of a job, laid out. */
export interface LaidOut {
  readonly sheets: readonly SheetView[];
  readonly style: string;
  readonly strip: TitleStrip;
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

/** What a sheet looks like before it is laid out: the styles of blocks, frame and strip. */
export function sheetStyle(given: Prepared, page: PermitPage): string {
  const names = ['base', 'drawing', 'kit-type', 'kit-tables', 'kit-fill', 'permit-frame', 'permit-blocks'];
  const all = page.strip === 'bottom' ? [...names, 'permit-strip-bottom'] : names;
  return styleOf(given, all, cssOf(page));
}

/** That style with the room that the texts of the strip take. */
export function withStrip(style: string, page: PermitPage, strip: TitleStrip): string {
  if (page.strip !== 'bottom') return style;
  const foot = footLines(strip);
  return `${style}\n:root { --strip-name: ${foot.name}; --strip-address: ${foot.address}; }`;
}

/** What sheets are made from beside their panels. */
export interface SheetsOf {
  /** Panels on a sheet. */
  readonly panels: number;
  readonly prefix: string;
  /** The number of the first. */
  readonly first: number;
  readonly drawings: readonly { readonly svg: string }[];
  /** What stands on a sheet, for its title. */
  titleOf(panels: readonly Panel[]): string;
}

/** Panels as the sheets that they stand on. */
export function sheetViews(panels: readonly Panel[], of: SheetsOf): SheetView[] {
  const count = Math.max(1, Math.ceil(panels.length / of.panels));
  return Array.from({ length: count }, (_, index): SheetView => {
    const own = panels.slice(index * of.panels, (index + 1) * of.panels);
    const title = of.titleOf(own);
    return {
      number: `${of.prefix}${String(of.first + index)}`,
      index: index + 1,
      of: count,
      first: index === 0,
      title,
      titlePieces: wordRuns(title),
      panels: own.map(({ bands }) => ({
        bands: bands.map(({ columns }) => ({
          columns: columns.map(({ width, parts, drawing }) => ({
            width,
            parts: parts.map(({ name, html }) => ({ name, html: html() })),
            drawing: drawing === undefined ? '' : (of.drawings[drawing]?.svg ?? ''),
          })),
        })),
      })),
    };
  });
}

/** What tells one file of sheets from another. */
export interface SheetFile {
  readonly fileName: string;
  readonly title: string;
  readonly subject: string;
}

/** Sheets that are laid out as a file. */
export function sheetDocument(
  given: Prepared,
  { style, strip }: Pick<LaidOut, 'style' | 'strip'>,
  sheets: readonly SheetView[],
  { fileName, title, subject }: SheetFile,
): RenderedDocument {
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
    html: given.templates.render('permit-sheet/sheets', view),
    metadata: metadataOf(given, title, subject, ['surge protection', 'permit'], 'en'),
  };
}
