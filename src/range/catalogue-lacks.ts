import type { Part } from '../model/catalogue.js';

/** A column of the catalogue and the parts that state nothing in it. */
export interface PartsLacking {
  readonly column: string;
  readonly parts: readonly string[];
}

/** A part that needs no device of its own has no size of one to state. */
const needsDevice = (part: Part): boolean => part.overcurrentDevice !== 'none';

/** Where a blank leaves the plan without a figure, or with a default; in the order of the contract. */
const COLUMNS: readonly (readonly [column: string, lacks: (part: Part) => boolean])[] = [
  ['overcurrent_a', (part) => needsDevice(part) && part.overcurrentMost === null],
  ['overcurrent_min_a', (part) => needsDevice(part) && part.overcurrentLeast === null],
  ['overcurrent_device', (part) => part.overcurrentDevice === null],
  ['lead_by_instructions', (part) => part.leadByInstructions === null],
  ['wire_range', (part) => part.wireRanges.length === 0],
];

/**
 * Which parts of a catalogue lack what overcurrent devices and smallest leads are worked out from.
 * @returns the columns that some part lacks, in the order of the contract
 */
export function catalogueLacks(parts: readonly Part[]): readonly PartsLacking[] {
  return COLUMNS.flatMap(([column, lacks]) => {
    const lacking = parts.filter(lacks).map(({ part }) => part);
    return lacking.length === 0 ? [] : [{ column, parts: lacking }];
  });
}
