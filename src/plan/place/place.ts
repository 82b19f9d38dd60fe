import { reason } from '../../model/reason.js';
import type { PlacedNote } from '../../model/message.js';
import type { SiteEquipment, SitePort } from '../../model/site.js';
import { servicePlaceRun } from '../../site/premises.js';
import { list } from '../../words/figures.js';
import { about } from '../../model/message.js';
import { PLACE_MESSAGES } from '../../model/messages/place.js';
import { byNaturalOrder } from '../../model/natural-order.js';
import { otherEnds } from './control-ends.js';
import { hasMainPort, isMainPort, type JobContext } from '../context/job-context.js';
import { judge, names, strongest, type Placement, type Refusal, type Verdict } from '../context/verdict.js';

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
    if (equipment.facts.protect?.value === true) askedInVain(equipment, notes);
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
  for (const equipment of job.site.equipments) {
    for (const port of equipment.ports) {
      const verdict = verdicts.get(port);
      if (!verdict) continue;
      if (verdict.reasons.length === 0) refusals.push(...verdict.refusals);
      else {
        const { reasons } = verdict;
        placed.push(verdict);
        placements.push({ ports: [port], subject: equipment, reasons, strength: strongest(reasons) });
      }
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
function circuitsAt({ ports }: SiteEquipment): string {
  const ends = ports.flatMap((p) => p.runs.map((run) => (run.from === p ? run.to : run.from).equipment));
  const tags = ends.filter((e) => e.kind === 'control-circuit').map((e) => e.tag);
  return list([...new Set(tags)].sort(byNaturalOrder));
}

/** The list asks for a protector where there is no port for one, or where it says itself that the port is unused. */
function askedInVain({ tag, kind, ports }: SiteEquipment, notes: PlacedNote[]): void {
  if (!hasMainPort(kind)) notes.push(about(PLACE_MESSAGES.noMainPort, { tag, kind }, tag, 'protect'));
  else if (!ports.some(isMainPort)) notes.push(about(PLACE_MESSAGES.mainPortUnused, { tag }, tag, 'protect'));
}

/** A panel that is the service's place has no place of its own: what a rule asks for there is asked of the service. */
function moveToService(job: JobContext, verdicts: ReadonlyMap<SitePort, Verdict>): void {
  const limit = job.settings.thresholds.servicePlaceRun;
  for (const verdict of verdicts.values()) {
    if (verdict.reasons.length === 0 || verdict.port.equipment.kind !== 'panel') continue;
    const service = servicePlaceRun(verdict.port, limit)?.from;
    const there = service && verdicts.get(service);
    if (!service || !there || there.reasons.length === 0) continue;
    const stay = verdict.reasons.filter(
      (r) => r.rule.id === 'place/asked' || r.rule.id === 'place/wind-premises',
    );
    for (const one of verdict.reasons) {
      if (stay.includes(one) || there.reasons.some((r) => r.rule.id === one.rule.id)) continue;
      there.reasons.push({
        ...one,
        because: reason('service-place/reason', { reason: one.because, panel: verdict.port.equipment.tag }),
      });
    }
    if (stay.length === 0 && verdict.reasons.length > 0) {
      const because = `it stands at the service ${service.equipment.tag}, whose protector is its protector`;
      verdict.refusals.unshift({ port: verdict.port, rule: 'place/service', because });
    }
    verdict.reasons = stay;
  }
}

/** `protect` `no` on a service: what isn't required goes; what 230.67 requires goes only by its exception. */
function waiveServices(job: JobContext, verdicts: ReadonlyMap<SitePort, Verdict>, notes: PlacedNote[]): void {
  for (const verdict of verdicts.values()) {
    const { equipment } = verdict.port;
    if (equipment.kind !== 'service' || equipment.facts.protect?.value !== false) continue;
    const { tag } = equipment;
    const required = verdict.reasons.filter((r) => r.strength === 'required');
    const because = 'the list says protect "no"';
    if (required.length === 0) {
      verdict.reasons = [];
      verdict.refusals.unshift({ port: verdict.port, rule: 'place/asked', because });
      continue;
    }
    const next = [...verdicts.values()].filter(
      (v) => v.port.equipment.kind === 'panel' && v.port.feeders.includes(verdict.port),
    );
    const excepted =
      job.site.basis.value !== 'iec' &&
      required.every((r) => r.rule.id === 'place/service') &&
      next.length > 0 &&
      next.every((v) => v.reasons.length > 0);
    if (excepted) {
      verdict.reasons = [];
      verdict.refusals.unshift({
        port: verdict.port,
        rule: 'place/asked',
        because: reason('asked/excepted', { reason: because }),
      });
      notes.push(about(PLACE_MESSAGES.waivedByException, { tag }, tag, 'protect'));
    } else notes.push(about(PLACE_MESSAGES.cannotWaive, { tag, rules: names(required) }, tag, 'protect'));
  }
}

/** Ports that no rule looks at: what stands there takes no protector of its own, and says so. */
function silentPorts(job: JobContext, verdicts: ReadonlyMap<SitePort, Verdict>): Refusal[] {
  const refusals: Refusal[] = [];
  for (const equipment of job.site.equipments) {
    for (const port of equipment.ports) {
      if (verdicts.has(port)) continue;
      if (equipment.kind === 'transfer-switch') {
        const because =
          'a transfer switch has no protector of its own: what it connects is protected at its ends';
        refusals.push({ port, rule: 'place/long-run', because });
      } else if (equipment.kind === 'other') {
        refusals.push({ port, rule: 'place/asked', because: 'no rule looks at equipment of kind other' });
      }
    }
  }
  return refusals;
}
