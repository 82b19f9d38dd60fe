import { smallestLeads } from '../../rules/lead-size.js';
import { parseWireGauge } from '../../electrical/wire-gauge.js';
import type { Part } from '../../model/catalogue.js';
import type { Basis } from '../../model/editions.js';
import type { Quantity } from '../../model/quantity.js';
import type { Reason } from '../../model/reason.js';
import { leadAreaOf, leadGaugeOf, type LineLead } from './planned-lead.js';
import type { PortWiring } from '../rate/wire.js';

/** A lead as planned that is thinner than the basis allows. */
export interface ThinLead {
  /** The gauge, as the catalogue has it. */
  readonly planned: string;
  /** mm2 (trade unit); its cross-section. */
  readonly area: Quantity;
  /** The smallest that is allowed: `6 mm2`. */
  readonly least: string;
  readonly source: Reason;
}

/**
 * Holds the lead of a part as planned against the smallest earth lead of the basis, which is never thinner than the live one.
 * @param part the chosen part; a part without a gauge is planned with 10 AWG
 * @param smallest the smallest leads there
 * @param wirings how the ports of its place are wired: some ask for the lead of a class T1 part whatever the part is
 * @returns undefined where the lead is thick enough
 * Source: NEC 242.28 (285.26 in 2017); IEC 60364-5-53:2019 cl. 534.4.10 (value from memory).
 */
export function thinLead(
  part: Part,
  basis: Basis,
  wirings: readonly PortWiring[],
  smallest: LineLead,
): ThinLead | undefined {
  const classOne = part.iecClass === 'T1' || wirings.some((w) => w.facts.classOneAsked);
  const { earth, source } = smallestLeads(basis, classOne ? 'T1' : 'T2');
  const area = leadAreaOf(part, smallest);
  // A cross-section that was computed from a gauge number may differ in the last digit.
  if (area >= areaOf(earth) * (1 - 1e-9)) return undefined;
  return { planned: leadGaugeOf(part, smallest), area: { value: area, unit: 'mm2' }, least: earth, source };
}

const areas = new Map<string, number>();

/** mm2 (trade unit) of a gauge of the tables, which are few and asked for of every protector. */
function areaOf(gauge: string): number {
  const known = areas.get(gauge);
  if (known !== undefined) return known;
  const area = parseWireGauge(gauge)?.area;
  if (area === undefined) throw new Error(`not a gauge: ${gauge}`);
  areas.set(gauge, area);
  return area;
}
