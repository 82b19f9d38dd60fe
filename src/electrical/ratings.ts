/** A; nominal discharge currents In that UL 1449 knows, values from memory. */
export const UL_1449_ED5_NOMINAL_CURRENTS: readonly number[] = [3_000, 5_000, 10_000, 20_000];

/** V; voltage protection ratings that UL 1449 assigns, measured at 6 kV / 3 kA with leads of 6 in; values from memory. */
export const UL_1449_ED5_VPR: readonly number[] = [
  330, 400, 500, 600, 700, 800, 900, 1000, 1200, 1500, 1800, 2000, 2500, 3000, 4000, 5000, 6000,
];

const VPR_SET: ReadonlySet<number> = new Set(UL_1449_ED5_VPR);
const IN_SET: ReadonlySet<number> = new Set(UL_1449_ED5_NOMINAL_CURRENTS);

/**
 * Whether a voltage is a VPR that UL 1449 assigns; another figure comes from an older edition's suppressed-voltage rating or
 * from elsewhere, and can't be compared.
 * @param volts V
 * Source: UL 1449 ed. 5, value from memory.
 */
export function isStandardVpr(volts: number): boolean {
  return VPR_SET.has(volts);
}

/**
 * Whether a current is a nominal discharge current that UL 1449 knows.
 * @param amperes A
 * Source: UL 1449 ed. 5, value from memory.
 */
export function isStandardNominalCurrent(amperes: number): boolean {
  return IN_SET.has(amperes);
}
