import type { Plan, PlannedProtector } from '../src/model/plan.js';
import type { OpenItem } from '../src/model/message.js';
import type { Reason } from '../src/model/reason.js';
import type { Wire } from '../src/model/wire.js';
import { protectorInEnglish } from '../src/words/protector-in-english.js';
import { told } from '../src/words/messages/told.js';
import { isReason, say } from '../src/words/reasons/say.js';

/** A type with each reason as its English sentence. */
export type InEnglish<T> = T extends Reason
  ? string
  : T extends string | number | boolean | null | undefined
    ? T
    : T extends readonly (infer U)[]
      ? readonly InEnglish<U>[]
      : T extends object
        ? { [K in keyof T]: InEnglish<T[K]> } & (T extends { wire: Wire } ? { conductor: string } : unknown)
        : T;

/** An open item with its sentences. */
export type EnglishItem = OpenItem & { message: string; found: string; expected: string; hint: string };
/** A plan as its readers see it: sentences where it holds reasons, and sentences beside the values of its items. */
export type EnglishPlan = Omit<InEnglish<Plan>, 'openItems' | 'protectors'> & {
  openItems: EnglishItem[];
  protectors: EnglishProtector[];
};
/** A protector as `plan.json` has it, with the texts of its system and its grounding. */
type EnglishProtector = Omit<InEnglish<PlannedProtector>, 'system' | 'grounding'> & {
  system: string;
  grounding: string;
};

/** The same data with an English sentence in place of each reason. */
export function inEnglish<T>(value: T): InEnglish<T> {
  const walked = (inner: unknown): unknown => {
    if (Array.isArray(inner)) return inner.map(walked);
    if (typeof inner !== 'object' || inner === null) return inner;
    if (isReason(inner)) return say(inner);
    return Object.fromEntries(Object.entries(inner).map(([key, of]) => [key, walked(of)]));
  };
  return walked(value) as InEnglish<T>;
}

/** A plan with all of its sentences in English. */
export function englishPlan(plan: Plan): EnglishPlan {
  const { openItems, ...rest } = plan;
  return {
    ...inEnglish(rest),
    protectors: plan.protectors.map((p) => inEnglish(protectorInEnglish(p)) as EnglishProtector),
    openItems: openItems.map((item) => ({ ...item, ...told(item) })),
  };
}

/** An item that says what is given, whatever its code. */
export function saying(
  message: string,
  more: { found?: string; expected?: string; hint?: string } = {},
): object {
  return { asWritten: { found: '', expected: '', hint: '', ...more, message } };
}
