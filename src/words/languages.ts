import { en } from './languages/en.js';
import { es } from './languages/es.js';
import type { OwnerStrings } from './languages/owner-strings.js';

/** The languages of the owner's sheet; a further one is a file beside `languages/en.ts` and a line here. */
const OWNER_LANGUAGES: readonly OwnerStrings[] = [en, es];

/** The codes that `--owner-language` and `owner_language` take. */
export const OWNER_LANGUAGE_CODES: readonly string[] = OWNER_LANGUAGES.map((l) => l.language);

function languageOf(code: string): OwnerStrings | undefined {
  const primary = code.trim().toLowerCase().split('-')[0] ?? '';
  return OWNER_LANGUAGES.find((l) => l.language === primary);
}

/**
 * Tells whether the owner's sheet can be written in a language.
 * @param code a BCP 47 tag; `es-MX` goes by `es`
 */
export function isOwnerLanguage(code: string): boolean {
  return languageOf(code) !== undefined;
}

/**
 * The strings of the owner's sheet in the first of some languages that it can be written in.
 * @param codes BCP 47 tags, the one that goes first first; `es-MX` takes `es`
 * @returns English where it can be written in none of them
 */
export function ownerStrings(...codes: readonly string[]): OwnerStrings {
  return codes.map(languageOf).find((strings) => strings !== undefined) ?? en;
}

/**
 * Puts values into a string of a language file.
 * @param text with `{name}` where a value belongs
 * @param values by name; a name that isn't there stays as it is
 */
export function filled(text: string, values: { readonly [name: string]: string | number }): string {
  return text.replace(/\{(\w+)\}/g, (whole, name: string) => {
    const value = values[name];
    return value === undefined ? whole : String(value);
  });
}
