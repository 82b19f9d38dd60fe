import type { PlannedProtector } from '../model/plan.js';
import type { RecordEntry } from '../model/record.js';
import { sameText } from './entries.js';

/**
 * A housing as it is there.
 * @param planned as it was planned
 * @param entry what the record says of it; undefined: nothing yet
 * @param anew as it is planned with what hangs there; undefined: it hangs as planned
 * @param untold true where it hangs otherwise, and nobody can tell its figures
 * @returns undefined where nothing hangs there, or nobody says
 */
export function builtProtector(
  planned: PlannedProtector,
  entry: RecordEntry | undefined,
  anew: PlannedProtector | undefined,
  untold: boolean,
): PlannedProtector | undefined {
  if (entry === undefined || entry.outcome === null) return undefined;
  if (entry.outcome === 'not fitted' || entry.outcome === 'removed') return undefined;
  const was = planned.part ?? planned.existing ?? '';
  const isOther = entry.partFitted !== '' && !sameText(entry.partFitted, was);
  const one = anew ?? planned;
  const serials = entry.serials.map(({ serial }) => serial).filter((serial) => serial !== '');
  return {
    ...one,
    tag: planned.tag,
    part: isOther ? entry.partFitted : planned.part,
    existing: isOther ? null : planned.existing,
    // Planned anew it was held as a part chosen by hand.
    byHand: isOther || planned.byHand,
    serial: serials.length > 0 ? serials.join('; ') : planned.serial,
    place: entry.place === '' ? planned.place : entry.place,
    wiring: entry.leadLength === null ? one.wiring : { ...one.wiring, leadLengthPlanned: entry.leadLength },
    ...(untold ? { figures: null, ...(isOther ? { partDetails: null } : {}) } : {}),
  };
}
