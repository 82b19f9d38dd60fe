import { bare, volts } from '../model/quantity.js';
import { keeping } from '../model/keeping.js';
import { reason } from '../model/reason.js';
import { withoutDust } from '../model/rounding.js';
import { subject, type Step, type Working } from '../model/step.js';
import { isNec, type Basis } from '../model/editions.js';
import type { AcSystem, Conductor } from '../model/words.js';
import {
  AC_SYSTEM_DATA,
  isForeign,
  isLiftedToLineVoltage,
  wholeOf,
  worstGroundedLine,
  type GroundedSystem,
} from './ac-systems.js';
import { COMMON_PRACTICE, computed, taken, workingOf } from './working.js';

/** Highest voltage of range B over nominal: ANSI C84.1-2020 Table 1, 127 V on a 120 V system (value from memory). */
export const ANSI_C84_1_2020_RANGE_B = 127 / 120;
const RANGE_B = { highest: bare(127), nominal: bare(120) };
/** Least Uc over the voltage it stands on: IEC 60364-5-53:2019 Table 534.2 (value from memory). */
export const IEC_60364_5_53_2019_TABLE_534_2_FACTOR = 1.1;
/** Peak over effective value of a sine, to the three places that the trade writes. */
export const PEAK_OVER_EFFECTIVE = 1.414;

const RANGE_B_SOURCE = reason('source/voltage-range');
const TABLE_534_2_SOURCE = reason('source/continuous-voltage-table');
const INVERTER_SOURCE = reason('source/inverter-link');

export interface ContinuousVoltageInput extends GroundedSystem {
  /** Share of the nominal voltage to ground to be borne under `nec`: the setting `continuousShare`. */
  readonly continuousShare: number;
}

export interface ContinuousVoltage {
  /** The conductor that asks for the most; the first of equals. */
  readonly conductor: Conductor;
  /** V; nominal voltage to ground that the result stands on: of a sound system, or line to line where a fault lifts it so far. */
  readonly nominal: number;
  readonly standsOn: 'line-to-ground' | 'line-to-line';
  /** V; highest continuous voltage to ground: range B for `nec`, 1.1 x for `iec`. */
  readonly highest: number;
  /** V; the trade's share of nominal under `nec`; null under `iec`. */
  readonly share: number | null;
  /** V; least MCOV of a channel. */
  readonly required: number;
  /** The system is foreign to the basis: a person confirms. */
  readonly foreign: boolean;
  readonly working: Working;
}

function necSteps(nominal: number, highest: number, share: number, continuousShare: number): Step[] {
  const u = volts(nominal);
  return [
    computed('Umax', subject('ac-voltage/highest', { range: RANGE_B, nominal: u }), {
      value: highest,
      unit: 'V',
      sure: 'memory',
      uses: ['U'],
      source: RANGE_B_SOURCE,
    }),
    computed('Us', subject('ac-voltage/share', { share: bare(continuousShare), nominal: u }), {
      value: share,
      unit: 'V',
      sure: 'common practice',
      uses: ['U'],
      source: COMMON_PRACTICE,
    }),
  ];
}

/** The clause of the NEC on uses that aren't permitted, by cycle; null: the basis is none of the NEC. */
const USES_NOT_PERMITTED: Readonly<Record<Basis, string | null>> = {
  'nec-2017': '285.3',
  'nec-2020': '242.6',
  'nec-2023': '242.12',
  iec: null,
};

/**
 * Highest continuous voltage to ground of an AC system, and the least MCOV (Uc) of a channel on its worst conductor.
 *
 * `nec`: the larger of range B and the share of nominal. `iec`: 1.1 x the voltage of Table 534.2: U0 in TN and (line to
 * neutral, by a 3+1 part) in TT, line to line in IT; 230 V in IT stands on the 400 V of its source. Not solidly grounded
 * under any basis: line to line. Systems up to 1000 V AC.
 * @param input system, grounding, basis, earthing, share
 * @returns V with the intermediates and the working
 * Source: NEC 2023 242.12 (2020: 242.6; 2017: 285.3), uses not permitted: not below the highest continuous phase-to-ground voltage; ANSI
 * C84.1-2020 range B (value from memory); 1.15: common practice, no source; IEC 60364-5-53:2019 Table 534.2 (value from memory).
 */
export const highestContinuousToGround = keeping(
  ({ system, whole, grounding, basis, earthing, continuousShare }: ContinuousVoltageInput) =>
    `${system}|${whole}|${grounding}|${basis}|${earthing}|${continuousShare}`,
  workedOut,
);

