import type { RenderedDocument } from '../../model/print.js';
import { filled } from '../../words/languages.js';
import { cssString, marginText, SHEETS } from '../parts/css.js';
import { jobMargin } from '../parts/job.js';
import type { Prepared } from '../parts/shell.js';
import { checkedView, metadataOf, styleOf } from '../parts/shell.js';
import { OwnerSheetSchema, ownerSheetView } from './view.js';

/** Points: 20 mm at the left edge for holes. */
const MARGIN = { top: 22, right: 34, bottom: 36, left: 56.7 } as const;

/** The pages of the sheet: job, phone number and page number below, as large as the rest; a draft says so above. */
function ownerPages({ plan, context, paper, strings }: Prepared): string {
  const { width, height } = SHEETS[paper];
  const { phone } = context.settings.company;
  const call = phone === '' ? '' : `${marginText(filled(strings.callNumber, { number: phone }), 30)} · `;
  const draft = plan.submittable ? '' : strings.draftMark;
  const top = draft === '' ? MARGIN.top : MARGIN.top + 14;
  return `@page {
  size: ${width}pt ${height}pt;
  margin: ${top}pt ${MARGIN.right}pt ${MARGIN.bottom}pt ${MARGIN.left}pt;
  @top-center { content: ${draft === '' ? 'none' : cssString(draft)}; font-weight: 700; }
  @bottom-left { content: ${cssString(marginText(jobMargin(plan), 40))}; }
  @bottom-right { content: ${cssString(`${call}${strings.page} `)} counter(page) ${cssString(` ${strings.of} `)} counter(pages); }
}`;
}

/** The owner's sheet, in the owner's language. */
export function ownerSheet(given: Prepared): Promise<RenderedDocument> {
  const { plan, context, templates, strings, built } = given;
  const style = styleOf(given, ['base', 'safety', 'owner-sheet'], ownerPages(given));
  const view = checkedView(
    'owner-sheet',
    OwnerSheetSchema,
    ownerSheetView(built?.plan ?? plan, context, strings, style, built),
  );
  return Promise.resolve({
    fileName: 'owner-sheet.pdf',
    html: templates.render('owner-sheet', view),
    metadata: metadataOf(
      given,
      `${strings.title}, ${plan.job}`,
      strings.subject,
      strings.keywords,
      strings.language,
    ),
  });
}
