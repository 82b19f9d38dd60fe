import type { Step, Working } from '../model/fact.js';
import { FROM_MEMORY, shown, taken, workingOf, type Computed } from './working.js';

const FLASH_UNIT = '1/(km² a)';
const ANNEX_A = `IEC 62305-2:2010 Annex A, ${FROM_MEMORY}`;
/** km2 in a m2. */
const KM2 = 1e-6;

/** Ng over Td: IEC 62305-2:2006 Annex A. */
export const IEC_62305_2_2006_NG_OVER_TD = 0.1;
/** Ng = factor x Td^power: IEEE 1410, values from memory. */
export const IEEE_1410_NG = { factor: 0.04, power: 1.25 };

/** The two formulas for the ground flash density; IEC 62305-2:2006 and IEEE 1410 (value from memory). They cross at 39 days. */
export type FlashDensityFormula = 'iec-62305-2' | 'ieee-1410';

/**
 * Ground flash density from the thunderstorm days of a year; a figure of a lightning-location network beats both formulas.
 * @param input days a year; formula, that of IEC 62305-2 by default
 * @returns flashes per km2 and year: 0.1 Td, or 0.04 Td^1.25
 * Source: IEC 62305-2:2006 Annex A (0.1 Td); IEEE 1410 (0.04 Td^1.25, value from memory).
 */
export function flashDensityFromThunderDays(input: {
  readonly days: number;
  readonly formula?: FlashDensityFormula;
}): Computed {
  const isIeee = input.formula === 'ieee-1410';
  const { factor, power } = IEEE_1410_NG;
  const value = isIeee ? factor * input.days ** power : IEC_62305_2_2006_NG_OVER_TD * input.days;
  const written = (days: string): string =>
    isIeee ? `${factor} × ${days}^${power}` : `${IEC_62305_2_2006_NG_OVER_TD} × ${days}`;
  const result: Step = {
    symbol: 'Ng',
    says: 'Ground flash density from thunderstorm days',
    formula: written('Td'),
    substituted: written(shown(input.days)),
    value,
    unit: FLASH_UNIT,
    sure: isIeee ? 'memory' : 'published',
    source: isIeee ? `IEEE 1410, ${FROM_MEMORY}` : 'IEC 62305-2:2006 Annex A',
  };
  return { value, working: workingOf([taken('Td', 'Thunderstorm days a year', input.days, '1/a')], result) };
}

/** Location factor CD by what stands around: IEC 62305-2:2010 Table A.1, values from memory. */
export const IEC_62305_2_2010_TABLE_A_1 = {
  'among-higher': 0.25,
  'among-equal': 0.5,
  isolated: 1,
  'on-a-hill': 2,
} satisfies Readonly<Record<string, number>>;
export type StructureLocation = keyof typeof IEC_62305_2_2010_TABLE_A_1;

/** Installation factor CI: IEC 62305-2:2010 Table A.2, values from memory. */
export const IEC_62305_2_2010_TABLE_A_2 = { overhead: 1, buried: 0.5 } satisfies Readonly<
  Record<string, number>
>;
/** Line type factor CT, with a transformer between line and site or not: IEC 62305-2:2010 Table A.3, values from memory. */
export const IEC_62305_2_2010_TABLE_A_3 = { lv: 1, hv: 0.2 } satisfies Readonly<Record<string, number>>;
/** Environment factor CE: IEC 62305-2:2010 Table A.4, values from memory. */
export const IEC_62305_2_2010_TABLE_A_4 = { rural: 1, suburban: 0.5, urban: 0.1 } satisfies Readonly<
  Record<string, number>
>;

/**
 * Collection area of an isolated box-shaped structure on flat ground for flashes that strike it.
 * @param input length, width, height in m
 * @returns m2: L W + 2 (3 H)(L + W) + pi (3 H)^2
 * Source: IEC 62305-2:2010 Annex A, formula A.2 (value from memory).
 */
export function structureCollectionArea(input: {
  readonly length: number;
  readonly width: number;
  readonly height: number;
}): Computed {
  const { length, width, height } = input;
  const margin = 3 * height;
  const value = length * width + 2 * margin * (length + width) + Math.PI * margin ** 2;
  const result: Step = {
    symbol: 'AD',
    says: 'Collection area of the structure',
    formula: 'L W + 2 (3 H)(L + W) + π (3 H)²',
    substituted: `${shown(length)} m × ${shown(width)} m + 2 × (3 × ${shown(height)} m) × (${shown(length)} m + ${shown(width)} m) + π × (3 × ${shown(height)} m)²`,
    value,
    unit: 'm²',
    sure: 'memory',
    source: ANNEX_A,
  };
  const steps = [
    taken('L', 'Length of the structure', length, 'm'),
    taken('W', 'Width of the structure', width, 'm'),
    taken('H', 'Height of the structure', height, 'm'),
  ];
  return { value, working: workingOf(steps, result) };
}

/**
 * Flashes that strike a structure in a year.
 * @param input collection area in m2, flashes per km2 and year, what stands around
 * @returns events a year: Ng x AD x CD x 1e-6
 * Source: IEC 62305-2:2010 Annex A, formula A.4 (value from memory).
 */
