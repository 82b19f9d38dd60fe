import { keeping } from '../model/keeping.js';
import type { PlacedNote } from '../model/open-item.js';
import type { SiteEquipment, SitePort, SiteRun } from '../model/site.js';
import type { AcSystem, PortClass } from '../model/words.js';
import { about } from '../model/message.js';
import { SITE_MESSAGES } from '../model/messages/site.js';
import { byNaturalOrder } from '../model/natural-order.js';
import { batteriesOn } from './battery-bus.js';
import { lineOf } from './row-line.js';
import { ultimateSources } from './inputs.js';
import type { Link } from './links.js';

/**
 * What contradicts itself on a surveyed site, what is out of scope, and what nobody says of its neutral.
 * @param equipments in natural order, with ports and runs
 */
export function checkSite(equipments: readonly SiteEquipment[]): readonly PlacedNote[] {
  return [
    ...mixedSources(equipments),
    ...groundedDifferently(equipments),
    ...unusedInUse(equipments),
    ...doubleServices(equipments),
    ...outOfScope(equipments),
    ...neutralBond(equipments),
  ];
}

const SOURCE_KINDS: ReadonlySet<string> = new Set(['array', 'combiner', 'wind-turbine', 'hydro-turbine']);

/**
 * Sources that feed nothing: neither do they name what they feed, nor does anything name them.
 * @param inDoubt equipment that a connection with an error names: an item about that stands already
 */
export function unconnectedSources(
  equipments: readonly SiteEquipment[],
  links: readonly Link[],
  blank: ReadonlySet<string>,
  inDoubt: ReadonlySet<string>,
): PlacedNote[] {
  const feeding = new Set(links.filter((l) => l.upEnd === 'output').map((l) => l.up.tag));
  const isLoose = ({ tag }: SiteEquipment): boolean =>
    blank.has(tag) && !feeding.has(tag) && !inDoubt.has(tag);
  return equipments
    .filter((e) => SOURCE_KINDS.has(e.kind) && isLoose(e))
    .map((e) => about(SITE_MESSAGES.sourceUnconnected, { tag: e.tag, kind: e.kind }, e.tag, 'connects_to'));
}

function mixedSources(equipments: readonly SiteEquipment[]): PlacedNote[] {
  const notes: PlacedNote[] = [];
  for (const equipment of equipments) {
    for (const port of equipment.ports) {
      // Which of several sources feeds an input isn't stated: an item asks for that already.
      if (port.sources.length < 2 || port.oneOfSources) continue;
      const sources = ultimateSources(port);
      const ac = sources.filter((s) => s.facts.output?.value === 'three-phase');
      if (ac.length > 0 && ac.length < sources.length) {
        const p = { tag: equipment.tag, port: port.name, sources: sources.map((s) => s.tag) };
        notes.push(about(SITE_MESSAGES.mixedSources, p, equipment.tag, ''));
      }
    }
  }
  return notes;
}

/** Arrays and turbines on one input, or batteries on one bus, whose stated groundings contradict each other. */
function groundedDifferently(equipments: readonly SiteEquipment[]): PlacedNote[] {
  const notes: PlacedNote[] = [];
  const told = new Set<string>();
  const first = equipments[0]?.facts.dc_grounding?.value;
  if (equipments.every((e) => e.facts.dc_grounding?.value === first)) return notes;
  for (const { tag, ports } of equipments) {
    for (const port of ports) {
      if (port.oneOfSources || (port.cls !== 'dc-in' && port.cls !== 'battery')) continue;
      const sharing = port.cls === 'battery' ? batteriesOn(port) : ultimateSources(port);
      const stated = sharing.filter((e) => e.facts.dc_grounding !== undefined);
      if (new Set(stated.map((e) => e.facts.dc_grounding?.value)).size < 2) continue;
      const rows = stated.flatMap(({ tag: of, facts }) =>
        facts.dc_grounding ? [{ tag: of, grounding: facts.dc_grounding.value }] : [],
      );
      const all = JSON.stringify(rows);
      if (told.has(all)) continue;
      told.add(all);
      const last = stated.at(-1)?.tag ?? tag;
      notes.push(about(SITE_MESSAGES.groundingDiffers, { tag, port: port.name, rows }, last, 'dc_grounding'));
    }
  }
  return notes;
}

const FIELD_OF: { readonly [C in PortClass]?: 'ac_in' | 'ac_in_2' | 'ac_out' } = {
  'ac-in': 'ac_in',
  'ac-in-2': 'ac_in_2',
  'ac-out': 'ac_out',
};

/** Ports that the list says are unused, and at which a connection of the list ends all the same. */
function unusedInUse(equipments: readonly SiteEquipment[]): PlacedNote[] {
  const notes: PlacedNote[] = [];
  for (const { tag, ports } of equipments) {
    for (const port of ports) {
      if (port.unused !== 'stated' || port.runs.length === 0) continue;
      const others = port.runs.map((r) => (r.from === port ? r.to : r.from).equipment.tag);
      const p = { tag, port: port.name, others: [...new Set(others)] };
      notes.push(about(SITE_MESSAGES.unusedInUse, p, tag, FIELD_OF[port.cls] ?? ''));
    }
  }
  return notes;
}

/**
 * Services that reach a port, panels and transformers passed through; a transfer switch keeps its sources apart.
 * @param known what was found of other ports; what is found on the way is added, so that a long chain is walked once
 */
