/** The steps in which standards assign the ratings of a part. */

/** A; nominal discharge currents In that UL 1449 knows, values from memory. */
export const UL_1449_ED5_NOMINAL_CURRENTS: readonly number[] = [3_000, 5_000, 10_000, 20_000];

/** V; voltage protection ratings that UL 1449 assigns, measured at 6 kV / 3 kA with leads of 6 in; values from memory. */
export const UL_1449_ED5_VPR: readonly number[] = [
  330, 400, 500, 600, 700, 800, 900, 1000, 1200, 1500, 1800, 2000, 2500, 3000, 4000, 5000, 6000,
];
