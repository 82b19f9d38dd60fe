import type { PortGrounding, Site, SitePort } from '../model/site.js';
import type { AcSystem } from '../model/words.js';

/** Deltas without a neutral: ungrounded unless someone says otherwise. */
const DELTAS: ReadonlySet<AcSystem> = new Set<AcSystem>(['240 delta', '480 delta']);

/** What a source of one system can feed without a transformer, so that its grounding is theirs: "at the same voltage". */
const FED_BY: { readonly [S in AcSystem]?: readonly AcSystem[] } = {
  '120/240': ['120', '240'],
  '208Y/120': ['120', '208'],
  '240/120 high-leg': ['120', '240', '120/240', '240 delta'],
  '240 delta': ['240'],
  '480Y/277': ['480 delta'],
  '400Y/230': ['230'],
};

/** True where a port takes its voltage from a feeder as it is. */
function isSameVoltage(feeder: AcSystem | undefined, system: AcSystem | undefined): boolean {
  if (feeder === system) return true;
  return feeder !== undefined && system !== undefined && (FED_BY[feeder]?.includes(system) ?? false);
}

/**
 * How the AC system of a port is grounded: as its row states; else as the service or panel that feeds it at the same
 * voltage; else as a generator or inverter that feeds it at the same voltage states; else by earthing and system.
 * @param site the survey
 * @param port a port whose system is stated
 * @param known what was found of other ports of that site; what is found on the way is added, so that a long chain is walked once
 */
export function groundingOf(
  site: Site,
  port: SitePort,
  known: Map<SitePort, PortGrounding> = new Map(),
): PortGrounding {
  const passed = new Set<SitePort>();
  let at = port;
  for (;;) {
    const before = known.get(at);
    if (before) return settled(known, passed, before);
    passed.add(at);
    const step = stepFrom(site, at, passed);
    if ('grounding' in step) return settled(known, passed, step);
    at = step;
  }
}

function settled(
  known: Map<SitePort, PortGrounding>,
  passed: Iterable<SitePort>,
  found: PortGrounding,
): PortGrounding {
  for (const port of passed) known.set(port, found);
  return found;
}

/** The grounding as it is known at a port itself, or the port upstream whose grounding it has. */
function stepFrom(site: Site, port: SitePort, passed: ReadonlySet<SitePort>): PortGrounding | SitePort {
  const own = port.equipment.facts.system_grounding;
  // A high-leg delta is grounded at the middle of one winding; a stated grounding goes before that.
  if (own) return { grounding: own.value, byDefault: false, from: own };
  for (const feeder of inOrder(port)) {
    if (!isSameVoltage(feeder.system, port.system) || passed.has(feeder)) continue;
    const kind = feeder.equipment.kind;
    if (kind === 'service' || kind === 'panel') return feeder;
    const stated = feeder.equipment.facts.system_grounding;
    if (stated) return { grounding: stated.value, byDefault: false, from: stated };
  }
  const isIt = site.basis.value === 'iec' && site.earthing.value === 'IT';
  if (isIt) return { grounding: 'none', byDefault: false, from: undefined };
  const delta = port.system !== undefined && DELTAS.has(port.system);
  return { grounding: delta ? 'none' : 'solid', byDefault: true, from: undefined };
}

/** Services and panels first: their grounding goes before that of a standby source. */
function inOrder(port: SitePort): readonly SitePort[] {
  const first = (p: SitePort): number =>
    p.equipment.kind === 'service' || p.equipment.kind === 'panel' ? 0 : 1;
  return port.feeders.length < 2 ? port.feeders : [...port.feeders].sort((a, b) => first(a) - first(b));
}
