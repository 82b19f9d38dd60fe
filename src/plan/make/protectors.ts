import type { Part } from '../../model/catalogue.js';
import type { Calculation, PlannedChannel, PlannedProtector } from '../../model/plan.js';
import { isNec } from '../../model/editions.js';
import { byNaturalOrder } from '../../model/natural-order.js';
import { neutralPath, neutralPathAsked } from '../../rules/rate/neutral-path.js';
import { WIRING_RULES } from '../../rules/rulebook.js';
import { calculationsOf, type Figured } from './calculations.js';
import { enclosuresAsked } from '../choose/choose.js';
import { groundingOf, positionOf, protectsWhat, systemOf, wireOf } from './describe.js';
import { indicate } from '../choose/indicate.js';
import { bareRatings } from './bare-ratings.js';
import { boxHazards } from './box-hazard.js';
import { boxStands } from './box-stands.js';
import { namedIn } from './conductor-names.js';
import { portOrder } from '../context/order.js';
import { wiringOf, type Housing } from './planned-wiring.js';
import { backfeedUnknown, overcurrentDevices, plannedOvercurrent } from './overcurrent.js';
import { leadsRestOn, smallestLeadText } from './smallest-lead.js';
import { hundredths, hundredthsOr } from '../../model/rounding.js';
import { longestRun, reachWith } from '../choose/reach.js';
import { partFigures, type Selected } from '../choose/select.js';
import { levelBetween } from './level-between.js';
import { reachWithstandOf } from '../choose/reach-withstand.js';
import { sourceLines } from './source-lines.js';
import type { Made } from './made.js';
import type { SiteIsolated } from './isolation.js';
import type { JobContext } from '../context/job-context.js';
import type { WiredChannel } from '../rate/wire.js';

/**
 * Makes the protectors of the plan: one a housing, numbered by equipment tag, port, housing.
 * @param isolated how the site is made dead
 */
export function makeProtectors(
  job: JobContext,
  selected: readonly Selected[],
  isolated: SiteIsolated,
): readonly Made[] {
  const ordered = [...selected].sort((a, b) => compare(a, b));
  const made: Made[] = [];
  const atBare = bareRatings(job);
  const hazardAt = boxHazards(job, selected, atBare);
  const besideAt = boxStands(job, selected, atBare);
  for (const from of ordered) {
    const { housings } = from;
    const hazard = hazardAt(from.placement);
    const beside = besideAt(from.placement);
    for (const [i, channels] of housings.entries()) {
      const channelRules = new Set<string>();
      const devices = overcurrentDevices(job, from, channels);
      const housing = { number: i + 1, of: housings.length, housings, isolated, devices, hazard, beside };
      const protector = makeProtector(job, from, `P-${made.length + 1}`, housing, channelRules);
      made.push({ protector, from, channelRules, devices });
    }
  }
  return made;
}

/** By equipment tag in natural order, then port; circuits that end at one port by the circuit's tag. */
function compare(a: Selected, b: Selected): number {
  const x = a.placement.ports[0];
  const y = b.placement.ports[0];
  if (!x || !y) return 0;
  return (
    byNaturalOrder(x.equipment.tag, y.equipment.tag) ||
    portOrder(x) - portOrder(y) ||
    byNaturalOrder(a.placement.subject.tag, b.placement.subject.tag)
  );
}

function makeProtector(
  job: JobContext,
  one: Selected,
  tag: string,
  housing: Housing,
  channelRules: Set<string>,
): PlannedProtector {
  const channels = housing.housings[housing.number - 1] ?? [];
  const { placement, requirement, part, specification } = one;
  const first = placement.ports[0];
  const equipment = first?.equipment ?? placement.subject;
  const shared = placement.ports.length > 1;
  const figures = part ? partFigures(job, one, part) : undefined;
  const between = figures && levelBetween(one, figures);
  // What is known of a fault current that isn't known wholly is no figure to hold a device against.
  const isAllKnown = requirement.sccrState === 'known';
  return {
    tag,
    part: part?.part ?? null,
    existing: one.existing === '' ? null : one.existing,
    byHand: one.byHand,
    serial: placement.subject.facts.serial?.value ?? '',
    housing: { number: housing.number, of: housing.of },
    place: equipment.place,
    building: equipment.building,
    outdoors: equipment.outdoors.value,
    protects: protectsWhat(one),
    position: positionOf(one, isNec(job.site.basis.value)),
    ports: placement.ports.map((p) => ({ equipment: p.equipment.tag, port: p.name })),
    strength: placement.strength,
    reasons: placement.reasons.map((r) => ({
      rule: r.rule.id,
      strength: r.strength,
      because: r.because,
      sources: [...sourceLines(r.rule, job.site.basis.value, r.cites)],
    })),
    system: systemOf(one),
    grounding: groundingOf(one),
    required: {
      current: requirement.current ?? null,
      mcov: hundredthsOr(requirement.mcov?.value),
      in: hundredths(requirement.nominalCurrent.value),
      sccr: isAllKnown ? hundredthsOr(requirement.sccr?.value) : null,
      sccrAtLeast: isAllKnown ? null : hundredthsOr(requirement.sccr?.value),
      backfeedUnknown: backfeedUnknown(one.overcurrent),
      types:
        isNec(job.site.basis.value) && requirement.circuit === 'power'
          ? specification?.aheadOfDisconnect
            ? [1]
            : [1, 2]
          : [],
      enclosures: [...enclosuresAsked(equipment.outdoors.value)],
      conductors: one.wirings.reduce((sum, w) => sum + w.conductors.length, 0),
      listedFor: specification?.listedFor ?? null,
    },
    figures: part && figures ? figuresOf(job, one, part, { figures, between }) : null,
    partDetails: part ? detailsOf(part) : null,
    overcurrent: plannedOvercurrent(housing.devices),
    channels: channels.map((channel) => plannedChannel(job, one, channel, shared, channelRules)),
    wiring: wiringOf(job, one, channels, housing, figures),
    calculations: calculationsOf(job, one, figures && { figures, between }, housing.devices) as Calculation[],
    rejected: [...one.rejected],
  };
}

