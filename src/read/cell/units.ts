import { readNumber, type DecimalMark, type NumberProblem } from './numbers.js';

export type Dimension =
  | 'length'
  | 'voltage'
  | 'current'
  | 'temperature'
  | 'power'
  | 'apparent-power'
  | 'share'
  | 'area'
  | 'speed'
  | 'flash-density'
  | 'days'
  | 'pieces'
  | 'coefficient';

/** A unit as lists write it, and how it comes to the unit that we count in (m, V, A, C, W, mm2). */
export interface Unit {
  readonly dimension: Dimension;
  /** How we write it. */
  readonly symbol: string;
  readonly factor: number;
  /** Added before the factor: degrees Fahrenheit. */
  readonly offset: number;
  /** `V dc`, `V ac`; null: not said. */
  readonly current: 'ac' | 'dc' | null;
}

export type QuantityProblem = NumberProblem | 'unknown-unit';

/** A figure with its unit; `unit` null is a bare number. */
export type QuantityReading =
  | { readonly ok: true; readonly figure: number; readonly unit: Unit | null }
  | { readonly ok: false; readonly problem: QuantityProblem; readonly rest: string };

const UNITS = new Map<string, Unit>();

function define(dimension: Dimension, symbol: string, factor: number, spellings: string, offset = 0): void {
  for (const spelling of spellings.split(' ')) {
    UNITS.set(spelling, { dimension, symbol, factor, offset, current: null });
  }
}

/** International foot and inch are exact: 0.3048 m and 0.0254 m (NIST SP 811, appendix B). */
define('length', 'ft', 0.3048, `ft feet foot ' \u2032 lf linft`);
define('length', 'in', 0.0254, `in inch inches " \u2033 ''`);
define('length', 'yd', 0.9144, 'yd yds yard yards');
define('length', 'mi', 1609.344, 'mi mile miles');
define('length', 'm', 1, 'm meter meters metre metres mtr');
define('length', 'mm', 0.001, 'mm millimeter millimeters millimetre millimetres');
define('length', 'cm', 0.01, 'cm centimeter centimeters centimetre centimetres');
define('length', 'km', 1000, 'km kilometer kilometers kilometre kilometres');
define('voltage', 'V', 1, 'v volt volts');
define('voltage', 'kV', 1000, 'kv kilovolt kilovolts');
define('voltage', 'mV', 0.001, 'mv millivolt millivolts');
define('current', 'A', 1, 'a amp amps ampere amperes');
define('current', 'kA', 1000, 'ka kiloamp kiloamps kaic');
define('current', 'mA', 0.001, 'ma milliamp milliamps');
define('temperature', 'C', 1, 'c degc degreesc celsius');
define('temperature', 'F', 5 / 9, 'f degf degreesf fahrenheit', -32);
define('power', 'W', 1, 'w watt watts wp');
define('power', 'kW', 1000, 'kw kilowatt kilowatts kwp');
define('power', 'MW', 1_000_000, 'megawatt megawatts');
define('apparent-power', 'kVA', 0.001, 'va');
define('apparent-power', 'kVA', 1, 'kva');
define('apparent-power', 'kVA', 1000, 'mva');
define('share', '%', 1, '% percent pct');
define('area', 'mm2', 1, 'mm2 mm\u00b2 sqmm mm^2');
define('speed', 'rpm', 1, 'rpm r/min 1/min min-1 rev/min');
define(
  'flash-density',
  'flashes/km2/year',
  1,
  '/km2/yr /km2/year /km2/a fl/km2/yr flashes/km2/year perkm2andyear /km2y /km\u00b2/yr /km\u00b2/year',
);
define('days', 'days', 1, 'days day d days/yr days/year daysayear');
define('pieces', 'pieces', 1, 'pc pcs piece pieces ea each x unit units nos');
define('coefficient', '%/C', 1, '%/c %/degc %/k %perc %perk');
define('coefficient', '%/C', 100, '/c /degc /k 1/k 1/c perc perk');
define('coefficient', 'V/C', 1, 'v/c v/degc v/k');
define('coefficient', 'V/C', 0.001, 'mv/c mv/degc mv/k');
define('coefficient', 'mV/cell/C', 1, 'mv/cell/c mv/cell/degc mv/cell/k mv/c/cell mv/k/cell mv/degc/cell');

/** The symbols of the units of a dimension, that which we count in first. */
export function unitSymbols(dimension: Dimension): readonly string[] {
  const units = [...UNITS.values()].filter((unit) => unit.dimension === dimension);
  const ours = units.filter(({ factor, offset }) => factor === 1 && offset === 0);
  return [...new Set([...ours, ...units].map(({ symbol }) => symbol))];
}

/** Spellings whose capital M would mean a million. */
const MILLI = new Set(['mv', 'ma', 'mv/c', 'mv/k', 'mv/degc', 'mv/cell/c', 'mv/cell/k', 'mv/cell/degc']);
const CURRENT = /^(k?v|volts?|kilovolts?|k?a|amps?)[.]?(ac|dc)$/;

/**
 * The unit that a text names.
 * @param text such as `ft`, `(V dc)`, `°C`, `mV/cell/K`
 * @returns the unit, or null where it is none that we know
 */
