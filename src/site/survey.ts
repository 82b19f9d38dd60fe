import type { JobList } from '../model/list.js';
import type { PlacedNote } from '../model/message.js';
import type { Settings } from '../model/settings.js';
import type { Held, Site, SiteEquipment, SitePort } from '../model/site.js';
import { about } from '../text/message-kit.js';
import { SITE_MESSAGES } from '../text/messages/site.js';
import { byNaturalOrder } from '../text/natural-order.js';
import { resolveConnections } from './connections.js';
import { callRoll, placeEquipments } from './equipment.js';
import { feedInputs, ultimateSources } from './inputs.js';
import { directLinks, type Link } from './links.js';
import { fillPorts } from './ports.js';
import { makeRuns } from './runs.js';

/**
 * Surveys a job: its equipment with ports, what feeds what, and the runs between.
 * @param list the rows of one job as they were read
 * @param settings the company's settings
 * @returns the site; what was missing or contradictory stands in its notes, nothing is thrown
 */
export function surveySite(list: JobList, settings: Settings): Site {
  const roll = callRoll(list);
  const connections = resolveConnections(roll);
  const equipments = placeEquipments(roll.members.values(), (tag) => connections.targets.get(tag)?.member);
  const byTag = new Map(equipments.map((e) => [e.tag, e]));
  const { links, notes: linkNotes } = directLinks(byTag, connections);
  const portNotes = fillPorts(equipments, links);
  const { reached, notes: inputNotes } = feedInputs(equipments, links);
  const { acInputs, notes: acNotes } = giveAcInputs(equipments, links);
  const runs = makeRuns(links, reached, acInputs);
  return {
    list,
    job: list.job,
    basis: held(list.facts.basis?.value, settings.basis),
    earthing: held(list.facts.earthing?.value, 'TN'),
    occupancy: held(list.facts.occupancy?.value, 'dwelling'),
    equipments,
    runs,
    notes: [
      ...roll.notes,
      ...connections.notes,
      ...linkNotes,
      ...portNotes,
      ...inputNotes,
      ...acNotes,
      ...unconnectedSources(equipments, links, connections.blank),
      ...mixedSources(equipments),
      ...doubleServices(equipments),
      ...outOfScope(equipments),
      ...neutralBond(equipments),
    ],
  };
}

function held<T>(stated: T | undefined, byDefault: T): Held<T> {
  return stated === undefined ? { value: byDefault, byDefault: true } : { value: stated, byDefault: false };
}

/** A generator takes `ac-in-2` where that is stated and `ac-in` is taken. */
function giveAcInputs(
  equipments: readonly SiteEquipment[],
  links: readonly Link[],
): { acInputs: ReadonlyMap<Link, SitePort>; notes: readonly PlacedNote[] } {
  const acInputs = new Map<Link, SitePort>();
  const notes: PlacedNote[] = [];
  for (const equipment of equipments) {
    const first = equipment.ports.find((p) => p.cls === 'ac-in');
    if (!first) continue;
    const second = equipment.ports.find((p) => p.cls === 'ac-in-2');
    const mine = links
      .filter((l) => l.down === equipment && l.downEnd === 'ac-in')
      .sort(
        (a, b) =>
          Number(a.up.kind === 'generator') - Number(b.up.kind === 'generator') ||
          byNaturalOrder(a.up.tag, b.up.tag),
      );
    const onFirst: string[] = [];
    for (const link of mine) {
      if (link.up.kind === 'generator' && onFirst.length > 0 && second && second.unused === '') {
        acInputs.set(link, second);
      } else {
        acInputs.set(link, first);
        onFirst.push(link.up.tag);
      }
    }
    if (onFirst.length > 1) {
      const p = { tag: equipment.tag, feeds: onFirst.join(' and ') };
      notes.push(about(SITE_MESSAGES.twoOnAcIn, p, equipment.tag, 'ac_in_2'));
    }
  }
  return { acInputs, notes };
}

const SOURCE_KINDS: ReadonlySet<string> = new Set(['array', 'combiner', 'wind-turbine', 'hydro-turbine']);

/** Sources that feed nothing: neither do they name what they feed, nor does anything name them. */
function unconnectedSources(
  equipments: readonly SiteEquipment[],
  links: readonly Link[],
  blank: ReadonlySet<string>,
): PlacedNote[] {
  const feeding = new Set(links.filter((l) => l.upEnd === 'output').map((l) => l.up.tag));
  return equipments
    .filter((e) => SOURCE_KINDS.has(e.kind) && blank.has(e.tag) && !feeding.has(e.tag))
    .map((e) => about(SITE_MESSAGES.sourceUnconnected, { tag: e.tag, kind: e.kind }, e.tag, 'connects_to'));
}

