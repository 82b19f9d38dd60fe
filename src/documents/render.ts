import type { Plan } from '../model/plan.js';
import type { RenderedDocument } from '../model/print.js';
import { closeoutPack } from './closeout-pack/pages.js';
import type { DocumentContext, DocumentKind } from './parts/context.js';
import { DOCUMENT_KINDS, documentsLeftOut } from './parts/context.js';
import { labelSheets } from './labels/pages.js';
import { ownerSheet } from './owner-sheet/pages.js';
import { hasAddendum, permitAddendum } from './permit-sheet/addendum.js';
import { permitSheet, separatePermitSheets } from './permit-sheet/pages.js';
import { siteRecord } from './site-record/pages.js';
import { hasAppendix, permitAppendix } from './permit-appendix/pages.js';
import type { Prepared } from './parts/shell.js';
import { prepared } from './parts/shell.js';

/** A document with the fonts that its own characters need, where whoever asked wants pages that stand alone. */
function withFonts(document: RenderedDocument, { fonts }: DocumentContext): RenderedDocument {
  const css = fonts.css(document.html);
  return css === ''
    ? document
    : { ...document, html: document.html.replace('</head>', () => `<style>${css}</style></head>`) };
}

const RENDERERS: { readonly [K in DocumentKind]: (given: Prepared) => Promise<RenderedDocument> } = {
  'closeout-pack': closeoutPack,
  'permit-sheet': permitSheet,
  'owner-sheet': ownerSheet,
  labels: labelSheets,
  'site-record': (given) => Promise.resolve(siteRecord(given)),
};

/**
 * Renders one document of a job.
 * @param kind which one; the permit sheet is always the combined one
 * @param plan the plan of the job, all that the document is made from
 * @param context settings, date, fonts and what else the paper shows
 * @returns self-contained HTML with the metadata of its PDF
 * @throws Failure where a template or a view model fails
 */
export async function renderDocument(
  kind: DocumentKind,
  plan: Plan,
  context: DocumentContext,
): Promise<RenderedDocument> {
  return withFonts(await RENDERERS[kind](await prepared(plan, context)), context);
}

/**
 * Renders the documents of a job's pack: closeout pack, permit sheet (with `separate` a file a sheet), owner's sheet, and labels
 * unless it is a draft; with them the addendum to the permit sheet where the work changed what it says, and its appendix where it is asked for.
 * @param plan the plan of the job
 * @param context as for `renderDocument`
 * @throws Failure where a template or a view model fails
 */
export async function renderDocuments(plan: Plan, context: DocumentContext): Promise<RenderedDocument[]> {
  const given = await prepared(plan, context);
  const documents: RenderedDocument[] = [];
  const leftOut = documentsLeftOut(plan);
  for (const kind of DOCUMENT_KINDS.filter((one) => !leftOut.includes(one))) {
    if (kind === 'permit-sheet' && context.permitStays === true) continue;
    if (kind === 'permit-sheet' && context.separate === true)
      documents.push(...(await separatePermitSheets(given)));
    else documents.push(await RENDERERS[kind](given));
  }
  if (hasAddendum(given)) documents.push(await permitAddendum(given));
  if (hasAppendix(given)) documents.push(permitAppendix(given));
  return documents.map((document) => withFonts(document, context));
}
