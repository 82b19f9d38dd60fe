import { reason, type Reason } from '../../model/reason.js';
import type { Kind } from '../../model/words.js';

/** A thing to do, and the equipment that it is done to; none: everything that was opened. */
export interface Act {
  readonly does: Reason;
  readonly tags: readonly string[];
}

/** One numbered step. */
export interface IsolationStep {
  readonly number: number;
  readonly acts: readonly Act[];
}

/** How a part of a site is made dead, and live again. */
export interface IsolationOrder {
  /** By their number, those that the part has. */
  readonly steps: readonly IsolationStep[];
  /** From the highest number down. */
  readonly back: readonly IsolationStep[];
}

/** Step by step what is done to which kinds, in the order in which they are named. */
type Acts = readonly (readonly [step: number, does: Reason, kinds: readonly Kind[]])[];

const STORES_CHARGE: readonly Kind[] = [
  'charge-controller',
  'grid-tie-inverter',
  'inverter-charger',
  'pump-drive',
  'ac-battery',
];

const DEAD: Acts = [
  [1, reason('isolate/block-generator'), ['generator']],
  [1, reason('isolate/block-inverter'), ['inverter-charger']],
  [1, reason('isolate/block-ac-battery'), ['ac-battery']],
  [1, reason('isolate/control-supply'), ['control-circuit']],
  [2, reason('isolate/stop-wind'), ['wind-turbine']],
  [2, reason('isolate/stop-hydro'), ['hydro-turbine']],
  [2, reason('isolate/keep-diversion'), ['diversion-load']],
  [3, reason('isolate/loads-off'), ['load', 'dc-load']],
  [3, reason('isolate/inverters-off'), ['grid-tie-inverter', 'inverter-charger']],
  [3, reason('isolate/ac-modules-off'), ['ac-module-branch']],
  [3, reason('isolate/drives-off'), ['pump-drive']],
  [3, reason('isolate/ac-batteries-off'), ['ac-battery']],
  [4, reason('isolate/open-generator'), ['generator']],
  [4, reason('isolate/open-utility'), ['service']],
  [5, reason('isolate/open-array'), ['array']],
  [6, reason('isolate/open-turbine'), ['wind-turbine', 'hydro-turbine']],
  [7, reason('isolate/open-battery'), ['battery']],
];

const WITHOUT_TURBINES: Acts = DEAD.filter(([, , kinds]) => !kinds.includes('diversion-load'));
const NO_TAGS: readonly string[] = [];

const BACK: Acts = [
  [7, reason('restore/battery'), ['battery']],
  [6, reason('restore/turbine'), ['wind-turbine', 'hydro-turbine']],
  [5, reason('restore/array'), ['array']],
  [4, reason('restore/utility'), ['service']],
  [4, reason('restore/generator'), ['generator']],
  [3, reason('restore/inverters'), ['grid-tie-inverter', 'inverter-charger']],
  [3, reason('restore/ac-modules'), ['ac-module-branch']],
  [3, reason('restore/ac-batteries'), ['ac-battery']],
  [3, reason('restore/drives'), ['pump-drive']],
  [3, reason('restore/loads'), ['load', 'dc-load']],
  [2, reason('restore/release-wind'), ['wind-turbine']],
  [2, reason('restore/release-hydro'), ['hydro-turbine']],
  [1, reason('restore/control-supply'), ['control-circuit']],
  [1, reason('restore/automatic-starts'), ['generator', 'inverter-charger', 'ac-battery']],
];

const LOCK: IsolationStep = { number: 9, acts: [{ does: reason('isolate/lock'), tags: [] }] };
const PROVE: IsolationStep = { number: 10, acts: [{ does: reason('isolate/prove-dead'), tags: [] }] };

/**
 * The order in which a part of a site is made dead: automatic starts before all else, a turbine while its load is still on, a battery
 * after all that charges it; and the way back, turbines let go after all that loads them, automatic starts last.
 * @param equipments all that hangs together
 * @param minutes to wait where the makers say nothing: the setting `waitMinutes`
 * @returns numbered steps, those that the part has
 * Source: NFPA 70E 120.5 for proving dead; else common practice, no source.
 */
export function isolationOrder(
  equipments: readonly { readonly tag: string; readonly kind: Kind }[],
  minutes: number,
): IsolationOrder {
  const byKind = new Map<Kind, string[]>();
  for (const { tag, kind } of equipments) {
    const tags = byKind.get(kind);
    if (tags) tags.push(tag);
    else byKind.set(kind, [tag]);
  }
  const of = (kinds: readonly Kind[]): readonly string[] => {
    const only = kinds.length === 1 ? kinds[0] : undefined;
    if (only !== undefined) return byKind.get(only) ?? NO_TAGS;
    const found: string[] = [];
    for (const kind of kinds) for (const tag of byKind.get(kind) ?? NO_TAGS) found.push(tag);
    return found;
  };
  const charged = of(STORES_CHARGE);
  const wait = { number: 8, acts: [{ does: reason('isolate/wait', { minutes }), tags: charged }] };
  // A diversion load is left on for a turbine's sake alone.
  const turns = of(['wind-turbine', 'hydro-turbine']).length > 0;
  const dead = turns ? DEAD : WITHOUT_TURBINES;
  return {
    steps: [...stepsOf(dead, of), ...(charged.length > 0 ? [wait] : []), LOCK, PROVE],
    back: stepsOf(BACK, of),
  };
}

function stepsOf(acts: Acts, of: (kinds: readonly Kind[]) => readonly string[]): readonly IsolationStep[] {
  const steps = new Map<number, Act[]>();
  for (const [number, does, kinds] of acts) {
    const tags = of(kinds);
    if (tags.length === 0) continue;
    const act = { does, tags };
    const there = steps.get(number);
    if (there) there.push(act);
    else steps.set(number, [act]);
  }
  return [...steps].map(([number, each]) => ({ number, acts: each }));
}
