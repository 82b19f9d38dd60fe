import type { DcGrounding } from '../model/words.js';

/** V nominal; above it a battery floats unless its row says otherwise: common practice, no source. */
const FLOATS_ABOVE = 60;

/**
 * How a battery is grounded that doesn't state it: the negative pole up to 60 V nominal, none above.
 * @param nominal V; undefined: not stated
 * Source: common practice, no source; every default is printed.
 */
export function batteryGroundingByDefault(nominal: number | undefined): DcGrounding {
  return (nominal ?? 0) > FLOATS_ABOVE ? 'floating' : 'negative';
}
