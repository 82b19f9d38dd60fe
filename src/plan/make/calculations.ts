import { protectiveDistance } from '../../electrical/reach.js';
import { taken, workingOf } from '../../electrical/working.js';
import type { Part } from '../../model/catalogue.js';
import { volts } from '../../model/quantity.js';
import { reason } from '../../model/reason.js';
import type { SiteEquipment } from '../../model/site.js';
import { subject, type Working } from '../../model/step.js';
import { isNec } from '../../model/editions.js';
import { pvVoltageLimit } from '../../rules/pv-limits.js';
import { ARRAY_VOLTAGE_RULE, CLAMPING_RULE } from '../../rules/rulebook.js';
import { ultimateSources } from '../../site/inputs.js';
import { pvCircuitsOf } from '../../site/pv-circuits.js';
import { calculation, type Calculated } from '../context/calculation.js';
import { memo } from '../context/memo.js';
import { reachWithstandOf, type ReachWithstand } from '../choose/reach-withstand.js';
import { convertersOf } from '../rate/rating-facts.js';
import { overcurrentCalculations, type PortDevice } from './overcurrent.js';
import { smallestLeadCalculations } from './smallest-lead.js';
import type { Selected, PartFigures } from '../choose/select.js';
import type { JobContext } from '../context/job-context.js';

/** What the leads of a chosen part come to, and the level between two of its channels. */
export interface Figured {
  readonly figures: PartFigures;
  readonly between: Working | undefined;
}

/** The calculations behind a protector: voltage with its working, currents, withstand, leads, reach. */
export function calculationsOf(
  job: JobContext,
  one: Selected,
  figured: Figured | undefined,
  devices: readonly PortDevice[],
): readonly Calculated[] {
  const { requirement, part, specification } = one;
  const { nominalCurrent, sccr, withstand } = requirement;
  const found: Calculated[] = [];
  for (const { rule: of, working } of requirement.voltages) {
    const rule = of.id;
    const title = found.length === 0 && requirement.mcov ? 'calculation/deciding' : 'calculation/of-rule';
    found.push(calculation(rule, reason(title, { rule }), working));
  }
  found.push(...limitsOf(job, one));
  for (const asked of [nominalCurrent, sccr, withstand]) {
    if (!asked) continue;
    const rule = asked.rule.id;
    found.push(calculation(rule, reason('calculation/of-rule', { rule }), asked.working));
  }
  found.push(...overcurrentCalculations(devices, part, job.site.basis.value));
  if (part) found.push(...smallestLeadCalculations(one.leads, part, job.site.basis.value));
  if (!part || !figured || !specification) return found;
  const { figures, between } = figured;
  found.push(figures.leadCalculation);
  if (between) found.push(calculation(CLAMPING_RULE.id, reason('calculation/level-between'), between));
  const against = reachWithstandOf(job, one);
  if (part.up !== null && against) found.push(reachCalculation(job, part, part.up, figures.lead, against));
  return found;
}

/** What bounds the voltage of an array: that of its converters, and with the NEC that of 690.7. */
function limitsOf(job: JobContext, { requirement, placement }: Selected): readonly Calculated[] {
  const array = requirement.voltages.find((v) => v.rule === ARRAY_VOLTAGE_RULE);
  if (!array || array.bound !== undefined) return [];
  const reached = volts(array.value);
  const { basis, occupancy } = job.site;
  const found: Calculated[] = [];
  const arrays = new Set<SiteEquipment>();
  for (const port of placement.ports) {
    for (const source of ultimateSources(port)) if (source.kind === 'array') arrays.add(source);
    for (const { tag, facts } of convertersOf(port)) {
      const bears = facts.max_dc_voltage;
      if (!bears) continue;
      const what = subject('input-limit/converter', { converter: tag });
      const step = taken('Umax', what, bears.value, 'V', 'stated', bears.origin);
      const title = reason('calculation/converter-limit', { converter: tag, reached });
      found.push(calculation(array.rule.id, title, workingOf([], step)));
    }
  }
  if (!isNec(basis.value)) return found;
  const circuits = [...arrays].map((one) => pvCircuitsOf(job.site, one));
  const most = pvVoltageLimit({
    occupancy: circuits.some(({ atDwelling }) => atDwelling) ? 'dwelling' : occupancy.value,
    offBuildings: circuits.every(({ offBuildings }) => offBuildings),
  });
  const source = reason('source/pv-limit', { basis: basis.value });
  const step = taken('Ulimit', subject('array-voltage/code-limit'), most, 'V', 'published', source);
  const title = reason('calculation/code-limit', { reached });
  return [...found, calculation(array.rule.id, title, workingOf([], step))];
}

const reaches = memo<Calculated>();

/** The same part at the same withstand covers the same length wherever it stands. */
function reachCalculation(
  job: JobContext,
  part: Part,
  up: number,
  leads: number,
  { value: withstand, assumed: withstandAssumed, fedAt, fedLineToLine }: ReachWithstand,
): Calculated {
  const { reachSlope: slope, leastReach } = job.settings.thresholds;
  const limit = job.longRunLimit;
  return reaches(
    part,
    `${leads}|${withstand}|${withstandAssumed}|${fedAt}|${fedLineToLine}|${slope}|${leastReach}|${limit}`,
    () => {
      const { margin, working } = protectiveDistance({
        up,
        leads,
        withstand,
        withstandAssumed,
        ...(fedAt !== undefined && { fedAt, fedLineToLine }),
        slope,
        leastReach,
        limit,
      });
      return calculation(CLAMPING_RULE.id, reason('calculation/reach', { margin: volts(margin) }), working);
    },
  );
}
