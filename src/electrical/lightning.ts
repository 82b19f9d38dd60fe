import { bare, metres, quantity } from '../model/quantity.js';
import { reason } from '../model/reason.js';
import { subject, type Step, type StepSubject, type Working } from '../model/step.js';
import { computed, taken, workingOf, type Computed } from './working.js';

const FLASH_UNIT = '1/(km² a)';
const FLASH_DENSITY = subject('exposure/flash-density');
const ANNEX_A = reason('source/lightning-annex');
const TABLE_A_1 = reason('source/lightning-table', { table: 'A.1' });
const TABLE_A_2 = reason('source/lightning-table', { table: 'A.2' });
const TABLE_A_3 = reason('source/lightning-table', { table: 'A.3' });
const TABLE_A_4 = reason('source/lightning-table', { table: 'A.4' });
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
  const days = quantity(input.days, '');
  const ofDays = isIeee
    ? subject('exposure/flash-density-of-days', { factor: bare(factor), power: bare(power), days })
    : subject('exposure/flash-density-of-days', {
        factor: bare(IEC_62305_2_2006_NG_OVER_TD),
        power: null,
        days,
      });
  const result = computed('Ng', ofDays, {
    value,
    unit: FLASH_UNIT,
    sure: isIeee ? 'memory' : 'published',
    uses: ['Td'],
    source: reason(isIeee ? 'source/thunderstorm-days-power' : 'source/thunderstorm-days'),
  });
  const thunder = taken('Td', subject('exposure/thunderstorm-days'), input.days, '1/a');
  return { value, working: workingOf([thunder], result) };
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
  const area = subject('lightning/structure-area', {
    length: metres(length),
    width: metres(width),
    height: metres(height),
  });
  const result = computed('AD', area, {
    value,
    unit: 'm²',
    sure: 'memory',
    uses: ['L', 'W', 'H'],
    source: ANNEX_A,
  });
  const steps = [
    taken('L', subject('lightning/structure-length'), length, 'm'),
    taken('W', subject('lightning/structure-width'), width, 'm'),
    taken('H', subject('lightning/structure-height'), height, 'm'),
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
  const flashes = subject('lightning/structure-flashes', {
    flashDensity: quantity(flashDensity, '1/(km2 a)'),
    area: quantity(collectionArea, 'm2'),
    location: bare(factor),
  });
  const result = computed('ND', flashes, {
    value,
    unit: '1/a',
    sure: 'memory',
    uses: ['Ng', 'AD', 'CD'],
    source: ANNEX_A,
  });
  const steps = [
    taken('Ng', FLASH_DENSITY, flashDensity, FLASH_UNIT),
    taken('AD', subject('lightning/collection-area'), collectionArea, 'm²', 'computed', ANNEX_A),
    taken('CD', subject('lightning/location-factor'), factor, '', 'memory', TABLE_A_1),
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
  const installation = subject('lightning/installation-factor', { laid: input.laid });
  const environment = subject('lightning/environment-factor', { surroundings: input.surroundings });
  const lineType = subject('lightning/line-type-factor', { voltage: input.voltage });
  const before = [
    taken('Ng', FLASH_DENSITY, flashDensity, FLASH_UNIT),
    input.length === undefined
      ? taken('LL', subject('lightning/line-length-not-stated'), length, 'm', 'assumption', ANNEX_A)
      : taken('LL', subject('lightning/line-length'), length, 'm'),
    taken('CI', installation, ci, '', 'memory', TABLE_A_2),
    taken('CE', environment, ce, '', 'memory', TABLE_A_4),
    taken('CT', lineType, ct, '', 'memory', TABLE_A_3),
  ];
  const from = {
    flashDensity: quantity(flashDensity, '1/(km2 a)'),
    length: metres(length),
    installation: bare(ci),
    environment: bare(ce),
    lineType: bare(ct),
  };
  const events = (symbol: string, flashes: StepSubject, strip: number): Step =>
    computed(symbol, flashes, {
      value: flashDensity * strip * length * factor * KM2,
      unit: '1/a',
      sure: 'memory',
      uses: ['Ng', 'LL', 'CI', 'CE', 'CT'],
      source: ANNEX_A,
    });
  const strips = { to: metres(STRIP_TO), near: metres(STRIP_NEAR) };
  const to = events('NL', subject('lightning/flashes-to-line', { strip: strips.to, ...from }), STRIP_TO);
  const near = events(
    'NI',
    subject('lightning/flashes-near-line', { strip: strips.near, ...from }),
    STRIP_NEAR,
  );
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
