import { z } from 'zod';
import { isNec } from '../../model/editions.js';
import type { Plan } from '../../model/plan.js';
import type { ProtectedGrounding, ProtectedSystem } from '../../model/words.js';
import { PLATES } from '../../words/plates.js';
import { equipmentOf } from '../parts/site-index.js';

/** A marking that the code asks for at an equipment, in its own words; the code is in English. */
export const PlateSchema = z.object({
  at: z.string().describe('Tag of the equipment, for who cuts the sheet'),
  word: z.string().describe('Empty where the code gives the marking no such word'),
  text: z.string(),
  date: z.string().describe('Before a blank for the date of a calculation; empty where there is none'),
});
export type Plate = z.infer<typeof PlateSchema>;

/** V between lines of AC systems that can be ungrounded (each is its own name); of what has a neutral, its first figure. */
function betweenLines(system: ProtectedSystem): number {
  return Number(/^\d+/.exec(system)?.[0] ?? 0);
}

/** Where one side of a delta of 240 V is grounded in its middle: its height, 240 V x sqrt(3) / 2. */
const HIGH_LEG_VOLTS = Math.round((240 * Math.sqrt(3)) / 2);

function systemPlate(
  tag: string,
  system: ProtectedSystem | null,
  grounding: ProtectedGrounding | null,
): Plate[] {
  if (system === '240/120 high-leg' && grounding === 'solid')
    return [{ at: tag, word: PLATES.word, text: PLATES.highLeg(HIGH_LEG_VOLTS), date: '' }];
  if (system === null || grounding !== 'none' || betweenLines(system) === 0) return [];
  return [{ at: tag, word: PLATES.word, text: PLATES.ungrounded(betweenLines(system)), date: '' }];
}

/** The fault current that the row of a service states; null: it states none. */
function statedFaultCurrent(plan: Plan, tag: string): number | null {
  const fact = equipmentOf(plan, tag)?.facts.find(({ field }) => field === 'fault_current');
  return typeof fact?.value === 'number' ? fact.value : null;
}

/**
 * The plates that the facts of a plan allow: high leg and ungrounded system at panelboards and service equipment (NEC 408.3(F)), and
 * fault current at service equipment that isn't a dwelling unit's (NEC 110.24); values from memory.
 * @returns none but under the NEC; in the order of the protectors, each equipment once
 */
export function platesOf(plan: Plan): Plate[] {
  if (!isNec(plan.basis)) return [];
  const seen = new Set<string>();
  return plan.protectors.flatMap(({ ports: [port], system, grounding }) => {
    const equipment = port === undefined ? undefined : equipmentOf(plan, port.equipment);
    if (equipment === undefined || seen.has(equipment.tag)) return [];
    if (equipment.kind !== 'panel' && equipment.kind !== 'service') return [];
    seen.add(equipment.tag);
    const amps = equipment.kind === 'service' ? statedFaultCurrent(plan, equipment.tag) : null;
    return [
      ...systemPlate(equipment.tag, system, grounding),
      ...(amps === null || plan.occupancy === 'dwelling'
        ? []
        : [{ at: equipment.tag, word: '', text: PLATES.faultCurrent(amps), date: PLATES.date }]),
    ];
  });
}
