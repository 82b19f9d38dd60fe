import { en } from './languages/en.js';
import { es } from './languages/es.js';
import type { OwnerStrings } from './languages/owner-strings.js';

/** The languages of the owner's sheet; a further one is a file beside `languages/en.ts` and a line here. */
const OWNER_LANGUAGES: readonly OwnerStrings[] = [en, es];

/** The codes that `--owner-language` and `owner_language` take. */
export const OWNER_LANGUAGE_CODES: readonly string[] = OWNER_LANGUAGES.map((l) => l.language);

/**
 * The strings of the owner's sheet in a language.
 * @param code a BCP 47 tag; `es-MX` takes `es`, an unknown one takes English
 */
export function ownerStrings(code: string): OwnerStrings {
  const primary = code.trim().toLowerCase().split('-')[0] ?? '';
  return OWNER_LANGUAGES.find((l) => l.language === primary) ?? en;
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
