import { isNec, type Basis } from '../../model/editions.js';
import type { Plan, PlannedEquipment, PlannedProtector } from '../../model/plan.js';

/** What a permit sheet leaves to be filled in at a protector, since nobody states it. */
export interface Blank {
  readonly tag: string;
  readonly what: 'device' | 'fault current' | 'lead' | 'ground' | 'listing';
}

type Device = PlannedProtector['overcurrent'][number];

/** True for the circuit's own supply, which limits its current: a device there is by others. */
function isBySupply({ because }: Device): boolean {
  return because.code === 'overcurrent/by-supply-of-control';
}

/** True where the size of a device is left to be filled in: none is known of, or the part's catalogue states none. */
export function isDeviceBlank(device: Device): boolean {
  if (device.device === 'none' || isBySupply(device)) return false;
  return device.device === 'unknown' || device.amps === null;
}

/** True where the fault current is asked for, and not known or not all of it: not on control circuits. */
export function isFaultCurrentBlank({ ports, required }: PlannedProtector): boolean {
  if (required.sccr !== null) return required.backfeedUnknown.length > 0;
  return ports.some(({ port }) => port !== 'terminals');
}

/** True where neither the catalogue nor a rule says how thick the line leads are. */
export function isLeadBlank({ figures, wiring }: PlannedProtector): boolean {
  return wiring.leadGauge === '' && (figures?.smallestLead ?? null) === null;
}

/** True where neither says how thick the ground lead is. */
export function isGroundBlank({ figures, wiring }: PlannedProtector): boolean {
  return wiring.leadGauge === '' && (figures?.smallestGroundLead ?? null) === null;
}

/** True of a turbine whose phases float: what the NEC asks of ungrounded systems holds there. */
export function isFloatingTurbine({ system, required }: PlannedProtector, basis: Basis): boolean {
  return isNec(basis) && required.current === 'ac' && system === 'three-phase';
}

/** True where a part must be fit for an ungrounded system, and the catalogue has no listing of it for one. */
export function isListingBlank(protector: PlannedProtector, basis: Basis): boolean {
  const { partDetails } = protector;
  if (partDetails === null || !isFloatingTurbine(protector, basis)) return false;
  return !partDetails.listedFor.includes('ungrounded');
}

/** True of a service whose fault current the drawing leaves to be filled in. */
export function isSourceBlank({ kind, facts }: PlannedEquipment): boolean {
  return kind === 'service' && !facts.some(({ field }) => field === 'fault_current');
}

/**
 * Everything that the sheets leave to be filled in, protector by protector; then at the sources of the drawing.
 * What others decide by their own documents is no blank.
 */
export function blanksOf(plan: Plan): Blank[] {
  const sources = plan.site.equipments.filter(isSourceBlank);
  const protectors = plan.protectors.flatMap((protector) => {
    const { tag } = protector;
    const whats: Blank['what'][] = [];
    if (protector.overcurrent.some(isDeviceBlank)) whats.push('device');
    if (isFaultCurrentBlank(protector)) whats.push('fault current');
    if (isLeadBlank(protector)) whats.push('lead');
    if (isGroundBlank(protector)) whats.push('ground');
    if (isListingBlank(protector, plan.basis)) whats.push('listing');
    return whats.map((what) => ({ tag, what }));
  });
  return [...protectors, ...sources.map(({ tag }) => ({ tag, what: 'fault current' as const }))];
}
