import { AC_SYSTEM_DATA, linesToGround, nominalToGround } from '../../electrical/ac-systems.js';
import {
  aroundNominal,
  rangeB,
  type VoltageBand,
  type VoltagePlace,
} from '../../electrical/service-voltage.js';
import { isNec, type Basis } from '../../model/editions.js';
import type { MeasuringSettings } from '../../model/measuring-settings.js';
import { volts } from '../../model/quantity.js';
import { reason, type Reason } from '../../model/reason.js';
import type { MeasuredSupply } from '../../model/reasons/measure.js';
import type { AcSystem, Conductor, Earthing, SystemGrounding } from '../../model/words.js';
import { groundedReading, pairsOf, readingOf, type Reading } from '../measuring-facts.js';

/** What is known of an AC place that is measured. */
export interface AcReadingFacts {
  readonly basis: Basis;
  readonly earthing: Earthing;
  /** Undefined: not stated. */
  readonly system: AcSystem | undefined;
  /** The system that it is a part of, or itself. */
  readonly whole: AcSystem | undefined;
  readonly grounding: SystemGrounding;
  readonly place: VoltagePlace;
  readonly fedByUtility: boolean;
  /** An inverter, a generator or an AC battery. */
  readonly fedBySource: boolean;
  /** True where lines lead to N and N to ground. */
  readonly threePlusOne: boolean;
  /** Conductors of this housing, each once. */
  readonly conductors: readonly Conductor[];
  /** V; the most that the plan expects of a conductor to ground; undefined: not known. */
  readonly mostToGround: number | undefined;
  readonly settings: MeasuringSettings;
}

type Stated = AcReadingFacts & { readonly system: AcSystem };

const NOT_KNOWN = reason('reading/not-known');
const TO_EARTH = reason('reading/neutral-to-earth');
const LOST = reason('reading-above/grounded', { what: 'neutral' });
/** What a reading outside its band may mean. */
const WITH_NEUTRAL = {
  above: reason('reading-above/supply'),
  utility: reason('reading-below/utility'),
  own: reason('reading-below/own-source'),
};
const OF_DELTA = {
  above: reason('reading-above/supply-delta'),
  utility: reason('reading-below/utility-delta'),
  own: reason('reading-below/own-source-delta'),
};
const GROUND_FAULT = reason('ground-fault/lines');
const NEUTRAL_LIFTED = reason('ground-fault/neutral');

/**
 * What to measure at an AC place: of a system that is tied to ground each conductor to it (of TT to N, and N to PE), else line to
 * line, and each conductor to ground without a low figure.
 * @param f what is known; V
 * @returns the readings; where the utility and a source of the site's own feed it, those on each
 * Source: ANSI C84.1-2020 range B (values from memory); `iec` 10 % (IEC 60038:2009, value from memory); else common practice, no source.
 */
export function readAcConductors(f: AcReadingFacts): readonly Reading[] {
  if (!isStated(f)) {
    const band = { low: undefined, high: undefined };
    return f.conductors.map((wire) => readingOf({ wire, to: null }, band, NOT_KNOWN, {}));
  }
  return isTied(f) ? tied(f) : lifted(f);
}

function isStated(f: AcReadingFacts): f is Stated {
  return f.system !== undefined;
}

/** True where each line has a voltage to ground that its system fixes. */
function isTied({ basis, earthing, system, whole, grounding }: Stated): boolean {
  // The impedance of a sound system holds its star point near ground; its reading says nothing of the system.
  if (grounding === 'none' || grounding === 'impedance') return false;
  if (isEitherLeg({ system, whole, grounding }) && !(!isNec(basis) && earthing === 'IT')) return true;
  return AC_SYSTEM_DATA[system].lines.every(
    (conductor) => nominalToGround({ system, whole, grounding, basis, earthing, conductor }) !== null,
  );
}

/** Two lines of a high-leg system of which one may be the high leg. */
function isEitherLeg({ system, whole, grounding }: Pick<Stated, 'system' | 'whole' | 'grounding'>): boolean {
  return system === '240' && whole === '240/120 high-leg' && grounding === 'solid';
}

/** Tied to ground: each conductor of the housing to it, and N whether it has a channel or not. */
function tied(f: Stated): readonly Reading[] {
  const { system, conductors, threePlusOne, settings, grounding } = f;
  const readings: Reading[] = [];
  for (const conductor of AC_SYSTEM_DATA[system].lines) {
    if (!conductors.includes(conductor)) continue;
    const nominal = nominalOf(f, conductor);
    if (nominal === 0) readings.push(groundedReading(conductor, 'phase', settings));
    else for (const supply of suppliesOf(f)) readings.push(lineReading(f, conductor, nominal, supply));
  }
  if (!AC_SYSTEM_DATA[system].hasNeutral || grounding !== 'solid') return readings;
  if (!threePlusOne) return [...readings, groundedReading('N', 'neutral', settings)];
  const high = settings.neutralToEarthTt;
  return [...readings, readingOf({ wire: 'N', to: null }, { low: 0, high }, TO_EARTH, { above: LOST })];
}

