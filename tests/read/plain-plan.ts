import type { Plan } from '../../src/model/plan.js';

/** Where a thing stands and how it is written: what two plans of one site may differ in. */
const PLACES = new Set([
  'file',
  'line',
  'column',
  'found',
  'message',
  'text',
  'substituted',
  'source',
  'origin',
  'hint',
  'because',
]);

/** Facts that a plan shows as they were typed, since they are more than one figure. */
const AS_TYPED = new Set(['voc_coefficient', 'control_voltage', 'connects_to', 'run_length']);

function isTyped(value: object): boolean {
  return 'field' in value && AS_TYPED.has(String(value.field));
}

/**
 * A plan whose items are lines without places.
 * @param plan as made
 * @param without codes of items that the list's own manner brings
 */
export function plainPlan(plan: Plan, without: readonly string[] = []): unknown {
  const { openItems, ...rest } = plan;
  const items = openItems
    .filter((item) => !without.includes(item.code))
    .map((item) => `${item.severity} ${item.code} ${item.equipment} ${item.who}`)
    .sort();
  return { ...rest, items };
}

const FIGURE = /(\d+(?:\.\d+)?)/;

/** Within 0.1 %, or within the two decimals that a plan's figures have. */
function near(a: number, b: number): boolean {
  return Math.abs(a - b) <= Math.max(0.0101, 1e-3 * Math.max(Math.abs(a), Math.abs(b)));
}

/** Where two plans differ first, places and cells as typed aside, figures by more than 0.1 %; `` where they don't. */
export function difference(a: unknown, b: unknown, path = ''): string {
  if (a === b) return '';
  if (typeof a === 'number' && typeof b === 'number') {
    return near(a, b) ? '' : `${path}: ${a} and ${b}`;
  }
  if (typeof a === 'string' && typeof b === 'string') {
    const [one, two] = [a.split(FIGURE), b.split(FIGURE)];
    const same =
      one.length === two.length &&
      one.every((part, i) => part === two[i] || near(Number(part), Number(two[i])));
    return same ? '' : `${path}: ${a} and ${b}`;
  }
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) {
    return `${path}: ${JSON.stringify(a)} and ${JSON.stringify(b)}`;
  }
  if (isTyped(a) && isTyped(b)) return '';
  for (const key of new Set([...Object.keys(a), ...Object.keys(b)])) {
    if (PLACES.has(key)) continue;
    const found = difference(Reflect.get(a, key), Reflect.get(b, key), `${path}/${key}`);
    if (found !== '') return found;
  }
  return '';
}
