import { parseWireGauge } from '../electrical/wire-gauge.js';
import type { Part, WireRange, WireSize } from '../model/catalogue.js';
import { isNec, type Basis } from '../model/editions.js';
import type { Lead } from '../model/lead.js';
import { leadBehindDevice, leadForCurrent } from './lead-ampacity.js';
import { leadDuty, type LeadDuty, type OvercurrentPart, type OvercurrentPlace } from './lead-duty.js';
import { smallestLeads } from './lead-size.js';

/** What a part says of its leads. */
export type LeadPart = OvercurrentPart & Pick<Part, 'wireRanges' | 'leadByInstructions' | 'iecClass'>;

/** What the smallest leads of a part hang on. */
export interface LeadFacts {
  readonly basis: Basis;
  /** The leads of a class T1 part are asked for here, whatever the part is. */
  readonly classOneAsked: boolean;
  /** One a port that shares the protector. */
  readonly places: readonly OvercurrentPlace[];
  readonly part: LeadPart;
}

/** The least lead that one thing asks for; `lead`: undefined stands for both leads. */
export interface LeadFloor {
  readonly by: 'code' | 'terminals' | 'device' | 'current';
  readonly lead: 'line' | 'ground' | undefined;
  readonly size: WireSize;
  /** A; of the device, or the current; 0 of the others. */
  readonly amperes: number;
}

/** The smallest leads of a part in one metal. */
export interface MetalLeads {
  readonly metal: Lead['metal'];
  readonly line: WireSize;
  readonly ground: WireSize;
  readonly floors: readonly LeadFloor[];
  /** The largest wire that the terminals take; undefined: not stated. */
  readonly most: WireSize | undefined;
  /** A; of a device or a current that is more than any lead of the table bears; undefined: there is none. */
  readonly beyond: number | undefined;
  /** A; of a device or a current that asks for thicker leads, or for thicker ones than the table has, where the part’s instructions go before it. */
  readonly spared: number | undefined;
  /** True where the terminals take both leads, and the table has them. */
  readonly fits: boolean;
}

const METALS_UNNAMED: readonly (Pick<WireRange, 'metal'> & Partial<WireRange>)[] = [{ metal: 'copper' }];

/** True where `a` is no thicker than `b`; a cross-section that was computed from a gauge may differ in its last digit. */
export function isWithin(a: WireSize, b: WireSize): boolean {
  return a.area <= b.area * (1 + 1e-9);
}

/**
 * The smallest line lead and ground lead of a part at a place, for each metal that its terminals are for (copper where it names
 * none).
 * @returns empty where no figure is known for any of those metals
 * Source: NEC 242.28 (285.26 in 2017), 240.4(D), 240.4(B), Table 310.16, 240.21(B)(1)(1)b exception; IEC 60364-5-53:2019 cl.
 * 534.4.10 (value from memory); the wire range of the part.
 */
export function leadsByMetal(facts: LeadFacts): readonly MetalLeads[] {
  const { wireRanges } = facts.part;
  const ranges = wireRanges.length > 0 ? wireRanges : METALS_UNNAMED;
  return ranges.flatMap((range) => metalLeads(facts, range) ?? []);
}

/** The smallest leads that the part can have: copper, where both metals fit; undefined: none fits, or none is known. */
export function leadsToPlan(each: readonly MetalLeads[]): MetalLeads | undefined {
  const fitting = each.filter((one) => one.fits);
  return fitting.find((one) => one.metal === 'copper') ?? fitting[0];
}

