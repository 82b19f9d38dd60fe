import type { BoxIsolation, IsolationPart, IsolationStep } from '../../model/planned-isolation.js';
import { byNaturalOrder } from '../../model/natural-order.js';
import type { Plan } from '../../model/plan.js';
import type { SiteEquipment, SitePort } from '../../model/site.js';
import { boxSteps } from '../../rules/isolate/box-steps.js';
import { isFeedKnown } from '../../rules/isolate/feed-known.js';
import { isBatteryKnown } from '../../rules/isolate/battery-known.js';
import { isolationOrder, type IsolationStep as Ordered } from '../../rules/isolate/order.js';
import { staysLive, type StaysLive } from '../../rules/isolate/stays-live.js';
import { batteriesOn } from '../../site/battery-bus.js';
import { ultimateSources } from '../../site/inputs.js';
import { portsInUse } from '../../site/in-use.js';
import type { Selected } from '../choose/select.js';
import type { JobContext } from '../context/job-context.js';
import type { Placement } from '../context/verdict.js';

/** How a site is made dead, and which part of it an equipment belongs to. */
export interface SiteIsolated {
  readonly isolation: Plan['isolation'];
  readonly partOf: ReadonlyMap<SiteEquipment, IsolationPart>;
}

/**
 * The numbered steps of each part of a site that has a protector.
 * @param selected the placements
 */
export function isolateSite(job: JobContext, selected: readonly Selected[]): SiteIsolated {
  const partOf = new Map<SiteEquipment, IsolationPart>();
  const parts: IsolationPart[] = [];
  const known = new Map<readonly SiteEquipment[], IsolationPart>();
  const guarded = new Set<SiteEquipment>();
  for (const { placement } of selected) for (const { equipment } of placement.ports) guarded.add(equipment);
  for (const equipment of job.site.equipments) {
    if (!guarded.has(equipment)) continue;
    const together = job.togetherWith(equipment);
    let part = known.get(together);
    if (!part) {
      part = partFrom(job, together, parts.length + 1, guarded);
      parts.push(part);
      known.set(together, part);
    }
    partOf.set(equipment, part);
  }
  return { isolation: { parts }, partOf };
}

function partFrom(
  job: JobContext,
  together: readonly SiteEquipment[],
  number: number,
  guarded: ReadonlySet<SiteEquipment>,
): IsolationPart {
  const { steps, back } = isolationOrder(
    together.map((one) => ({
      tag: one.tag,
      kind: one.kind,
      suppliedAt: one.kind === 'control-circuit' ? otherEndsOf(one) : NO_TAGS,
      aheadOfMain: one.kind === 'service' && guarded.has(one) && isAheadOfMain(one),
    })),
    job.settings.measuring.waitMinutes,
  );
  const unknown = together.filter((e) => !isAllKnown(job, e)).map(({ tag }) => tag);
  return { number, unknown, steps: plain(steps), back: plain(back) };
}

const NO_TAGS: readonly string[] = [];

/** The tags at which the cables of a control circuit end, each once, in natural order. */
function otherEndsOf({ ports }: SiteEquipment): readonly string[] {
  const ends = ports.flatMap((port) =>
    port.runs.map(({ from, to }) => (from === port ? to : from).equipment.tag),
  );
  return [...new Set(ends)].sort(byNaturalOrder);
}

const isAheadOfMain = ({ facts }: SiteEquipment): boolean => facts.ahead_of_disconnect?.value === true;

function plain(steps: readonly Ordered[]): IsolationStep[] {
  return steps.map(({ number, acts }) => ({
    number,
    acts: acts.map(({ does, tags }) => ({ does, tags: [...tags] })),
  }));
}

/** True where the list says of each port of an equipment what can feed it. */
function isAllKnown({ site }: JobContext, equipment: SiteEquipment): boolean {
  if (site.inDoubt.has(equipment.tag)) return false;
  for (const port of equipment.ports) if (port.use === 'assumed' || !isFedByList(port)) return false;
  // What hangs on equipment of no known kind may be anything.
  const isOther = equipment.kind === 'other' && equipment.ports.some(isOnPower);
  return !isOther && isBusOf(equipment);
}

/** True where the list has the battery of each DC bus that an equipment is on. */
function isBusOf({ kind, ports }: SiteEquipment): boolean {
  if (!ports.some(isDcBus)) return isBatteryKnown({ kind, batteries: NO_BATTERIES });
  const batteries: number[] = [];
  for (const port of ports)
    if (port.cls === 'battery' || port.cls === 'dc-bus') batteries.push(batteriesOn(port).length);
  return isBatteryKnown({ kind, batteries });
}

const NO_BATTERIES: readonly number[] = [];
const isDcBus = ({ cls }: SitePort): boolean => cls === 'battery' || cls === 'dc-bus';

/** True for a port at which a run ends that isn't of a control circuit. */
function isOnPower({ runs }: SitePort): boolean {
  for (const run of runs) if (isOfPower(run)) return true;
  return false;
}

function isOnControl({ runs }: SitePort): boolean {
  for (const run of runs) if (!isOfPower(run)) return true;
  return false;
}

const isOfPower = ({ carries }: SitePort['runs'][number]): boolean => carries !== 'control';

/** True where the list says what feeds a port, or that nothing does. */
export function isFedByList(port: SitePort): boolean {
  const { cls, equipment, feeders, unused } = port;
  return isFeedKnown({
    port: cls,
    kind: equipment.kind,
    isFed: feeders.length > 0 || (cls === 'terminals' && isOnPower(port)),
    endsControl: isOnControl(port),
    unused,
  });
}

/** The steps that one placement needs, and what stays live there after them. */
export function isolationOfBox({ partOf }: SiteIsolated, { ports }: Placement): BoxIsolation {
  const part = ports[0] && partOf.get(ports[0].equipment);
  const numbers = (part?.steps ?? []).map(({ number }) => number);
  const isControl = ports.every(({ equipment }) => equipment.kind === 'control-circuit');
  return {
    part: part?.number ?? null,
    steps: [...boxSteps(numbers, isControl)],
    live: liveAt(ports),
    unknown: (part?.unknown ?? []).length > 0,
  };
}

/** What stays live belongs to the enclosure: to each port of its equipment that is in use, each once. */
function liveAt(ports: readonly SitePort[]): BoxIsolation['live'] {
  const found = new Map<string, StaysLive>();
  for (const equipment of new Set(ports.map((port) => port.equipment))) {
    for (const port of portsInUse(equipment)) {
      for (const one of staysLive(liveFacts(port, ports.includes(port)))) {
        const key = `${one.what.code} ${one.who.code}`;
        if (one.here || !found.has(key)) found.set(key, one);
      }
    }
  }
  // What is of the conductors here comes first.
  return [...found.values()].sort((a, b) => Number(b.here) - Number(a.here));
}

function liveFacts(port: SitePort, own: boolean): Parameters<typeof staysLive>[0] {
  const { cls, equipment } = port;
  const isDc = cls === 'dc-in' || (cls === 'output' && equipment.kind !== 'generator');
  const sources = new Set(isDc ? ultimateSources(port).map(({ kind }) => kind) : []);
  return {
    port: cls,
    kind: equipment.kind,
    own,
    aheadOfMain: isAheadOfMain(equipment),
    sun: sources.has('array'),
    wind: sources.has('wind-turbine'),
    water: sources.has('hydro-turbine'),
  };
}
