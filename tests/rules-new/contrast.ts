import type { EnglishPlan } from '../in-english.js';
import { items, one } from '../plan/plan-of.js';

/** Two lists that differ in one cell, which decides: what the plan has to have of one, and of the other. */
export interface Contrast {
  /** What of its phrase it shows. */
  readonly shows: string;
  readonly plan: (cell: string) => EnglishPlan;
  readonly sees: (plan: EnglishPlan) => unknown;
  readonly fires: readonly [cell: string, is: unknown];
  readonly spares: readonly [cell: string, is: unknown];
}

/** The contrasts of one section of rules.md, by the phrases that name what is new in it. */
export type Section = Readonly<Record<string, readonly Contrast[]>>;

type Housing = ReturnType<typeof one>;

/** Reads one field of the first housing at a port. */
export function housing<T>(where: string, read: (found: Housing) => T): (plan: EnglishPlan) => T {
  return (plan) => read(one(plan, where));
}

/** How many items of a code there are. */
export function count(code: string): (plan: EnglishPlan) => number {
  return (plan) => items(plan, code).length;
}

/** `either: 2 poles, 240 V, breaks 10000 A` for each port of the first housing at a port. */
export function devicesAt(where: string): (plan: EnglishPlan) => readonly string[] {
  const of = (figure: number | null): string => (figure === null ? '-' : String(figure));
  return housing(where, ({ overcurrent }) =>
    overcurrent.map(({ device, poles, volts, straight, dc, interrupting }) => {
      const kind = `${straight ? ' straight' : ''}${dc ? ' dc' : ''}`;
      return `${device}: ${of(poles)} poles, ${of(volts)} V${kind}, breaks ${of(interrupting)} A`;
    }),
  );
}
