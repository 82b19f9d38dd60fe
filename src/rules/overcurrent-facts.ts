import type { OvercurrentDevice, Part } from '../model/catalogue.js';
import type { Basis } from '../model/editions.js';
import { amperes, type Quantity } from '../model/quantity.js';
import { reason, type Reason } from '../model/reason.js';
import type { RuleCard } from '../model/rule.js';
import type { AcSystem, Conductor, SystemGrounding } from '../model/words.js';
import type { OvercurrentPlace } from './lead-duty.js';

/** An AC system that a port bears, and the whole that it is a part of. */
export interface SystemBorne {
  readonly system: AcSystem;
  readonly whole: AcSystem | undefined;
  readonly grounding: SystemGrounding;
}

/** Everything that a rule about overcurrent devices may declare about one housing and one port that it serves. */
export interface OvercurrentFacts extends OvercurrentPlace {
  readonly basis: Basis;
  /** Undefined: no part of the catalogue stands there. */
  readonly part: Pick<Part, 'overcurrentMost' | 'overcurrentLeast' | 'overcurrentDevice'> | undefined;
  /** Lines or poles that the housing takes from the port, each once; without N. */
  readonly lines: readonly Conductor[];
  /** The pole that is grounded, or the grounded phase; undefined: none, or not known. */
  readonly groundedConductor: Conductor | undefined;
  /** The AC systems that the port bears: its own, and what an item says that it can’t be joined to. Empty: not known. */
  readonly systems: readonly SystemBorne[];
  readonly highLeg: boolean;
  /** V; the highest of a DC circuit; undefined: not known. */
  readonly highest: number | undefined;
  /** A; undefined: not known. */
  readonly faultCurrent: number | undefined;
  /** Whether the port carries alternating or direct current; undefined: not known. */
  readonly current: 'ac' | 'dc' | undefined;
}

/** The overcurrent device of one housing and port. */
export interface OvercurrentDevicePlanned {
  readonly device: OvercurrentDevice | 'unknown';
  /** Null: not known, or with `none` not asked. */
  readonly poles: number | null;
  /** Those that have a pole each; empty: not known, or with `none` not asked. */
  readonly conductors: readonly Conductor[];
  /** The grounded conductor, which goes straight through. */
  readonly noneIn: readonly Conductor[];
  /** A; the largest; null: not known, or not asked. */
  readonly amps: number | null;
  /** A; the smallest; null: not stated. */
  readonly leastAmps: number | null;
  /** V; the least. */
  readonly volts: number | null;
  /** True where a slash rating won’t do. */
  readonly straight: boolean;
  readonly dc: boolean;
  /** A; the least. */
  readonly interrupting: number | null;
  readonly because: Reason;
  /** What whoever wires it has to know. */
  readonly notes: readonly Reason[];
}

export type OvercurrentDecision =
  | { readonly outcome: 'device'; readonly planned: OvercurrentDevicePlanned }
  | { readonly outcome: 'outside'; readonly because: Reason };

/** A rule that says which overcurrent device stands ahead of a protector. */
export interface OvercurrentRule extends RuleCard {
  readonly facts: readonly (keyof OvercurrentFacts)[];
  decide(facts: OvercurrentFacts): OvercurrentDecision;
}

/** The facts that each rule is handed that asks which way a device goes (`overcurrentWay`). */
export const WAY_FACTS = [
  'basis',
  'circuit',
  'aheadOfDisconnect',
  'ownDevice',
  'arrayCurrent',
  'part',
  'lines',
] as const;

/** What several of the rules say of a device. */
export const NO_PART = reason('overcurrent/no-part');
export const NOT_NEEDED = reason('overcurrent/not-needed');
export const SIZE_NOT_STATED = reason('overcurrent/size-not-stated');

const NO_NOTES: readonly Reason[] = [];
const NO_CONDUCTORS: readonly Conductor[] = [];

/** A device with what is asked of it; what isn't said isn't asked. */
function planned(
  device: OvercurrentDevicePlanned['device'],
  because: Reason,
  some: Partial<OvercurrentDevicePlanned>,
  amps = some.amps ?? null,
  leastAmps = some.leastAmps ?? null,
): OvercurrentDecision {
  return {
    outcome: 'device',
    planned: {
      device,
      poles: some.poles ?? null,
      conductors: some.conductors ?? NO_CONDUCTORS,
      noneIn: some.noneIn ?? NO_CONDUCTORS,
      amps,
      leastAmps,
      volts: some.volts ?? null,
      straight: some.straight ?? false,
      dc: some.dc ?? false,
      interrupting: some.interrupting ?? null,
      because,
      notes: some.notes ?? NO_NOTES,
    },
  };
}

/**
 * A pole for each conductor but the grounded one.
 * @param lines that the housing takes from the port; empty: not known
 * Source: NEC 240.22.
 */
export function polesIn(
  lines: readonly Conductor[],
  grounded: Conductor | undefined,
): Pick<OvercurrentDevicePlanned, 'poles' | 'conductors' | 'noneIn'> {
  const conductors = lines.filter((line) => line !== grounded);
  const noneIn = lines.filter((line) => line === grounded);
  return { poles: lines.length > 0 ? conductors.length : null, conductors, noneIn };
}

/** No device of its own. */
export function noDevice(because: Reason, some: Partial<OvercurrentDevicePlanned> = {}): OvercurrentDecision {
  return planned('none', because, some);
}

/** Which device isn’t known. */
export function unknownDevice(
  because: Reason,
  some: Partial<OvercurrentDevicePlanned> = {},
): OvercurrentDecision {
  return planned('unknown', because, some);
}

/** A device of its own, as the part says. */
export function ownDevice(
  part: NonNullable<OvercurrentFacts['part']>,
  because: Reason,
  some: Partial<OvercurrentDevicePlanned>,
): OvercurrentDecision {
  const device = part.overcurrentDevice ?? 'either';
  return planned(device, because, some, part.overcurrentMost, part.overcurrentLeast);
}

/** A figure of a part as a reason has it; null: not stated. */
export function ampsOf(figure: number | null | undefined): Quantity | null {
  return figure === null || figure === undefined ? null : amperes(figure);
}
