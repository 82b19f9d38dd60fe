import type { PlacedNote } from '../model/open-item.js';
import type { SiteEquipment, SitePort } from '../model/site.js';
import type { Kind } from '../model/words.js';
import { about } from '../model/message.js';
import { SITE_MESSAGES } from '../model/messages/site.js';
import { byNaturalOrder } from '../model/natural-order.js';
import { CONVERTERS } from './converters.js';
import type { Link } from './links.js';

const ARRAYS_AND_TURBINES: ReadonlySet<Kind> = new Set<Kind>(['array', 'wind-turbine', 'hydro-turbine']);

/**
 * Decides which source feeds which DC input, and collects what feeds each combiner.
 * @param equipments in natural order; `sources`, `use` and `runs` of their DC ports are filled
 * @param links the directed connections
 * @param inDoubt equipment that a connection with an error names: that nothing feeds it is no second item
 * @returns for each link onto a DC input, the ports that it reaches; and what had to be assumed
 */
export function feedInputs(
  equipments: readonly SiteEquipment[],
  links: readonly Link[],
  inDoubt: ReadonlySet<string>,
): { reached: ReadonlyMap<Link, readonly SitePort[]>; notes: readonly PlacedNote[] } {
  const notes: PlacedNote[] = [];
  const reached = new Map<Link, SitePort[]>();
  const onto = new Map<string, Link[]>();
  for (const link of links) {
    if (link.downEnd === 'dc-in' || (link.carries === 'dc' && link.downEnd === 'output')) {
      const list = onto.get(link.down.tag);
      if (list) list.push(link);
      else onto.set(link.down.tag, [link]);
    }
  }
  // A source that feeds nothing may be what the combiner lacks: it is asked where it leads, which is one item.
  const feeding = new Set(links.map((l) => l.up));
  const isAskedElsewhere = equipments.some((e) => ARRAYS_AND_TURBINES.has(e.kind) && !feeding.has(e));
  for (const equipment of equipments) {
    const mine = onto.get(equipment.tag) ?? [];
    if (mine.length > 1) mine.sort((a, b) => byNaturalOrder(a.up.tag, b.up.tag));
    if (equipment.kind === 'combiner') {
      const output = equipment.ports[0];
      if (output) {
        for (const link of mine) {
          output.sources.push(link.up);
          reached.set(link, [output]);
        }
      }
      if (mine.length === 0 && !inDoubt.has(equipment.tag) && !isAskedElsewhere) {
        notes.push(about(SITE_MESSAGES.combinerUnfed, { tag: equipment.tag }, equipment.tag, ''));
      }
    } else if (CONVERTERS.has(equipment.kind)) {
      feedConverter(equipment, mine, inDoubt, reached, notes);
    }
  }
  return { reached, notes };
}

function feedConverter(
  equipment: SiteEquipment,
  links: readonly Link[],
  inDoubt: ReadonlySet<string>,
  reached: Map<Link, SitePort[]>,
  notes: PlacedNote[],
): void {
  const inputs = equipment.ports.filter((p) => p.cls === 'dc-in');
  const { tag } = equipment;
  if (inputs.length === 0) return;
  if (links.length === 0) {
    for (const input of inputs) input.use = 'assumed';
    if (!inDoubt.has(tag)) notes.push(about(SITE_MESSAGES.inputsAssumedFed, { tag }, tag, ''));
    return;
  }
  const named = links.filter((l) => l.inputs.length > 0);
  const unnamed = links.filter((l) => l.inputs.length === 0);
  for (const input of inputs) input.use = 'spare';
  for (const link of named) {
    join(
      link,
      inputs.filter((p) => link.inputs.includes(p.input)),
      reached,
    );
  }
  const only = inputs.length === 1 ? inputs[0] : undefined;
  if (only) for (const link of unnamed) join(link, [only], reached);
  else if (unnamed.length > 0) giveUnnamed(equipment, unnamed, inputs, reached, notes);
  if (only && isCountUnknown(equipment)) return;
  for (const input of inputs) {
    if (input.sources.length > 1 && !input.oneOfSources) {
      const sources = input.sources.map((s) => s.tag);
      notes.push(about(SITE_MESSAGES.sourcesInParallel, { tag, input: input.name, sources }, tag, ''));
    }
  }
}

