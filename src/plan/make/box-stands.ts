import { AC_SYSTEM_DATA } from '../../electrical/ac-systems.js';
import { aroundNominal } from '../../electrical/service-voltage.js';
import type { SiteEquipment, SitePort } from '../../model/site.js';
import { portsInUse } from '../../site/in-use.js';
import type { Selected } from '../choose/select.js';
import type { JobContext } from '../context/job-context.js';
import type { Placement } from '../context/verdict.js';
import type { Requirement } from '../rate/rate.js';

/** A voltage that may stand in an enclosure, V; undefined: not known; null: nor whether it alternates. */
export interface StandingVoltage {
  readonly current: 'ac' | 'dc' | null;
  readonly value: number | undefined;
}

/** What stands in an enclosure at other ports than those of a protector. */
export interface BoxStands {
  readonly atService: boolean;
  /** A; undefined: one that isn't known, or not wholly. */
  readonly faultCurrents: readonly (number | undefined)[];
  /** A; what is known of each, where something is. */
  readonly faultCurrentsKnown: readonly number[];
  readonly volts: readonly StandingVoltage[];
}

type PortStands = Omit<BoxStands, 'atService'>;

/** Of a box of which the list knows nothing but a control circuit that ends there. */
const NOTHING_KNOWN: PortStands = {
  faultCurrents: [undefined],
  faultCurrentsKnown: [],
  volts: [{ current: 'ac', value: undefined }],
};

/**
 * What stands beside a protector in its enclosure: at all other ports of its equipment that are in use, each looked at once.
 * @param atBare what would be asked at a port without a protector
 * @returns by placement
 */
export function boxStands(
  job: JobContext,
  selected: readonly Selected[],
  atBare: (port: SitePort) => Requirement,
): (placement: Placement) => BoxStands {
  const rated = new Map<SitePort, Requirement>();
  for (const { placement, requirement } of selected)
    for (const port of placement.ports) if (!rated.has(port)) rated.set(port, requirement);
  const found = new Map<SitePort, PortStands>();
  const at = (port: SitePort): PortStands => {
    let stands = found.get(port);
    if (!stands) found.set(port, (stands = standsAt(job, port, rated, atBare)));
    return stands;
  };
  return ({ ports }) => {
    let atService = false;
    const faultCurrents: (number | undefined)[] = [];
    const faultCurrentsKnown: number[] = [];
    const volts: StandingVoltage[] = [];
    const add = (stands: PortStands): void => {
      faultCurrents.push(...stands.faultCurrents);
      faultCurrentsKnown.push(...stands.faultCurrentsKnown);
      volts.push(...stands.volts);
    };
    const equipments = new Set<SiteEquipment>();
    for (const { equipment } of ports) equipments.add(equipment);
    for (const equipment of equipments) {
      if (isUnknown(equipment)) add(NOTHING_KNOWN);
      for (const port of portsInUse(equipment)) {
        if (ports.includes(port)) continue;
        if (port.cls === 'service') atService = true;
        add(at(port));
      }
    }
    return { atService, faultCurrents, faultCurrentsKnown, volts };
  };
}

function isUnknown({ kind, ports }: SiteEquipment): boolean {
  return kind !== 'control-circuit' && ports.every(({ cls }) => cls === 'terminals');
}

/** V; what stands between two conductors of an AC place, where it is proved dead from each to each. */
export function betweenConductors(job: JobContext, { system }: SitePort): readonly number[] {
  if (system === undefined) return [];
  const nominal = AC_SYSTEM_DATA[system].betweenConductors;
  return [aroundNominal(nominal, job.settings.measuring.aroundNominal).high];
}

function standsAt(
  job: JobContext,
  port: SitePort,
  rated: ReadonlyMap<SitePort, Requirement>,
  atBare: (port: SitePort) => Requirement,
): PortStands {
  const between: StandingVoltage[] = [];
  for (const value of betweenConductors(job, port)) between.push({ current: 'ac', value });
  // Switched pulses, of which no rule knows more; the drive limits what it drives into a fault.
  if (port.equipment.kind === 'pump-drive' && port.cls === 'ac-out')
    return { faultCurrents: [], faultCurrentsKnown: [], volts: between };
  const before = rated.get(port);
  // A control circuit without a protector here is told by its own box.
  if (!before && port.cls === 'terminals') return { faultCurrents: [], faultCurrentsKnown: [], volts: [] };
  const { circuit, current, mcov, sccr, sccrState } = before ?? atBare(port);
  // No rule asks for that of a direct-current turbine, and nobody knows it.
  const isNone = sccrState === 'not-asked' && circuit === 'control';
  return {
    faultCurrents: isNone ? [] : [sccrState === 'known' ? sccr?.value : undefined],
    faultCurrentsKnown: isNone || !sccr ? [] : [sccr.value],
    volts: [{ current: current ?? null, value: mcov?.value }, ...between],
  };
}