function figuresOf(
  job: JobContext,
  one: Selected,
  part: Part,
  { figures, between }: Figured,
): NonNullable<PlannedProtector['figures']> {
  const { requirement } = one;
  const isAc = requirement.current === 'ac';
  const withstand = reachWithstandOf(job, one);
  const reach =
    part.up === null
      ? undefined
      : reachWith(job, part.up, figures.lead, withstand?.value, longestRun(one.placement));
  return {
    mcov: hundredthsOr(isAc ? part.mcovAc : part.mcovDc),
    up: hundredthsOr(part.up),
    upBasis: part.upBasis,
    leadVoltage: hundredths(figures.lead),
    leadVoltageAtHalfMetre: hundredths(figures.leadAtHalfMetre),
    leadVoltageAtOneMetre: hundredths(figures.leadAtOneMetre),
    impulseWithstand: hundredthsOr(requirement.withstand?.value),
    withstandAssumed: requirement.withstand?.assumed ?? false,
    margin: hundredthsOr(figures.margin),
    in: hundredthsOr(part.nominalCurrent),
    imax: hundredthsOr(part.maximumCurrent),
    sccr: hundredthsOr(isAc ? part.sccr : part.sccrDc),
    // Where the withstand isn't known no reach can be claimed: null would say that nothing limits it.
    reach: reach === undefined ? 0 : hundredthsOr(reach),
    reachWithstand: hundredthsOr(withstand?.value),
    levelBetween: hundredthsOr(between?.value),
    smallestLead: smallestLeadText(one.leads, 'line'),
    smallestGroundLead: smallestLeadText(one.leads, 'ground'),
    leadsRestOn: leadsRestOn(one, job.site.basis.value),
    neutralPath: neutralPathOf(job, one, part),
  };
}

/** What the path from neutral to earth must bear, where the rule about it looks at this part. */
function neutralPathOf(
  job: JobContext,
  { specification }: Selected,
  part: Part,
): NonNullable<PlannedProtector['figures']>['neutralPath'] {
  if (!specification || part.connection !== '3+1' || neutralPath.outside(specification) !== undefined)
    return [];
  return neutralPathAsked({ ...specification, part, thresholds: job.settings.thresholds }).map((one) => ({
    rating: one.rating,
    has: hundredthsOr(one.has),
    least: hundredths(one.least),
  }));
}

function detailsOf(part: Part): NonNullable<PlannedProtector['partDetails']> {
  return {
    maker: part.maker,
    description: part.description,
    channels: part.channels,
    type: part.type,
    iecClass: part.iecClass,
    connection: part.connection,
    enclosure: part.enclosure,
    listing: part.listing,
    listingFile: part.listingFile,
    listedFor: [...part.listedFor],
    indicator: part.indicator,
    indicatorColor: part.indicatorColor,
    indicatorMinVoltage: part.indicatorMinVoltage,
    goodFlag: part.goodFlag,
    usedFlag: part.usedFlag,
    leakage: part.leakage,
  };
}

function plannedChannel(
  job: JobContext,
  one: Selected,
  channel: WiredChannel,
  shared: boolean,
  channelRules: Set<string>,
): PlannedChannel {
  const wiring = one.wirings.find((w) => w.port === channel.port);
  if (!wiring) throw new Error('a channel of a port that is not wired');
  const indicated = indicate(job, one.placement, wiring, channel, one.part);
  channelRules.add(indicated.rule);
  const { named, rules } = namedIn(job, wiring, channel, one.placement.subject);
  for (const rule of rules) channelRules.add(rule);
  if (channel.doubled || (channel.conductor === 'N' && wiring.neutral.neutral === 'optional'))
    channelRules.add(WIRING_RULES.spareChannel.id);
  return {
    channel: channel.channel,
    wire: wireOf(channel, shared),
    to: channel.to,
    ...named,
    indicator: [...indicated.indicator],
  };
}