function mixedSources(equipments: readonly SiteEquipment[]): PlacedNote[] {
  const notes: PlacedNote[] = [];
  for (const equipment of equipments) {
    for (const port of equipment.ports) {
      if (port.sources.length < 2) continue;
      const sources = ultimateSources(port);
      const ac = sources.filter((s) => s.facts.output?.value === 'three-phase');
      if (ac.length > 0 && ac.length < sources.length) {
        const p = { tag: equipment.tag, port: port.name, sources: sources.map((s) => s.tag).join(', ') };
        notes.push(about(SITE_MESSAGES.mixedSources, p, equipment.tag, ''));
      }
    }
  }
  return notes;
}

/** Services that reach a panel, other panels passed through; a transfer switch keeps its sources apart. */
function servicesOf(port: SitePort, seen: Set<string>): string[] {
  if (seen.has(port.equipment.tag)) return [];
  seen.add(port.equipment.tag);
  const found: string[] = [];
  for (const run of port.runs) {
    if (run.to !== port || run.carries !== 'ac' || run.through.length > 0) continue;
    if (run.from.equipment.kind === 'service') found.push(run.from.equipment.tag);
    else if (run.from.equipment.kind === 'panel') found.push(...servicesOf(run.from, seen));
  }
  return found;
}

function doubleServices(equipments: readonly SiteEquipment[]): PlacedNote[] {
  const notes: PlacedNote[] = [];
  for (const panel of equipments) {
    const feeder = panel.kind === 'panel' ? panel.ports[0] : undefined;
    if (!feeder) continue;
    const services = [...new Set(servicesOf(feeder, new Set()))].sort(byNaturalOrder);
    if (services.length < 2) continue;
    const lines = services.map((tag) => {
      const row = equipments.find((e) => e.tag === tag)?.row;
      return row ? `${tag} (line ${row.line})` : tag;
    });
    const p = { tag: `${panel.tag} (line ${panel.row.line})`, services: lines.join(' and ') };
    notes.push(about(SITE_MESSAGES.twoServices, p, panel.tag, 'connects_to'));
  }
  return notes;
}

function outOfScope(equipments: readonly SiteEquipment[]): PlacedNote[] {
  const notes: PlacedNote[] = [];
  const asked = new Set<string>();
  for (const { tag, kind, facts, row } of equipments) {
    const description = (facts.description?.value ?? '').toLowerCase();
    if (kind === 'array' && description.includes('bipolar')) {
      notes.push(about(SITE_MESSAGES.bipolar, { tag }, tag, 'description'));
    }
    if (/variable[ -](speed|frequency) drive/.test(description)) {
      notes.push(about(SITE_MESSAGES.variableSpeedDrive, { tag }, tag, 'description'));
    }
    const quantity = facts.quantity?.value ?? 1;
    const group = facts.tag?.value ?? tag;
    if (kind !== 'grid-tie-inverter' || quantity <= 4 || asked.has(group)) continue;
    const oneModule = equipments.some((e) =>
      e.ports.some((p) => p.runs.some((r) => feeds(r, row.line, row.sheet.file))),
    );
    if (facts.modules_in_series?.value === 1 || oneModule) {
      asked.add(group);
      notes.push(about(SITE_MESSAGES.microinverters, { tag: group, quantity }, tag, 'quantity'));
    }
  }
  return notes;
}

/** True where a run brings an array of one module in series to a row. */
function feeds(run: Site['runs'][number], line: number, file: string): boolean {
  const { from, to } = run;
  return (
    to.equipment.row.line === line &&
    to.equipment.row.sheet.file === file &&
    from.equipment.facts.modules_in_series?.value === 1
  );
}

const AC_KINDS: ReadonlySet<string> = new Set(['panel', 'inverter-charger', 'generator', 'load']);

function neutralBond(equipments: readonly SiteEquipment[]): PlacedNote[] {
  if (equipments.some((e) => e.kind === 'service')) return [];
  const ac = equipments.filter((e) => AC_KINDS.has(e.kind));
  const first = ac[0];
  if (!first || equipments.some((e) => e.facts.n_pe_link?.value === true)) return [];
  return [about(SITE_MESSAGES.bondUnknown, {}, first.tag, 'n_pe_link')];
}
