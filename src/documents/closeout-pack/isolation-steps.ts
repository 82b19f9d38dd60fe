import type { IsolationPart } from '../../model/planned-isolation.js';
import type { Plan } from '../../model/plan.js';
import type { Reason } from '../../model/reason.js';

/**
 * The numbers that the isolation page has for the steps of a part: 1, 2, 3 without a gap, whatever steps the site doesn't have.
 * @returns by the plan's own numbers
 */
export function printedNumbers({ steps }: IsolationPart): ReadonlyMap<number, number> {
  return new Map(steps.map(({ number }, index) => [number, index + 1]));
}

/** What a step does, with the numbers of other steps as the page has them. */
export function asPrinted(does: Reason, printed: ReadonlyMap<number, number>): Reason {
  if (does.code !== 'restore/unlock') return does;
  const stay = does.values.stay.flatMap((number) => printed.get(number) ?? []);
  return { code: does.code, values: { stay } };
}

/** The numbers on the isolation page of those steps of a part that a box needs: to make it dead, and to prove it. */
export interface BoxSteps {
  readonly opening: readonly number[];
  readonly proving: readonly number[];
}

/** The same of one housing. */
export function boxSteps(plan: Plan, isolation: Plan['protectors'][number]['wiring']['isolation']): BoxSteps {
  const part = plan.isolation.parts.find(({ number }) => number === isolation.part);
  if (!part) return { opening: [], proving: [] };
  const printed = printedNumbers(part);
  const proves = new Set(
    part.steps
      .filter(({ acts }) => acts.some(({ does }) => does.code === 'isolate/prove-dead'))
      .map(({ number }) => number),
  );
  const numbers = (isProving: boolean): number[] =>
    isolation.steps
      .filter((number) => proves.has(number) === isProving)
      .flatMap((number) => printed.get(number) ?? []);
  return { opening: numbers(false), proving: numbers(true) };
}