function workedOut(input: ContinuousVoltageInput): ContinuousVoltage {
  const { system, basis, continuousShare } = input;
  const whole = wholeOf(input);
  const lifted = isLiftedToLineVoltage(input);
  const worst = worstGroundedLine(system, whole);
  const conductor = lifted ? 'L1' : worst.conductor;
  const nominal = lifted ? AC_SYSTEM_DATA[whole].lineToLine : worst.nominal;
  const standsOn = lifted ? 'line-to-line' : 'line-to-ground';
  const foreign = isForeign(system, basis);
  const what = lifted
    ? subject('ac-voltage/between-lines', { system: whole })
    : subject('ac-voltage/to-ground', { conductor, system: whole });
  const u = taken('U', what, nominal, 'V');
  const clause = USES_NOT_PERMITTED[basis];
  if (clause !== null) {
    const highest = withoutDust(nominal * ANSI_C84_1_2020_RANGE_B);
    const share = withoutDust(nominal * continuousShare);
    const required = Math.max(highest, share);
    const larger = subject('ac-voltage/larger', { highest: volts(highest), share: volts(share) });
    const result = computed('MCOV', larger, {
      value: required,
      unit: 'V',
      sure: 'computed',
      uses: ['Umax', 'Us'],
      source: reason('source/uses-not-permitted', { basis, clause }),
    });
    const working = workingOf([u, ...necSteps(nominal, highest, share, continuousShare)], result);
    return { conductor, nominal, standsOn, highest, share, required, foreign, working };
  }
  const required = withoutDust(nominal * IEC_60364_5_53_2019_TABLE_534_2_FACTOR);
  const least = subject('ac-voltage/least', {
    factor: bare(IEC_60364_5_53_2019_TABLE_534_2_FACTOR),
    nominal: volts(nominal),
  });
  const result = computed('Uc', least, {
    value: required,
    unit: 'V',
    sure: 'memory',
    uses: ['U'],
    source: TABLE_534_2_SOURCE,
  });
  const working = workingOf([u], result);
  return { conductor, nominal, standsOn, highest: required, share: null, required, foreign, working };
}

/** Highest continuous voltage between two output conductors of a converter, and the DC floor that follows from it; V. */
export interface ArrayFloor {
  readonly nominal: number;
  readonly highest: number;
  /** V; least MCOV of a DC channel on the array's side. */
  readonly value: number;
  readonly working: Working;
}

/**
 * Least voltage to ground to reckon with on an array whose grid-tie inverter isn't stated to be isolated: its poles are
 * lifted by the inverter's own DC link, which stands at least at the peak of the AC voltage between its output conductors.
 *
 * Derived, not published: the page says so and sends the reader to the maker. Without the share of 1.15.
 * @param input the inverter's AC output system and the basis
 * @returns V: 1.414 x the highest continuous voltage between output conductors (to N where there is one line)
 * Source: derived; range B (ANSI C84.1-2020) or 1.1 (IEC 60364-5-53:2019 Table 534.2), values from memory.
 */
export function arrayFloorFromInverter(input: {
  readonly system: AcSystem;
  readonly basis: Basis;
}): ArrayFloor {
  const nominal = AC_SYSTEM_DATA[input.system].betweenConductors;
  const nec = isNec(input.basis);
  const highest = withoutDust(
    nominal * (nec ? ANSI_C84_1_2020_RANGE_B : IEC_60364_5_53_2019_TABLE_534_2_FACTOR),
  );
  const value = withoutDust(highest * PEAK_OVER_EFFECTIVE);
  const u = volts(nominal);
  const factor = bare(IEC_60364_5_53_2019_TABLE_534_2_FACTOR);
  const ofRange = nec
    ? subject('inverter-link/highest-of-range', { range: RANGE_B, nominal: u })
    : subject('inverter-link/highest', { factor, nominal: u });
  const steps: Step[] = [
    taken('UAC', subject('inverter-link/nominal', { system: input.system }), nominal, 'V'),
    computed('UAC,max', ofRange, {
      value: highest,
      unit: 'V',
      sure: 'memory',
      uses: ['UAC'],
      source: nec ? RANGE_B_SOURCE : TABLE_534_2_SOURCE,
    }),
  ];
  const peak = subject('inverter-link/peak', {
    factor: bare(PEAK_OVER_EFFECTIVE),
    highest: volts(highest),
  });
  const result = computed('Ulink', peak, {
    value,
    unit: 'V',
    sure: 'derived',
    uses: ['UAC,max'],
    source: INVERTER_SOURCE,
  });
  return { nominal, highest, value, working: workingOf(steps, result) };
}