export function structureEvents(input: {
  readonly collectionArea: number;
  readonly flashDensity: number;
  readonly location: StructureLocation;
}): Computed {
  const { collectionArea, flashDensity, location } = input;
  const factor = IEC_62305_2_2010_TABLE_A_1[location];
  const value = flashDensity * collectionArea * factor * KM2;
  const result: Step = {
    symbol: 'ND',
    says: 'Flashes to the structure in a year',
    formula: 'Ng × AD × CD × 1e-6 km²/m²',
    substituted: `${shown(flashDensity)} ${FLASH_UNIT} × ${shown(collectionArea)} m² × ${shown(factor)} × 1e-6 km²/m²`,
    value,
    unit: '1/a',
    sure: 'memory',
    source: ANNEX_A,
  };
  const steps = [
    taken('Ng', 'Ground flash density', flashDensity, FLASH_UNIT),
    taken('AD', 'Collection area of the structure', collectionArea, 'm²', 'computed', ANNEX_A),
    taken('CD', 'Location factor', factor, '', 'memory', `IEC 62305-2:2010 Table A.1, ${FROM_MEMORY}`),
  ];
  return { value, working: workingOf(steps, result) };
}

export interface LineInput {
  /** m; length of the line section up to the next node; 1000 m where it isn't known. */
  readonly length?: number | undefined;
  /** Flashes per km2 and year. */
  readonly flashDensity: number;
  readonly laid: keyof typeof IEC_62305_2_2010_TABLE_A_2;
  readonly voltage: keyof typeof IEC_62305_2_2010_TABLE_A_3;
  readonly surroundings: keyof typeof IEC_62305_2_2010_TABLE_A_4;
}

/** m; length of a line section that isn't known: IEC 62305-2:2010 cl. A.4 (value from memory). */
export const IEC_62305_2_2010_UNKNOWN_LINE = 1000;
/** m; width of the strip that collects flashes to a line, and near it: IEC 62305-2:2010 A.9 and A.11 (values from memory). */
const STRIP_TO = 40;
const STRIP_NEAR = 4000;

export interface LineEvents {
  /** m; as used. */
  readonly length: number;
  /** m2. */
  readonly areaTo: number;
  readonly areaNear: number;
  /** Flashes to the line in a year, NL. */
  readonly to: number;
  /** Flashes near the line in a year that put a surge on it, NI. */
  readonly near: number;
  /** CI x CE x CT. */
  readonly factor: number;
  /** Of `to`. */
  readonly workingTo: Working;
  /** Of `near`. */
  readonly workingNear: Working;
}

/**
 * Flashes to a line and near a line in a year.
 * @param input m, flashes per km2 and year, how it is laid, low or high voltage, surroundings
 * @returns collection areas (40 L and 4000 L, m2) and events a year: Ng x A x CI x CE x CT x 1e-6
 * Source: IEC 62305-2:2010 Annex A.4 and A.5 (value from memory).
 */
export function lineEvents(input: LineInput): LineEvents {
  const { flashDensity } = input;
  const length = input.length ?? IEC_62305_2_2010_UNKNOWN_LINE;
  const ci = IEC_62305_2_2010_TABLE_A_2[input.laid];
  const ct = IEC_62305_2_2010_TABLE_A_3[input.voltage];
  const ce = IEC_62305_2_2010_TABLE_A_4[input.surroundings];
  const factor = ci * ce * ct;
  const areaTo = STRIP_TO * length;
  const areaNear = STRIP_NEAR * length;
  const before = [
    taken('Ng', 'Ground flash density', flashDensity, FLASH_UNIT),
    input.length === undefined
      ? taken('LL', 'Length of the line, not stated', length, 'm', 'assumption', ANNEX_A)
      : taken('LL', 'Length of the line', length, 'm'),
    taken(
      'CI',
      `Installation factor, ${input.laid}`,
      ci,
      '',
      'memory',
      `IEC 62305-2:2010 Table A.2, ${FROM_MEMORY}`,
    ),
    taken(
      'CE',
      `Environment factor, ${input.surroundings}`,
      ce,
      '',
      'memory',
      `IEC 62305-2:2010 Table A.4, ${FROM_MEMORY}`,
    ),
    taken(
      'CT',
      `Line type factor, ${input.voltage}`,
      ct,
      '',
      'memory',
      `IEC 62305-2:2010 Table A.3, ${FROM_MEMORY}`,
    ),
  ];
  const events = (symbol: string, says: string, strip: number): Step => ({
    symbol,
    says,
    formula: `Ng × ${strip} m × LL × CI × CE × CT × 1e-6 km²/m²`,
    substituted: `${shown(flashDensity)} ${FLASH_UNIT} × ${strip} m × ${shown(length)} m × ${shown(ci)} × ${shown(ce)} × ${shown(ct)} × 1e-6 km²/m²`,
    value: flashDensity * strip * length * factor * KM2,
    unit: '1/a',
    sure: 'memory',
    source: ANNEX_A,
  });
  const to = events('NL', 'Flashes to the line in a year', STRIP_TO);
  const near = events('NI', 'Flashes near the line in a year', STRIP_NEAR);
  return {
    length,
    areaTo,
    areaNear,
    to: to.value,
    near: near.value,
    factor,
    workingTo: workingOf(before, to),
    workingNear: workingOf(before, near),
  };
}
