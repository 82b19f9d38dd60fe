import type { RenderedDocument } from '../../model/print.js';
import { pageRules } from '../parts/css.js';
import type { Prepared } from '../parts/shell.js';
import { checkedView, marginsOf, metadataOf, pageRule, styleOf } from '../parts/shell.js';
import { PermitAppendixSchema, permitAppendixView } from './view.js';

const SUBJECT = 'Surge protection: calculations, sources and data sheets behind the permit sheets';

/** The appendix to the permit sheets: what was asked for of whole calculations, sources and data sheets. */
export function permitAppendix(given: Prepared): RenderedDocument {
  const { plan, context, paper, templates } = given;
  const pages = [
    pageRule('', paper, 'Appendix'),
    pageRule('working', paper, 'Calculations'),
    pageRule('sources', paper, 'Sources'),
  ];
  const style = styleOf(
    given,
    ['base', 'permit-appendix'],
    pageRules(pages, marginsOf(given, 'Permit appendix')),
  );
  const view = checkedView('permit-appendix', PermitAppendixSchema, permitAppendixView(plan, context, style));
  return {
    fileName: 'permit-appendix.pdf',
    html: templates.render('permit-appendix', view),
    metadata: metadataOf(given, view.title, SUBJECT, ['surge protection', 'permit', 'appendix'], 'en'),
  };
}

/** True where something was asked for that stands in the appendix. */
export function hasAppendix({ context }: Prepared): boolean {
  const { appendices = [], dataSheets } = context;
  return appendices.includes('working') || appendices.includes('sources') || dataSheets !== undefined;
}
