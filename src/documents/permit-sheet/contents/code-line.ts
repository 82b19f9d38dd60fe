import type { Plan, PlannedProtector } from '../../../model/plan.js';

/** A clause that a reviewer looks for, or several that say one thing. */
export interface CodeLine {
  /** What its clauses are about, as the rules name it. */
  readonly subjects: readonly string[];
  /** What they ask for, in trade words. */
  readonly title: string;
  /** What stands at one protector, with its figure; ``: the clause isn't looked at there. */
  readonly here: (protector: PlannedProtector, plan: Plan) => string;
  /** Said of a protector that no rule of the line looks at, as to why; absent, ``: nothing. */
  readonly beyond?: (protector: PlannedProtector) => string;
  /** True of clauses that put a protector somewhere: met only where they require it. */
  readonly places?: true;
  /** Those of its subjects that are cited for a protector; absent: all of them. */
  readonly cites?: (protector: PlannedProtector) => readonly string[];
}
