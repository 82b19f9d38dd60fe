import type { Plan } from '../../../model/plan.js';

export type BlankWhat = 'device' | 'fault current' | 'lead' | 'ground';

/** A figure that nobody states and that the sheets leave to fill in. */
export interface Blank {
  /** Of the protector. */
  readonly tag: string;
  readonly what: BlankWhat;
}

/** What the sheets of a job leave to fill in. */
export function blanksOf(plan: Plan): Blank[] {
  return plan.protectors.flatMap((p) =>
    p.required.sccr === null && p.required.current === 'ac'
      ? [{ tag: p.tag, what: 'fault current' as const }]
      : [],
  );
}
