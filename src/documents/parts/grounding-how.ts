import type { Plan, PlannedProtector } from '../../model/plan.js';
import { settledBy } from '../../words/settled.js';
import { downstream } from './site-index.js';

/** The equipments that stand on a grounding which the list states: of themselves, or of one that feeds them. */
function onStated(plan: Plan, field: 'dc_grounding' | 'system_grounding'): ReadonlySet<string> {
  const stating = plan.site.equipments.filter((e) =>
    e.facts.some((f) => f.field === field && f.origin.from !== 'default'),
  );
  return downstream(
    plan,
    stating.map((e) => e.tag),
  );
}

/** How the company settled a grounding that the list doesn't state, by the equipment that stands on it. */
function onSettled(plan: Plan, field: 'dc_grounding' | 'system_grounding'): ReadonlyMap<string, string> {
  const how = new Map<string, string>();
  for (const one of plan.settled) {
    if (one.field !== field) continue;
    for (const tag of downstream(plan, one.rows)) if (!how.has(tag)) how.set(tag, settledBy(one));
  }
  return how;
}

/**
 * By what the grounding of a protector's system is known: as the list states it, as the company settled it, or assumed.
 * @returns of a protector how; null where no grounding is known
 */
export function groundingHow(plan: Plan): (protector: PlannedProtector) => string | null {
  const stated = { dc: onStated(plan, 'dc_grounding'), ac: onStated(plan, 'system_grounding') };
  const settled = { dc: onSettled(plan, 'dc_grounding'), ac: onSettled(plan, 'system_grounding') };
  return ({ grounding, required, ports }) => {
    if (grounding === null || grounding === 'not-known') return null;
    const of = required.current === 'dc' ? 'dc' : 'ac';
    if (ports.some(({ equipment }) => stated[of].has(equipment))) return 'as stated on the list';
    const how = ports.map(({ equipment }) => settled[of].get(equipment)).find((one) => one !== undefined);
    return how ?? 'assumed, to be confirmed';
  };
}
