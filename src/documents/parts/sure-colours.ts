import { isNec } from '../../model/editions.js';
import type { Basis } from '../../model/editions.js';
import type { PlannedChannel, PlannedProtector } from '../../model/plan.js';
import type { Conductor } from '../../model/words.js';

/**
 * Conductors of a housing whose colour nobody can be sure of, whatever the settings say: a pole that is grounded (where solidly, it is
 * white or gray: NEC 200.6), poles and wires of which the grounding isn't known, two lines of which one may be a high leg.
 */
export function neverSure({ wiring, grounding, required, channels }: PlannedProtector): Conductor[] {
  const found = new Set<Conductor>();
  for (const { code, values } of wiring.notes) {
    if (code === 'wiring-note/grounded-conductor') found.add(values.conductor);
  }
  const isOpen = grounding === null || grounding === 'not-known';
  if (isOpen || required.current === null) for (const { wire } of channels) found.add(wire.name);
  for (const { between, reads } of wiring.measuring.bands) {
    if (reads.code === 'reading/either-leg') for (const { wire } of between) found.add(wire.name);
  }
  return [...found].sort();
}

/**
 * The colour by which a conductor is told on a wiring note and a label, by the settings; `` where it isn't sure, so that it goes by its name alone.
 * With IEC 60445 poles and wires have colours of their own, whatever is grounded.
 */
export function sureColour(protector: PlannedProtector, channel: PlannedChannel, basis: Basis): string {
  if (!isNec(basis) && protector.grounding !== null) return channel.colour;
  return neverSure(protector).includes(channel.wire.name) ? '' : channel.colour;
}
