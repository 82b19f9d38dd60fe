import { statedLead } from '../context/fitted.js';
import { reason, type Reason } from '../../model/reason.js';
import type { SiteEquipment } from '../../model/site.js';
import type { PlannedProtector } from '../../model/plan.js';
import type { BoxHazard, Kind, PortClass } from '../../model/words.js';
import type { Lead } from '../../model/lead.js';
import { isNec } from '../../model/editions.js';
import { batteriesOn, portsOnBus } from '../../site/battery-bus.js';
import { byNaturalOrder } from '../../model/natural-order.js';
import { groundedPole, wireOf } from './describe.js';
import { overcurrentNotes, type PortDevice } from './overcurrent.js';
import { leadsToPlan } from '../../rules/smallest-lead.js';
import type { BoxStands } from './box-stands.js';
import { isolationOfBox, type SiteIsolated } from './isolation.js';
import { measuringOf } from './readings.js';
import { groundTerminal } from '../../rules/ground/ground-terminal.js';
import { leadLimit } from '../choose/lead-limit.js';
import { leadAreaOf, leadGaugeOf, plannedLeads } from '../choose/planned-lead.js';
import { convertersOf } from '../rate/rating-facts.js';
import type { Placement } from '../context/verdict.js';
import { hundredths, hundredthsOr } from '../../model/rounding.js';
import type { PartFigures, Selected } from '../choose/select.js';
import type { JobContext } from '../context/job-context.js';
import { thinLead } from '../choose/thin-lead.js';
import type { WiredChannel } from '../rate/wire.js';

const CURRENT_NOT_KNOWN = reason('wiring-note/current-not-known');
const NO_CHANNEL_LEFT = reason('neutral/no-channel-left');

/** Which housing of a placement it is, and what all of them share. */
export interface Housing {
  readonly number: number;
  readonly of: number;
  readonly housings: readonly (readonly WiredChannel[])[];
  /** The overcurrent device at each port that it serves. */
  readonly devices: readonly PortDevice[];
  readonly isolated: SiteIsolated;
  /** What the gravest caution at its box is about. */
  readonly hazard: BoxHazard;
  /** What stands at the other ports of its enclosure. */
  readonly beside: BoxStands;
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
  if (!leads) throw new Error(`a placement of ${placement.subject.tag} that is not wired`);
  const shared = placement.ports.length > 1;
  const length = statedLead(placement);
  const smallest = leadsToPlan(one.leads);
  const asPlanned = part && plannedLeads(part, length, job.site.basis.value, job.settings, smallest);
  const planned = asPlanned?.length ?? length ?? job.settings.thresholds.leadLength;
  const aimed = job.settings.thresholds.longLead;
  const limit = asPlanned ? leadLimit(part, requirement.withstand?.value, asPlanned, aimed) : aimed;
  return {
    groundTo: leads.groundTo,
    groundTerminal: groundTerminalOf(job, placement),
    fedFromTwoSupplies: shared,
    hazard: housing.hazard,
    measuring: measuringOf(job, one, channels, housing.beside),
    isolation: isolationOfBox(housing.isolated, placement),
    leadLengthLimit: limit,
    leadLimitByWithstand: limit < aimed,
    leadLengthPlanned: hundredths(planned),
    voltsPerTenCentimetres: hundredthsOr(figures?.perTenCentimetres),
    smallestLead: leads.smallest,
    leadGauge: part ? leadGaugeOf(part, smallest) : '',
    overcurrent: stated(part?.overcurrent),
    torque: stated(part?.torque),
    wireRange: stated(part?.wireRange),
    notes: [
      ...leads.notes,
      ...(requirement.current === undefined ? [CURRENT_NOT_KNOWN] : []),
      ...chargeNotes(one),
      ...thinLeadNotes(job, one),
      ...groundedNotes(job, one),
      ...gasNotes(job, one, housing.devices),
      ...doublingNotes(channels, shared),
      ...overcurrentNotes(housing.devices, channels, isNec(job.site.basis.value), part?.overcurrent ?? ''),
    ],
    unprotected: unprotected(one, channels, housing.housings),
  };
}

/** What the catalogue states of a part; null: nothing, so that its instructions say it. */
function stated(cell: string | undefined): string | null {
  return cell === undefined || cell === '' ? null : cell;
}

