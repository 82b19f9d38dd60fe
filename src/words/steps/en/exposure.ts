import type { ExposureSteps } from '../../../model/steps/exposure.js';
import { figured, number, type StepTexts } from '../step-words.js';

type Weighted = ExposureSteps['exposure/weighted-length'];

/** The weighted sum of the lines, written out. */
function weighed(
  { weights: w }: Weighted,
  of: { readonly [K in keyof Weighted['lengths']]: string },
): string {
  const kinds = ['lvOverhead', 'lvUnderground', 'hvOverhead', 'hvUnderground'] as const;
  return kinds.map((kind) => `${number(w[kind])} × ${of[kind]}`).join(' + ');
}

/** The flash density from the days, however they are written. */
function ofDays({ factor, power }: ExposureSteps['exposure/flash-density-of-days'], days: string): string {
  return `${figured(factor)} × ${days}${power === null ? '' : `^${figured(power)}`}`;
}

const LINE_FLASHES = {
  formula: (v: ExposureSteps['lightning/flashes-to-line']) =>
    `Ng × ${figured(v.strip)} × LL × CI × CE × CT × 1e-6 km²/m²`,
  substituted: (v: ExposureSteps['lightning/flashes-to-line']) =>
    `${figured(v.flashDensity)} × ${figured(v.strip)} × ${figured(v.length)} × ${figured(v.installation)} × ${figured(v.environment)} × ${figured(v.lineType)} × 1e-6 km²/m²`,
};

/** Steps about a site's exposure to lightning, in English. */
export const EXPOSURE: StepTexts<ExposureSteps> = {
  'exposure/flash-density': { says: 'Ground flash density' },
  'exposure/thunderstorm-days': { says: 'Thunderstorm days a year' },
  'exposure/flash-density-of-days': {
    says: 'Ground flash density from thunderstorm days',
    formula: (v) => ofDays(v, 'Td'),
    substituted: (v) => ofDays(v, figured(v.days)),
  },
  'exposure/critical-length': {
    says: 'Critical length of the DC runs',
    formula: (v) => `${number(v.product)} / Ng`,
    substituted: (v) => `${number(v.product)} / ${number(v.flashDensity)}`,
  },
  'exposure/surroundings': { says: (v) => `Factor of the surroundings, ${v.surroundings}` },
  'exposure/weighted-length': {
    says: (v) =>
      v.assumed.value > 0
        ? `Weighted length of the lines; ${figured(v.assumed)} overhead assumed`
        : 'Weighted length of the lines',
    formula: (v) =>
      weighed(v, { lvOverhead: 'LPAL', lvUnderground: 'LPCL', hvOverhead: 'LPAH', hvUnderground: 'LPCH' }),
    substituted: (v) =>
      weighed(v, {
        lvOverhead: figured(v.lengths.lvOverhead),
        lvUnderground: figured(v.lengths.lvUnderground),
        hvOverhead: figured(v.lengths.hvOverhead),
        hvUnderground: figured(v.lengths.hvUnderground),
      }),
  },
  'exposure/risk-level': {
    says: (v) => `Calculated risk level; below ${figured(v.limit)} protection is asked for`,
    formula: 'fenv / (LP × Ng)',
    substituted: (v) => `${figured(v.environment)} / (${figured(v.length)} × ${figured(v.flashDensity)})`,
  },
  'lightning/structure-length': { says: 'Length of the structure' },
  'lightning/structure-width': { says: 'Width of the structure' },
  'lightning/structure-height': { says: 'Height of the structure' },
  'lightning/structure-area': {
    says: 'Collection area of the structure',
    formula: 'L W + 2 (3 H)(L + W) + π (3 H)²',
    substituted: ({ length, width, height }) => {
      const [l, w, h] = [figured(length), figured(width), figured(height)];
      return `${l} × ${w} + 2 × (3 × ${h}) × (${l} + ${w}) + π × (3 × ${h})²`;
    },
  },
  'lightning/collection-area': { says: 'Collection area of the structure' },
  'lightning/location-factor': { says: 'Location factor' },
  'lightning/structure-flashes': {
    says: 'Flashes to the structure in a year',
    formula: 'Ng × AD × CD × 1e-6 km²/m²',
    substituted: (v) =>
      `${figured(v.flashDensity)} × ${figured(v.area)} × ${figured(v.location)} × 1e-6 km²/m²`,
  },
  'lightning/line-length': { says: 'Length of the line' },
  'lightning/line-length-not-stated': { says: 'Length of the line, not stated' },
  'lightning/installation-factor': { says: (v) => `Installation factor, ${v.laid}` },
  'lightning/environment-factor': { says: (v) => `Environment factor, ${v.surroundings}` },
  'lightning/line-type-factor': { says: (v) => `Line type factor, ${v.voltage}` },
  'lightning/flashes-to-line': { says: 'Flashes to the line in a year', ...LINE_FLASHES },
  'lightning/flashes-near-line': { says: 'Flashes near the line in a year', ...LINE_FLASHES },
};