function metalLeads(
  facts: LeadFacts,
  { metal, least, most }: Pick<WireRange, 'metal'> & Partial<WireRange>,
): MetalLeads | undefined {
  const floors = codeFloors(facts, metal);
  if (floors.length === 0) return undefined;
  if (least) floors.push({ by: 'terminals', lead: undefined, size: least, amperes: 0 });
  let beyond: number | undefined;
  const duties = dutiesOf(facts);
  const byInstructions = facts.part.leadByInstructions === true;
  for (const duty of byInstructions ? [] : duties) {
    const floor = dutyFloor(duty, metal);
    if (floor) floors.push(floor);
    else beyond = Math.max(beyond ?? 0, duty.amperes);
  }
  const line = thickest(floors, 'line');
  const ground = thickest(floors, 'ground');
  const taken = most === undefined || (isWithin(line, most) && isWithin(ground, most));
  const thin = isWithin(line, ground) ? line : ground;
  const asks = ({ of, amperes }: KnownDuty): boolean => {
    const floor = dutyFloor({ of, amperes }, metal);
    return !floor || !isWithin(floor.size, thin);
  };
  const above = byInstructions ? duties.filter(asks).map(({ amperes }) => amperes) : [];
  const spared = above.length > 0 ? Math.max(...above) : undefined;
  return { metal, line, ground, floors, most, beyond, spared, fits: beyond === undefined && taken };
}

function codeFloors({ basis, classOneAsked, part }: LeadFacts, metal: Lead['metal']): LeadFloor[] {
  // A class that nobody states is a shortfall of its own (rate/listing): the leads are those that the place asks for.
  const classOne = classOneAsked || part.iecClass === 'T1';
  const { live, earth, aluminum } = smallestLeads(basis, classOne ? 'T1' : 'T2');
  if (metal === 'aluminium') {
    return aluminum === null ? [] : [{ by: 'code', lead: undefined, size: sizeOf(aluminum), amperes: 0 }];
  }
  if (live === earth) return [{ by: 'code', lead: undefined, size: sizeOf(live), amperes: 0 }];
  return [
    { by: 'code', lead: 'line', size: sizeOf(live), amperes: 0 },
    { by: 'code', lead: 'ground', size: sizeOf(earth), amperes: 0 },
  ];
}

type KnownDuty = Exclude<LeadDuty, { readonly of: 'nothing' }> & { readonly amperes: number };

/** What devices and currents ask of the leads; under `iec` nothing, as the clause alone does. */
function dutiesOf({ basis, places, part }: LeadFacts): readonly KnownDuty[] {
  if (!isNec(basis)) return [];
  return places
    .map((place) => leadDuty(place, part))
    .filter((duty): duty is KnownDuty => duty.of !== 'nothing' && duty.amperes !== undefined);
}

/** True where a device whose size nobody states decides how thick the leads are. */
export function isDeviceUnknown({
  basis,
  places,
  part,
}: Pick<LeadFacts, 'basis' | 'places' | 'part'>): boolean {
  if (!isNec(basis) || part.leadByInstructions === true) return false;
  return places.some((place) => {
    const duty = leadDuty(place, part);
    return duty.of === 'device' && duty.amperes === undefined;
  });
}

function dutyFloor({ of, amperes }: KnownDuty, metal: Lead['metal']): LeadFloor | undefined {
  const size = (of === 'device' ? leadBehindDevice : leadForCurrent)(amperes, metal);
  return size && { by: of, lead: undefined, size, amperes };
}

/** The floor that decides is the first of the thickest. */
function thickest(floors: readonly LeadFloor[], lead: 'line' | 'ground'): WireSize {
  let found: WireSize | undefined;
  for (const floor of floors) {
    if (floor.lead !== undefined && floor.lead !== lead) continue;
    if (!found || !isWithin(floor.size, found)) found = floor.size;
  }
  if (!found) throw new Error(`no least ${lead} lead`);
  return found;
}

const sizes = new Map<string, WireSize>();

/** A gauge of the tables, which are few and asked for of every part. */
function sizeOf(gauge: string): WireSize {
  const known = sizes.get(gauge);
  if (known) return known;
  const size = parseWireGauge(gauge);
  if (!size) throw new Error(`not a gauge: ${gauge}`);
  sizes.set(gauge, size);
  return size;
}
