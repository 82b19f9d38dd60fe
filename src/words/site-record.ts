import type { CrewLanguage } from './crew-language.js';
import { SITE_RECORD_EN } from './languages/site-record-en.js';
import { SITE_RECORD_ES } from './languages/site-record-es.js';
import type { SiteRecordWords } from './languages/site-record-words.js';

const WORDS: { readonly [L in CrewLanguage]: SiteRecordWords } = { en: SITE_RECORD_EN, es: SITE_RECORD_ES };

/** The words of the form that a crew fills in, in a language. */
export function siteRecordWords(language: CrewLanguage): SiteRecordWords {
  return WORDS[language];
}
