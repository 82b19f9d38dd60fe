import type { Plan, PlannedProtector } from '../../../model/plan.js';

/** Clauses that say where at its place a protector goes, not that one goes there. */
const SAY_WHERE: ReadonlySet<string> = new Set([
  'type-1-places',
  'type-2-places',
  'type-3-places',
  'origin-of-installation',
]);

/** The clauses by which the reasons of a protector require it, each once: `230.67`; none where it is only recommended. */
export function requiringClauses({ reasons }: PlannedProtector, plan: Plan): string[] {
  const found: string[] = [];
  for (const { rule, strength, sources } of reasons) {
    if (strength !== 'required') continue;
    for (const source of sources) {
      if (source.code !== 'source/clause') continue;
      const { clause } = source.values;
      const subject = plan.clauses.find((one) => one.rule === rule && one.clause === clause)?.subject ?? '';
      if (!SAY_WHERE.has(subject) && !found.includes(clause)) found.push(clause);
    }
  }
  return found;
}

/** `required, 230.67`, or `recommended`. */
export function requiredBy(protector: PlannedProtector, plan: Plan): string[] {
  if (protector.strength !== 'required') {
    return [protector.strength === 'recommended' ? 'recommended' : 'as asked'];
  }
  return ['required', requiringClauses(protector, plan).join(', ')];
}
