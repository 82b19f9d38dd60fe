import type { RenderedDocument } from '../../model/print.js';
import { crewLanguage, crewPackWords } from '../../words/crew-language.js';
import { crewNoteWords } from '../../words/crew-notes.js';
import { siteRecordWords } from '../../words/site-record.js';
import { pageRules } from '../parts/css.js';
import { checkedView, marginsOf, metadataOf, pageRule, styleOf, type Prepared } from '../parts/shell.js';
import type { SiteWords } from './site-words.js';
import { SiteRecordSchema, siteRecordView } from './view.js';

const STYLES = ['base', 'kit-type', 'kit-tables', 'kit-safety', 'safety', 'site-record'];

/** The language of the crew: that of the command line, the job's own, that of the settings. */
function wordsOf({ plan, context }: Prepared): SiteWords {
  const own = plan.facts.find(({ field }) => field === 'crew_language')?.value;
  const language = crewLanguage(
    context.crewLanguage ?? '',
    typeof own === 'string' ? own : '',
    context.settings.crewLanguage,
  );
  return {
    pack: crewPackWords(language),
    note: crewNoteWords(language),
    site: siteRecordWords(language),
  };
}

/** The record of the work as a form to fill in on a screen: what was fitted, measured and seen, and what was found of what was assumed. */
export function siteRecord(given: Prepared): RenderedDocument {
  const { plan, context, paper, templates } = given;
  const words = wordsOf(given);
  const { site, pack } = words;
  const rules = pageRules([pageRule('', paper, pack.sections.record)], marginsOf(given, site.document, pack));
  const { view, form } = siteRecordView(plan, context, words, styleOf(given, STYLES, rules));
  const checked = checkedView('site-record', SiteRecordSchema, view);
  return {
    fileName: 'site-record.pdf',
    html: templates.render('site-record', checked),
    metadata: metadataOf(given, view.title, site.subject, site.keywords, pack.language),
    form,
  };
}
