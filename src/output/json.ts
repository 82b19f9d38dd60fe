import { PlanSchema, type Plan } from '../model/plan.js';
import { roundFigure } from './csv.js';

/**
 * The text of `plan.json`: keys in the order of the schema, figures rounded to 0.01, unknown figures null.
 * @param plan a plan
 * @throws Error where the plan isn't what the schema says: nothing wrong is ever written
 */
export function planJson(plan: Plan): string {
  return jsonText(PlanSchema.parse(plan));
}

/**
 * JSON for files and for `--json`: two blanks of indent, figures rounded to 0.01, a line break at the end.
 * @param value plain data
 */
export function jsonText(value: unknown): string {
  const text = JSON.stringify(
    value,
    (_, v: unknown) => (typeof v === 'number' && !Number.isInteger(v) ? finite(v) : v),
    2,
  );
  return `${text}\n`;
}

const finite = (value: number): number | null => (Number.isFinite(value) ? roundFigure(value) : null);
