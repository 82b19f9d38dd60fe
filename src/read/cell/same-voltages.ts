import { AC_SYSTEMS } from '../../model/words.js';

function figures(text: string): string {
  return [...new Set(text.match(/\d+/g) ?? [])].sort().join(' ');
}

/**
 * The AC systems of the same voltages as a text, whatever their order: one of other voltages is never what was meant.
 * @param text such as `120/208`
 * @returns such as `208Y/120`
 */
export function sameVoltages(text: string): readonly string[] {
  const stated = figures(text);
  return AC_SYSTEMS.filter((system) => figures(system) === stated);
}
