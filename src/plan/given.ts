/**
 * Hands a rule the facts that it declares and nothing else.
 * @param rule a rule with its declared facts
 * @param all every fact of the subject
 */
export function given<F extends object>(rule: { readonly facts: readonly (keyof F)[] }, all: F): F {
  const some: Partial<F> = {};
  for (const key of rule.facts) some[key] = all[key];
  // A rule's type declares that it reads these keys only, so the rest may be absent.
  return some as F;
}
