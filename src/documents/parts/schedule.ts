import { channelText } from '../../words/conductors.js';
import { systemText } from '../../words/protectors.js';
import { say } from '../../words/reasons/say.js';
import { devicesText, smallestLeadsText } from '../../words/overcurrent.js';
import { list } from '../../words/figures.js';
import { z } from 'zod';
import type { Plan, PlannedProtector } from '../../model/plan.js';
import type { Basis } from '../../model/editions.js';
import { runLength } from '../../words/lengths.js';
import { isFaultCurrentBlank } from './blanks.js';
import { amperes, notKnown, plainNumber, volts } from './figures.js';

/** One line of the protection schedule: one housing. */
export const ScheduleRowSchema = z.object({
  tag: z.string(),
  part: z.string(),
  existing: z.boolean(),
  housing: z.string(),
  place: z.string(),
  position: z.string(),
  protects: z.string(),
  ports: z.string(),
  system: z.string(),
  /** `1 L1 black; 2 L2, high leg, orange`: the conductor of each channel and its colour. */
  conductors: z.string(),
  strength: z.string(),
  /** The rules that asked, each with its strength where they differ. */
  rules: z.string(),
  /** What the MCOV stands between, where it isn't line to ground; else ``. */
  mcovBetween: z.string(),
  requiredMcov: z.string(),
  mcov: z.string(),
  requiredSccr: z.string(),
  sccr: z.string(),
  requiredIn: z.string(),
  in: z.string(),
  levelName: z.string(),
  level: z.string(),
  leadVoltage: z.string(),
  /** Between two conductors that each have a channel to ground; ``: there is one such conductor. */
  levelBetween: z.string(),
  withstand: z.string(),
  margin: z.string(),
  reach: z.string(),
  type: z.string(),
  enclosure: z.string(),
  listing: z.string(),
  /** The overcurrent device at each port. */
  devices: z.array(z.string()),
  smallestLead: z.string(),
});
export type ScheduleRow = z.infer<typeof ScheduleRowSchema>;

const OPEN = 'see the open items';
const NO_PART = 'no part';
const UNSTATED = 'not in the catalogue';

/** `part`, or why there is none. */
export function partText(protector: PlannedProtector): string {
  if (protector.existing !== null) return `existing: ${protector.existing}`;
  return protector.part ?? 'no part chosen: see the open items';
}

/** `CC-1 dc-in-1; INV-1 ac-in`. */
export function portsText(ports: readonly { equipment: string; port: string }[]): string {
  return ports.map((p) => `${p.equipment} ${p.port}`).join('; ');
}

/** Where the protector is: its place, or that the list doesn't say. */
export function placeText(protector: PlannedProtector): string {
  const place = protector.place === '' ? notKnown('the list states no place') : protector.place;
  return protector.outdoors ? `${place}, outdoors` : place;
}

function typeText(protector: PlannedProtector): string {
  const details = protector.partDetails;
  if (details === null) {
    const types = protector.required.types;
    return types.length === 0 ? `type ${notKnown(NO_PART)}` : `type ${types.join(' or ')} needed`;
  }
  const names = [
    ...(details.type === null ? [] : [`type ${details.type}`]),
    ...(details.iecClass === null ? [] : [`class ${details.iecClass}`]),
  ];
  return names.length === 0 ? notKnown(UNSTATED) : names.join(', ');
}

function enclosureText(protector: PlannedProtector): string {
  const needed = protector.required.enclosures;
  const own = protector.partDetails?.enclosure ?? '';
  if (own !== '') return own;
  if (needed.length > 0) return `one of ${needed.join(', ')} needed`;
  return `enclosure ${notKnown(protector.partDetails === null ? NO_PART : UNSTATED)}`;
}

/** How far along its cable it covers. */
export function reachText(protector: PlannedProtector, basis: Basis): string {
  if (protector.figures === null) return notKnown(NO_PART);
  const { reach, up } = protector.figures;
  if (reach === null)
    return up === null ? notKnown('the protection level is not known') : 'not limited within its run';
  if (reach !== 0) return runLength(reach, basis);
  return protector.figures.impulseWithstand === null
    ? 'none counted: the withstand of the equipment is not known'
    : 'none: level and leads are above the withstand';
}

