import type { PlannedChannel } from '../../model/plan.js';
import type { Settings } from '../../model/settings.js';
import type { SiteEquipment, SitePort } from '../../model/site.js';
import type { Conductor } from '../../model/words.js';
import { WIRING_RULES } from '../../rules/rulebook.js';
import type { NamesDecision } from '../../rules/wiring-facts.js';
import { batteriesOn } from '../../site/battery-bus.js';
import { poleGrounding } from '../choose/indicate.js';
import type { JobContext } from '../context/job-context.js';
import type { PortWiring, WiredChannel } from '../rate/wire.js';

type Named = Pick<PlannedChannel, 'colour' | 'called' | 'pole'>;

/** Colour and names of the conductor of a channel, by its basis, its system and the settings. */
export function namedIn(
  { settings }: JobContext,
  { facts }: PortWiring,
  { port, conductor }: WiredChannel,
  subject: SiteEquipment,
): Named {
  const isDcBus = facts.current === 'dc' && (facts.circuit === 'battery' || facts.circuit === 'control');
  const positiveGround = isDcBus && poleGrounding(port, subject) === 'positive';
  const decision = WIRING_RULES.namesAndColours.decide({ ...facts, positiveGround });
  return {
    colour: colourIn(settings, decision, conductor),
    called: nameIn(settings, decision, conductor),
    pole: positiveGround
      ? { use: conductor === 'positive' ? 'return' : 'line', volts: nominalAt(port, subject) }
      : null,
  };
}

function colourIn(
  { conductorColours: by }: Settings,
  { colours, line }: NamesDecision,
  conductor: Conductor,
): string {
  if (conductor === 'L2' && line !== null) return line === 'grounded' ? by.necGrounded : by.necHighLeg;
  return colourOf(by[colours], conductor);
}

/** A set of colours that has none for a conductor leaves it without one. */
function colourOf(set: { readonly [C in Conductor]?: string }, conductor: Conductor): string {
  return set[conductor] ?? '';
}

function nameIn(
  { conductorNames: by }: Settings,
  { colours, line }: NamesDecision,
  conductor: Conductor,
): string {
  if (colours === 'positiveGround') return '';
  if (conductor === 'L2' && line !== null) return line === 'grounded' ? by.necGrounded : by.necHighLeg;
  return by[colours][conductor];
}

/** Nominal V of a plant or of a control circuit; null: not stated, or several. */
function nominalAt(port: SitePort, { facts }: SiteEquipment): number | null {
  if (port.cls === 'terminals') return facts.control_voltage?.value.volts ?? null;
  const stated = batteriesOn(port).flatMap((battery) => battery.facts.battery_voltage?.value ?? []);
  const [first = null, ...others] = [...new Set(stated)];
  return others.length === 0 ? first : null;
}
