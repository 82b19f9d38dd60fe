import type { RenderedDocument } from '../../model/print.js';
import { pageRules } from '../parts/css.js';
import { drawPlacement } from '../drawing/placement.js';
import { largeRoom, largeSheet } from '../drawing/rooms.js';
import type { Prepared } from '../parts/shell.js';
import { checkedView, marginsOf, metadataOf, pageRule, styleOf } from '../parts/shell.js';
import { PERMIT_PARTS, PermitSheetSchema, permitSheetView } from './view.js';
import type { PermitPart } from './view.js';

const SUBJECT = 'Surge protection: placement drawing, schedule, calculations and clauses for the permit';

/** The parts that follow each other on the running paper. */
const TEXT_PARTS: readonly (readonly [PermitPart, string])[] = [
  ['open-items', 'Open items'],
  ['calculations', 'Calculations'],
  ['clauses', 'Clauses'],
];

/** Sheets by part: drawings and schedule on the large sheet in landscape, the rest on the running paper. */
async function sheetWith(
  given: Prepared,
  parts: ReadonlySet<PermitPart>,
  fileName: string,
): Promise<RenderedDocument> {
  const { plan, context, paper, templates } = given;
  const drawn = parts.has('drawing') ? drawPlacement(plan, await given.placement(), largeRoom(paper)) : [];
  const large = largeSheet(paper);
  const pages = [
    pageRule('', paper, 'Summary'),
    pageRule('drawing', large, 'Placement drawing', true),
    pageRule('schedule', large, 'Protection schedule', true),
    pageRule(
      'text',
      paper,
      TEXT_PARTS.filter(([part]) => parts.has(part))
        .map(([, title]) => title)
        .join(' · '),
    ),
  ];
  const style = styleOf(
    given,
    ['base', 'safety', 'drawing', 'permit-sheet'],
    pageRules(pages, marginsOf(given, 'Permit sheet')),
  );
  const view = checkedView(
    'permit-sheet',
    PermitSheetSchema,
    permitSheetView(plan, context, drawn, parts, style),
  );
  return {
    fileName,
    html: templates.render('permit-sheet', view),
    metadata: metadataOf(given, view.title, SUBJECT, ['surge protection', 'permit'], 'en'),
  };
}

/** The permit sheet as one combined file. */
export function permitSheet(given: Prepared): Promise<RenderedDocument> {
  return sheetWith(given, new Set(PERMIT_PARTS), 'permit-sheet.pdf');
}

/** The permit sheet as a file for each of its parts; names are ASCII and under 60 characters. */
export async function separatePermitSheets(given: Prepared): Promise<RenderedDocument[]> {
  const files: RenderedDocument[] = [];
  for (const [index, part] of PERMIT_PARTS.entries()) {
    files.push(await sheetWith(given, new Set([part]), `permit-sheet-${index + 1}-${part}.pdf`));
  }
  return files;
}
