import type { Plan, PlannedEquipment } from '../../../model/plan.js';

const TURBINES: ReadonlySet<PlannedEquipment['kind']> = new Set(['wind-turbine', 'hydro-turbine']);
const DC_INPUT = /DC input/;

/** Names the terminals of an equipment, given what names them else: `turbine input 1` for `DC input 1`. */
export type InputWords = (equipment: string, ports: readonly string[], words: string) => string;

/**
 * Terminals that rectify inside are named by what arrives there, in every block as in the drawing: a turbine's alternating current is no DC.
 */
export function inputWords(plan: Plan): InputWords {
  const isTurbine = turbineInputs(plan);
  return (equipment, ports, words) =>
    ports.length > 0 && ports.every((port) => isTurbine(equipment, port))
      ? words.replace(DC_INPUT, 'turbine input')
      : words;
}

/** Tells whether a turbine's alternating current arrives at a port. */
export function turbineInputs(plan: Plan): (equipment: string, port: string) => boolean {
  const turbines = new Set(
    plan.site.equipments
      .filter(
        ({ kind, facts }) =>
          TURBINES.has(kind) && !facts.some((f) => f.field === 'output' && f.value === 'dc'),
      )
      .map(({ tag }) => tag),
  );
  const inputs = new Set(
    plan.site.runs.flatMap(({ from, to }) => {
      const [turbine, other] = turbines.has(from.equipment) ? [from, to] : [to, from];
      return turbines.has(turbine.equipment) ? [`${other.equipment}\n${other.port}`] : [];
    }),
  );
  return (equipment, port) => inputs.has(`${equipment}\n${port}`);
}
