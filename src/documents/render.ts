import type { z } from 'zod';
import type { Plan } from '../model/plan.js';
import type { DocumentMetadata, RenderedDocument } from '../model/print.js';
import { isNec } from '../model/words.js';
import { ownerStrings } from '../text/languages.js';
import type { OwnerStrings } from '../text/languages/owner-strings.js';
import type { DocumentContext, DocumentKind } from './context.js';
import { DOCUMENT_KINDS } from './context.js';
import { pageRules, shortened } from './css.js';
import type { MarginTexts, PageRule, Sheet } from './css.js';
import { labelGridRules } from './label-grid.js';
import { viewFailure } from './template-failure.js';
import { loadTemplates } from './templates.js';
import type { Templates } from './templates.js';
import { CloseoutPackSchema, closeoutPackView } from './views/closeout-pack.js';
import { accentRule, DRAFT_MARK, jobMargin } from './views/job.js';
import { LabelsSchema, labelsView } from './views/labels.js';
import { OwnerSheetSchema, ownerSheetView } from './views/owner-sheet.js';
import { PermitSheetSchema, permitSheetView } from './views/permit-sheet.js';
import { visibleData } from './visible-text.js';

/** The plan and the company's texts with nothing hidden in them. */
interface Shown {
  readonly plan: Plan;
  readonly context: DocumentContext;
  readonly strings: OwnerStrings;
  readonly sheet: Sheet;
  readonly templates: Templates;
}

async function shown(plan: Plan, context: DocumentContext): Promise<Shown> {
  const covers = (codePoint: number): boolean => context.fonts.covers(codePoint);
  const { settings } = context;
  const language =
    context.ownerLanguage ?? (plan.ownerLanguage === '' ? settings.ownerLanguage : plan.ownerLanguage);
  const paper = settings.paper === 'by-basis' ? (isNec(plan.basis) ? 'letter' : 'A4') : settings.paper;
  return {
    plan: visibleData(plan, covers),
    context: { ...context, settings: { ...settings, company: visibleData(settings.company, covers) } },
    strings: ownerStrings(language),
    sheet: paper,
    templates: await loadTemplates(context.templatesFolder),
  };
}

function styleOf(given: Shown, sheets: readonly string[], rules: string): string {
  const own = sheets.map((name) => given.templates.style(name));
  return [given.context.fonts.css, accentRule(given.context), ...own, rules].join('\n');
}

function margins(given: Shown, document: string, language?: OwnerStrings): MarginTexts {
  const draft = language === undefined ? DRAFT_MARK : language.draftMark;
  return {
    document,
    draft: given.plan.submittable ? '' : draft,
    job: shortened(jobMargin(given.plan), 48),
    date: given.context.date,
    page: language?.page ?? 'Page',
    of: language?.of ?? 'of',
  };
}

function checked<S extends z.ZodType>(document: DocumentKind, schema: S, view: z.infer<S>): z.infer<S> {
  const result = schema.safeParse(view);
  if (!result.success) throw viewFailure(document, result.error);
  return result.data;
}

function metadata(
  given: Shown,
  title: string,
  subject: string,
  keywords: readonly string[],
  language: string,
): DocumentMetadata {
  const { plan, context } = given;
  const own = [plan.job, plan.basis, ...(plan.submittable ? [] : ['draft'])];
  return {
    title,
    author: context.settings.company.name || 'shuntbook',
    subject,
    keywords: [...keywords, ...own],
    language,
  };
}

const page = (name: string, sheet: Sheet, section: string, landscape = false): PageRule => ({
  name,
  sheet,
  section,
  landscape,
});

function closeoutPack(given: Shown): RenderedDocument {
  const { plan, context, sheet, templates } = given;
  const pages = [page('', sheet, `Job ${shortened(plan.job, 30)}`), page('wide', sheet, 'Schedule', true)];
  const style = styleOf(given, ['base', 'closeout-pack'], pageRules(pages, margins(given, 'Closeout pack')));
  const view = checked('closeout-pack', CloseoutPackSchema, closeoutPackView(plan, context, style));
  return {
    fileName: 'closeout-pack.pdf',
    html: templates.render('closeout-pack', view),
    metadata: metadata(
      given,
      view.title,
      'Surge protection: schedule, wiring notes, calculations, checks',
      ['surge protection', 'closeout'],
      'en',
    ),
  };
}

function permitSheet(given: Shown): RenderedDocument {
  const { plan, context, sheet, templates } = given;
  const pages = [page('', sheet, `Job ${shortened(plan.job, 30)}`), page('wide', sheet, 'Schedule', true)];
  const style = styleOf(given, ['base', 'permit-sheet'], pageRules(pages, margins(given, 'Permit sheet')));
  const view = checked('permit-sheet', PermitSheetSchema, permitSheetView(plan, context, style));
  return {
    fileName: 'permit-sheet.pdf',
    html: templates.render('permit-sheet', view),
    metadata: metadata(
      given,
      view.title,
      'Surge protection: schedule, calculations and clauses for the permit',
      ['surge protection', 'permit'],
      'en',
    ),
  };
}

function ownerSheet(given: Shown): RenderedDocument {
  const { plan, context, sheet, templates, strings } = given;
  const pages = [page('', sheet, strings.title)];
  const style = styleOf(given, ['base', 'owner-sheet'], pageRules(pages, margins(given, '', strings)));
  const view = checked('owner-sheet', OwnerSheetSchema, ownerSheetView(plan, context, strings, style));
  return {
    fileName: 'owner-sheet.pdf',
    html: templates.render('owner-sheet', view),
    metadata: metadata(
      given,
      `${strings.title}, ${plan.job}`,
      strings.subject,
      strings.keywords,
      strings.language,
    ),
  };
}

function labels(given: Shown): RenderedDocument {
  const { plan, context, sheet, templates, strings } = given;
  const style = styleOf(given, ['base', 'labels'], labelGridRules(context.settings.labels, sheet));
  const view = checked('labels', LabelsSchema, labelsView(plan, context, strings, style));
  return {
    fileName: 'labels.pdf',
    html: templates.render('labels', view),
    metadata: metadata(
      given,
      view.title,
      'Labels to fix beside each protector',
      ['surge protection', 'labels'],
      strings.language,
    ),
  };
}

const RENDERERS: { readonly [K in DocumentKind]: (given: Shown) => RenderedDocument } = {
  'closeout-pack': closeoutPack,
  'permit-sheet': permitSheet,
  'owner-sheet': ownerSheet,
  labels,
};

/**
 * Renders one document of a job.
 * @param kind which one
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
  return RENDERERS[kind](await shown(plan, context));
}

/**
 * Renders the documents of a job's pack: closeout pack, permit sheet, owner's sheet, labels.
 * @param plan the plan of the job
 * @param context as for `renderDocument`
 * @throws Failure where a template or a view model fails
 */
export async function renderDocuments(plan: Plan, context: DocumentContext): Promise<RenderedDocument[]> {
  const given = await shown(plan, context);
  return DOCUMENT_KINDS.map((kind) => RENDERERS[kind](given));
}
