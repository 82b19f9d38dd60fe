import { Failure } from '../model/failure.js';
import type { Catalogue } from '../model/catalogue.js';
import type { Plan } from '../model/plan.js';
import type { Settings } from '../model/settings.js';
import type { Fact } from '../model/fact.js';
import { planJob } from '../plan/plan-job.js';
import { jobOfPlan, withFact } from '../read/list/job-of-plan.js';
import type { NoPlanner, Planner } from '../record/anew.js';

/** The company's files that a job is planned with. */
export interface CompanyRead {
  readonly catalogue: Catalogue | undefined;
  readonly settings: Settings;
}

const leadFact = (value: number): Fact<number> => ({
  value,
  text: String(value),
  origin: { from: 'list', file: 'record.json', line: 0, column: 'lead_length' },
});

/**
 * Plans a job anew from its plan alone.
 * @param company undefined: its files aren't known any more
 */
export function jobPlanner(plan: Plan, company: CompanyRead | undefined): Planner | NoPlanner {
  if (company === undefined) return 'company-gone';
  const { catalogue, settings } = company;
  const job = jobOfPlan(plan, settings);
  const planner: Planner = {
    plan: (facts, at) => {
      let list = job;
      for (const fact of facts) {
        const next = withFact(list, fact, settings);
        if (next === undefined) return { notUnderstood: fact };
        list = next;
      }
      return planJob(list, {
        catalogue,
        settings,
        fitted: (equipment, port) => {
          const there = at(equipment, port);
          if (there === undefined) return undefined;
          const { lead, ...rest } = there;
          return lead === undefined ? rest : { ...rest, lead: leadFact(lead) };
        },
      });
    },
  };
  try {
    planner.plan([], () => undefined);
    return planner;
  } catch (error) {
    if (error instanceof Failure) return 'job-too-large';
    throw error;
  }
}
