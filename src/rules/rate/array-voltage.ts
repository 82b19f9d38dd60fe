import {
  coldOpenCircuitVoltage,
  coldVoltageWithoutTemperature,
  NEC_2023_COLDEST,
} from '../../electrical/cold-voltage.js';
import { pvVoltageLimit } from '../pv-limits.js';
import { statedAt, taken, workingOf } from '../../electrical/working.js';
import type { Fact, Origin } from '../../model/fact.js';
import type { PlacedNote } from '../../model/open-item.js';
import type { Given, RatingDecision } from '../../model/rule.js';
import { isNec } from '../../model/editions.js';
import { bare, celsius, volts } from '../../model/quantity.js';
import { reason, type Reason } from '../../model/reason.js';
import { subject, type Working } from '../../model/step.js';
import { about } from '../../model/message.js';
import { FACT_MESSAGES, RATE_MESSAGES } from '../../model/messages/rate.js';
import type { AnyRatingRule, ArrayFacts, ConverterFacts, RatingFacts } from '../rating-facts.js';
import { sources, type Cited } from '../sources.js';

const FACTS = ['basis', 'occupancy', 'arrays', 'converters', 'lowestTemp', 'lowestTempUnreadable'] as const;
type Facts = Given<RatingFacts, typeof FACTS>;

const NO_ARRAY = reason('array-voltage/no-array');
const NOT_KNOWN = reason('array-voltage/not-known');
const OPTIMIZERS = reason('needed/optimizer-voltage');
const UNKNOWN = reason('needed/array-voltage');
const BELOW_TABLE = reason('needed/coefficient-below-table', { coldest: celsius(NEC_2023_COLDEST) });
const COUNTED_BY_CELL = reason('needed/cells-of-coefficient');

const CITED_UNDER_NEC: readonly Cited[] = [
  'cold-voltage',
  'cold-voltage-table',
  'maximum-pv-voltage',
  'maker-instructions',
  'array-ground-fault',
];

export const arrayVoltage = {
  id: 'rate/array-voltage',
  title: 'Highest voltage of an array to ground',
  why: 'Solar modules give their highest voltage on the coldest morning, before anything draws current.',
  sources: sources({
    'nec-2017': CITED_UNDER_NEC,
    'nec-2020': CITED_UNDER_NEC,
    'nec-2023': CITED_UNDER_NEC,
    iec: ['cold-voltage'],
  }),
  answers: 'rate/mcov',
  facts: FACTS,
  decide(f: Facts): RatingDecision {
    if (f.arrays.length === 0) return { outcome: 'outside', because: NO_ARRAY };
    const notes: PlacedNote[] = [];
    let best: Working | undefined;
    let entry = 0;
    let unknown = false;
    const bounded: string[] = [];
    for (const array of f.arrays) {
      const before = notes.length;
      const { rated, reached, entry: at = rated?.value ?? 0 } = voltageOf(f, array, notes);
      entry = Math.max(entry, at);
      // Whatever is asked for here, or by the cell's own item, leaves a figure that stands in, not a known one.
      if (rated && (notes.length > before || reached === undefined)) bounded.push(array.tag);
      if (reached !== undefined) checkLimits(f, array, reached, notes);
      if (!rated) unknown = true;
      else if (!best || rated.value > best.value) best = rated;
    }
    if (!best || unknown) return { outcome: 'unknown', because: NOT_KNOWN, notes };
    const bound = bounded.length > 0 ? { bound: reason('array-voltage/stand-in', { arrays: bounded }) } : {};
    const lower = entry < best.value ? { withstandEntry: entry } : {};
    return { outcome: 'asks', value: best.value, working: best, notes, ...bound, ...lower };
  },
} satisfies AnyRatingRule;

interface Voltage {
  /** What the array is rated by; undefined: nothing is known. */
  readonly rated: Working | undefined;
  /** V; what the array surely reaches. A bound isn't: a converter that bears 1000 V says nothing about the string. */
  readonly reached: number | undefined;
  /** V; the lower of the draft and the converter's maximum, where the draft takes the larger: what lasts is between the two. */
  readonly entry?: number;
}

/** The most that a converter on this port bears: for the draft, since nothing keeps a design from breaking it. */
interface Limit {
  readonly tag: string;
  readonly working: Working;
}

function limitOf(converters: readonly ConverterFacts[]): Limit | undefined {
  let most: Limit | undefined;
  for (const { tag, maxDcVoltage: fact } of converters) {
    if (!fact || (most && fact.value <= most.working.value)) continue;
    const standsIn = subject('array-voltage/stand-in', { converter: tag });
    most = { tag, working: workingOf([], taken('Umax', standsIn, fact.value, 'V', 'stated', fact.origin)) };
  }
  return most;
}

function voltageOf(f: Facts, array: ArrayFacts, notes: PlacedNote[]): Voltage {
  const stated = array.openCircuitVoltage;
  if (stated) {
    const string = subject('array-voltage/stated', { array: array.tag });
    const rated = workingOf([], taken('Voc', string, stated.value, 'V', 'stated', stated.origin));
    return { rated, reached: stated.value };
  }
  const limit = limitOf(f.converters);
  if (array.optimizers) {
    if (!array.unreadable.has('open_circuit_voltage')) {
      const p = { tag: array.tag, why: OPTIMIZERS };
      notes.push(about(FACT_MESSAGES.open_circuit_voltage, p, array.tag, 'open_circuit_voltage'));
    }
    return { rated: limit?.working, reached: undefined };
  }
  const voc = array.vocStc;
  const modules = array.modulesInSeries;
  if (voc && modules) return fromModules(f, array, { voc, modules }, limit, notes);
  return { rated: ofUnknown(array, limit, notes), reached: undefined };
}

