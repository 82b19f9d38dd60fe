import { reason } from '../model/reason.js';
import type { AnyPlacementRule, PlacementReason, Withheld } from './placement-facts.js';
import { asked } from './place/asked.js';
import { service as serviceRule } from './place/service.js';
import { windPremises } from './place/wind-premises.js';

/** Stays at the panel: the list asks for it there, or it is the place of 694.7(D) itself. */
const STAYING: ReadonlySet<string> = new Set([asked, windPremises].map((rule: AnyPlacementRule) => rule.id));

/** What becomes of the reasons at a panel that is its service's place. */
export interface AtServicePlace {
  /** What the panel keeps for itself. */
  readonly stay: readonly PlacementReason[];
  /** What the service is asked for in its stead. */
  readonly moved: readonly PlacementReason[];
  /** Why the panel has no protector of its own; undefined where it has. */
  readonly withheld: Withheld | undefined;
}

/**
 * A panel that is its service's place has no place of its own: what a rule asks for there is asked of the service, once.
 * @param panel a panel with its reasons
 * @param service the service whose place it is; it has a protector
 */
export function atServicePlace(
  panel: { readonly tag: string; readonly reasons: readonly PlacementReason[] },
  service: { readonly tag: string; readonly reasons: readonly PlacementReason[] },
): AtServicePlace {
  const stay = panel.reasons.filter((r) => STAYING.has(r.rule.id));
  const asksAlready = new Set(service.reasons.map((r) => r.rule.id));
  const moved: PlacementReason[] = [];
  for (const one of panel.reasons) {
    if (STAYING.has(one.rule.id) || asksAlready.has(one.rule.id)) continue;
    asksAlready.add(one.rule.id);
    const because = reason('service-place/reason', { reason: one.because, panel: panel.tag });
    moved.push({ ...one, because });
  }
  const because = reason('service-place/shared', { service: service.tag });
  return { stay, moved, withheld: stay.length === 0 ? { rule: serviceRule, because } : undefined };
}
