import { pvVoltageLimit } from '../../electrical/pv-limits.js';
import { protectiveDistance } from '../../electrical/reach.js';
import { taken, workingOf } from '../../electrical/working.js';
import type { Part } from '../../model/catalogue.js';
import type { SiteEquipment } from '../../model/site.js';
import { isNec } from '../../model/editions.js';
import { ARRAY_VOLTAGE_RULE, CLAMPING_RULE } from '../../rules/rulebook.js';
import { ultimateSources } from '../../site/inputs.js';
import { figure } from '../../words/figures.js';
import { cited } from '../../words/origin.js';
import { calculation, type Calculated } from '../context/rounded-working.js';
import { keeper } from '../context/memo.js';
import { convertersOf } from '../rate/rating-facts.js';
import type { Selected, PartFigures } from '../choose/select.js';
import type { JobContext } from '../context/job-context.js';

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
  found.push(...limitsOf(job, one));
  for (const asked of [nominalCurrent, sccr, withstand]) {
    if (asked) found.push(calculation(asked.rule.id, asked.rule.title, asked.working));
  }
  if (!part || !figures || !demand) return found;
  found.push(figures.leadCalculation);
  if (part.up !== null && withstand)
    found.push(reachCalculation(job, part, part.up, figures.lead, withstand));
  return found;
}

/** What bounds the voltage of an array: that of its converters, and with the NEC that of 690.7. */
function limitsOf(job: JobContext, { requirement, placement }: Selected): readonly Calculated[] {
  const array = requirement.voltages.find((v) => v.rule === ARRAY_VOLTAGE_RULE);
  if (!array || array.bound !== undefined) return [];
  const against = `the array reaches ${figure(array.value, 'V')}`;
  const { basis, occupancy } = job.site;
  const found: Calculated[] = [];
  const arrays = new Set<SiteEquipment>();
  for (const port of placement.ports) {
    for (const source of ultimateSources(port)) if (source.kind === 'array') arrays.add(source);
    for (const { tag, facts } of convertersOf(port)) {
      const bears = facts.max_dc_voltage;
      if (!bears) continue;
      const says = `Highest DC voltage that ${tag} bears`;
      const step = taken('Umax', says, bears.value, 'V', 'stated', cited(bears.origin));
      found.push(calculation(array.rule.id, `${says}; ${against}`, workingOf([], step)));
    }
  }
  if (!isNec(basis.value)) return found;
  const groundMounted = [...arrays].every((a) => a.facts.mounting?.value === 'ground');
  const most = pvVoltageLimit({ occupancy: occupancy.value, groundMounted });
  const says = 'Highest DC voltage that 690.7 allows here';
  const source = `NEC ${basis.value.slice('nec-'.length)} 690.7`;
  const step = taken('Ulimit', says, most, 'V', 'published', source);
  return [...found, calculation(array.rule.id, `${says}; ${against}`, workingOf([], step))];
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
    return calculation(CLAMPING_RULE.id, title, working);
  });
}
