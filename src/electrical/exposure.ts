import { bare, quantity, type Quantity } from '../model/quantity.js';
import { reason } from '../model/reason.js';
import { withoutDust } from '../model/rounding.js';
import { subject, type Step, type Working } from '../model/step.js';
import { computed, taken, workingOf } from './working.js';

/** What Lcrit distinguishes: a dwelling, a ground-mounted plant, any other building. */
export type ExposedSite = 'dwelling' | 'ground-mounted' | 'other';

/** m x flashes/(km2 year); Lcrit x Ng: IEC 60364-7-712:2017 cl. 712.443; the dwelling's read, the other two from memory. */
export const IEC_60364_7_712_2017_CRITICAL_LENGTH: Readonly<Record<ExposedSite, number>> = {
  dwelling: 115,
  'ground-mounted': 200,
  other: 450,
};

/** fenv by surroundings: IEC 60364-4-44:2007+A1:2015 cl. 443.5, values from memory. */
export const IEC_60364_4_44_2015_ENVIRONMENT: Readonly<Record<'rural' | 'urban', number>> = {
  rural: 85,
  urban: 850,
};
/** Below this risk level protection is asked for: IEC 60364-4-44:2007+A1:2015 cl. 443.5. */
export const IEC_60364_4_44_2015_RISK_LIMIT = 1000;
/** Weights of a km of line by kind: IEC 60364-4-44:2007+A1:2015 cl. 443.5. */
const LINE_WEIGHTS = {
  lvOverhead: 2,
  lvUnderground: 1,
  hvOverhead: 0.4,
  hvUnderground: 0.2,
} satisfies Record<string, number>;
/** km; no more than this length of line counts. */
const COUNTED_KM = 1;

const NO_FLASHES = { ok: false, reason: 'no-flash-density' } as const;
const FLASH_UNIT = '1/(km² a)';
const FLASH_DENSITY = subject('exposure/flash-density');
const RISK_SOURCE = reason('source/risk-level');
const ENVIRONMENT_SOURCE = reason('source/surroundings-factor');

export type CriticalLength =
  | { readonly ok: true; /** m. */ readonly value: number; readonly working: Working }
  | { readonly ok: false; readonly reason: 'no-flash-density' };

/**
 * Length of an array's DC runs from which protection is asked for.
 * @param input site class; flashes per km2 and year, above 0
 * @returns m; or `no-flash-density` where that is 0 or below
 * Source: IEC 60364-7-712:2017 cl. 712.443: 115/Ng read, 200/Ng and 450/Ng from memory.
 */
export function criticalLength(input: {
  readonly site: ExposedSite;
  readonly flashDensity: number;
}): CriticalLength {
  const { site, flashDensity } = input;
  if (!(flashDensity > 0)) return NO_FLASHES;
  const k = IEC_60364_7_712_2017_CRITICAL_LENGTH[site];
  const read = site === 'dwelling';
  const critical = subject('exposure/critical-length', {
    product: bare(k),
    flashDensity: quantity(flashDensity, '1/(km2 a)'),
  });
  const result = computed('Lcrit', critical, {
    value: withoutDust(k / flashDensity),
    unit: 'm',
    sure: read ? 'published' : 'memory',
    uses: ['Ng'],
    source: reason('source/critical-length', { read }),
  });
  const steps = [taken('Ng', FLASH_DENSITY, flashDensity, FLASH_UNIT)];
  return { ok: true, value: result.value, working: workingOf(steps, result) };
}

/** Lengths of the lines that feed a site, in km (trade unit); undefined: not known. */
export interface FeedingLines {
  readonly lvOverhead?: number | undefined;
  readonly lvUnderground?: number | undefined;
  readonly hvOverhead?: number | undefined;
  readonly hvUnderground?: number | undefined;
}

/** The km of each kind that count, and how much of the overhead line is assumed. */
export interface CountedLines {
  readonly lvOverhead: number;
  readonly lvUnderground: number;
  readonly hvOverhead: number;
  readonly hvUnderground: number;
  /** km of low-voltage overhead line that stand in for what isn't known; part of `lvOverhead`. */
  readonly assumed: number;
}

/**
 * Cuts the lines to the km that count: from the site on, low-voltage overhead, low-voltage cable, high-voltage overhead,
 * high-voltage cable. Where a length isn't known, what lacks to 1 km is taken as low-voltage overhead line, the worst kind.
 * @param lines km
 * @returns km by kind, at most 1 in all
 * Source: IEC 60364-4-44:2007+A1:2015 cl. 443.5 (value from memory); the order of the cut is this project's.
 */
