/** m; one inch. */
const INCH = 0.0254;
/** m; diameter of 36 AWG, 0.005 in: ASTM B258-18. */
const AWG_36_DIAMETER = 0.005 * INCH;
/** Ratio of the diameters of 4/0 and 36 AWG, over 39 steps: ASTM B258-18. */
const AWG_RATIO = 92;
const AWG_STEPS = 39;
/** Number of 4/0 AWG (0 is 1/0, -1 is 2/0), and the thinnest gauge of ASTM B258-18. */
const AWG_THICKEST = -3;
const AWG_THINNEST = 56;

/** A round conductor by its gauge. */
export interface WireGauge {
  readonly unit: 'AWG' | 'mm2';
  /** AWG number (1/0 is 0, 2/0 is -1, 3/0 is -2, 4/0 is -3), or mm2 as typed. */
  readonly size: number;
  /** m; of a solid round wire of that cross-section. */
  readonly diameter: number;
  /** mm2 (trade unit); cross-section. */
  readonly area: number;
  /** `10 AWG`, `1/0 AWG`, `6 mm2`. */
  readonly name: string;
}

/**
 * Diameter of a solid round wire of the American wire gauge.
 * @param size AWG number; 0 is 1/0, -1 is 2/0, -2 is 3/0, -3 is 4/0
 * @returns m
 * Source: ASTM B258-18: d = 0.005 in x 92^((36 - n)/39).
 */
export function awgDiameter(size: number): number {
  return AWG_36_DIAMETER * AWG_RATIO ** ((36 - size) / AWG_STEPS);
}

/** Cross-section in mm2 (trade unit) of a round wire of that diameter in m. */
export function areaOfDiameter(diameter: number): number {
  return (Math.PI / 4) * (diameter * 1e3) ** 2;
}

/** Diameter in m of a solid round wire of that cross-section in mm2 (trade unit). */
export function diameterOfArea(area: number): number {
  return Math.sqrt((4 * area) / Math.PI) / 1e3;
}

/** Writes a gauge as the trade does: `10 AWG`, `1/0 AWG` to `4/0 AWG`. */
export function awgName(size: number): string {
  return size > 0 ? `${size} AWG` : `${1 - size}/0 AWG`;
}

/** A gauge of the American wire gauge; undefined where ASTM B258 has none of that number. */
export function awgGauge(size: number): WireGauge | undefined {
  if (!Number.isInteger(size) || size < AWG_THICKEST || size > AWG_THINNEST) return undefined;
  const diameter = awgDiameter(size);
  return { unit: 'AWG', size, diameter, area: areaOfDiameter(diameter), name: awgName(size) };
}

/** A gauge by its cross-section in mm2; undefined where that isn't above 0. */
export function mm2Gauge(area: number): WireGauge | undefined {
  if (!(area > 0 && Number.isFinite(area))) return undefined;
  return { unit: 'mm2', size: area, diameter: diameterOfArea(area), area, name: `${area} mm2` };
}

const AWG_FORM = /^(?:awg\s*|#\s*)?([1-9]\d?|0{1,4})\s*(?:awg)?$/;
const AUGHT_FORM = /^(?:awg\s*|#\s*)?([1-4])\s*\/\s*0\s*(?:awg)?$/;
// A comma with three digits after it could part thousands: not read.
const MM2_FORM = /^(\d{1,4}(?:\.\d{1,3}|,\d{1,2})?)\s*(?:mm2|mm\^2|sq\.?\s?mm)$/;

/**
 * Reads a wire gauge.
 * @param text `10 AWG`, `AWG 10`, `#10`, `1/0`, `2/0 AWG`, `00 AWG` (2/0), `6 mm2`, `2.5 mm²`; without regard to case
 * @returns the gauge; undefined where the text isn't one, a bare number without a unit included
 */
export function parseWireGauge(text: string): WireGauge | undefined {
  const cell = text.normalize('NFKC').trim().toLowerCase();
  const aught = AUGHT_FORM.exec(cell)?.[1];
  if (aught !== undefined) return awgGauge(1 - Number(aught));
  const awg = AWG_FORM.exec(cell)?.[1];
  if (awg !== undefined && cell === awg) return undefined;
  if (awg !== undefined) return awgGauge(awg.startsWith('0') ? 1 - awg.length : Number(awg));
  const area = MM2_FORM.exec(cell)?.[1];
  return area === undefined ? undefined : mm2Gauge(Number(area.replace(',', '.')));
}
