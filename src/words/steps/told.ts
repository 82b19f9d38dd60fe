import type { Sureness } from '../../model/fact.js';
import type { Sentence } from '../../model/sentence.js';
import type { Step, StepSource } from '../../model/step.js';
import { cited } from '../origin.js';
import { say, type ReasonLanguage } from '../reasons/say.js';
import { ENGLISH_STEPS } from './en/english.js';
import { saidSureness } from './said-sureness.js';
import type { StepWords } from './step-words.js';

/** The words of steps by language. */
const LANGUAGES: { readonly [L in ReasonLanguage]: object } = { en: ENGLISH_STEPS };

/** How sure a figure is, in words. */
export const SURENESS: Readonly<Record<Sureness, string>> = {
  published: 'published',
  memory: 'value from memory',
  'common practice': 'common practice',
  assumption: 'assumption',
  derived: 'derived by us',
  stated: 'stated',
  computed: 'computed',
};

/** A step in words. */
export interface StepTold {
  /** What the figure is. */
  readonly says: Sentence;
  /** `` for a figure that is taken, not computed. */
  readonly formula: Sentence;
  /** The formula with the figures and their units put in; `` for a figure that is taken. */
  readonly substituted: Sentence;
  /** Standard, edition and clause; `common practice, no source`; `value from memory`; or where a stated value stands. */
  readonly source: Sentence;
  /** How sure the figure is. */
  readonly sure: string;
  /** `sure: source`, once where the source says it already. */
  readonly sourced: Sentence;
}

/** Where a step's figure comes from, in words. */
function sourceOf(source: StepSource, language: ReasonLanguage): Sentence {
  // Asked for the field itself: by `isReason` the compiler compares every reason with every other, a fifth of all its work.
  return 'code' in source ? say(source, language) : (cited(source) as Sentence);
}

/**
 * A step's formula with its figures and their units put in: signs and figures, no sentence, so that lines that show the same can be one.
 * @returns `` for a figure that is taken, not computed
 */
export function figuresPutIn(step: Step): string {
  const { substituted } =
    (ENGLISH_STEPS as Readonly<Record<string, StepWords<object> | undefined>>)[step.code] ?? {};
  return typeof substituted === 'function' ? substituted(step.values) : (substituted ?? '');
}

/**
 * The words of a step.
 * @param step as the plan holds it
 * @param language of the reader; English where it isn't given
 */
export function stepTold(step: Step, language: ReasonLanguage = 'en'): StepTold {
  const texts = LANGUAGES[language] as Readonly<Record<string, StepWords<object> | undefined>>;
  // A plan that a later shuntbook wrote: its code is all that is known.
  const words = texts[step.code] ?? { says: step.code };
  const text = (of: StepWords<object>['says'] | undefined): Sentence =>
    (typeof of === 'function' ? of(step.values) : (of ?? '')) as Sentence;
  const source = sourceOf(step.source, language);
  const sure = SURENESS[step.sure];
  return {
    says: text(words.says),
    formula: text(words.formula),
    substituted: text(words.substituted),
    source,
    sure,
    sourced: (saidSureness(step.source) === step.sure ? source : `${sure}: ${source}`) as Sentence,
  };
}
