import { hundredths } from '../model/rounding.js';
import type { Plan, PlannedProtector } from '../model/plan.js';
import { itemKey, type OpenItem } from '../model/open-item.js';
import type { RecordEntry } from '../model/record.js';
import { decisionChanges, decisionsOf } from '../site-forms/decisions.js';
import type { ChangedHousing } from '../model/messages/record.js';
import { sameText } from './entries.js';

/** What hangs at a port, where that is otherwise than planned; m. */
export interface FittedThere {
  readonly part?: string;
  readonly lead?: number;
  readonly outdoors?: boolean;
}

/** An assumption found otherwise. */
export interface FoundOtherwise {
  readonly tag: string;
  readonly field: string;
  readonly text: string;
  readonly file: string;
  readonly line: number;
}

/** Plans a job anew. */
export interface Planner {
  /**
   * @param facts that are otherwise
   * @param at what hangs at a port
   * @returns the plan; the fact that its field doesn't understand
   */
  readonly plan: (
    facts: readonly FoundOtherwise[],
    at: (equipment: string, port: string) => FittedThere | undefined,
  ) => Plan | { readonly notUnderstood: FoundOtherwise };
}

/** Why a job can't be planned anew. */
export type NoPlanner = 'company-gone' | 'plan-differs' | 'job-too-large';

/** What a housing and the items at it have become. */
export interface Anew {
  readonly protector: PlannedProtector;
  /** Those that aren't there when it is planned as it was. */
  readonly items: readonly OpenItem[];
}

const placementOf = ({ ports, housing }: PlannedProtector): string => JSON.stringify([ports, housing.number]);

const nothingElse = (): undefined => undefined;

/** Whether plans of the plan's own job still decide as it does; only then what differs comes of what was found. */
export function plansAlike(plan: Plan, again: Plan): boolean {
  return decisionChanges(decisionsOf(plan), decisionsOf(again)).length === 0;
}

/** What of a housing is otherwise than planned, for planning; undefined: nothing. */
export function fittedOf(
  planned: PlannedProtector,
  entry: RecordEntry | undefined,
  outdoors: boolean | undefined,
): FittedThere | undefined {
  if (entry === undefined) return undefined;
  const { outcome, partFitted, leadLength } = entry;
  if (outcome === null || outcome === 'not fitted' || outcome === 'removed') return undefined;
  const was = planned.part ?? planned.existing ?? '';
  const isOther = partFitted !== '' && !sameText(partFitted, was);
  const isLead =
    leadLength !== null && hundredths(leadLength) !== hundredths(planned.wiring.leadLengthPlanned);
  const isOut = outdoors !== undefined && outdoors !== planned.outdoors;
  if (!isOther && !isLead && !isOut) return undefined;
  // Held as a part chosen by hand: another isn't looked for.
  return {
    ...(partFitted === '' && was === '' ? {} : { part: partFitted === '' ? was : partFitted }),
    ...(isLead ? { lead: leadLength } : {}),
    ...(isOut ? { outdoors } : {}),
  };
}

/** The place that an item of a plan names among its values. */
function isAt(item: OpenItem, { ports }: PlannedProtector): boolean {
  if (!('at' in item.values)) return false;
  const at = item.values.at as { equipment?: unknown; ports?: unknown };
  const [first] = ports;
  if (first === undefined || at.equipment !== first.equipment || !Array.isArray(at.ports)) return false;
  return ports.some(({ port }) => (at.ports as readonly unknown[]).includes(port));
}

/**
 * Plans anew what hangs otherwise than planned, housing by housing.
 * @param plan of the job
 * @param base what its job is planned as today
 * @param fitted by tag
 * @returns by tag
 */
export function housingsAnew(
  plan: Plan,
  base: Plan,
  planner: Planner,
  facts: readonly FoundOtherwise[],
  fitted: ReadonlyMap<string, FittedThere>,
): ReadonlyMap<string, Anew> {
  const known = new Set(base.openItems.map(itemKey));
  const anew = new Map<string, Anew>();
  // Two housings of one placement may hang otherwise each: they are planned one after the other.
  const numbers = new Set(plan.protectors.map(({ housing }) => housing.number));
  for (const number of numbers) {
    const own = plan.protectors.filter(
      ({ tag, housing }) => housing.number === number && (fitted.has(tag) || facts.length > 0),
    );
    if (own.length === 0) continue;
    const byPort = new Map<string, FittedThere>();
    for (const { tag, ports } of own) {
      const there = fitted.get(tag);
      if (there === undefined) continue;
      for (const { equipment, port } of ports) byPort.set(JSON.stringify([equipment, port]), there);
    }
    const now = planner.plan(facts, (equipment, port) => byPort.get(JSON.stringify([equipment, port])));
    if ('notUnderstood' in now) continue;
    const byPlacement = new Map(now.protectors.map((one) => [placementOf(one), one]));
    const items = now.openItems.filter((item) => !known.has(itemKey(item)));
    for (const planned of own) {
      const is = byPlacement.get(placementOf(planned));
      if (is) anew.set(planned.tag, { protector: is, items: items.filter((item) => isAt(item, planned)) });
    }
  }
  return anew;
}

/** What comes of one assumption that was found otherwise. */
export interface FactAnew {
  readonly changes: readonly ChangedHousing[];
  /** Items that weren't there, and hold a pack back. */
  readonly holdBack: readonly OpenItem[];
}

/**
 * Plans a job anew with one assumption as it was found.
 * @returns undefined where its field doesn't understand what was found
 */
export function factAnew(base: Plan, planner: Planner, fact: FoundOtherwise): FactAnew | undefined {
  const now = planner.plan([fact], nothingElse);
  if ('notUnderstood' in now) return undefined;
  const known = new Set(base.openItems.map(itemKey));
  return {
    changes: decisionChanges(decisionsOf(base), decisionsOf(now)),
    holdBack: now.openItems.filter((item) => item.severity !== 'confirm' && !known.has(itemKey(item))),
  };
}