export function countedLines(lines: FeedingLines): CountedLines {
  let left = COUNTED_KM;
  const take = (km: number | undefined): number => {
    const counted = Math.min(km ?? 0, left);
    left -= counted;
    return counted;
  };
  const lvOverhead = take(lines.lvOverhead);
  const lvUnderground = take(lines.lvUnderground);
  const hvOverhead = take(lines.hvOverhead);
  const hvUnderground = take(lines.hvUnderground);
  const isKnown = [lines.lvOverhead, lines.lvUnderground, lines.hvOverhead, lines.hvUnderground].every(
    (km) => km !== undefined,
  );
  // Sums of decimal km leave dust of 1e-16: no line is assumed for that.
  const assumed = isKnown || left < 1e-9 ? 0 : left;
  return { lvOverhead: lvOverhead + assumed, lvUnderground, hvOverhead, hvUnderground, assumed };
}

export type RiskLevel =
  | {
      readonly ok: true;
      /** CRL, without a unit. */
      readonly value: number;
      /** km; weighted length of the lines. */
      readonly weightedLength: number;
      readonly lines: CountedLines;
      readonly environment: number;
      readonly working: Working;
    }
  | {
      readonly ok: false;
      /** `no-lines`: every length is stated as 0. */ readonly reason: 'no-flash-density' | 'no-lines';
    };

const byLine = (
  of: (kind: keyof typeof LINE_WEIGHTS) => Quantity,
): Record<keyof typeof LINE_WEIGHTS, Quantity> => ({
  lvOverhead: of('lvOverhead'),
  lvUnderground: of('lvUnderground'),
  hvOverhead: of('hvOverhead'),
  hvUnderground: of('hvUnderground'),
});

/**
 * Calculated risk level of a supply from overhead lines and cables.
 * @param input surroundings; flashes per km2 and year, above 0; lines in km
 * @returns CRL = fenv / (LP x Ng) with LP and the lines that count; or why there is none
 * Source: IEC 60364-4-44:2007+A1:2015 cl. 443.5; fenv: value from memory. National rules may override it.
 */
export function calculatedRiskLevel(input: {
  readonly surroundings: 'rural' | 'urban';
  readonly flashDensity: number;
  readonly lines: FeedingLines;
}): RiskLevel {
  const { surroundings, flashDensity } = input;
  if (!(flashDensity > 0)) return NO_FLASHES;
  const lines = countedLines(input.lines);
  const weighted =
    LINE_WEIGHTS.lvOverhead * lines.lvOverhead +
    LINE_WEIGHTS.lvUnderground * lines.lvUnderground +
    LINE_WEIGHTS.hvOverhead * lines.hvOverhead +
    LINE_WEIGHTS.hvUnderground * lines.hvUnderground;
  if (!(weighted > 0)) return { ok: false, reason: 'no-lines' };
  const environment = IEC_60364_4_44_2015_ENVIRONMENT[surroundings];
  const value = withoutDust(environment / (weighted * flashDensity));
  const weightedLength = subject('exposure/weighted-length', {
    weights: byLine((kind) => bare(LINE_WEIGHTS[kind])),
    lengths: byLine((kind) => quantity(lines[kind], 'km')),
    assumed: quantity(lines.assumed, 'km'),
  });
  const steps: Step[] = [
    taken('Ng', FLASH_DENSITY, flashDensity, FLASH_UNIT),
    taken(
      'fenv',
      subject('exposure/surroundings', { surroundings }),
      environment,
      '',
      'memory',
      ENVIRONMENT_SOURCE,
    ),
    computed('LP', weightedLength, {
      value: weighted,
      unit: 'km',
      sure: lines.assumed > 0 ? 'assumption' : 'published',
      uses: [],
      source: RISK_SOURCE,
    }),
  ];
  const level = subject('exposure/risk-level', {
    limit: bare(IEC_60364_4_44_2015_RISK_LIMIT),
    environment: bare(environment),
    length: quantity(weighted, 'km'),
    flashDensity: quantity(flashDensity, '1/(km2 a)'),
  });
  const result = computed('CRL', level, {
    value,
    unit: '',
    sure: 'published',
    uses: ['fenv', 'LP', 'Ng'],
    source: RISK_SOURCE,
  });
  return { ok: true, value, weightedLength: weighted, lines, environment, working: workingOf(steps, result) };
}
