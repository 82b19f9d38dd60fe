import type { Plan, PlannedProtector } from '../src/model/plan.js';
import type { OpenItem } from '../src/model/open-item.js';
import { reason, type Reason } from '../src/model/reason.js';
import type { Wire } from '../src/model/wire.js';
import { protectorInEnglish } from '../src/words/protector-in-english.js';
import type { Step, Working } from '../src/model/step.js';
import { isObject, isStep } from '../src/words/english-beside.js';
import { told } from '../src/words/messages/told.js';
import { isReason, say } from '../src/words/reasons/say.js';
import { stepTold } from '../src/words/steps/told.js';

/** A step with its English words. */
export type EnglishStep = Pick<Step, 'symbol' | 'value' | 'unit' | 'sure' | 'code'> & {
  readonly says: string;
  readonly formula: string;
  readonly substituted: string;
  readonly source: string;
};

/** A type with each reason as its English sentence, and each step with its words. */
export type InEnglish<T> = T extends Step
  ? EnglishStep
  : T extends Reason
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

/** A step with its English words. */
export function englishStep(step: Step): EnglishStep {
  const { symbol, code, value, unit, sure } = step;
  const { says, formula, substituted, source } = stepTold(step);
  return { symbol, code, says, formula, substituted, value, unit, sure, source };
}

/** The steps of a working with their English words. */
export function englishSteps(working: Working): readonly EnglishStep[] {
  return working.steps.map(englishStep);
}

/** The same data with an English sentence in place of each reason, and words beside each step. */
export function inEnglish<T>(value: T): InEnglish<T> {
  const walked = (inner: unknown): unknown => {
    if (typeof inner !== 'object' || inner === null) return inner;
    if (Array.isArray(inner)) return inner.map(walked);
    if (isObject(inner) && isStep(inner)) return englishStep(inner);
    if (isReason(inner)) return say(inner);
    const out: Record<string, unknown> = {};
    for (const [key, of] of Object.entries(inner)) out[key] = walked(of);
    return out;
  };
  return walked(value) as InEnglish<T>;
}

/** An object whose values are made when they are first asked for, and kept. */
function whenAsked<T extends object>(makers: { readonly [K in keyof T]: () => T[K] }): T {
  const out = {} as T;
  for (const key of Object.keys(makers) as (keyof T)[]) {
    const keep = (value: T[keyof T]): void => {
      Object.defineProperty(out, key, { value, writable: true, enumerable: true, configurable: true });
    };
    Object.defineProperty(out, key, {
      enumerable: true,
      configurable: true,
      set: keep,
      get: () => {
        const value = makers[key]();
        keep(value);
        return value;
      },
    });
  }
  return out;
}

/** A plan with all of its sentences in English; a test that asks for one part of it waits for no other. */
export function englishPlan(plan: Plan): EnglishPlan {
  const { openItems, ...rest } = plan;
  const others = Object.entries(rest).map(([key, value]) => [key, () => inEnglish(value as unknown)]);
  return whenAsked<EnglishPlan>({
    ...(Object.fromEntries(others) as { readonly [K in keyof EnglishPlan]: () => EnglishPlan[K] }),
    protectors: () => plan.protectors.map((p) => inEnglish(protectorInEnglish(p)) as EnglishProtector),
    openItems: () => openItems.map((item) => ({ ...item, ...told(item) })),
  });
}

/** An item that says what is given, whatever its code. */
export function saying(
  message: string,
  more: { found?: string; expected?: string; hint?: string } = {},
): object {
  return { asWritten: { found: '', expected: '', hint: '', ...more, message } };
}

/** A reason that says what is given, as the plan of an earlier shuntbook has it. */
export function written(text: string): Reason {
  return reason('earlier/as-written', { text });
}
