import { isNec } from '../../model/editions.js';
import type { PlannedChannel } from '../../model/plan.js';
import type { SiteEquipment, SitePort } from '../../model/site.js';
import type { Conductor } from '../../model/words.js';
import { WIRING_RULES } from '../../rules/rulebook.js';
import type { NamesDecision } from '../../rules/wiring-facts.js';
import { batteriesOn } from '../../site/battery-bus.js';
import { poleGrounding } from '../choose/indicate.js';
import type { JobContext } from '../context/job-context.js';
import type { PortWiring, WiredChannel } from '../rate/wire.js';

/** How the conductor of a channel is called, and the rules of whose clauses something was asked for it. */
export interface NamedConductor {
  readonly named: Pick<PlannedChannel, 'colour' | 'called' | 'pole'>;
  readonly rules: readonly string[];
}

/** A set of colours or of names; one that has none for a conductor leaves it without. */
type ByConductor = { readonly [C in Conductor]?: string };

/** Colour and names of the conductor of a channel, by its basis, its system and the settings. */
export function namedIn(
  { settings }: JobContext,
  { facts }: PortWiring,
  { port, conductor }: WiredChannel,
  subject: SiteEquipment,
): NamedConductor {
  const { conductorColours: colours, conductorNames: names } = settings;
  const isDcBus = facts.current === 'dc' && (facts.circuit === 'battery' || facts.circuit === 'control');
  const pole = isDcBus ? poleGrounding(port, subject) : undefined;
  const positiveGround = pole === 'positive';
  const negativeGround = facts.circuit === 'battery' && pole === 'negative';
  const decision = WIRING_RULES.namesAndColours.decide({ ...facts, positiveGround, negativeGround });
  if (WIRING_RULES.highLeg.decide(facts).highLeg === conductor) {
    const named = { colour: colours.necHighLeg, called: names.necHighLeg, pole: null };
    return { named, rules: [WIRING_RULES.highLeg.id] };
  }
  const isGrounded = decision.grounded === conductor;
  const byColour: ByConductor = colours[decision.colours];
  const byName: ByConductor = decision.colours === 'positiveGround' ? {} : names[decision.colours];
  return {
    named: {
      colour: isGrounded ? colours.necGrounded : (byColour[conductor] ?? ''),
      called: isGrounded && conductor === 'L2' ? names.necGrounded : (byName[conductor] ?? ''),
      pole: positiveGround
        ? { use: conductor === 'positive' ? 'return' : 'line', volts: nominalAt(port, subject) }
        : null,
    },
    rules: asksOf(decision, conductor, isNec(facts.basis)) ? [WIRING_RULES.namesAndColours.id] : [],
  };
}

/** The NEC asks for the colour of grounded conductors alone; IEC 60445 for that of each. */
function asksOf({ colours, grounded }: NamesDecision, conductor: Conductor, nec: boolean): boolean {
  return nec ? conductor === 'N' || conductor === grounded : colours === 'iec';
}

/** Nominal V of a plant or of a control circuit; null: not stated, or several. */
function nominalAt(port: SitePort, { facts }: SiteEquipment): number | null {
  if (port.cls === 'terminals') return facts.control_voltage?.value.volts ?? null;
  const stated = batteriesOn(port).flatMap((battery) => battery.facts.battery_voltage?.value ?? []);
  const [first = null, ...others] = [...new Set(stated)];
  return others.length === 0 ? first : null;
}
