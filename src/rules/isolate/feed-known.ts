import type { Kind, PortClass } from '../../model/words.js';

/** What is known of a port that something has to feed. */
export interface FedPortFacts {
  readonly port: PortClass;
  readonly kind: Kind;
  /** True where something on the list feeds it. */
  readonly isFed: boolean;
  /** True where a control circuit ends here. */
  readonly endsControl: boolean;
  /** `stated`: the list says that it is unused; `nothing-named`: nobody says anything of it; `` it is there. */
  readonly unused: '' | 'stated' | 'nothing-named';
}

/** Ports that take an AC supply, whatever they belong to. */
const AC_INPUTS: ReadonlySet<PortClass> = new Set<PortClass>(['feeder', 'ac-in', 'ac-in-2']);
/** Kinds that give AC only where another supply stands. */
const IN_STEP: ReadonlySet<Kind> = new Set<Kind>(['grid-tie-inverter', 'ac-module-branch']);

/**
 * Whether the list says what feeds an AC input, a panel, a load, what runs in step with another supply, or a box of no known kind that
 * supplies a control circuit. What nothing feeds and isn't stated to be unused may be live by a source that nobody knows of: also the AC
 * input of an inverter-charger of which nothing is said.
 * @returns true of every other port
 * Source: common practice, no source.
 */
export function isFeedKnown({ port, kind, isFed, endsControl, unused }: FedPortFacts): boolean {
  if (isFed || unused === 'stated') return true;
  if (AC_INPUTS.has(port) || (kind === 'other' && endsControl)) return false;
  return !(IN_STEP.has(kind) && (port === 'ac-out' || port === 'output'));
}
