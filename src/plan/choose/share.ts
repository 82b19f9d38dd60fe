import { reason } from '../../model/reason.js';
import type { Catalogue } from '../../model/catalogue.js';
import type { SitePort } from '../../model/site.js';
import type { PlacementReason } from '../../rules/placement-facts.js';
import { strongest, type Placement } from '../context/verdict.js';
import { ratePlacement } from '../rate/rate.js';
import { selectPart, type Selected } from './select.js';
import type { JobContext } from '../context/job-context.js';
import { wirePort } from '../rate/wire.js';

/**
 * Rates placements and chooses their parts; the AC ports of one single-phase inverter-charger share a protector where
 * they are of one system and every conductor that is asked for fits its channels.
 * @returns one for each protector place
 */
export function rateAndChoose(
  job: JobContext,
  catalogue: Catalogue | undefined,
  placements: readonly Placement[],
): readonly Selected[] {
  const found: Selected[] = [];
  const taken = new Set<Placement>();
  for (const placement of placements) {
    if (taken.has(placement)) continue;
    const partners = partnersOf(job, placement, placements).filter((p) => !taken.has(p));
    const shared = partners.length > 1 ? trySharing(job, catalogue, partners) : undefined;
    if (shared) {
      for (const one of shared.from) taken.add(one);
      found.push(shared.selected);
    }
    if (!taken.has(placement)) {
      taken.add(placement);
      found.push(select(job, catalogue, placement));
    }
  }
  return found;
}

function select(job: JobContext, catalogue: Catalogue | undefined, placement: Placement): Selected {
  const wirings = placement.ports.map((port) => wirePort(job, port, placement.subject));
  return selectPart(job, catalogue, placement, ratePlacement(job, placement), wirings);
}

const AC_PORTS: ReadonlySet<string> = new Set(['ac-in', 'ac-in-2', 'ac-out']);

/** The AC placements of the same single-phase inverter-charger, of one system. */
function partnersOf(job: JobContext, placement: Placement, all: readonly Placement[]): readonly Placement[] {
  const port = placement.ports[0];
  // A 3+1 part has one channel from N to ground: two ports don't fit it.
  if (!port || !mayShare(port) || isTt(job)) return [];
  return all.filter((other) => {
    const its = other.ports[0];
    return (
      its !== undefined && its.equipment === port.equipment && mayShare(its) && its.system === port.system
    );
  });
}

function isTt({ site }: JobContext): boolean {
  return site.basis.value === 'iec' && site.earthing.value === 'TT';
}

function mayShare(port: SitePort): boolean {
  const isSinglePhase = port.system === '120' || port.system === '230';
  return port.equipment.kind === 'inverter-charger' && AC_PORTS.has(port.cls) && isSinglePhase;
}

/** All of them in one housing if they fit, else the first pair of AC in and AC out. */
function trySharing(
  job: JobContext,
  catalogue: Catalogue | undefined,
  partners: readonly Placement[],
): { readonly selected: Selected; readonly from: readonly Placement[] } | undefined {
  const pairs = partners.filter((p) => p.ports[0]?.cls !== 'ac-in-2');
  for (const set of partners.length > 2 ? [partners, pairs] : [partners]) {
    if (set.length < 2) continue;
    const selected = select(job, catalogue, merged(set));
    if (fitsOneHousing(selected, catalogue)) return { selected, from: set };
  }
  return undefined;
}

function fitsOneHousing(selected: Selected, catalogue: Catalogue | undefined): boolean {
  // Without a catalogue the place is a specification: one protector of so many channels.
  if (!catalogue) return true;
  const asked = selected.wirings.reduce((sum, w) => sum + w.conductors.length, 0);
  return selected.part !== undefined && selected.part.channels >= asked;
}

function merged(set: readonly Placement[]): Placement {
  const reasons: PlacementReason[] = [];
  for (const placement of set) {
    for (const one of placement.reasons) {
      const same = reasons.findIndex((r) => r.rule === one.rule);
      const before = reasons[same];
      if (!before) reasons.push(one);
      else {
        const strength = before.strength === 'required' ? before.strength : one.strength;
        reasons[same] = {
          ...before,
          strength,
          because: reason('several', { reasons: [before.because, one.because] }),
        };
      }
    }
  }
  const first = set[0];
  if (!first) throw new Error('nothing to merge');
  return {
    ports: set.flatMap((p) => p.ports),
    subject: first.subject,
    ...(first.fitted === undefined ? {} : { fitted: first.fitted }),
    reasons,
    strength: strongest(reasons),
  };
}
