import { protectiveDistance } from '../electrical/reach.js';
import type { Part } from '../model/catalogue.js';
import { figure } from '../text/figures.js';
import { calculation, type Calculated } from './calculation.js';
import { keeper } from './kept.js';
import type { Selected, PartFigures } from './select.js';
import type { JobContext } from './survey-facts.js';

/** The calculations behind a protector: voltage with its working, currents, withstand, leads, reach. */
export function calculationsOf(
  job: JobContext,
  one: Selected,
  figures: PartFigures | undefined,
): readonly Calculated[] {
  const { requirement, part, demand } = one;
  const { nominalCurrent, sccr, withstand } = requirement;
  const found = requirement.voltages.map(({ rule, working }, i) =>
    calculation(
      rule.id,
      i === 0 && requirement.mcov ? `${rule.title}: this one decides` : rule.title,
      working,
    ),
  );
  for (const asked of [nominalCurrent, sccr, withstand]) {
    if (asked) found.push(calculation(asked.rule.id, asked.rule.title, asked.working));
  }
  if (!part || !figures || !demand) return found;
  found.push(figures.leadCalculation);
  if (part.up !== null && withstand)
    found.push(reachCalculation(job, part, part.up, figures.lead, withstand));
  return found;
}

const reaches = keeper<Calculated>();

/** The same part at the same withstand covers the same length wherever it stands. */
function reachCalculation(
  job: JobContext,
  part: Part,
  up: number,
  leads: number,
  { value: withstand, assumed: withstandAssumed }: { readonly value: number; readonly assumed: boolean },
): Calculated {
  const { reachSlope: slope, leastReach } = job.settings.thresholds;
  const limit = job.longRunLimit;
  return reaches(part, `${leads}|${withstand}|${withstandAssumed}|${slope}|${leastReach}|${limit}`, () => {
    const { margin, working } = protectiveDistance({
      up,
      leads,
      withstand,
      withstandAssumed,
      slope,
      leastReach,
      limit,
    });
    const title = `Reach along the cable, with a margin of ${figure(margin, 'V')}`;
    return calculation('rate/clamping', title, working);
  });
}
