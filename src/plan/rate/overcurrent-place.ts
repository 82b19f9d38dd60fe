import { arrayShortCircuitCurrent } from '../../electrical/short-circuit.js';
import { computed, statedAt, taken } from '../../electrical/working.js';
import type { DcJoined, SiteEquipment, SitePort } from '../../model/site.js';
import { amperes } from '../../model/quantity.js';
import { withoutDust } from '../../model/rounding.js';
import { reason } from '../../model/reason.js';
import { subject, type Step } from '../../model/step.js';
import type { OvercurrentPlace } from '../../rules/lead-duty.js';
import { circuitsAt } from '../../site/dc-joined.js';
import type { ArrayCurrent } from '../context/array-current.js';
import type { JobContext } from '../context/job-context.js';
import type { Placement } from '../context/verdict.js';
import { carriedBy } from './rating-facts.js';

/** One port of a placement, as the rules about overcurrent devices and leads know it whatever part stands there. */
export interface OvercurrentPort {
  readonly port: SitePort;
  readonly place: OvercurrentPlace;
  readonly current: ArrayCurrent | undefined;
  /** Converters that may send current back through it, and nobody states how much. */
  readonly backfeedUnknown: readonly SiteEquipment[];
}

const NONE: readonly SiteEquipment[] = [];

/** What each port of a placement tells of the overcurrent device ahead of its protector. */
export function overcurrentPorts(job: JobContext, placement: Placement): readonly OvercurrentPort[] {
  return placement.ports.map((port) => {
    const circuit = circuitOf(port, placement);
    const { facts } = port.equipment;
    const current = circuit === 'array' ? arrayCurrentAt(job, port) : undefined;
    const place = {
      circuit,
      aheadOfDisconnect: circuit === 'power' && facts.ahead_of_disconnect?.value === true,
      ownDevice: circuit === 'power' ? facts.rating_a?.value : undefined,
      arrayCurrent: current?.value,
    };
    const backfeedUnknown = circuit === 'array' ? backfeedUnknownAt(port) : NONE;
    return { port, place, current, backfeedUnknown };
  });
}

/** A turbine that gives direct current is a turbine all the same, unless an array is joined to it. */
function circuitOf(port: SitePort, { subject: of }: Placement): OvercurrentPlace['circuit'] {
  const { circuit } = carriedBy(port, of);
  return circuit === 'array' && circuitsAt(port).every((one) => one.turbinesAlone) ? 'turbine' : circuit;
}

/** The largest of what may be joined to the port; undefined where one of them isn't known. */
function arrayCurrentAt(job: JobContext, port: SitePort): ArrayCurrent | undefined {
  let largest: ArrayCurrent | undefined;
  for (const joined of circuitsAt(port)) {
    const one = currentOf(job, joined);
    if (!one) return undefined;
    if (!largest || one.value > largest.value) largest = one;
  }
  return largest;
}

const PARALLEL = reason('source/parallel-sources');
const NO_BACKFEED = reason('source/backfeed-taken-as-none');

/** So many figures one calculation names; of more it names the sum alone, or a combiner would cost the square of its strings. */
const MOST_NAMED = 12;

function currentOf(job: JobContext, circuit: DcJoined): ArrayCurrent | undefined {
  const { arrayCurrents: known } = job;
  if (!known.has(circuit)) known.set(circuit, sumOf(job, circuit));
  return known.get(circuit);
}

function sumOf({ settings, site }: JobContext, joined: DcJoined): ArrayCurrent | undefined {
  if (joined.otherSources) return undefined;
  const steps: Step[] = [];
  const each: number[] = [];
  const assumed: SiteEquipment[] = [];
  for (const { tag, facts } of joined.arrays) {
    const { fault_current: stated, isc_stc: isc, strings_in_parallel: strings } = facts;
    if (stated) {
      const what = subject('overcurrent/array', { array: tag });
      steps.push(taken('Isc,max', what, stated.value, 'A', 'stated', stated.origin));
      each.push(stated.value);
      continue;
    }
    if (!isc || !strings) return undefined;
    const { value, working } = arrayShortCircuitCurrent({
      iscStc: isc.value,
      stringsInParallel: strings.value,
      share: settings.thresholds.shortCircuitShare,
      basis: site.basis.value,
    });
    steps.push(...statedAt(working, { Isc: isc.origin, p: strings.origin }).steps);
    each.push(value);
  }
  for (const { equipment, input } of joined.inputs) {
    const stated = equipment.facts.backfeed_a;
    const what = subject('overcurrent/backfeed', { converter: equipment.tag, input });
    if (stated) steps.push(taken('Iback', what, stated.value, 'A', 'stated', stated.origin));
    else if (sendsNothingBack(equipment)) {
      steps.push(taken('Iback', what, 0, 'A', 'assumption', NO_BACKFEED));
      assumed.push(equipment);
    } else return undefined;
    each.push(stated?.value ?? 0);
  }
  const value = withoutDust(each.reduce((sum, one) => sum + one, 0));
  if (each.length > MOST_NAMED) {
    const many = subject('overcurrent/sum-of-many', {
      arrays: joined.arrays.size,
      inputs: joined.inputs.length,
    });
    const uses: readonly string[] = [];
    const result = { value, unit: 'A', sure: 'computed', uses, source: PARALLEL } as const;
    return { value, steps: [computed('Isum', many, result)], assumed };
  }
  const what = subject('overcurrent/sum', { each: each.map(amperes) });
  const uses = joined.inputs.length > 0 ? ['Isc,max', 'Iback'] : ['Isc,max'];
  const result = { value, unit: 'A', sure: 'computed', uses, source: PARALLEL } as const;
  steps.push(computed('Isum', what, result));
  return { value, steps, assumed };
}

function backfeedUnknownAt(port: SitePort): readonly SiteEquipment[] {
  const found = new Set<SiteEquipment>();
  for (const { inputs } of circuitsAt(port)) {
    for (const { equipment } of inputs) {
      if (!equipment.facts.backfeed_a && !sendsNothingBack(equipment)) found.add(equipment);
    }
  }
  return [...found];
}

/** A grid-tie inverter with nothing behind it that could: any other converter isn't known. */
function sendsNothingBack({ kind, ports }: SiteEquipment): boolean {
  return kind === 'grid-tie-inverter' && !ports.some((p) => p.cls === 'battery' && p.runs.length > 0);
}
