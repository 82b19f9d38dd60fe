import type { NestedReason } from '../model/nested-reason.js';
import type { Sentence } from '../model/sentence.js';
import { CREW_NOTES_EN } from './languages/crew-notes-en.js';
import { CREW_NOTES_ES } from './languages/crew-notes-es.js';
import type { CrewNoteWords, CrewSayings } from './languages/crew-note-words.js';
import type { CrewLanguage } from './crew-language.js';
import { CREW_SAYINGS_EN } from './languages/crew-sayings-en.js';
import { CREW_SAYINGS_ES } from './languages/crew-sayings-es.js';
import { say } from './reasons/say.js';
import { unparted } from './unparted.js';

const WORDS: { readonly [L in CrewLanguage]: CrewNoteWords } = { en: CREW_NOTES_EN, es: CREW_NOTES_ES };
const SAYINGS: { readonly [L in CrewLanguage]: CrewSayings } = { en: CREW_SAYINGS_EN, es: CREW_SAYINGS_ES };

/** The strings of wiring notes and the isolation page in a language. */
export function crewNoteWords(language: CrewLanguage): CrewNoteWords {
  return WORDS[language];
}

/**
 * The sentence of a reason as it stands on a wiring note or the isolation page; one that neither tells by code (of a plan that an
 * earlier or a later shuntbook wrote) as all papers say it.
 * @returns no figure parted from its unit by a line break
 */
export function crewSay(of: NestedReason, language: CrewLanguage): Sentence {
  const sayings = SAYINGS[language] as Readonly<
    Record<string, ((values: object, again: (inner: NestedReason) => Sentence) => string) | undefined>
  >;
  const saying = sayings[of.code];
  return unparted(saying ? saying(of.values, (inner) => crewSay(inner, language)) : say(of)) as Sentence;
}
