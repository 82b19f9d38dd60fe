import type { Basis } from '../model/editions.js';
import type { AcSystem, Conductor, Earthing, SystemGrounding } from '../model/words.js';
import { isNec } from '../model/editions.js';

/** What is known about an AC system by its name; V. */
export interface AcSystemData {
  readonly system: AcSystem;
  /** All conductors but the equipment ground, lines first. */
  readonly conductors: readonly Conductor[];
  readonly lines: readonly Conductor[];
  readonly hasNeutral: boolean;
  /** Split phase and two-wire are 1. */
  readonly phases: 1 | 3;
  /** V; nominal voltage to ground of each line while the system is solidly grounded, by its place in `lines`. */
  readonly linesToGround: readonly number[];
  /** V; between lines of the source; with one line and a neutral: 120 V itself, and 400 V for 230 V. */
  readonly lineToLine: number;
  /** V; highest nominal voltage between two conductors of this system, neutral included. */
  readonly betweenConductors: number;
  /** The practice that the system is of; under another basis it is foreign. */
  readonly practice: 'nec' | 'iec';
}

type Shape = Omit<AcSystemData, 'system' | 'conductors' | 'lines' | 'betweenConductors'> & {
  readonly between?: number;
};

const LINES: readonly Conductor[] = ['L1', 'L2', 'L3'];

function describe(system: AcSystem, shape: Shape): AcSystemData {
  const { between, ...rest } = shape;
  const lines = LINES.slice(0, shape.linesToGround.length);
  return {
    ...rest,
    system,
    lines,
    conductors: shape.hasNeutral ? [...lines, 'N'] : lines,
    betweenConductors: between ?? shape.lineToLine,
  };
}

const nec = { practice: 'nec' } as const;
const iec = { practice: 'iec' } as const;

/**
 * The AC systems of the contract; nominal voltages of ANSI C84.1-2020 Table 1 and IEC 60038:2009 Table 1 (values from
 * memory). A delta without a neutral has no conductor to ground but a corner: its lines enter with the line-to-line voltage.
 */
export const AC_SYSTEM_DATA: Readonly<Record<AcSystem, AcSystemData>> = {
  '120': describe('120', { ...nec, hasNeutral: true, phases: 1, linesToGround: [120], lineToLine: 120 }),
  '277': describe('277', {
    ...nec,
    hasNeutral: true,
    phases: 1,
    linesToGround: [277],
    lineToLine: 480,
    between: 277,
  }),
  '347': describe('347', {
    ...nec,
    hasNeutral: true,
    phases: 1,
    linesToGround: [347],
    lineToLine: 600,
    between: 347,
  }),
  '120/240': describe('120/240', {
    ...nec,
    hasNeutral: true,
    phases: 1,
    linesToGround: [120, 120],
    lineToLine: 240,
  }),
  '120/208': describe('120/208', {
    ...nec,
    hasNeutral: true,
    phases: 1,
    linesToGround: [120, 120],
    lineToLine: 208,
  }),
  '208Y/120': describe('208Y/120', {
    ...nec,
    hasNeutral: true,
    phases: 3,
    linesToGround: [120, 120, 120],
    lineToLine: 208,
  }),
  '240': describe('240', {
    ...nec,
    hasNeutral: false,
    phases: 1,
    linesToGround: [120, 120],
    lineToLine: 240,
  }),
  '208': describe('208', {
    ...nec,
    hasNeutral: false,
    phases: 1,
    linesToGround: [120, 120],
    lineToLine: 208,
  }),
  '480': describe('480', {
    ...nec,
    hasNeutral: false,
    phases: 1,
    linesToGround: [277, 277],
    lineToLine: 480,
  }),
  '240/120 high-leg': describe('240/120 high-leg', {
    ...nec,
    hasNeutral: true,
    phases: 3,
    linesToGround: [120, 208, 120],
    lineToLine: 240,
  }),
  '240 delta': describe('240 delta', {
    ...nec,
    hasNeutral: false,
    phases: 3,
    linesToGround: [240, 240, 240],
    lineToLine: 240,
  }),
  '480Y/277': describe('480Y/277', {
    ...nec,
    hasNeutral: true,
    phases: 3,
    linesToGround: [277, 277, 277],
    lineToLine: 480,
  }),
  '480 delta': describe('480 delta', {
    ...nec,
    hasNeutral: false,
    phases: 3,
    linesToGround: [480, 480, 480],
    lineToLine: 480,
  }),
  '600Y/347': describe('600Y/347', {
    ...nec,
    hasNeutral: true,
    phases: 3,
    linesToGround: [347, 347, 347],
    lineToLine: 600,
  }),
  '230': describe('230', {
    ...iec,
    hasNeutral: true,
    phases: 1,
    linesToGround: [230],
    lineToLine: 400,
    between: 230,
  }),
  '400Y/230': describe('400Y/230', {
    ...iec,
    hasNeutral: true,
    phases: 3,
    linesToGround: [230, 230, 230],
    lineToLine: 400,
  }),
};

