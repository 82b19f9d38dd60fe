import { plain } from '../../../words/figures.js';

/** A lead voltage within a working, to the volt: there it is an operand, not what is needed. */
export function leadVolts(volts: number): string {
  return plain(Math.round(volts));
}

/**
 * The lead voltage to the volt, or to 0.01 V where the line would tell something else with it than is so.
 * @param isSame whether the line says the same with a lead voltage as with the exact one
 */
export function operand(leads: number, isSame: (volts: number) => boolean): string {
  const volts = Math.round(leads);
  return isSame(volts) ? plain(volts) : plain(leads);
}