export function unitOf(text: string): Unit | null {
  if (text.length > 30) return null;
  const bare = text.replace(/[\s\u00b7]+/g, '').replace(/^[([](.*)[)\]]$/, '$1');
  const key = bare
    .replace(/\u00ba|\u00b0/g, 'deg')
    .replace(/\.(?=$|\/)/g, '')
    .toLowerCase()
    .replace(/^deg$/, '');
  if (MILLI.has(key) && bare.startsWith('M')) return null;
  const plain = UNITS.get(key);
  if (plain !== undefined) return plain;
  const match = CURRENT.exec(key);
  const of = match === null ? undefined : UNITS.get(match[1] ?? '');
  if (match === null || of === undefined) return null;
  return { ...of, current: match[2] === 'ac' ? 'ac' : 'dc' };
}

/**
 * Converts a figure to the unit that we count in.
 * @param figure the figure in `unit`
 * @param unit the unit as stated
 * @returns m, V, A, C, W or mm2; for coefficients the figure in the unit's symbol
 */
export function inOurUnit(figure: number, unit: Unit): number {
  const value = (figure + unit.offset) * unit.factor;
  // 12 significant digits: 0.1 ft x 0.3048 shall not carry the dust of binary fractions into a message.
  return Number(value.toPrecision(12));
}

const FEET_AND_INCHES =
  /^(\d+(?:\.\d+)?)\s*(?:'|\u2032|ft\.?|feet|foot)\s*-?\s*(?:(\d+(?:\.\d+)?)(?:\s+(\d+)\/(\d+))?|(\d+)\/(\d+))\s*(?:"|\u2033|''|in\.?|inch|inches)$/i;
const INCHES_IN_PARTS = /^(\d+)\s+(\d+)\/(\d+)\s*(?:"|\u2033|''|in\.?|inch|inches)$/i;

/** Feet and inches in one cell, `5' 6"` or `6 ft 3 1/2 in`; in feet, or null where it is no such thing. */
function feetAndInches(text: string): number | null {
  const part = (top: string | undefined, bottom: string | undefined): number =>
    top === undefined || bottom === undefined ? 0 : Number(top) / Number(bottom);
  const both = FEET_AND_INCHES.exec(text);
  if (both !== null) {
    const inches = Number(both[2] ?? 0) + part(both[3], both[4]) + part(both[5], both[6]);
    return Number.isFinite(inches) && inches < 12 ? Number(both[1]) + inches / 12 : null;
  }
  const inches = INCHES_IN_PARTS.exec(text);
  if (inches === null) return null;
  const value = Number(inches[1]) + part(inches[2], inches[3]);
  return Number.isFinite(value) ? value / 12 : null;
}

/**
 * Reads a figure and its unit from a cell.
 * @param text the cell, trimmed
 * @param mark the decimal mark of the file
 * @returns the figure as typed with its unit (null: a bare number), or why it can't be read
 */
export function readQuantity(text: string, mark: DecimalMark = 'auto'): QuantityReading {
  const feet = /[/'"\u2032\u2033]|ft|feet|foot/i.test(text) ? feetAndInches(text) : null;
  if (feet !== null) return { ok: true, figure: feet, unit: UNITS.get('ft') ?? null };
  const number = readNumber(text, mark);
  if (!number.ok) return { ok: false, problem: number.problem, rest: '' };
  // A bare degree sign says neither C nor F.
  if (number.rest === '' || number.rest === '\u00b0' || number.rest === '\u00ba')
    return { ok: true, figure: number.value, unit: null };
  const unit = unitOf(number.rest);
  if (unit === null) return { ok: false, problem: 'unknown-unit', rest: number.rest };
  return { ok: true, figure: number.value, unit };
}

/**
 * Diameter of an American wire gauge: d = 0.005 in x 92^((36 - n)/39) (ASTM B258).
 * @param gauge gauge number; 0 for 1/0, -1 for 2/0, -2 for 3/0, -3 for 4/0
 * @returns m
 */
function awgDiameter(gauge: number): number {
  return 0.005 * 0.0254 * 92 ** ((36 - gauge) / 39);
}

/** A wire size: diameter in m, cross-section in mm2. */
export interface WireSize {
  readonly diameter: number;
  readonly area: number;
}

/**
 * Reads a wire size.
 * @param text `10 AWG`, `#6 AWG`, `1/0 AWG`, `2/0`, `6 mm2`
 * @returns diameter and area of the solid round conductor of that size, or null where it is none (a bare number is none)
 */
export function readWireSize(text: string): WireSize | null {
  const awg = /^(?:#|no\.?\s*)?\s*(?:(\d{1,2})|([1-4])\/0)\s*(?:awg|ga|gauge)?$/i.exec(text.trim());
  if (awg !== null && (awg[2] !== undefined || /awg|#|ga|no/i.test(text))) {
    const gauge = awg[2] === undefined ? Number(awg[1]) : 1 - Number(awg[2]);
    if (gauge > 40) return null;
    const diameter = awgDiameter(gauge);
    return { diameter, area: (Math.PI / 4) * (diameter * 1000) ** 2 };
  }
  const metric = readQuantity(text.trim());
  if (!metric.ok || metric.unit?.dimension !== 'area' || metric.figure <= 0) return null;
  return { diameter: 2 * Math.sqrt(metric.figure / Math.PI) * 0.001, area: metric.figure };
}
