import { leadVoltageByLength, type LeadInput } from './leads.js';

export interface LongestLeadInput extends Omit<LeadInput, 'length'> {
  /** V; protection level Up (or VPR). */
  readonly up: number;
  /** V; impulse withstand of the equipment. */
  readonly withstand: number;
  /** m; the length that is aimed at whatever the withstand: the setting `longLead`. */
  readonly most: number;
}

const CENTIMETRES_A_METRE = 100;

/**
 * The longest leads, line lead plus ground lead, at which the level of a protector with its leads isn’t above the withstand.
 *
 * The voltage of leads never falls with their length, so that the first centimetre that is too long is found by halving.
 * @param input V, V, m, m, A; see the fields
 * @returns m: `most`, or less, rounded down to the centimetre; 0 where the level alone is above the withstand
 * Source: as `leadVoltage` and `reachFigures`.
 */
export function longestLead({ up, withstand, most, ...lead }: LongestLeadInput): number {
  const voltage = leadVoltageByLength(lead);
  const holds = (length: number): boolean => up + voltage(length) <= withstand;
  if (holds(most)) return most;
  let short = 0;
  let long = Math.ceil(most * CENTIMETRES_A_METRE);
  while (long - short > 1) {
    const between = Math.floor((short + long) / 2);
    if (holds(between / CENTIMETRES_A_METRE)) short = between;
    else long = between;
  }
  return short / CENTIMETRES_A_METRE;
}