function servicesOf(port: SitePort, known: Map<SitePort, ReadonlySet<string>>): ReadonlySet<string> {
  const passed: SitePort[] = [];
  let at = port;
  let found = known.get(at);
  while (!found) {
    // What leads back to here adds nothing.
    known.set(at, NONE);
    passed.push(at);
    const feeding = at.runs.flatMap((run) =>
      run.to === at && run.carries === 'ac' && run.switches.length === 0 ? [run.from] : [],
    );
    const services = feeding.filter((p) => p.equipment.kind === 'service').map((p) => p.equipment.tag);
    const panels = feeding.map(sideFed).filter((p) => PASSED.has(p.equipment.kind));
    const [only] = panels;
    if (services.length === 0 && panels.length === 1 && only) {
      at = only;
      found = known.get(at);
    } else found = new Set([...services, ...panels.flatMap((panel) => [...servicesOf(panel, known)])]);
  }
  for (const one of passed) known.set(one, found);
  return found;
}

const NONE: ReadonlySet<string> = new Set();
const PASSED: ReadonlySet<string> = new Set(['panel', 'transformer']);
const FED: ReadonlySet<PortClass> = new Set<PortClass>(['feeder', 'ac-in', 'ac-in-2']);

/** The port by which what feeds is itself fed: of a transformer its other side. */
function sideFed(port: SitePort): SitePort {
  const { equipment, cls } = port;
  const isOut = equipment.kind === 'transformer' && cls === 'ac-out';
  return (isOut ? equipment.ports.find((p) => p.cls === 'ac-in') : undefined) ?? port;
}

/** Said once, at the panel, load or AC input where the services meet: what hangs on it is no second fault. */
function doubleServices(equipments: readonly SiteEquipment[]): PlacedNote[] {
  const notes: PlacedNote[] = [];
  const byTag = new Map(equipments.filter((e) => e.kind === 'service').map((e) => [e.tag, e]));
  if (byTag.size < 2) return notes;
  const known = new Map<SitePort, ReadonlySet<string>>();
  for (const port of equipments.flatMap((e) => e.ports)) {
    if (!FED.has(port.cls)) continue;
    const services = servicesOf(port, known);
    const meetsAbove = port.feeders.some((f) => servicesOf(sideFed(f), known).size > 1);
    if (services.size < 2 || meetsAbove) continue;
    const { tag, row } = port.equipment;
    const named = [...services].sort(byNaturalOrder).flatMap((tag) => {
      const service = byTag.get(tag);
      return service ? [{ tag, line: lineOf(service.row) }] : [];
    });
    notes.push(
      about(SITE_MESSAGES.twoServices, { tag, line: lineOf(row), services: named }, tag, 'connects_to'),
    );
  }
  return notes;
}

/** What a description says that is out of scope; most of a list's rows have one of few. */
const describedAs = keeping(
  (description: string) => description,
  (description) => {
    const small = description.toLowerCase();
    return {
      isBipolar: small.includes('bipolar'),
      isDrive: /variable[ -](speed|frequency) drive/.test(small),
    };
  },
);

function outOfScope(equipments: readonly SiteEquipment[]): PlacedNote[] {
  const notes: PlacedNote[] = [];
  const asked = new Set<string>();
  for (const { tag, kind, facts, row } of equipments) {
    if (facts.description) {
      const { isBipolar, isDrive } = describedAs(facts.description.value);
      if (kind === 'array' && isBipolar) {
        notes.push(about(SITE_MESSAGES.bipolar, { tag }, tag, 'description'));
      }
      if (isDrive) notes.push(about(SITE_MESSAGES.variableSpeedDrive, { tag }, tag, 'description'));
    }
    const quantity = facts.quantity?.value ?? 1;
    const group = facts.tag?.value ?? tag;
    if (kind !== 'grid-tie-inverter' || quantity <= 4 || asked.has(group)) continue;
    const isOneModule =
      facts.modules_in_series?.value === 1 ||
      equipments.some((e) => e.row === row && e.ports.some((p) => p.runs.some(bringsOneModule)));
    if (isOneModule) {
      asked.add(group);
      notes.push(about(SITE_MESSAGES.microinverters, { tag: group, quantity }, tag, 'quantity'));
    }
  }
  return notes;
}

/** True for the run of an array of one module in series. */
function bringsOneModule({ from }: SiteRun): boolean {
  return from.equipment.facts.modules_in_series?.value === 1;
}

const AC_PORTS: ReadonlySet<PortClass> = new Set<PortClass>([
  'service',
  'feeder',
  'ac-in',
  'ac-in-2',
  'ac-out',
]);
const WITHOUT_NEUTRAL: ReadonlySet<AcSystem> = new Set<AcSystem>(['240 delta', '480 delta']);

/** An AC port in use, of a system that can have a neutral. */
function mayHaveNeutral(port: SitePort): boolean {
  const { cls, unused, system, equipment } = port;
  const isAc =
    AC_PORTS.has(cls) ||
    (cls === 'output' && (equipment.kind === 'generator' || equipment.kind === 'ac-module-branch'));
  return isAc && !isOfDrive(port) && unused === '' && (system === undefined || !WITHOUT_NEUTRAL.has(system));
}

/** True for the output of a pump drive, and for the motor on it: no neutral leads there. */
function isOfDrive({ cls, equipment, feeders }: SitePort): boolean {
  if (equipment.kind === 'pump-drive') return cls === 'ac-out';
  return feeders.length > 0 && feeders.every((f) => f.equipment.kind === 'pump-drive');
}

function neutralBond(equipments: readonly SiteEquipment[]): PlacedNote[] {
  if (equipments.some((e) => e.kind === 'service' || e.facts.n_pe_link?.value === true)) return [];
  const first = equipments.find((e) => e.ports.some(mayHaveNeutral));
  return first ? [about(SITE_MESSAGES.bondUnknown, {}, first.tag, 'n_pe_link')] : [];
}
