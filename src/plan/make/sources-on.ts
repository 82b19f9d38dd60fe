import type { Reason } from '../../model/reason.js';
import type { MeasuredPlace } from '../../model/reasons/measure.js';
import type { SiteEquipment, SitePort } from '../../model/site.js';
import type { Kind } from '../../model/words.js';
import { sourcesOn, type ConverterAround } from '../../rules/measure/sources-on.js';
import { batteriesOn } from '../../site/battery-bus.js';
import { CONVERTERS } from '../../site/converters.js';
import { drivenBy, ultimateSources } from '../../site/inputs.js';
import { suppliesOf } from '../choose/indicate.js';
import type { Selected } from '../choose/select.js';
import type { JobContext } from '../context/job-context.js';
import type { PartAround } from '../context/part-around.js';
import { convertersOf } from '../rate/rating-facts.js';

/** Names that one sentence holds; of more none is named, or a bus would cost the square of its converters. */
const MOST_NAMED = 8;
const TURBINES: ReadonlySet<Kind> = new Set<Kind>(['wind-turbine', 'hydro-turbine']);
const ON_AC: ReadonlySet<Kind> = new Set<Kind>(['ac-battery', 'ac-module-branch']);

/** In which state the readings of a placement are taken, by the tags of what is on, stays on and is off. */
export function measuredStateOf(job: JobContext, one: Selected): Reason {
  const { ports } = one.placement;
  const first = ports[0]?.equipment;
  const around = first && aroundOf(job, first);
  const of = measuredPlace(one);
  const takers = of === 'ac' || of === 'battery' ? NONE : ofEach(ports, convertersOf);
  const sources = of === 'control' ? NONE : ofEach(ports, (port) => sourcesAt(of, port));
  const isMeant = new Set<SiteEquipment>([...takers, ...sources]);
  const others = around?.others.filter((e) => !isMeant.has(e)) ?? [];
  const loading = [...(around?.loading.keys() ?? [])].filter((e) => !isMeant.has(e));
  const named = [...takers, ...sources.filter(isConverter), ...capped(loading), ...capped(others)];
  const turbinesOf = (e: SiteEquipment): readonly string[] => around?.loading.get(e) ?? [];
  return sourcesOn({
    of,
    sources: tagsOf(sources.length > MOST_NAMED ? [] : sources),
    converters: unique(named).map((e): ConverterAround => ({
      tag: e.tag,
      takes: takers.includes(e),
      feeds: sources.includes(e),
      turbines: turbinesOf(e),
      needs: turbinesOf(e).length > 0 || takers.includes(e) ? tagsOf(neededBy(e)) : [],
    })),
    diversions: around?.diversions ?? [],
    more: { loads: loading.length > MOST_NAMED, off: others.length > MOST_NAMED },
    unknown: tagsOf(sources.filter((e) => TURBINES.has(e.kind) && !e.facts.open_circuit_voltage)),
  });
}

function measuredPlace({ requirement: { circuit }, placement }: Selected): MeasuredPlace {
  switch (circuit) {
    case 'power':
      return 'ac';
    case 'array':
      return drivenBy(ofEach(placement.ports, ultimateSources));
    case 'turbine':
    case 'battery':
    case 'control':
      return circuit;
  }
}

function sourcesAt(of: MeasuredPlace, port: SitePort): readonly SiteEquipment[] {
  if (of === 'ac') {
    const found: SiteEquipment[] = [];
    for (const one of suppliesOf(port).by) found.push(one, ...passedThrough(one));
    return found;
  }
  return of === 'battery' ? batteriesOn(port) : ultimateSources(port);
}

/** The utility that an inverter-charger passes through: to an output of the same system. */
function passedThrough({ kind, ports }: SiteEquipment): readonly SiteEquipment[] {
  if (kind !== 'inverter-charger') return [];
  const given = new Set(ports.filter(({ cls }) => cls === 'ac-out').map(({ system }) => system));
  const inputs = ports.filter((p) => (p.cls === 'ac-in' || p.cls === 'ac-in-2') && given.has(p.system));
  return inputs.flatMap((p) => suppliesOf(p).by.filter((e) => e.kind === 'service'));
}

/**
 * Without its battery a charge controller loads nothing, nor does an inverter without the supply that it keeps step with; an
 * inverter that is this supply needs its own battery in turn.
 */
function neededBy(one: SiteEquipment): readonly SiteEquipment[] {
  const found = new Set<SiteEquipment>();
  const open = [one];
  for (let at = open.pop(); at; at = open.pop()) {
    for (const needed of neededAtOnce(at)) {
      if (needed === one || found.has(needed)) continue;
      found.add(needed);
      open.push(needed);
    }
  }
  return [...found];
}

function neededAtOnce({ kind, ports }: SiteEquipment): readonly SiteEquipment[] {
  const found: SiteEquipment[] = [];
  if (!CONVERTERS.has(kind)) return found;
  for (const port of ports) {
    if (port.cls === 'battery') found.push(...batteriesOn(port));
    else if (kind === 'grid-tie-inverter' && port.cls === 'ac-out') found.push(...suppliesOf(port).by);
  }
  return found;
}

function aroundOf(job: JobContext, equipment: SiteEquipment): PartAround {
  const { around } = job;
  const together = job.togetherWith(equipment);
  let known = around.get(together);
  if (!known) around.set(together, (known = partAround(together)));
  return known;
}

function partAround(together: readonly SiteEquipment[]): PartAround {
  const loading = new Map<SiteEquipment, readonly string[]>();
  const others: SiteEquipment[] = [];
  for (const equipment of together.filter(isConverter)) {
    const inputs = equipment.ports.filter(({ cls }) => cls === 'dc-in');
    const turbines = unique(inputs.flatMap((port) => ultimateSources(port))).filter((e) =>
      TURBINES.has(e.kind),
    );
    if (turbines.length > 0) loading.set(equipment, tagsOf(turbines));
    else others.push(equipment);
  }
  const turns = together.some(({ kind }) => TURBINES.has(kind));
  const diversions = together.filter(({ kind }) => turns && kind === 'diversion-load');
  return { loading, others, diversions: tagsOf(capped(diversions)) };
}

const isConverter = ({ kind }: SiteEquipment): boolean => CONVERTERS.has(kind) || ON_AC.has(kind);
const unique = (each: readonly SiteEquipment[]): readonly SiteEquipment[] =>
  each.length < 2 ? each : [...new Set(each)];
const NONE: readonly SiteEquipment[] = [];

/** What is found of each of some ports or rows, each once. */
function ofEach<T>(
  some: readonly T[],
  found: (one: T) => readonly SiteEquipment[],
): readonly SiteEquipment[] {
  const [first] = some;
  if (first === undefined) return NONE;
  if (some.length === 1) return unique(found(first));
  const all = new Set<SiteEquipment>();
  for (const one of some) for (const equipment of found(one)) all.add(equipment);
  return [...all];
}
const tagsOf = (each: readonly SiteEquipment[]): readonly string[] => each.map(({ tag }) => tag);
const capped = (each: readonly SiteEquipment[]): readonly SiteEquipment[] =>
  each.length > MOST_NAMED ? [] : each;