/** True where the system belongs to the practice of the other side: the basis's formula is used, and a person confirms. */
export function isForeign(system: AcSystem, basis: Basis): boolean {
  return (AC_SYSTEM_DATA[system].practice === 'nec') !== isNec(basis);
}

/** A three-phase system without a neutral: none of its points but a corner can be grounded. */
function isDelta(data: AcSystemData): boolean {
  return data.phases === 3 && !data.hasNeutral;
}

/** A system with its grounding and what the job says of earthing. */
export interface GroundedSystem {
  readonly system: AcSystem;
  /** The system that it is a part of, without a transformer between: it has the grounding of that. Undefined: it is the whole. */
  readonly whole?: AcSystem | undefined;
  readonly grounding: SystemGrounding;
  readonly basis: Basis;
  /** Counts under `iec` only. */
  readonly earthing: Earthing;
}

/** The system whose grounding counts. */
export function wholeOf({ system, whole }: Pick<GroundedSystem, 'system' | 'whole'>): AcSystem {
  return whole ?? system;
}

/**
 * True where a line can stand at the line-to-line voltage above ground for long: a system that isn't solidly grounded, a
 * delta without a neutral, or `iec` with IT.
 */
export function isLiftedToLineVoltage(input: GroundedSystem): boolean {
  if (input.grounding !== 'solid' || isDelta(AC_SYSTEM_DATA[wholeOf(input)])) return true;
  return !isNec(input.basis) && input.earthing === 'IT';
}

/** The line that stands highest above ground, and its nominal voltage. */
export interface WorstLine {
  readonly conductor: Conductor;
  /** V. */
  readonly nominal: number;
}

/**
 * Nominal voltage to ground of each line of a system while the system that it is a part of is solidly grounded; V, by its place in
 * `lines`. A part has the grounding of the whole: two or three lines of a high-leg delta hold the high leg, three lines of a wye
 * stand at its line-to-neutral voltage.
 */
export function linesToGround(system: AcSystem, whole: AcSystem = system): readonly number[] {
  if (whole === '240/120 high-leg') {
    const { linesToGround: ofWhole } = AC_SYSTEM_DATA[whole];
    // Which two lines a two-wire part takes isn't stated: one of them may be the high leg.
    if (system === '240') return ofWhole.slice(0, 2);
    if (system === '240 delta') return ofWhole;
  }
  if (whole === '480Y/277' && system === '480 delta') return AC_SYSTEM_DATA[whole].linesToGround;
  return AC_SYSTEM_DATA[system].linesToGround;
}

/**
 * The line with the highest nominal voltage to ground while the system is solidly grounded: the high leg L2 of a high-leg
 * delta (NEC 408.3(E): phase B), else the first line.
 */
export function worstGroundedLine(system: AcSystem, whole: AcSystem = system): WorstLine {
  const { lines } = AC_SYSTEM_DATA[system];
  const toGround = linesToGround(system, whole);
  const nominal = Math.max(...toGround);
  return { conductor: lines[toGround.indexOf(nominal)] ?? 'L1', nominal };
}

/**
 * What a voltmeter should show from a conductor to ground on a sound system, nominal.
 *
 * A system without a reference to ground (`none`, or `iec` with IT) shows whatever its capacitances make of it: null. So
 * does a corner-grounded system that has no L2, and a delta said to be `solid`, where nobody knows which point is meant.
 * @param input system, its grounding, the conductor, and basis and earthing of the job
 * @returns V; 0 for a conductor at ground potential; null: no figure can be stated, or the system has no such conductor
 * Source: geometry of the system; the corner-grounded phase is L2 (this project's choice).
 */
export function nominalToGround(input: GroundedSystem & { readonly conductor: Conductor }): number | null {
  const { conductor, grounding } = input;
  const data = AC_SYSTEM_DATA[input.system];
  if (!data.conductors.includes(conductor)) return null;
  if (!isNec(input.basis) && input.earthing === 'IT') return null;
  const toGround = linesToGround(input.system, wholeOf(input));
  const atLine = toGround[data.lines.indexOf(conductor)];
  const whole = AC_SYSTEM_DATA[wholeOf(input)];
  const isDeltaWhole = isDelta(whole);
  switch (grounding) {
    case 'none':
      return null;
    case 'corner':
      if (!data.lines.includes('L2')) return null;
      if (conductor === 'L2') return 0;
      return atLine === undefined ? (data.linesToGround[1] ?? null) : whole.lineToLine;
    case 'impedance':
      // The impedance holds the star point near ground until a fault comes; a delta's lies at line voltage over root 3.
      if (isDeltaWhole) return whole.lineToLine / Math.sqrt(3);
      return atLine ?? 0;
    case 'solid':
      // Which two lines of a high-leg system these are isn't stated.
      if (input.system === '240' && input.whole === '240/120 high-leg') return null;
      return isDeltaWhole ? null : (atLine ?? 0);
  }
}
