import { z } from 'zod';
import type { Plan, PlannedChannel, PlannedProtector } from '../../model/plan.js';
import type { Basis } from '../../model/words.js';
import { notKnown, plainNumber, shortLength, volts } from '../figures.js';
import { boxCautions, CautionSchema } from './cautions.js';
import { partText, placeText, portsText } from './schedule.js';

export const LightRowSchema = z.object({
  channel: z.number().int(),
  conductor: z.string(),
  state: z.string(),
  shows: z.string(),
  because: z.string(),
});

export const WiringNoteSchema = z.object({
  tag: z.string(),
  part: z.string(),
  description: z.string(),
  housing: z.string(),
  place: z.string(),
  position: z.string(),
  protects: z.string(),
  ports: z.string(),
  grounding: z.string(),
  strength: z.string(),
  reasons: z.array(
    z.object({ rule: z.string(), strength: z.string(), because: z.string(), sources: z.string() }),
  ),
  twoSupplies: z.boolean(),
  cautions: z.array(CautionSchema),
  sourcesToOpen: z.array(z.string()),
  channels: z.array(
    z.object({
      channel: z.number().int(),
      conductor: z.string(),
      colour: z.string(),
      to: z.string(),
      expected: z.string(),
      stopAt: z.string(),
    }),
  ),
  groundTo: z.string(),
  leads: z.array(z.object({ what: z.string(), value: z.string() })),
  notes: z.array(z.string()),
  unprotected: z.array(z.object({ conductor: z.string(), because: z.string() })),
  lights: z.array(LightRowSchema),
  indicator: z.string(),
});
export type WiringNote = z.infer<typeof WiringNoteSchema>;

const NO_INSTRUCTION = "by the part's instructions";

/** What each light shows in each state, and why: one line a channel and state. */
export function lightRows(channels: readonly PlannedChannel[]): z.infer<typeof LightRowSchema>[] {
  return channels.flatMap((c) =>
    c.indicator.map((i) => ({
      channel: c.channel,
      conductor: c.conductor,
      state: i.state,
      shows: i.shows,
      because: i.because,
    })),
  );
}

function channelViews(protector: PlannedProtector): WiringNote['channels'] {
  return protector.channels.map((c) => {
    const bare = c.conductor.replace(/ \(doubled\)$/, '');
    const measured = protector.wiring.measurements.find(
      (m) => m.conductor === c.conductor || m.conductor === bare,
    );
    return {
      channel: c.channel,
      conductor: c.conductor,
      colour: c.colour === '' ? 'no colour set' : c.colour,
      to: c.to,
      expected:
        measured === undefined || measured.expected === ''
          ? notKnown('see the open items; measure and ask before connecting')
          : `${measured.expected} (${measured.current.toUpperCase()})`,
      stopAt:
        measured === undefined ? notKnown('see the open items; do not connect') : stopText(measured.stopAt),
    };
  });
}

function stopText(stopAt: number | null): string {
  return stopAt === null ? notKnown('see the open items; do not connect') : volts(stopAt, '');
}

function leadRows(protector: PlannedProtector, basis: Basis): WiringNote['leads'] {
  const { wiring, figures } = protector;
  const extra = wiring.voltsPerTenCentimetres;
  const noVoltage = notKnown(figures === null ? 'no part chosen' : 'the lead is not known');
  const or = (text: string): string => (text === '' ? NO_INSTRUCTION : text);
  return [
    { what: 'Lead, line plus ground, at most', value: shortLength(wiring.leadLengthLimit, basis) },
    {
      what: 'Lead as planned',
      value: `${shortLength(wiring.leadLengthPlanned, basis)}, ${or(wiring.leadGauge)}`,
    },
    {
      what: 'Each further 10 cm (4 in) adds',
      value: extra === null ? noVoltage : `${plainNumber(extra, 1)} V`,
    },
    { what: 'Smallest lead', value: or(wiring.smallestLead) },
    { what: 'Overcurrent protection', value: or(wiring.overcurrent) },
    { what: 'Wire range', value: or(wiring.wireRange) },
    { what: 'Torque', value: or(wiring.torque) },
  ];
}

function indicatorText(protector: PlannedProtector): string {
  const details = protector.partDetails;
  if (details === null) return notKnown('no part chosen');
  if (details.indicator === null) return notKnown('the catalogue does not state it');
  const colour = details.indicatorColor === '' ? '' : `, ${details.indicatorColor}`;
  const least =
    details.indicatorMinVoltage === null ? '' : `, works from ${plainNumber(details.indicatorMinVoltage)} V`;
  return `${details.indicator}${colour}${least}`;
}

/** The wiring note of one housing. */
export function wiringNote(protector: PlannedProtector, basis: Basis): WiringNote {
  const { housing, wiring } = protector;
  return {
    tag: protector.tag,
    part: partText(protector),
    description: protector.partDetails?.description ?? '',
    housing: housing.of > 1 ? `Housing ${housing.number} of ${housing.of} at this port` : '',
    place: placeText(protector),
    position: protector.position,
    protects: protector.protects,
    ports: portsText(protector.ports),
    grounding: protector.grounding === '' ? notKnown('see the open items') : protector.grounding,
    strength: protector.strength,
    reasons: protector.reasons.map((r) => ({ ...r, sources: r.sources.join('; ') })),
    twoSupplies: wiring.fedFromTwoSupplies,
    cautions: boxCautions(protector),
    sourcesToOpen: [...wiring.sourcesToOpen],
    channels: channelViews(protector),
    groundTo: wiring.groundTo === '' ? notKnown('see the open items') : wiring.groundTo,
    leads: leadRows(protector, basis),
    notes: [...wiring.notes],
    unprotected: wiring.unprotected.map((u) => ({ ...u })),
    lights: lightRows(protector.channels),
    indicator: indicatorText(protector),
  };
}

/** One wiring note a housing, in the plan's order. */
export function wiringNotes(plan: Plan): WiringNote[] {
  return plan.protectors.map((p) => wiringNote(p, plan.basis));
}
