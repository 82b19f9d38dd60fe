import { channelText, conductorText } from '../../words/conductors.js';
import { deviceToFit, devicesText, smallestLeadsText } from '../../words/overcurrent.js';
import { BY_INSTRUCTIONS, systemText } from '../../words/protectors.js';
import { reasonKey } from '../../model/reason.js';
import { say } from '../../words/reasons/say.js';
import type { z } from 'zod';
import type { Plan, PlannedChannel, PlannedProtector } from '../../model/plan.js';
import type { Settings } from '../../model/settings.js';
import { isNec } from '../../model/editions.js';
import type { Basis } from '../../model/editions.js';
import type { Sheet } from '../parts/css.js';
import { housingDrawing } from '../drawing/housing.js';
import { leadLength, leadLimitText } from '../../words/lengths.js';
import { notKnown, plainNumber } from '../parts/figures.js';
import { boxCautions } from '../parts/cautions.js';
import { boxIsolationView } from './isolation-view.js';
import { measuringView } from './readings-view.js';
import { flagWords } from '../parts/flag.js';
import { noteDensity } from './note-height.js';
import type { LightRowSchema, WiringNote } from './wiring-note-view.js';
import { groundingHow } from '../parts/grounding-how.js';
import { groundingText, partText, placeText, portsText } from '../parts/schedule.js';

/**
 * What each light shows in each state, and why; channels that show the same for the same reason share a line.
 * @param flagWords how the catalogue says that a flag is read
 */
export function lightRows(
  channels: readonly PlannedChannel[],
  flagWords = '',
): z.infer<typeof LightRowSchema>[] {
  const rows = new Map<string, z.infer<typeof LightRowSchema>>();
  for (const one of channels) {
    const { channel, indicator } = one;
    const conductor = channelText(one);
    for (const { state, shows, because: why, cause } of indicator) {
      const because = cause === 'flag' && flagWords !== '' ? `${say(why)}: ${flagWords}` : say(why);
      const key = JSON.stringify([state, shows, cause === 'flag', reasonKey(why)]);
      const row = rows.get(key);
      rows.set(key, {
        channel: row === undefined ? String(channel) : `${row.channel}, ${channel}`,
        conductor: row === undefined ? conductor : `${row.conductor}, ${conductor}`,
        state,
        shows,
        because,
      });
    }
  }
  return [...rows.values()];
}

function channelViews(protector: PlannedProtector): WiringNote['channels'] {
  return protector.channels.map((c) => ({
    channel: c.channel,
    conductor: channelText(c),
    colour: c.colour === '' ? 'no colour set' : c.colour,
    to: c.to,
  }));
}

/** Where the ground lead lands, and what else lands there where the enclosure has no bar. */
function groundNotes({ wiring: { groundTerminal: terminal } }: PlannedProtector): string[] {
  if (terminal === null) return [];
  const lands = terminal.lands.map((one) => say(one)).join('; ');
  return [`${say(terminal.fit)}. On it land: ${lands}. ${say(terminal.never)}. ${say(terminal.ask)}.`];
}

interface Lead {
  readonly what: string;
  readonly value: string;
}

function inPairs(facts: readonly Lead[]): WiringNote['leads'] {
  const rows: WiringNote['leads'] = [];
  for (let index = 0; index < facts.length; index += 2) {
    const [first, second] = facts.slice(index, index + 2);
    if (first !== undefined) rows.push({ ...first, second: second ?? null });
  }
  return rows;
}

function leadRows(protector: PlannedProtector, basis: Basis): WiringNote['leads'] {
  const { wiring } = protector;
  const or = (text: string | null): string => text ?? BY_INSTRUCTIONS;
  const gauge = wiring.leadGauge === '' ? BY_INSTRUCTIONS : wiring.leadGauge;
  return inPairs([
    {
      what: 'Lead as planned',
      value: `${leadLength(wiring.leadLengthPlanned, basis)}, ${gauge}${wiring.leadLimitByWithstand ? `; ${leadLimitText(wiring, basis)}` : ''}`,
    },
    { what: 'Smallest lead', value: smallestLead(protector) },
    { what: 'Overcurrent device', value: overcurrentDevice(protector) },
    { what: 'Wire range', value: or(wiring.wireRange) },
    { what: 'Torque', value: or(wiring.torque) },
    { what: 'Indicator', value: indicatorText(protector) },
  ]);
}

/** Without a part what the code asks of any. */
function smallestLead(protector: PlannedProtector): string {
  const known = smallestLeadsText(protector);
  return known === '' ? `${say(protector.wiring.smallestLead)}; and of the wire range of the part` : known;
}

/** A plan that an earlier shuntbook wrote has the catalogue's words alone. */
function overcurrentDevice(protector: PlannedProtector): string {
  const devices = devicesText(protector, deviceToFit);
  return devices.length === 0 ? (protector.wiring.overcurrent ?? BY_INSTRUCTIONS) : devices.join('; ');
}

function indicatorText(protector: PlannedProtector): string {
  const details = protector.partDetails;
  if (details === null) return notKnown('no part chosen');
  if (details.indicator === null) return notKnown('the catalogue does not state it');
  const words = flagWords(protector);
  const look = words === '' ? details.indicatorColor : words;
  const colour = look === '' ? '' : `, ${look}`;
  const least =
    details.indicatorMinVoltage === null ? '' : `, works from ${plainNumber(details.indicatorMinVoltage)} V`;
  return `${details.indicator}${colour}${least}`;
}

/** The wiring note of one housing. */
function wiringNote(
  protector: PlannedProtector,
  index: number,
  plan: Plan,
  groundColour: string,
  paper: Sheet,
  groundedHow: string | null,
): WiringNote {
  const { housing, wiring } = protector;
  const { basis } = plan;
  const note = {
    id: `note-${index + 1}`,
    first: index === 0,
    housingDrawing: housingDrawing(protector, basis, groundColour),
    tag: protector.tag,
    part: partText(protector),
    description: protector.partDetails?.description ?? '',
    housing: housing.of > 1 ? `Housing ${housing.number} of ${housing.of} at this port` : '',
    place: placeText(protector),
    position: say(protector.position),
    protects: say(protector.protects),
    ports: portsText(protector.ports),
    system: systemText(protector.system),
    grounding: `${groundingText(protector)}${groundedHow === null ? '' : `, ${groundedHow}`}`,
    strength: protector.strength,
    // By which rule and clause stands in the schedule and among the sources.
    reasons: protector.reasons.map((r) => say(r.because)),
    twoSupplies: wiring.fedFromTwoSupplies,
    cautions: boxCautions(protector, plan),
    isolation: boxIsolationView(protector, plan),
    channels: channelViews(protector),
    ...measuringView(protector),
    groundTo: say(wiring.groundTo),
    leads: leadRows(protector, basis),
    notes: [...groundNotes(protector), ...wiring.notes.map((text) => say(text))],
    unprotected: wiring.unprotected.map((u) => ({
      conductor: conductorText(u.wire),
      because: say(u.because),
    })),
    lights: lightRows(protector.channels, flagWords(protector)),
    indicator: indicatorText(protector),
  };
  return { ...note, density: noteDensity(note, paper) };
}

/** One wiring note a housing, in the plan's order, each for a page of its own. */
export function wiringNotes(plan: Plan, settings: Settings, paper: Sheet): WiringNote[] {
  const ground = settings.conductorColours[isNec(plan.basis) ? 'nec' : 'iec'].ground;
  const howOf = groundingHow(plan);
  return plan.protectors.map((p, index) => wiringNote(p, index, plan, ground, paper, howOf(p)));
}
