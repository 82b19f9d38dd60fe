import type { Fact } from '../model/fact.js';
import type { SitePort } from '../model/site.js';
import { ultimateSources } from './inputs.js';

/** Available fault current at a port, A: its own, or an upper bound from upstream. */
export interface FaultCurrent {
  /** The stated facts that it is made of. */
  readonly from: readonly { readonly tag: string; readonly fact: Fact<number> }[];
  readonly value: number;
  /** True where it is the row's own figure. */
  readonly own: boolean;
  /** Feeders whose figure isn't known. */
  readonly unknown: readonly string[];
}

/**
 * The fault current at an AC port or a battery bus. A port without its own figure takes that of the port upstream as the
 * upper bound; an inverter's AC out takes its AC in.
 * @returns undefined where nobody states one
 */
export function faultCurrentAt(port: SitePort): FaultCurrent | undefined {
  return find(port, new Set());
}

function find(port: SitePort, seen: Set<SitePort>): FaultCurrent | undefined {
  if (seen.has(port)) return undefined;
  seen.add(port);
  const { equipment } = port;
  const own = equipment.facts.fault_current;
  if (own) return { from: [{ tag: equipment.tag, fact: own }], value: own.value, own: true, unknown: [] };
  const upstream =
    port.cls === 'ac-out' && port.feeders.length === 0
      ? equipment.ports.filter((p) => p.cls === 'ac-in' || p.cls === 'ac-in-2')
      : port.cls === 'battery'
        ? port.runs.filter((r) => r.to === port).map((r) => r.from)
        : port.feeders;
  const from: FaultCurrent['from'][number][] = [];
  const unknown: string[] = [];
  let value = 0;
  for (const feeder of upstream) {
    const found = find(feeder, seen);
    if (!found) {
      if (feeder.equipment !== equipment || feeder.feeders.length > 0) unknown.push(feeder.equipment.tag);
      continue;
    }
    from.push(...found.from);
    unknown.push(...found.unknown);
    value = Math.max(value, found.value);
  }
  return from.length > 0 ? { from, value, own: false, unknown } : undefined;
}

/** Isc and strings of the arrays that feed a DC port; an array without them is named. */
export interface ArrayCurrents {
  readonly arrays: readonly {
    readonly tag: string;
    readonly isc: Fact<number>;
    readonly strings: Fact<number>;
  }[];
  readonly unknown: readonly string[];
}

/**
 * The short-circuit currents of the arrays behind a port.
 * @param port output of an array or a combiner, or a DC input
 */
export function arrayCurrentsAt(port: SitePort): ArrayCurrents {
  const arrays: ArrayCurrents['arrays'][number][] = [];
  const unknown: string[] = [];
  for (const source of ultimateSources(port)) {
    if (source.kind !== 'array') continue;
    const isc = source.facts.isc_stc;
    const strings = source.facts.strings_in_parallel;
    if (isc && strings) arrays.push({ tag: source.tag, isc, strings });
    else unknown.push(source.tag);
  }
  return { arrays, unknown };
}
