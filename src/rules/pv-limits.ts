import type { Occupancy } from '../model/words.js';

/** V; highest DC voltage of PV circuits: NEC 690.7, the same in the 2017, 2020 and 2023 editions. */
export const NEC_2023_690_7_LIMITS = {
  /** On or in one- and two-family dwellings. */
  dwelling: 600,
  /** On or in other buildings. */
  otherBuilding: 1000,
  /** Ground-mounted, and nowhere on or in a building. */
  offBuildings: 1500,
} satisfies Readonly<Record<string, number>>;

/**
 * Highest DC voltage that a PV system may have.
 * @param input what the building is; and whether the array stands on the ground and its circuits are nowhere on or in a building,
 * that of its converter too
 * @returns V
 * Source: NEC 690.7, 2017 to 2023. Dormitory units and guest rooms count as other buildings.
 */
export function pvVoltageLimit(input: {
  readonly occupancy: Occupancy;
  readonly offBuildings: boolean;
}): number {
  if (input.offBuildings) return NEC_2023_690_7_LIMITS.offBuildings;
  return input.occupancy === 'dwelling'
    ? NEC_2023_690_7_LIMITS.dwelling
    : NEC_2023_690_7_LIMITS.otherBuilding;
}
