import type { Step, Working } from '../model/fact.js';
import { isNec, type Basis } from '../model/editions.js';
import type { AcSystem, Conductor } from '../model/words.js';
import {
  AC_SYSTEM_DATA,
  isForeign,
  isLiftedToLineVoltage,
  worstGroundedLine,
  type GroundedSystem,
} from './ac-systems.js';
import { COMMON_PRACTICE, FROM_MEMORY, shown, taken, withoutDust, workingOf } from './working.js';

/** Highest voltage of range B over nominal: ANSI C84.1-2020 Table 1, 127 V on a 120 V system (value from memory). */
export const ANSI_C84_1_2020_RANGE_B = 127 / 120;
const RANGE_B_TEXT = '127 / 120';
/** Least Uc over the voltage it stands on: IEC 60364-5-53:2019 Table 534.2 (value from memory). */
export const IEC_60364_5_53_2019_TABLE_534_2_FACTOR = 1.1;
/** Peak over effective value of a sine, to the three places that the trade writes. */
export const PEAK_OVER_EFFECTIVE = 1.414;

const RANGE_B_SOURCE = `ANSI C84.1-2020, range B, ${FROM_MEMORY}`;
const TABLE_534_2_SOURCE = `IEC 60364-5-53:2019 Table 534.2, ${FROM_MEMORY}`;

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

/** Why the nominal voltage is what it is, for the working. */
function nominalSays(input: ContinuousVoltageInput, lifted: boolean, conductor: Conductor): string {
  if (!lifted) return `Nominal voltage of ${conductor} to ground, system ${input.system}`;
  return `Voltage between lines, system ${input.system}: a fault to ground lifts a line so far`;
}

function necSteps(nominal: number, highest: number, share: number, continuousShare: number): [Step, Step] {
  return [
    {
      symbol: 'Umax',
      says: 'Highest continuous voltage to ground, range B',
      formula: `${RANGE_B_TEXT} × U`,
      substituted: `${RANGE_B_TEXT} × ${shown(nominal)} V`,
      value: highest,
      unit: 'V',
      sure: 'memory',
      source: RANGE_B_SOURCE,
    },
    {
      symbol: 'Us',
      says: 'Share of the nominal voltage that the trade asks for',
      formula: `${shown(continuousShare)} × U`,
      substituted: `${shown(continuousShare)} × ${shown(nominal)} V`,
      value: share,
      unit: 'V',
      sure: 'common practice',
      source: COMMON_PRACTICE,
    },
  ];
}

/** The clause on uses that aren't permitted, by cycle. */
const NEC_CLAUSE: { readonly [basis: string]: string } = {
  'nec-2017': '285.3',
  'nec-2020': '242.6',
  'nec-2023': '242.12',
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
export function highestContinuousToGround(input: ContinuousVoltageInput): ContinuousVoltage {
  const { system, basis, continuousShare } = input;
  const lifted = isLiftedToLineVoltage(input);
  const worst = worstGroundedLine(system);
  const conductor = lifted ? 'L1' : worst.conductor;
  const nominal = lifted ? AC_SYSTEM_DATA[system].lineToLine : worst.nominal;
  const standsOn = lifted ? 'line-to-line' : 'line-to-ground';
  const foreign = isForeign(system, basis);
  const u = taken('U', nominalSays(input, lifted, conductor), nominal, 'V');
  if (isNec(basis)) {
    const highest = withoutDust(nominal * ANSI_C84_1_2020_RANGE_B);
    const share = withoutDust(nominal * continuousShare);
    const required = Math.max(highest, share);
    const result: Step = {
      symbol: 'MCOV',
      says: 'Least maximum continuous operating voltage: the larger of the two',
      formula: 'max(Umax, Us)',
      substituted: `max(${shown(highest)} V, ${shown(share)} V)`,
      value: required,
      unit: 'V',
      sure: 'computed',
      source: `NEC ${basis.slice('nec-'.length)} ${NEC_CLAUSE[basis]}: not below the highest continuous voltage to ground`,
    };
    const [rangeB, shareStep] = necSteps(nominal, highest, share, continuousShare);
    const working = workingOf([u, rangeB, shareStep], result);
    return { conductor, nominal, standsOn, highest, share, required, foreign, working };
  }
  const required = withoutDust(nominal * IEC_60364_5_53_2019_TABLE_534_2_FACTOR);
  const result: Step = {
    symbol: 'Uc',
    says: 'Least maximum continuous operating voltage',
    formula: `${shown(IEC_60364_5_53_2019_TABLE_534_2_FACTOR)} × U`,
    substituted: `${shown(IEC_60364_5_53_2019_TABLE_534_2_FACTOR)} × ${shown(nominal)} V`,
    value: required,
    unit: 'V',
    sure: 'memory',
    source: TABLE_534_2_SOURCE,
  };
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
  const factor = nec ? RANGE_B_TEXT : shown(IEC_60364_5_53_2019_TABLE_534_2_FACTOR);
  const steps: Step[] = [
    taken('UAC', `Nominal voltage between the output conductors, system ${input.system}`, nominal, 'V'),
    {
      symbol: 'UAC,max',
      says: 'Highest continuous voltage between the output conductors',
      formula: `${factor} × UAC`,
      substituted: `${factor} × ${shown(nominal)} V`,
      value: highest,
      unit: 'V',
      sure: 'memory',
      source: nec ? RANGE_B_SOURCE : TABLE_534_2_SOURCE,
    },
  ];
  const result: Step = {
    symbol: 'Ulink',
    says: "Peak of that voltage: the inverter's DC link lifts the poles so far; ask the maker",
    formula: `${shown(PEAK_OVER_EFFECTIVE)} × UAC,max`,
    substituted: `${shown(PEAK_OVER_EFFECTIVE)} × ${shown(highest)} V`,
    value,
    unit: 'V',
    sure: 'derived',
    source: 'derived by this project from the circuit of an inverter without isolation',
  };
  return { nominal, highest, value, working: workingOf(steps, result) };
}
