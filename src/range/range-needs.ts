import { AC_SYSTEM_DATA } from '../electrical/ac-systems.js';
import { NEC_2023_690_7_LIMITS } from '../rules/pv-limits.js';
import type { RowFacts } from '../model/list.js';
import { unstatedBasis } from '../model/settled.js';
import type { Settings } from '../model/settings.js';
import { DEFAULT_CYCLE, isNec, type Basis } from '../model/editions.js';
import { AC_SYSTEMS, type AcSystem, type Earthing, type SystemGrounding } from '../model/words.js';

/** Where a protector of the range may have to stand; `service` and `ahead of the disconnect` are for AC alone. */
export const RANGE_PLACES = ['indoors', 'outdoors', 'service', 'ahead of the disconnect'] as const;
export type RangePlace = (typeof RANGE_PLACES)[number];

/** One kind of circuit that a company's range is held against. */
export interface RangeNeed {
  readonly basis: Basis;
  readonly earthing: Earthing;
  /** `480 delta`, `48 V battery`, `array of 600 V`. */
  readonly circuit: string;
  /** Of an AC system; undefined: by the earthing of the job, or a circuit that has none. */
  readonly grounding: SystemGrounding | undefined;
  readonly current: 'ac' | 'dc';
  readonly places: readonly RangePlace[];
  /** What the list of such a job would state of the one row that it has, by place. */
  readonly row: (place: RangePlace) => Partial<RowFacts>;
  /** Why this figure belongs to a range. */
  readonly source: string;
}

/** V; batteries that the chemistry table knows the usual number of cells of. */
const BATTERIES = [12, 24, 48] as const;
/** V; highest input voltages of charge controllers; common practice, no source. */
const CONTROLLER_INPUTS = [150, 250] as const;

/** The groundings that a system can have: a delta without a neutral is never solidly grounded, and only it at a corner. */
function groundingsOf(system: AcSystem): readonly SystemGrounding[] {
  const { phases, hasNeutral } = AC_SYSTEM_DATA[system];
  if (phases === 1) return ['solid', 'none'];
  return hasNeutral ? ['solid', 'none', 'impedance'] : ['none', 'corner', 'impedance'];
}

function acNeed(
  system: AcSystem,
  of: Pick<RangeNeed, 'basis' | 'earthing' | 'grounding'>,
  source: string,
): RangeNeed {
  const grounding = of.grounding === undefined ? {} : { system_grounding: of.grounding };
  return {
    ...of,
    circuit: system,
    current: 'ac',
    places: RANGE_PLACES,
    source,
    row: (place) =>
      place === 'service' || place === 'ahead of the disconnect'
        ? {
            kind: 'service',
            ac_in: system,
            ahead_of_disconnect: place === 'ahead of the disconnect',
            ...grounding,
          }
        : { kind: 'generator', ac_out: system, ...grounding },
  };
}

function acNeeds(settings: Settings): RangeNeed[] {
  const unstated = unstatedBasis(settings);
  const nec: Basis = isNec(unstated) ? unstated : DEFAULT_CYCLE;
  return AC_SYSTEMS.flatMap((system) =>
    AC_SYSTEM_DATA[system].practice === 'nec'
      ? groundingsOf(system).map((grounding) =>
          acNeed(system, { basis: nec, earthing: 'TN', grounding }, 'ANSI C84.1-2020 Table 1'),
        )
      : (['TN', 'TT', 'IT'] as const).map((earthing) =>
          acNeed(system, { basis: 'iec', earthing, grounding: undefined }, 'IEC 60038:2009 Table 1'),
        ),
  );
}

function dcNeed(basis: Basis, circuit: string, row: Partial<RowFacts>, source: string): RangeNeed {
  return {
    basis,
    earthing: 'TN',
    circuit,
    grounding: undefined,
    current: row.control_voltage?.current ?? 'dc',
    places: ['indoors', 'outdoors'],
    row: () => row,
    source,
  };
}

function dcNeeds(basis: Basis): RangeNeed[] {
  const array = (volts: number, source: string): RangeNeed =>
    dcNeed(
      basis,
      `array of ${volts} V`,
      { kind: 'array', output: 'dc', open_circuit_voltage: volts },
      source,
    );
  const limits = Object.values(NEC_2023_690_7_LIMITS);
  return [
    ...BATTERIES.map((volts) =>
      dcNeed(
        basis,
        `${volts} V battery`,
        { kind: 'battery', battery_voltage: volts, battery_chemistry: 'lead-acid' },
        'usual batteries, lead-acid, coldest not known; common practice, no source',
      ),
    ),
    ...CONTROLLER_INPUTS.map((volts) => array(volts, 'common practice, no source')),
    ...limits.map((volts) => array(volts, isNec(basis) ? 'NEC 690.7' : 'common practice, no source')),
    ...(['dc', 'ac'] as const).map((current) =>
      dcNeed(
        basis,
        `24 V ${current} control circuit`,
        { kind: 'control-circuit', control_voltage: { volts: 24, current } },
        'common practice, no source',
      ),
    ),
  ];
}

/**
 * The circuits that a range is held against: each AC system of the contract with each grounding that it can have, and the
 * usual DC and control circuits.
 * @param settings its basis counts; NEC systems under `iec` are held against nec-2023, and the DC circuits of a company that
 * works by the NEC are held against `iec` too, as AC systems are: its catalogue may hold parts for both
 */
export function rangeNeeds(settings: Settings): readonly RangeNeed[] {
  const { basis } = settings;
  return [...acNeeds(settings), ...dcNeeds(basis), ...(isNec(basis) ? dcNeeds('iec') : [])];
}