/** The ground terminal to fit where an enclosure has no bar; null: it has one. */
function groundTerminalOf(
  job: JobContext,
  { ports: [port] }: Placement,
): PlannedProtector['wiring']['groundTerminal'] {
  if (!port) return null;
  const { cls, equipment } = port;
  const found = groundTerminal({
    basis: job.site.basis.value,
    port: cls,
    kind: equipment.kind,
    outdoors: equipment.outdoors.value,
  });
  return found ? { ...found, lands: [...found.lands] } : null;
}

const HOLD_CHARGE: ReadonlySet<Kind> = new Set<Kind>([
  'charge-controller',
  'grid-tie-inverter',
  'inverter-charger',
  'pump-drive',
]);
const DC_TERMINALS: ReadonlySet<PortClass> = new Set<PortClass>(['dc-in', 'battery']);

/** Capacitors of a converter hold its DC terminals charged for minutes after all is open, whichever of its ports is worked at. */
function chargeNotes({ placement, requirement }: Selected): readonly Reason[] {
  const found = new Set<string>();
  for (const port of placement.ports) {
    const { tag, kind, ports } = port.equipment;
    if (HOLD_CHARGE.has(kind) && ports.some(({ cls }) => DC_TERMINALS.has(cls))) found.add(tag);
    if (requirement.circuit === 'array') for (const { tag } of convertersOf(port)) found.add(tag);
    if (requirement.circuit !== 'battery') continue;
    for (const { equipment } of portsOnBus(port)) if (equipment.kind !== 'battery') found.add(equipment.tag);
  }
  const tags = [...found].sort(byNaturalOrder);
  return tags.length === 0 ? [] : [reason('wiring-note/stay-charged', { tags })];
}

function thinLeadNotes(job: JobContext, { part, wirings, leads }: Selected): readonly Reason[] {
  const smallest = leadsToPlan(leads);
  const thin = part && thinLead(part, job.site.basis.value, wirings, smallest);
  if (!thin) return [];
  const least: Lead = { gauge: thin.least, metal: 'copper' };
  const area = { value: leadAreaOf(part, smallest), unit: 'mm2' } as const;
  return [reason('wiring-note/thin-lead', { least, gauge: leadGaugeOf(part, smallest), area })];
}

/**
 * The settings name a colour a conductor; of a pole that is solidly grounded the NEC has its own. Whether an array's is isn't known; the
 * negative of a battery's bus is, and has that colour.
 */
function groundedNotes(job: JobContext, one: Selected): readonly Reason[] {
  const conductor = groundedPole(one);
  if (conductor === undefined || !isNec(job.site.basis.value)) return [];
  if (one.requirement.circuit === 'battery' && conductor === 'negative') return [];
  return [reason('wiring-note/grounded-conductor', { conductor })];
}

/** A battery that makes gas while it is charged; of one whose chemistry isn't stated it may. */
const mayGas = ({ facts: { battery_chemistry: stated } }: SiteEquipment): boolean =>
  stated === undefined || stated.value === 'lead-acid' || stated.value === 'nicd';

/** A device of a battery's bus that stands in the room of that battery, or nobody knows in which. */
function gasNotes(
  job: JobContext,
  { placement, requirement }: Selected,
  devices: readonly PortDevice[],
): readonly Reason[] {
  if (requirement.circuit !== 'battery' || devices.every(({ planned }) => planned.device === 'none'))
    return [];
  const found = new Set<string>();
  for (const port of placement.ports) {
    for (const battery of batteriesOn(port))
      if (mayGas(battery) && isOneRoom(battery, port.equipment)) found.add(battery.tag);
  }
  const batteries = [...found].sort(byNaturalOrder);
  if (batteries.length === 0) return [];
  return [reason('overcurrent-note/battery-gas', { batteries, nec: isNec(job.site.basis.value) })];
}

function isOneRoom(one: SiteEquipment, other: SiteEquipment): boolean {
  return one === other || one.place === '' || other.place === '' || one.place === other.place;
}

function doublingNotes(channels: readonly WiredChannel[], shared: boolean): readonly Reason[] {
  return channels
    .filter((c) => c.doubled)
    .map((c) => {
      const wire = { ...wireOf(c, shared), doubled: false };
      return reason('wiring-note/second-channel', { channel: c.channel, wire });
    });
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
    const because = wiring.neutral.neutral === 'bonded' ? wiring.neutral.because : NO_CHANNEL_LEFT;
    const port = one.wirings.length > 1 ? wiring.port.name : null;
    found.push({ wire: { port, name: 'N', doubled: false }, because });
  }
  return found;
}