function withstandText(protector: PlannedProtector): string {
  const figures = protector.figures;
  if (figures === null) return notKnown(OPEN);
  if (figures.impulseWithstand === null) return notKnown(OPEN);
  const own = `${plainNumber(figures.impulseWithstand)} V${figures.withstandAssumed ? ' (assumed)' : ''}`;
  // At a service or panel the reach is held against what it feeds.
  const fed = figures.reachWithstand;
  return fed === null || fed === figures.impulseWithstand
    ? own
    : `${own}; of what it feeds ${plainNumber(fed)} V (assumed)`;
}

/** `required: place/service`; with several strengths `place/service (recommended), place/wind-premises (required)`. */
function rulesText({ reasons, strength }: PlannedProtector): string {
  return reasons.every((r) => r.strength === strength)
    ? `${strength}: ${reasons.map((r) => r.rule).join(', ')}`
    : reasons.map((r) => `${r.rule} (${r.strength})`).join(', ');
}

/** The line of one housing in the schedule; every unknown figure says why. */
export function scheduleRow(protector: PlannedProtector, basis: Basis): ScheduleRow {
  const { figures, required, housing } = protector;
  const missing = figures === null ? NO_PART : UNSTATED;
  const isAsked = required.sccr !== null || isFaultCurrentBlank(protector);
  return {
    tag: protector.tag,
    part: partText(protector),
    existing: protector.existing !== null,
    housing: housing.of > 1 ? `housing ${housing.number} of ${housing.of}` : '',
    place: placeText(protector),
    position: say(protector.position),
    protects: say(protector.protects),
    ports: portsText(protector.ports),
    system: systemText(protector.system),
    conductors: conductorsText(protector),
    strength: protector.strength,
    rules: rulesText(protector),
    mcovBetween: protector.channels.some((c) => c.to === 'N') ? 'each line to N, N to ground (3+1)' : '',
    requiredMcov: volts(required.mcov, OPEN),
    mcov: volts(figures?.mcov ?? null, missing),
    requiredSccr: isAsked ? currentText(required) : 'not asked',
    sccr: amperes(figures?.sccr ?? null, missing),
    requiredIn: amperes(required.in, OPEN),
    in: amperes(figures?.in ?? null, missing),
    levelName: figures?.upBasis ?? 'VPR or Up',
    level: volts(figures?.up ?? null, missing),
    leadVoltage: volts(figures?.leadVoltage ?? null, missing),
    levelBetween:
      figures === null || figures.levelBetween === null ? '' : `${plainNumber(figures.levelBetween)} V`,
    withstand: withstandText(protector),
    margin: volts(figures?.margin ?? null, missing),
    reach: reachText(protector, basis),
    type: typeText(protector),
    enclosure: enclosureText(protector),
    listing: [protector.partDetails?.listing ?? '', protector.partDetails?.listingFile ?? '']
      .filter((t) => t !== '')
      .join(', '),
    devices: devicesText(protector),
    smallestLead: smallestLeadsText(protector) || notKnown(figures === null ? NO_PART : UNSTATED),
  };
}

function currentText({ sccr, sccrAtLeast, backfeedUnknown }: PlannedProtector['required']): string {
  if (sccr === null && sccrAtLeast !== null)
    return `at least ${amperes(sccrAtLeast, '')}; not all that feeds it is on the list`;
  const known = amperes(sccr, 'not on the list');
  if (backfeedUnknown.length === 0) return known;
  return `${known} and what ${list(backfeedUnknown)} ${backfeedUnknown.length === 1 ? 'sends' : 'send'} back, not known`;
}

/** The conductor of each channel with its colour; one without a colour is told by its name alone. */
function conductorsText({ channels }: PlannedProtector): string {
  return channels
    .map((c) => `${c.channel} ${channelText(c)}${c.colour === '' ? '' : ` (${c.colour})`}`)
    .join('; ');
}

/** All lines of the schedule, in the plan's order. */
export function scheduleRows(plan: Plan): ScheduleRow[] {
  return plan.protectors.map((p) => scheduleRow(p, plan.basis));
}
