import type { PlacedNote } from '../../model/open-item.js';
import type { SiteEquipment, SitePort } from '../../model/site.js';
import type { Kind } from '../../model/words.js';
import { atServicePlace } from '../../rules/service-place.js';
import { whySilent } from '../../rules/silent-ports.js';
import { waivedService } from '../../rules/waived-service.js';
import { servicePlaceRun } from '../../site/premises.js';
import { about } from '../../model/message.js';
import { PLACE_MESSAGES } from '../../model/messages/place.js';
import { byNaturalOrder } from '../../model/natural-order.js';
import { otherEnds } from './control-ends.js';
import { hasMainPort, isMainPort, type JobContext } from '../context/job-context.js';
import { judge, settle, strongest, type Placement, type Refusal, type Verdict } from '../context/verdict.js';

/** What the site alone decides. */
export interface Placing {
  readonly placements: readonly Placement[];
  readonly refusals: readonly Refusal[];
  /** What was said at the ports of the placements. */
  readonly placed: readonly Verdict[];
  readonly notes: readonly PlacedNote[];
}

/**
 * Places what the site alone decides and merges it by port: reasons together, strongest strength.
 * @param job the job's context
 */
export function placeOnSite(job: JobContext): Placing {
  const notes: PlacedNote[] = [];
  const verdicts = new Map<SitePort, Verdict>();
  for (const equipment of job.site.equipments) {
    if (PASSING.has(equipment.kind)) passesThrough(equipment, notes);
    else if (equipment.facts.protect?.value === true) askedInVain(equipment, notes);
    if (equipment.kind === 'other') {
      const { tag } = equipment;
      notes.push(about(PLACE_MESSAGES.otherKind, { tag, circuits: circuitsAt(equipment) }, tag, 'kind'));
    }
    for (const port of equipment.ports) {
      if (
        port.cls === 'terminals' &&
        equipment.kind !== 'control-circuit' &&
        equipment.kind !== 'signal-line'
      )
        continue;
      verdicts.set(port, judge(job, port, notes));
    }
  }
  moveToService(job, verdicts);
  waiveServices(job, verdicts, notes);
  const placements: Placement[] = [];
  const refusals: Refusal[] = [];
  const placed: Verdict[] = [];
  for (const verdict of verdicts.values()) {
    const { port, reasons } = verdict;
    if (reasons.length === 0) for (const one of verdict.refusals) refusals.push(one);
    else {
      placed.push(verdict);
      placements.push({
        ports: [port],
        subject: port.equipment,
        reasons,
        strength: strongest(reasons),
      });
    }
  }
  const others = otherEnds(job, verdicts, notes);
  return {
    placements: [...placements, ...others.placements],
    refusals: [...refusals, ...others.refusals, ...silentPorts(job, verdicts)],
    placed,
    notes,
  };
}

/** The control circuits that end at an equipment, in natural order of tags. */
function circuitsAt({ ports }: SiteEquipment): readonly string[] {
  const ends = ports.flatMap((p) => p.runs.map((run) => (run.from === p ? run.to : run.from).equipment));
  const tags = ends.filter((e) => e.kind === 'control-circuit').map((e) => e.tag);
  return [...new Set(tags)].sort(byNaturalOrder);
}

/** What has no protector of its own, and hands the circuit on. */
const PASSING: ReadonlySet<Kind> = new Set<Kind>(['disconnect', 'transfer-switch']);

/** What the list asks of such equipment, or waives there, changes nothing. */
function passesThrough({ tag, kind, facts }: SiteEquipment, notes: PlacedNote[]): void {
  for (const field of ['protect', 'worth_protecting'] as const) {
    const value = facts[field]?.value;
    if (value === undefined) continue;
    notes.push(about(PLACE_MESSAGES.passesThrough, { tag, kind, field, value }, tag, field));
  }
}

/** The list asks for a protector where there is no port for one, or where it says itself that the port is unused. */
function askedInVain({ tag, kind, ports }: SiteEquipment, notes: PlacedNote[]): void {
  if (!hasMainPort(kind)) notes.push(about(PLACE_MESSAGES.noMainPort, { tag, kind }, tag, 'protect'));
  else if (!ports.some(isMainPort)) notes.push(about(PLACE_MESSAGES.mainPortUnused, { tag }, tag, 'protect'));
}

/** What a rule asks for at a panel that is the service's place is asked of the service. */
function moveToService(job: JobContext, verdicts: ReadonlyMap<SitePort, Verdict>): void {
  const limit = job.settings.thresholds.servicePlaceRun;
  for (const verdict of verdicts.values()) {
    if (verdict.reasons.length === 0 || verdict.port.equipment.kind !== 'panel') continue;
    const { port } = verdict;
    const service = servicePlaceRun(port, limit)?.from;
    const there = service && verdicts.get(service);
    if (!service || !there || there.reasons.length === 0) continue;
    const { stay, moved, withheld } = atServicePlace(
      { tag: port.equipment.tag, reasons: verdict.reasons },
      { tag: service.equipment.tag, reasons: there.reasons },
    );
    if (moved.length > 0) there.reasons = [...there.reasons, ...moved];
    settle(verdict, { reasons: stay, withheld, notes: [] }, []);
  }
}

/** `protect` `no` on a service, now that it is known what stands at the panels that it feeds. */
function waiveServices(job: JobContext, verdicts: ReadonlyMap<SitePort, Verdict>, notes: PlacedNote[]): void {
  const basis = job.site.basis.value;
  for (const verdict of verdicts.values()) {
    const { equipment } = verdict.port;
    if (equipment.kind !== 'service' || equipment.facts.protect?.value !== false) continue;
    const nextPanels = [...verdicts.values()]
      .filter((v) => v.port.equipment.kind === 'panel' && v.port.feeders.includes(verdict.port))
      .map((v) => v.reasons.length > 0);
    const { reasons } = verdict;
    settle(verdict, waivedService({ basis, tag: equipment.tag, reasons, nextPanels }), notes);
  }
}

/** Ports that no rule looks at. */
function silentPorts(job: JobContext, verdicts: ReadonlyMap<SitePort, Verdict>): Refusal[] {
  const refusals: Refusal[] = [];
  for (const { kind, ports } of job.site.equipments) {
    const why = whySilent(kind);
    if (!why) continue;
    for (const port of ports) if (!verdicts.has(port)) refusals.push({ ...why, port });
  }
  return refusals;
}
