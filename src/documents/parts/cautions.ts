import { z } from 'zod';
import type { Plan, PlannedEquipment, PlannedProtector } from '../../model/plan.js';
import { equipmentOf } from './site-index.js';

/** A safety message after ANSI Z535.6: signal word, hazard, consequence, how to avoid it. */
export const CautionSchema = z.object({
  word: z.enum(['DANGER', 'WARNING', 'CAUTION', 'NOTICE']),
  /** `danger`...: the style of the panel. */
  style: z.enum(['danger', 'warning', 'caution', 'notice']),
  /** False for NOTICE, which has no safety alert symbol. */
  alert: z.boolean(),
  hazard: z.string(),
  consequence: z.string(),
  avoidance: z.string(),
});
export type Caution = z.infer<typeof CautionSchema>;

function caution(word: Caution['word'], hazard: string, consequence: string, avoidance: string): Caution {
  const style = { DANGER: 'danger', WARNING: 'warning', CAUTION: 'caution', NOTICE: 'notice' } as const;
  return { word, style: style[word], alert: word !== 'NOTICE', hazard, consequence, avoidance };
}

const LIVE = caution(
  'DANGER',
  'Hazardous voltage.',
  'Touching a live conductor will kill or severely injure.',
  'Qualified persons only. Isolate by the numbered steps, lock out, keep away from what stays live, and prove each conductor dead with a tester that was itself proved, to local code.',
);
const ARC = caution(
  'WARNING',
  'A battery drives a very high current into a short circuit.',
  'An arc or molten metal could blind or severely burn.',
  'Qualified persons only. Open the battery’s disconnect and lock it out, cover bare terminals, use insulated tools, wear eye protection, and take off rings and watches.',
);
const LOW_VOLTAGE = caution(
  'WARNING',
  'Other circuits beside this one may be at a hazardous voltage.',
  'Touching a live conductor could kill or severely injure.',
  'Qualified persons only. Lock out what feeds the box, and prove each conductor dead with a tester that was itself proved, to local code.',
);
const SUN = caution(
  'WARNING',
  'Light on a solar array makes voltage; no switch turns the array off.',
  'Shock or a DC arc could kill or severely burn.',
  'Open the array disconnect, treat its array side as live, never pull a DC connector under load, and measure before you touch.',
);
const BATTERY = caution(
  'WARNING',
  'A battery stays live at its terminals, whatever is open.',
  'A short circuit could burn, throw molten metal or start a fire.',
  'Open the battery disconnect, cover the bare terminals, use insulated tools, and take off rings and watches.',
);
const GAS = caution(
  'WARNING',
  'A lead-acid or nickel-cadmium battery makes explosive gas, and its electrolyte burns.',
  'An explosion could kill or blind; acid or lye could severely burn eyes and skin.',
  'Ventilate. No sparks, flames or smoking. Wear eye protection. Switch nothing, and mount no switching device, where gas can gather (see NEC Article 480, value from memory, or local rules).',
);
const GENERATOR = caution(
  'WARNING',
  'A generator may start by itself.',
  'Voltage that comes back without notice could kill or severely injure.',
  'Lock out its starter and open its breaker before you work on anything that it feeds.',
);
const TURBINE = caution(
  'WARNING',
  'A turbine makes voltage whenever it turns, and more when it is unloaded.',
  'Shock or moving parts could kill or severely injure.',
  'Stop and secure the turbine as its maker says before you open its circuit.',
);
const TWO_SUPPLIES = caution(
  'WARNING',
  'A housing named in this document is fed from two supplies.',
  'Opening one of them leaves voltage in the box that could kill or severely injure.',
  'Open and lock out both, and prove both sides dead.',
);
const THIS_BOX = caution(
  'WARNING',
  'This housing is fed from two supplies.',
  'Opening one of them leaves voltage in the box that could kill or severely injure.',
  'Open and lock out both, and prove both sides dead.',
);
const STRIKE = caution(
  'WARNING',
  'Lightning can strike while you work.',
  'A surge on the conductors could kill or severely injure.',
  'Do no work on outdoor conductors while a thunderstorm is near.',
);
const BREAKER = caution(
  'CAUTION',
  'A used-up protector can be hot.',
  'Touching it could cause a burn.',
  'Let it cool, and replace it as its instructions say.',
);
const INSULATION = caution(
  'NOTICE',
  'An insulation test drives the protectors into conduction.',
  'The reading is wrong and the protectors can be damaged.',
  'Disconnect every protector before the test and connect it again after.',
);

function touches(plan: Plan, kinds: readonly string[]): boolean {
  return plan.site.equipments.some((e) => kinds.includes(e.kind));
}

/** True for a battery that gives off gas while it is charged, and for one whose chemistry isn't stated. */
export function mayGas(equipment: PlannedEquipment | undefined): boolean {
  if (equipment?.kind !== 'battery') return false;
  const stated = equipment.facts.find(({ field }) => field === 'battery_chemistry');
  return stated === undefined || stated.value === 'lead-acid' || stated.value === 'nicd';
}

/** Kinds of a site that can be of nothing but extra-low voltage. */
const OF_LOW_VOLTAGE: ReadonlySet<string> = new Set([
  'battery',
  'dc-load',
  'dc-panel',
  'control-circuit',
  'signal-line',
]);

/** A site whose boxes are all below the limits has none that is marked DANGER. */
function gravestOf({ protectors, site }: Plan): Caution[] {
  const hazards = new Set(protectors.map((p) => p.wiring.hazard));
  const isLow =
    hazards.size > 0 && !hazards.has('shock') && site.equipments.every((e) => OF_LOW_VOLTAGE.has(e.kind));
  if (!isLow) return [LIVE];
  return [...(hazards.has('arc') ? [ARC] : []), ...(hazards.has('low-voltage') ? [LOW_VOLTAGE] : [])];
}

/** The cautions that fit the site as a whole, gravest first. */
export function siteCautions(plan: Plan): Caution[] {
  return [
    ...gravestOf(plan),
    ...(touches(plan, ['array', 'combiner', 'ac-module-branch']) ? [SUN] : []),
    ...(touches(plan, ['battery', 'charge-controller', 'inverter-charger']) ? [BATTERY] : []),
    ...(plan.site.equipments.some(mayGas) ? [GAS] : []),
    ...(touches(plan, ['generator']) ? [GENERATOR] : []),
    ...(touches(plan, ['wind-turbine', 'hydro-turbine']) ? [TURBINE] : []),
    ...(plan.protectors.some((p) => p.wiring.fedFromTwoSupplies) ? [TWO_SUPPLIES] : []),
    STRIKE,
    BREAKER,
    INSULATION,
  ];
}

/** The cautions to read at one box before it is opened. */
export function boxCautions(protector: PlannedProtector, plan: Plan): Caution[] {
  const gravest = { shock: LIVE, arc: ARC, 'low-voltage': LOW_VOLTAGE }[protector.wiring.hazard];
  const isAtBattery = protector.ports.some(({ equipment }) => mayGas(equipmentOf(plan, equipment)));
  return [gravest, ...(isAtBattery ? [GAS] : []), ...(protector.wiring.fedFromTwoSupplies ? [THIS_BOX] : [])];
}
