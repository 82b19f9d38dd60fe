import type { FaultCurrent, FaultSource } from '../model/fault-current.js';
import type { SitePort } from '../model/site.js';
import type { Kind } from '../model/words.js';
import { batteriesOn } from './battery-bus.js';
import { acInputsOf, availableAt, busOf, separates, type TransformerBound } from './fault-bus.js';
import { fedBy } from './fault-feeds.js';

/** What runs in step with its supply: too little to be counted elsewhere than at its own port. */
const IN_STEP: ReadonlySet<Kind> = new Set<Kind>(['grid-tie-inverter', 'ac-module-branch']);

/**
 * The fault current at an AC port or a battery bus. What a service, panel or load states is available there. What a source states is
 * what it gives: sources that can feed together add, each once; of those that a transfer switch keeps apart the highest counts.
 * Without a figure a port takes what is joined to it, as an upper bound; an inverter's AC out passes on its AC in.
 * @param port an AC port, a battery or what hangs on one
 * @param bound the most that a transformer can drive, A; one function for all ports of a site
 * @returns undefined where nobody states anything
 */
export function faultCurrentAt(port: SitePort, bound: TransformerBound): FaultCurrent | undefined {
  const { found } = port;
  if (found.faultCurrent === undefined) found.faultCurrent = foundAt(port, bound) ?? null;
  return found.faultCurrent ?? undefined;
}

function foundAt(port: SitePort, bound: TransformerBound): FaultCurrent | undefined {
  if (port.cls === 'battery' || port.cls === 'dc-bus') return onBattery(port);
  if (separates(port)) {
    const given = availableAt(port, bound);
    if (!given) return undefined;
    const own = given.by === undefined;
    return { value: given.fact.value, from: [given], apart: [], own, unknown: [], passing: [] };
  }
  const { tag, kind, facts } = port.equipment;
  const joined = fedBy(busOf(port, 'above', bound), bound);
  const feeds = new Map(joined.feeds);
  const unknown = new Map(joined.unknown);
  const isInput = acInputsOf(port).includes(port);
  const isJoined = feeds.size > 0 || unknown.size > 0;
  if (facts.fault_current && (isInput || (IN_STEP.has(kind) && isJoined)))
    feeds.set(tag, { tag, fact: facts.fault_current });
  if (isInput && port.feeders.length === 0) unknown.set(tag, 'passes-on');
  // Beside what it is joined to, the share of an AC battery isn't asked for at its own port.
  if (kind === 'ac-battery' && !facts.fault_current && feeds.size > 0) unknown.delete(tag);
  if (feeds.size === 0) return undefined;
  const from = [...feeds.values()];
  const apart = [...joined.apart.values()].filter((one) => !feeds.has(one.tag));
  const own = from.length === 1 && from[0]?.tag === tag && apart.length === 0 && unknown.size === 0;
  const notStated: string[] = [];
  const passing: string[] = [];
  for (const [one, why] of unknown) (why === 'not-stated' ? notStated : passing).push(one);
  return { value: sumOf(from), from, apart, own, unknown: notStated, passing };
}

function sumOf(from: readonly FaultSource[]): number {
  return from.reduce((sum, one) => sum + one.fact.value, 0);
}

/** The batteries of a bus feed a fault together; what a converter on it states is that of its AC side. */
function onBattery(port: SitePort): FaultCurrent | undefined {
  const from: FaultSource[] = [];
  const unknown: string[] = [];
  for (const { tag, facts } of batteriesOn(port)) {
    if (facts.fault_current) from.push({ tag, fact: facts.fault_current });
    else unknown.push(tag);
  }
  const own = from.length === 1 && unknown.length === 0 && from[0]?.tag === port.equipment.tag;
  return from.length > 0 ? { value: sumOf(from), from, apart: [], own, unknown, passing: [] } : undefined;
}
