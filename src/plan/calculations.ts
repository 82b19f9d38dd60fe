import { protectiveDistance } from '../electrical/reach.js';
import type { Step, Working } from '../model/fact.js';
import { figure, kept } from '../text/figures.js';
import type { Selected, PartFigures } from './select.js';
import type { JobContext } from './survey-facts.js';

/** One calculation as the plan keeps it. */
export interface Calculated {
  readonly rule: string;
  readonly title: string;
  readonly steps: readonly Step[];
}

/** The calculations behind a protector: voltage with its working, currents, withstand, leads, reach. */
export function calculationsOf(
  job: JobContext,
  one: Selected,
  figures: PartFigures | undefined,
): readonly Calculated[] {
  const { requirement, part, demand } = one;
  const found: Calculated[] = [];
  const add = (rule: string, title: string, working: Working): void => {
    found.push({ rule, title, steps: working.steps.map(roundedStep) });
  };
  requirement.voltages.forEach((voltage, i) => {
    const title =
      i === 0 && requirement.mcov ? `${voltage.rule.title}: this one decides` : voltage.rule.title;
    add(voltage.rule.id, title, voltage.working);
  });
  add(
    requirement.nominalCurrent.rule.id,
    requirement.nominalCurrent.rule.title,
    requirement.nominalCurrent.working,
  );
  if (requirement.sccr) add(requirement.sccr.rule.id, requirement.sccr.rule.title, requirement.sccr.working);
  if (requirement.withstand)
    add(requirement.withstand.rule.id, requirement.withstand.rule.title, requirement.withstand.working);
  if (part && figures && demand) {
    add('rate/clamping', 'Voltage of the leads as planned', figures.lead.working);
    if (part.up !== null && requirement.withstand) {
      const t = job.settings.thresholds;
      const reach = protectiveDistance({
        up: part.up,
        leads: figures.lead.value,
        withstand: requirement.withstand.value,
        slope: t.reachSlope,
        leastReach: t.leastReach,
        limit: job.longRunLimit,
      });
      add(
        'rate/clamping',
        `Reach along the cable, with a margin of ${figure(reach.margin, 'V')}`,
        reach.working,
      );
    }
  }
  return found;
}

function roundedStep(step: Step): Step {
  const value = kept(step.value);
  return value === step.value ? step : { ...step, value };
}

/** The same for the working of a figure of the site as a whole. */
export function siteCalculation(rule: string, title: string, working: Working): Calculated {
  return { rule, title, steps: working.steps.map(roundedStep) };
}
