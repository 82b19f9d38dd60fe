import type { RenderedDocument } from '../../model/print.js';
import { pageRules } from '../parts/css.js';
import type { Prepared } from '../parts/shell.js';
import { checkedView, marginsOf, metadataOf, pageRule, styleOf } from '../parts/shell.js';
import { OwnerSheetSchema, ownerSheetView } from './view.js';

/** The owner's sheet, in the owner's language. */
export function ownerSheet(given: Prepared): Promise<RenderedDocument> {
  const { plan, context, paper, templates, strings } = given;
  const rules = pageRules(
    [pageRule('', paper, context.settings.company.name)],
    marginsOf(given, strings.title, strings),
  );
  const style = styleOf(given, ['base', 'safety', 'owner-sheet'], rules);
  const view = checkedView('owner-sheet', OwnerSheetSchema, ownerSheetView(plan, context, strings, style));
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
