import type { PlannedProtector } from '../../model/plan.js';
import { isNec } from '../../model/words.js';
import { portsOnBus } from '../../site/battery-bus.js';
import { list } from '../../words/figures.js';
import { byNaturalOrder } from '../../model/natural-order.js';
import { conductorName, groundedConductor } from './describe.js';
import { expectedVoltage, isNearZero } from './expected-voltage.js';
import { leadGaugeOf, plannedLeads } from '../choose/planned-lead.js';
import { convertersOf } from '../rate/rating-facts.js';
import { hundredths, hundredthsOr } from '../../model/rounding.js';
import type { PartFigures, Selected } from '../choose/select.js';
import type { JobContext } from '../context/job-context.js';
import { thinLead } from '../choose/thin-lead.js';
import { eachConductorOnce, type WiredChannel } from '../rate/wire.js';

/** Which housing of a placement it is, and what all of them share. */
export interface Housing {
  readonly number: number;
  readonly of: number;
  readonly housings: readonly (readonly WiredChannel[])[];
  /** The sources to open before someone works at the place. */
  readonly sources: readonly string[];
}

/** How one housing is wired, what is measured before, and what its wiring note warns of. */
export function wiringOf(
  job: JobContext,
  one: Selected,
  channels: readonly WiredChannel[],
  housing: Housing,
  figures: PartFigures | undefined,
): PlannedProtector['wiring'] {
  const { part, placement, requirement } = one;
  const leads = one.wirings[0]?.leads;
  const shared = placement.ports.length > 1;
  const planned = part
    ? plannedLeads(part, placement.subject.facts.lead_length?.value, job.site.basis.value, job.settings)
        .length
    : (placement.subject.facts.lead_length?.value ?? job.settings.thresholds.leadLength);
  const byInstructions = 'by the part’s instructions';
  return {
    groundTo: leads?.groundTo ?? '',
    sourcesToOpen: [...housing.sources],
    fedFromTwoSupplies: shared,
    measurements: eachConductorOnce(channels).map((channel) => ({
      conductor: conductorName(channel, shared),
      current: requirement.current ?? null,
      to: channel.to,
      expected: expectedVoltage(job, one, channel),
      ...stopOf(job, one, channel),
    })),
    leadLengthLimit: job.settings.thresholds.leadLength,
    leadLengthPlanned: hundredths(planned),
    voltsPerTenCentimetres: hundredthsOr(figures?.perTenCentimetres),
    smallestLead: leads?.smallest ?? '',
    leadGauge: part ? leadGaugeOf(part) : '',
    overcurrent: part && part.overcurrent !== '' ? part.overcurrent : byInstructions,
    torque: part && part.torque !== '' ? part.torque : byInstructions,
    wireRange: part && part.wireRange !== '' ? part.wireRange : byInstructions,
    notes: [
      ...(leads?.notes ?? []),
      ...(requirement.current === undefined
        ? [
            'Whether alternating or direct current comes here isn’t known: the conductors stand for the most that there may be.',
          ]
        : []),
      ...chargeNotes(one),
      ...thinLeadNotes(job, one),
      ...groundedNotes(job, one),
      ...doublingNotes(channels, shared),
    ],
    unprotected: unprotected(one, channels, housing.housings),
  };
}

/** At what to stop: beyond it the protector, or the converter on the same conductors, can't bear what stands there. */
function stopOf(
  job: JobContext,
  one: Selected,
  channel: WiredChannel,
): { stopAt: number | null; stopWords: string } {
  const { part, requirement } = one;
  if (isNearZero(job, one, channel))
    return { stopAt: null, stopWords: 'any steady voltage: its ground is lost, or conductors are swapped' };
  const ofPart = part ? (requirement.current === 'ac' ? part.mcovAc : part.mcovDc) : requirement.mcov?.value;
  let stopAt = ofPart ?? undefined;
  let stopWords = '';
  for (const { tag, facts } of requirement.circuit === 'array' ? convertersOf(channel.port) : []) {
    const bears = facts.max_dc_voltage?.value;
    if (bears === undefined || (stopAt !== undefined && bears >= stopAt)) continue;
    stopAt = bears;
    stopWords = `${tag} bears no more`;
  }
  return { stopAt: hundredthsOr(stopAt), stopWords };
}

/** Capacitors of a converter hold its DC terminals charged for minutes after all is open. */
function chargeNotes({ placement, requirement }: Selected): readonly string[] {
  const found = new Set<string>();
  for (const port of placement.ports) {
    if (requirement.circuit === 'array') for (const { tag } of convertersOf(port)) found.add(tag);
    if (requirement.circuit !== 'battery') continue;
    for (const { equipment } of portsOnBus(port)) if (equipment.kind !== 'battery') found.add(equipment.tag);
  }
  const tags = list([...found].sort(byNaturalOrder));
  return tags === ''
    ? []
    : [
        `The DC terminals of ${tags} can stay charged after every source is open: wait as the instructions say, then measure.`,
      ];
}

function thinLeadNotes(job: JobContext, { part, wirings }: Selected): readonly string[] {
  const thin = part && thinLead(part, job.site.basis.value, wirings);
  return thin ? [`Earth lead of at least ${thin.least}, not the ${thin.planned} that is planned.`] : [];
}

/** The settings name a colour a conductor; of one that is grounded the NEC has its own. */
function groundedNotes(job: JobContext, one: Selected): readonly string[] {
  const conductor = groundedConductor(one);
  if (conductor === undefined || !isNec(job.site.basis.value)) return [];
  return [
    `Conductor ${conductor} is grounded: where solidly, it is white or gray (see NEC 200.6), whatever colour stands above.`,
  ];
}

function doublingNotes(channels: readonly WiredChannel[], shared: boolean): readonly string[] {
  return channels
    .filter((c) => c.doubled)
    .map(
      (c) =>
        `Channel ${c.channel} is a second channel of ${shared ? `${c.port.name} ` : ''}${c.conductor}, since this place has more channels than conductors.`,
    );
}

/** N where no channel takes it: the note says so. */
function unprotected(
  one: Selected,
  channels: readonly WiredChannel[],
  housings: readonly (readonly WiredChannel[])[],
): PlannedProtector['wiring']['unprotected'] {
  const found: PlannedProtector['wiring']['unprotected'] = [];
  for (const wiring of one.wirings) {
    if (wiring.neutral.neutral !== 'optional' && wiring.neutral.neutral !== 'bonded') continue;
    if (housings.some((h) => h.some((c) => c.port === wiring.port && c.conductor === 'N'))) continue;
    if (!channels.some((c) => c.port === wiring.port)) continue;
    const because =
      wiring.neutral.neutral === 'bonded'
        ? wiring.neutral.because
        : 'no channel is left for it, and none is asked for';
    found.push({ conductor: one.wirings.length > 1 ? `${wiring.port.name} N` : 'N', because });
  }
  return found;
}
