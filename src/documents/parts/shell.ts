import type { z } from 'zod';
import type { Plan } from '../../model/plan.js';
import type { DocumentMetadata } from '../../model/print.js';
import { isNec } from '../../model/editions.js';
import { ownerStrings } from '../../words/languages.js';
import type { OwnerStrings } from '../../words/languages/owner-strings.js';
import { asBuilt } from './as-built-of.js';
import type { AsBuilt } from './as-built.js';
import type { DocumentContext, DocumentKind } from './context.js';
import { marginText } from './css.js';
import type { MarginTexts, PageRule, Sheet } from './css.js';
import { viewFailure } from './template-failure.js';
import { loadTemplates } from './templates.js';
import type { Templates } from './templates.js';
import { DRAFT_MARK, jobMargin } from './job.js';
import { visibleData, visibleText } from './visible-text.js';

/** The plan and the company's texts with nothing hidden in them, and what all documents of a job share. */
export interface Prepared {
  readonly plan: Plan;
  readonly context: DocumentContext;
  readonly strings: OwnerStrings;
  readonly paper: Sheet;
  readonly templates: Templates;
  /** What came back from the work; undefined: nothing yet. */
  readonly built?: AsBuilt;
}

/** An address may have lines of its own; nothing else of a list has. */
function linesOf(address: string, covers: (codePoint: number) => boolean): string {
  return address
    .split(/\r\n|\r|\n/)
    .map((line) => visibleText(line, covers))
    .join('\n');
}

/** A plan made ready for paper. */
export async function prepared(plan: Plan, context: DocumentContext): Promise<Prepared> {
  const covers = (codePoint: number): boolean => context.fonts.covers(codePoint);
  const { settings, previous, photos, record } = context;
  const byBasis = isNec(plan.basis) ? 'letter' : 'A4';
  const visible = visibleData(plan, covers);
  const paper = settings.paper === 'by-basis' ? byBasis : settings.paper;
  const own = { ...visible, address: linesOf(plan.address, covers) };
  return {
    plan: own,
    ...(record === undefined
      ? {}
      : { built: asBuilt(own, visibleData(record, covers), context.recordFits !== false) }),
    context: {
      ...context,
      settings: visibleData(settings, covers),
      ...(previous === undefined ? {} : { previous: visibleData(previous, covers) }),
      ...(photos === undefined ? {} : { photos: visibleData(photos, covers) }),
    },
    strings: ownerStrings(context.ownerLanguage ?? '', plan.ownerLanguage, settings.ownerLanguage),
    paper,
    templates: await loadTemplates(context.templatesFolder),
  };
}

/** All CSS of a document but its fonts: accent colour, the named style files, page rules. */
export function styleOf(given: Prepared, sheets: readonly string[], rules: string): string {
  const own = sheets.map((name) => given.templates.style(name));
  // The accent draws rules and borders only, so that its contrast never carries text.
  const accent = `:root { --accent: ${given.context.settings.company.accent}; }`;
  return [accent, ...own, rules].join('\n');
}

/** What the margins of a document say; a draft says so on every page. */
export function marginsOf(
  given: Prepared,
  document: string,
  language?: Pick<OwnerStrings, 'draftMark' | 'page' | 'of'>,
): MarginTexts {
  const draft = language === undefined ? DRAFT_MARK : language.draftMark;
  return {
    document,
    draft: given.plan.submittable ? '' : draft,
    job: marginText(jobMargin(given.plan), 46),
    date: given.context.date,
    page: language?.page ?? 'Page',
    of: language?.of ?? 'of',
  };
}

/** A named page of the running paper. */
export function pageRule(name: string, sheet: Sheet, section: string, landscape = false): PageRule {
  return { name, sheet, section: marginText(section, 40), landscape };
}

/**
 * A view that satisfies its schema.
 * @throws Failure where it doesn't: nothing is printed from a view with a hole in it
 */
export function checkedView<S extends z.ZodType>(
  document: DocumentKind | 'permit-appendix',
  schema: S,
  view: z.infer<S>,
): z.infer<S> {
  const result = schema.safeParse(view);
  if (!result.success) throw viewFailure(document, result.error);
  return result.data;
}

/** What the PDF says of itself. */
export function metadataOf(
  given: Prepared,
  title: string,
  subject: string,
  keywords: readonly string[],
  language: string,
): DocumentMetadata {
  const { plan, context } = given;
  const own = [plan.job, plan.basis, ...(plan.submittable ? [] : ['draft'])];
  const author = context.settings.company.name === '' ? 'shuntbook' : context.settings.company.name;
  return { title, author, subject, keywords: [...keywords, ...own], language };
}