/** V; of two lines of which one may be the high leg the lower. */
function nominalOf(f: Stated, conductor: Conductor): number {
  const { system, whole, grounding, basis, earthing } = f;
  const nominal = nominalToGround({ system, whole, grounding, basis, earthing, conductor });
  return nominal ?? Math.min(...linesToGround(system, whole));
}

function lineReading(f: Stated, wire: Conductor, nominal: number, supply: MeasuredSupply): Reading {
  const { system, whole, threePlusOne, mostToGround } = f;
  const { low, high } = bandOf(f, nominal, supply);
  const isEither = isEitherLeg(f);
  const highLeg = isEither ? Math.max(...linesToGround(system, whole)) : nominal;
  const most = isEither ? bandOf(f, highLeg, supply).high : high;
  const reads = isEither
    ? reason('reading/either-leg', { nominal: volts(nominal), highLeg: volts(highLeg), supply })
    : supplyRead(nominal, supply);
  return readingOf(
    { wire, to: threePlusOne ? 'N' : null },
    { low, high: Math.min(most, mostToGround ?? most) },
    reads,
    { below: belowOf(f, supply), above: meaningsOf(f).above },
  );
}

/**
 * Not solidly tied to ground: line to line, of a single line to N; to ground a figure to stop at alone. N between lines is their star
 * point or midpoint: it is read apart from them, and stands at most where a ground fault of a line lifts it.
 */
function lifted(f: Stated): readonly Reading[] {
  const { system, conductors, mostToGround } = f;
  const data = AC_SYSTEM_DATA[system];
  const pairs = data.lines.length > 1 ? pairsOf(data.lines) : pairsOf(data.conductors);
  const nominal = data.lines.length > 1 ? data.lineToLine : data.betweenConductors;
  const supplies = suppliesOf(f);
  const between = pairs
    .filter((pair) => pair.some((one) => conductors.includes(one)))
    .flatMap(([wire, to]) =>
      supplies.map((supply) => {
        return readingOf({ wire, to }, bandOf(f, nominal, supply), supplyRead(nominal, supply), {
          below: belowOf(f, supply),
          above: meaningsOf(f).above,
        });
      }),
    );
  const { lineToLine, linesToGround } = AC_SYSTEM_DATA[f.whole ?? system];
  const by = f.grounding === 'impedance' ? 'impedance' : 'nothing';
  const toGround = conductors.map((wire) => {
    const isNeutral = wire === 'N' && lineToLine > Math.min(...linesToGround);
    const nominalMost = isNeutral ? Math.max(...linesToGround) : lineToLine;
    const most = Math.max(...supplies.map((supply) => bandOf(f, nominalMost, supply).high));
    return readingOf(
      { wire, to: null },
      { low: undefined, high: Math.min(most, mostToGround ?? most) },
      reason('reading/no-band', { by, what: isNeutral ? 'neutral' : 'lines' }),
      { above: meaningsOf(f).above, fault: isNeutral ? NEUTRAL_LIFTED : GROUND_FAULT },
    );
  });
  return [...between, ...toGround];
}

/** On what it is measured: with `iec` the figures are the same; what nothing feeds is measured as the utility gives it. */
function suppliesOf({ basis, fedByUtility, fedBySource }: AcReadingFacts): readonly MeasuredSupply[] {
  if (!isNec(basis)) return ['any'];
  if (!fedBySource) return ['utility'];
  return fedByUtility ? ['utility', 'own'] : ['own'];
}

function bandOf({ place, settings }: AcReadingFacts, nominal: number, supply: MeasuredSupply): VoltageBand {
  return supply === 'utility' ? rangeB(nominal, place) : aroundNominal(nominal, settings.aroundNominal);
}

const supplyReads = new Map<string, Reason>();

/** One object each, so that readings which are alike need no look into it: nominal voltages are those of the table of systems. */
function supplyRead(nominal: number, supply: MeasuredSupply): Reason {
  const key = `${nominal}|${supply}`;
  let read = supplyReads.get(key);
  if (!read) supplyReads.set(key, (read = reason('reading/supply', { nominal: volts(nominal), supply })));
  return read;
}

/** A delta has no N that could be open. */
function meaningsOf({ system, whole }: Stated): typeof WITH_NEUTRAL | typeof OF_DELTA {
  const { lines, hasNeutral } = AC_SYSTEM_DATA[whole ?? system];
  return lines.length === 3 && !hasNeutral ? OF_DELTA : WITH_NEUTRAL;
}

const belowOf = (f: Stated, supply: MeasuredSupply): Reason =>
  supply === 'own' ? meaningsOf(f).own : meaningsOf(f).utility;
