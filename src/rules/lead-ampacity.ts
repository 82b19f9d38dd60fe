import { awgGauge, type WireGauge } from '../electrical/wire-gauge.js';
import type { Lead } from '../model/lead.js';

type Metal = Lead['metal'];
/** AWG number (1/0 is 0, 2/0 is -1) and A. */
type Row = readonly [size: number, amperes: number];

/** A; the largest overcurrent device of a small conductor, 240.4(D). */
export const NEC_240_4_D: Readonly<Record<Metal, readonly Row[]>> = {
  copper: [
    [14, 15],
    [12, 20],
    [10, 30],
  ],
  aluminium: [
    [12, 15],
    [10, 25],
  ],
};

/** A; ampacity at 60 C, Table 310.16 (Table 310.15(B)(16) in 2017), values from memory. */
export const NEC_310_16_60C: Readonly<Record<Metal, readonly Row[]>> = {
  copper: [
    [14, 15],
    [12, 20],
    [10, 30],
    [8, 40],
    [6, 55],
    [4, 70],
    [3, 85],
    [2, 95],
    [1, 110],
    [0, 125],
    [-1, 145],
    [-2, 165],
    [-3, 195],
  ],
  aluminium: [
    [12, 15],
    [10, 25],
    [8, 35],
    [6, 40],
    [4, 55],
    [3, 65],
    [2, 75],
    [1, 85],
    [0, 100],
    [-1, 115],
    [-2, 130],
    [-3, 150],
  ],
};

/** A; standard sizes of overcurrent devices, 240.6(A), as far as the table of ampacities goes; values from memory. */
export const NEC_240_6_A: readonly number[] = [
  15, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 110, 125, 150, 175, 200,
];

/** A; the largest device ahead of a conductor of that ampacity: it, or the next standard size above it, 240.4(B). */
function largestDevice(ampacity: number): number {
  return NEC_240_6_A.find((size) => size >= ampacity) ?? ampacity;
}

function first(rows: readonly Row[], bears: (row: Row) => boolean): WireGauge | undefined {
  const row = rows.find(bears);
  return row && awgGauge(row[0]);
}

/**
 * The smallest lead behind an overcurrent device.
 * @param amperes A; of the device
 * @param metal of the lead
 * @returns undefined where the device is larger than the table goes
 * Source: NEC 240.4(D) up to 10 AWG; above it Table 310.16 at 60 C (values from memory) and 240.4(B), which allows the next
 * standard size of 240.6(A) (values from memory).
 */
export function leadBehindDevice(amperes: number, metal: Metal): WireGauge | undefined {
  return (
    first(NEC_240_4_D[metal], ([, most]) => amperes <= most) ??
    first(NEC_310_16_60C[metal], ([, ampacity]) => amperes <= largestDevice(ampacity))
  );
}

const TOLERANCE = 1 + 1e-9;

/**
 * The largest overcurrent device ahead of a lead, where nobody states which one there is.
 * @param area mm2 (trade unit); of the lead
 * @param metal of the lead
 * @returns A; undefined where the lead is thinner than the tables have
 * Source: as `leadBehindDevice`.
 */
export function deviceAheadOf(area: number, metal: Metal): number | undefined {
  const small = NEC_240_4_D[metal];
  const thinnest = small.length;
  const thick = NEC_310_16_60C[metal].slice(thinnest);
  const rows = [...small, ...thick.map(([size, ampacity]): Row => [size, largestDevice(ampacity)])];
  return rows.findLast(([size]) => (awgGauge(size)?.area ?? Infinity) <= area * TOLERANCE)?.[1];
}

/**
 * The smallest lead that carries a current, where no device of its own stands ahead of it.
 * @param amperes A; with the share of 690.8(B) where that is asked
 * @param metal of the lead
 * @returns undefined where the current is above the table
 * Source: NEC Table 310.16 at 60 C, values from memory.
 */
export function leadForCurrent(amperes: number, metal: Metal): WireGauge | undefined {
  return first(NEC_310_16_60C[metal], ([, ampacity]) => amperes <= ampacity);
}
