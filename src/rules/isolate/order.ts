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

/** One equipment of a part, as the steps ask of it. */
export interface IsolatedEquipment {
  readonly tag: string;
  readonly kind: Kind;
  /** Of a control circuit: the tags of its other ends, where its supply is. */
  readonly suppliedAt: readonly string[];
  /** Of a service: true where a protector stands ahead of its main disconnect. */
  readonly aheadOfMain: boolean;
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
  [2, reason('isolate/stop-wind'), ['wind-turbine']],
  [2, reason('isolate/stop-hydro'), ['hydro-turbine']],
  [2, reason('isolate/keep-diversion'), ['diversion-load']],
  // No switch behind a drive is opened while it runs.
  [3, reason('isolate/drives-off'), ['pump-drive']],
  [3, reason('isolate/loads-off'), ['load', 'dc-load']],
  [3, reason('isolate/inverters-off'), ['grid-tie-inverter', 'inverter-charger']],
  // It is off while the places around it are measured, so it has a step; what has no switch is dead once its sources are open.
  [3, reason('isolate/controllers-off'), ['charge-controller']],
  [3, reason('isolate/ac-modules-off'), ['ac-module-branch']],
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
  [3, reason('restore/controllers'), ['charge-controller']],
  [3, reason('restore/inverters'), ['grid-tie-inverter', 'inverter-charger']],
  [3, reason('restore/ac-modules'), ['ac-module-branch']],
  [3, reason('restore/ac-batteries'), ['ac-battery']],
  [3, reason('restore/loads'), ['load', 'dc-load']],
  [3, reason('restore/drives'), ['pump-drive']],
  [2, reason('restore/release-wind'), ['wind-turbine']],
  [2, reason('restore/release-hydro'), ['hydro-turbine']],
  [1, reason('restore/automatic-starts'), ['generator', 'inverter-charger', 'ac-battery']],
];

const LOCK: IsolationStep = { number: 9, acts: [{ does: reason('isolate/lock'), tags: [] }] };
const PROVE: IsolationStep = { number: 10, acts: [{ does: reason('isolate/prove-dead'), tags: [] }] };

const SUPPLY_OFF = reason('isolate/control-supply');
const SUPPLY_ON = reason('restore/control-supply');
const UTILITY_OFF = reason('isolate/utility-off');
const UTILITY_ON = reason('restore/utility-on');

/**
 * The order in which a part of a site is made dead: automatic starts before all else, a turbine while its load is still on, a battery
 * after all that charges it, a service by the utility where work is ahead of its main disconnect; and the way back, which begins with
 * locks and tags: the utility before the main disconnect, turbines let go after all that loads them, automatic starts last.
 * @param equipments all that hangs together
 * @param minutes to wait where the makers say nothing: the setting `waitMinutes`
 * @returns numbered steps, those that the part has
 * Source: NFPA 70E 120.5 for proving dead; else common practice, no source.
 */
export function isolationOrder(equipments: readonly IsolatedEquipment[], minutes: number): IsolationOrder {
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
  const ahead = equipments.filter(({ aheadOfMain }) => aheadOfMain).map(({ tag }) => tag);
  const supplies = suppliesOf(equipments);
  const steps = stepsOf([
    ...dead.map(([number, does, kinds]): NumberedAct => [number, does, of(kinds)]),
    ...supplies.map(({ at, tags }): NumberedAct => [
      1,
      at.length === 0 ? SUPPLY_OFF : reason('isolate/control-supply-at', { at }),
      tags,
    ]),
    [4, UTILITY_OFF, ahead],
  ]).sort((a, b) => a.number - b.number);
  const back = stepsOf([
    [4, UTILITY_ON, ahead],
    ...supplies.map(({ at, tags }): NumberedAct => [
      1,
      at.length === 0 ? SUPPLY_ON : reason('restore/control-supply-at', { at }),
      tags,
    ]),
    ...BACK.map(([number, does, kinds]): NumberedAct => [number, does, of(kinds)]),
  ]).sort((a, b) => b.number - a.number);
  const stay = back.filter(({ number }) => number <= LAST_KEPT).map(({ number }) => number);
  const unlock = { number: LOCK.number, acts: [{ does: reason('restore/unlock', { stay }), tags: [] }] };
  return {
    steps: [...steps, ...(charged.length > 0 ? [wait] : []), LOCK, PROVE],
    back: [unlock, ...back],
  };
}

/** Up to this step each lock stays on until its step comes on the way back: turbines, automatic starts, supplies of control circuits. */
const LAST_KEPT = 2;

/** Control circuits by where their supply is. */
function suppliesOf(
  equipments: readonly IsolatedEquipment[],
): readonly { readonly at: readonly string[]; readonly tags: readonly string[] }[] {
  const found = new Map<string, { at: readonly string[]; tags: string[] }>();
  for (const { tag, kind, suppliedAt: at } of equipments) {
    if (kind !== 'control-circuit') continue;
    const key = JSON.stringify(at);
    const there = found.get(key);
    if (there) there.tags.push(tag);
    else found.set(key, { at, tags: [tag] });
  }
  return [...found.values()];
}

type NumberedAct = readonly [step: number, does: Reason, tags: readonly string[]];

/** The acts that are done to anything, by the number of their step; within one as they come. */
function stepsOf(acts: readonly NumberedAct[]): IsolationStep[] {
  const steps = new Map<number, Act[]>();
  for (const [number, does, tags] of acts) {
    if (tags.length === 0) continue;
    const act = { does, tags };
    const there = steps.get(number);
    if (there) there.push(act);
    else steps.set(number, [act]);
  }
  return [...steps].map(([number, each]) => ({ number, acts: each }));
}