/** True where an item already asks how many inputs there are: that they share the one that stands in is no second item. */
function isCountUnknown({ kind, facts, row }: SiteEquipment): boolean {
  if (facts.dc_inputs) return false;
  return kind !== 'charge-controller' || row.unreadable.has('dc_inputs');
}

/** True for sources of which one gives alternating current and another doesn't. */
function areMixed(sources: readonly SiteEquipment[]): boolean {
  const isAc = (s: SiteEquipment): boolean => s.facts.output?.value === 'three-phase';
  return sources.some(isAc) && !sources.every(isAc);
}

function giveUnnamed(
  equipment: SiteEquipment,
  unnamed: readonly Link[],
  inputs: readonly SitePort[],
  reached: Map<Link, SitePort[]>,
  notes: PlacedNote[],
): void {
  const { tag } = equipment;
  const free = inputs.filter((p) => p.sources.length === 0);
  const sources = unnamed.map((l) => l.up.tag);
  // One input can't be rated for alternating and for direct current: which is which must be stated.
  if (unnamed.length === free.length && !areMixed(unnamed.map((l) => l.up))) {
    notes.push(about(SITE_MESSAGES.inputsByOrder, { tag, sources }, tag, ''));
    unnamed.forEach((link, i) => {
      const port = free[i];
      if (!port) return;
      reached.set(link, [port]);
      port.use = 'fed';
      port.oneOfSources = unnamed.length > 1;
      // The order is a default, so each input must bear any of them.
      for (const other of unnamed) port.sources.push(other.up);
    });
    return;
  }
  const p = { tag, sources, inputs: inputs.length };
  notes.push(about(SITE_MESSAGES.inputsUnclear, p, unnamed[0]?.row.tag ?? tag, 'connects_to'));
  // Not known which: the draft protects each input that might be the one, at the highest of them.
  const possible = free.length > 0 ? free : inputs;
  for (const link of unnamed) join(link, possible, reached);
  for (const port of possible) port.oneOfSources = true;
}

function join(link: Link, ports: readonly SitePort[], reached: Map<Link, SitePort[]>): void {
  for (const port of ports) {
    port.use = 'fed';
    port.sources.push(link.up);
  }
  reached.set(link, [...ports]);
}

/**
 * The arrays and turbines behind a port, through combiners, in natural order, each once.
 * @param port a DC input, or the output of a combiner, array or turbine
 */
export function ultimateSources(port: SitePort): readonly SiteEquipment[] {
  return (port.found.sources ??= behind(port));
}

function behind(port: SitePort): readonly SiteEquipment[] {
  const found = new Set<SiteEquipment>();
  const walk: SiteEquipment[] = [];
  const add = (sources: readonly SiteEquipment[]): void => {
    for (const source of sources) walk.push(source);
  };
  add(port.equipment.kind === 'combiner' || port.cls === 'dc-in' ? port.sources : [port.equipment]);
  for (let source = walk.pop(); source; source = walk.pop()) {
    if (found.has(source)) continue;
    found.add(source);
    if (source.kind === 'combiner') add(source.ports[0]?.sources ?? []);
  }
  return [...found].filter((e) => e.kind !== 'combiner').sort((a, b) => byNaturalOrder(a.tag, b.tag));
}

/** What drives a DC circuit: arrays, turbines or both; `sun` where nothing is known to. */
export function drivenBy(sources: readonly SiteEquipment[]): 'sun' | 'turbine' | 'both' {
  const arrays = sources.filter((s) => s.kind === 'array').length;
  if (arrays === sources.length) return 'sun';
  return arrays === 0 ? 'turbine' : 'both';
}
