import type { NestedReason } from '../../model/nested-reason.js';
import type { Reason } from '../../model/reason.js';
import type { Sentence } from '../../model/sentence.js';
import { ENGLISH } from './en/english.js';
import type { Say } from './sayings.js';

/** The sentences of reasons by language. */
const LANGUAGES = { en: ENGLISH };
/** A language that the sentences of reasons are written in. */
export type ReasonLanguage = keyof typeof LANGUAGES;

/**
 * The sentence of a reason.
 * @param of the reason
 * @param language of the reader; English where it isn't given
 */
export function say(of: NestedReason, language: ReasonLanguage = 'en'): Sentence {
  const again: Say = (inner) => say(inner, language);
  const sayings = LANGUAGES[language] as Readonly<
    Record<string, ((values: object, say: Say) => string) | undefined>
  >;
  const saying = sayings[of.code];
  // A plan that a later shuntbook wrote: its code is all that is known.
  return (saying ? saying(of.values, again) : of.code) as Sentence;
}

/** True where a value is a reason. */
export function isReason(value: unknown): value is Reason {
  return typeof value === 'object' && value !== null && 'code' in value && 'values' in value;
}
