import { z } from 'zod';
import type { Plan, PlannedEquipment, PlannedProtector } from '../../model/plan.js';
import { crewPackWords, type CrewLanguage } from '../../words/crew-language.js';
import type { CautionName } from '../../words/languages/crew-pack-words.js';
import { equipmentOf } from './site-index.js';

/** A safety message after ANSI Z535.6: signal word, hazard, consequence, how to avoid it. */
export const CautionSchema = z.object({
  word: z.string().describe('Signal word in the language of the page'),
  /** `danger`...: the style of the panel. */
  style: z.enum(['danger', 'warning', 'caution', 'notice']),
  /** False for NOTICE, which has no safety alert symbol. */
  alert: z.boolean(),
  hazard: z.string(),
  consequence: z.string(),
  avoidance: z.string(),
});
export type Caution = z.infer<typeof CautionSchema>;

/** The signal word of each message: DANGER where it kills, WARNING where it could, CAUTION where it could hurt, NOTICE for things. */
const STYLES: { readonly [C in CautionName]: Caution['style'] } = {
  live: 'danger',
  arc: 'warning',
  lowVoltage: 'warning',
  sun: 'warning',
  acModules: 'warning',
  battery: 'warning',
  gas: 'warning',
  generator: 'warning',
  turbine: 'warning',
  twoSupplies: 'warning',
  thisBox: 'warning',
  strike: 'warning',
  usedUp: 'caution',
  insulation: 'notice',
};

function caution(name: CautionName, language: CrewLanguage): Caution {
  const { safetyWords, cautions } = crewPackWords(language);
  const style = STYLES[name];
  return { word: safetyWords[style], style, alert: style !== 'notice', ...cautions[name] };
}

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
function gravestOf({ protectors, site }: Plan): CautionName[] {
  const hazards = new Set(protectors.map((p) => p.wiring.hazard));
  const isLow =
    hazards.size > 0 && !hazards.has('shock') && site.equipments.every((e) => OF_LOW_VOLTAGE.has(e.kind));
  if (!isLow) return ['live'];
  return [
    ...(hazards.has('arc') ? (['arc'] as const) : []),
    ...(hazards.has('low-voltage') ? (['lowVoltage'] as const) : []),
  ];
}

/** The cautions that fit the site as a whole, gravest first. */
export function siteCautions(plan: Plan, language: CrewLanguage): Caution[] {
  const hasArray = touches(plan, ['array', 'combiner']);
  const fits: readonly (readonly [name: CautionName, holds: boolean])[] = [
    ['sun', hasArray],
    ['acModules', !hasArray && touches(plan, ['ac-module-branch'])],
    ['battery', touches(plan, ['battery', 'charge-controller', 'inverter-charger'])],
    ['gas', plan.site.equipments.some(mayGas)],
    ['generator', touches(plan, ['generator'])],
    ['turbine', touches(plan, ['wind-turbine', 'hydro-turbine'])],
    ['twoSupplies', plan.protectors.some((p) => p.wiring.fedFromTwoSupplies)],
    ['strike', true],
    ['usedUp', true],
    ['insulation', true],
  ];
  const names = [...gravestOf(plan), ...fits.flatMap(([name, holds]) => (holds ? [name] : []))];
  return names.map((name) => caution(name, language));
}

/** The cautions to read at one box before it is opened. */
export function boxCautions(
  protector: PlannedProtector,
  plan: Plan,
  language: CrewLanguage = 'en',
): Caution[] {
  const gravest = ({ shock: 'live', arc: 'arc', 'low-voltage': 'lowVoltage' } as const)[
    protector.wiring.hazard
  ];
  const isAtBattery = protector.ports.some(({ equipment }) => mayGas(equipmentOf(plan, equipment)));
  const names: CautionName[] = [
    gravest,
    ...(isAtBattery ? (['gas'] as const) : []),
    ...(protector.wiring.fedFromTwoSupplies ? (['thisBox'] as const) : []),
  ];
  return names.map((name) => caution(name, language));
}
