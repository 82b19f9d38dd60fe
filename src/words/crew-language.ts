import type { CrewPackWords } from './languages/crew-pack-words.js';
import { CREW_PACK_EN } from './languages/crew-pack-en.js';
import { CREW_PACK_ES } from './languages/crew-pack-es.js';
import { AS_BUILT_EN } from './languages/as-built-en.js';
import { AS_BUILT_ES } from './languages/as-built-es.js';
import type { AsBuiltWords } from './languages/as-built-words.js';

/** The languages of what a crew holds in its hands. */
export const CREW_LANGUAGES = ['en', 'es'] as const;
export type CrewLanguage = (typeof CREW_LANGUAGES)[number];

const WORDS: { readonly [L in CrewLanguage]: CrewPackWords } = { en: CREW_PACK_EN, es: CREW_PACK_ES };

function languageOf(code: string): CrewLanguage | undefined {
  const primary = code.trim().toLowerCase().split('-')[0] ?? '';
  return CREW_LANGUAGES.find((language) => language === primary);
}

/**
 * Tells whether a crew's pages can be written in a language.
 * @param code a BCP 47 tag; `es-MX` goes by `es`
 */
export function isCrewLanguage(code: string): boolean {
  return languageOf(code) !== undefined;
}

/**
 * The first of some languages that a crew's pages can be written in.
 * @param codes BCP 47 tags, the one that goes first first; `` is none
 * @returns English where they can be written in none of them
 */
export function crewLanguage(...codes: readonly string[]): CrewLanguage {
  return codes.map(languageOf).find((language) => language !== undefined) ?? 'en';
}

/** The words of cover, checks and record in a language. */
export function crewPackWords(language: CrewLanguage): CrewPackWords {
  return WORDS[language];
}

const BUILT: { readonly [L in CrewLanguage]: AsBuiltWords } = { en: AS_BUILT_EN, es: AS_BUILT_ES };

/** The words that tell how far the work is, and what came back from it, in a language. */
export function asBuiltWords(language: CrewLanguage): AsBuiltWords {
  return BUILT[language];
}
