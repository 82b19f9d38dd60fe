import type { RenderedDocument } from '../../model/print.js';
import { labelGridRules } from './label-grid.js';
import type { Prepared } from '../parts/shell.js';
import { checkedView, metadataOf, styleOf } from '../parts/shell.js';
import { LabelsSchema, labelsView } from './view.js';

/** The sheets of labels, on the grid of the settings. */
export function labelSheets(given: Prepared): Promise<RenderedDocument> {
  const { plan, context, paper, templates, strings, built } = given;
  const style = styleOf(given, ['base', 'labels'], labelGridRules(context.settings.labels, paper));
  const view = checkedView(
    'labels',
    LabelsSchema,
    labelsView(built?.plan ?? plan, context, paper, strings, style, built),
  );
  return Promise.resolve({
    fileName: 'labels.pdf',
    html: templates.render('labels', view),
    metadata: metadataOf(
      given,
      view.title,
      strings.label.subject,
      ['surge protection', 'labels'],
      strings.language,
    ),
  });
}
