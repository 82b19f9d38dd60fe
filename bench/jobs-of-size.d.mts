/** A list of one job as CSV, whose plan has so many protectors under the catalogue, library and settings of the demo. */
export function jobOf(protectors: 6 | 14 | 32): string;