/** Voc or modules unknown: asked for. What the converter bears stands in for the draft; a design may break it. */
function ofUnknown(array: ArrayFacts, limit: Limit | undefined, notes: PlacedNote[]): Working | undefined {
  const missing: ('voc_stc' | 'modules_in_series')[] = [];
  if (!array.vocStc) missing.push('voc_stc');
  if (!array.modulesInSeries) missing.push('modules_in_series');
  const why = limit
    ? reason('needed/array-rated-by-converter', {
        converter: limit.tag,
        bears: volts(limit.working.value),
      })
    : UNKNOWN;
  for (const field of missing) {
    if (array.unreadable.has(field)) continue;
    notes.push(about(FACT_MESSAGES[field], { tag: array.tag, why }, array.tag, field));
  }
  return limit?.working;
}

function fromModules(
  f: Facts,
  array: ArrayFacts,
  string: { readonly voc: Fact<number>; readonly modules: Fact<number> },
  limit: Limit | undefined,
  notes: PlacedNote[],
): Voltage {
  const input = { vocStc: string.voc.value, modulesInSeries: string.modules.value };
  // Where the factor for cold isn't known, the string reaches its voltage at 25 C all the same.
  const reached = input.vocStc * input.modulesInSeries;
  const places = { Voc: string.voc.origin, n: string.modules.origin };
  const technology = array.technology?.value.trim().toLowerCase() ?? 'crystalline';
  const isCrystalline = technology.includes('crystalline') && !technology.includes('non-crystalline');
  const needsCoefficient = !array.coefficient && !isCrystalline;
  const ask = (field: 'voc_coefficient' | 'cells', why: Reason): void => {
    if (array.unreadable.has(field)) return;
    notes.push(about(FACT_MESSAGES[field], { tag: array.tag, why }, array.tag, field));
  };
  if (needsCoefficient && (f.lowestTemp || isNec(f.basis)))
    ask(
      'voc_coefficient',
      reason('needed/coefficient-without-table', { technology: technology.slice(0, 40) }),
    );
  if (!f.lowestTemp) {
    const assumed = coldVoltageWithoutTemperature({ ...input, basis: f.basis });
    const working = statedAt(assumed.working, places);
    if (!isNec(f.basis)) {
      const p = { factor: bare(assumed.factor) };
      notes.push(about(RATE_MESSAGES.coldFactorAssumed, p, '', 'lowest_temp'));
      return { rated: working, reached: working.value };
    }
    if (!f.lowestTempUnreadable) {
      const why = reason('needed/lowest-temperature', { array: array.tag });
      notes.push(about(FACT_MESSAGES.lowest_temp, { tag: '', why }, '', 'lowest_temp'));
    }
    return {
      rated: larger(working, limit),
      reached,
      entry: Math.min(working.value, limit?.working.value ?? Infinity),
    };
  }
  if (needsCoefficient) return { rated: limit?.working, reached };
  const { coefficient, cells } = array;
  const cold = coldOpenCircuitVoltage({
    vocStc: input.vocStc,
    modulesInSeries: input.modulesInSeries,
    basis: f.basis,
    lowestTemp: f.lowestTemp.value,
    coefficient: coefficient?.value,
    cells: cells?.value,
  });
  if (cold.ok) {
    const change: Origin[] = [];
    if (coefficient) change.push(coefficient.origin);
    if (cells && coefficient?.value.unit === 'mV/cell/C') change.push(cells.origin);
    const slope = reason('source/places', { places: change });
    const all = { Voc: places.Voc, n: places.n, T: f.lowestTemp.origin, 'dV/dT': slope };
    return { rated: statedAt(cold.working, all), reached: cold.value };
  }
  // The safe side of the NEC's draft: the coldest row of the table.
  const draft = coldVoltageWithoutTemperature({ ...input, basis: 'nec-2023' });
  const rated = larger(statedAt(draft.working, places), limit);
  const entry = Math.min(draft.value, limit?.working.value ?? Infinity);
  switch (cold.reason) {
    case 'no-table-row':
      ask('voc_coefficient', BELOW_TABLE);
      return { rated, reached: draft.value, entry };
    case 'cells-missing':
      ask('cells', COUNTED_BY_CELL);
      return { rated, reached, entry };
    case 'coefficient-not-negative': {
      const p = { tag: array.tag, found: coefficient?.text ?? '' };
      notes.push(about(RATE_MESSAGES.coefficientNotNegative, p, array.tag, 'voc_coefficient'));
      return { rated, reached, entry };
    }
  }
}

function larger(working: Working, limit: Limit | undefined): Working {
  return limit && limit.working.value > working.value ? limit.working : working;
}

/** Voc(cold) above the converter's maximum, or above the limit of 690.7: a conflict each. `reached`: V. */
function checkLimits(f: Facts, array: ArrayFacts, reached: number, notes: PlacedNote[]): void {
  const field = array.openCircuitVoltage ? 'open_circuit_voltage' : 'modules_in_series';
  const found = { tag: array.tag, reached: volts(reached) };
  for (const converter of f.converters) {
    const most = converter.maxDcVoltage?.value;
    if (most === undefined || reached <= most) continue;
    const p = { ...found, converter: converter.tag, most: volts(most) };
    notes.push(about(RATE_MESSAGES.aboveConverter, p, array.tag, field));
  }
  if (!isNec(f.basis)) return;
  const most = pvVoltageLimit({
    occupancy: array.atDwelling ? 'dwelling' : f.occupancy,
    offBuildings: array.offBuildings,
  });
  if (reached > most)
    notes.push(about(RATE_MESSAGES.aboveLimit, { ...found, most: volts(most) }, array.tag, field));
}
