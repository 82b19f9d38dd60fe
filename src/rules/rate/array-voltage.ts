import { coldOpenCircuitVoltage, coldVoltageWithoutTemperature } from '../../electrical/cold-voltage.js';
import { pvVoltageLimit } from '../../electrical/pv-limits.js';
import { statedAt, taken, workingOf } from '../../electrical/working.js';
import type { Working } from '../../model/fact.js';
import type { PlacedNote } from '../../model/message.js';
import type { Given, RatingDecision } from '../../model/rule.js';
import { isNec } from '../../model/words.js';
import { figure } from '../../text/figures.js';
import { about } from '../../text/message-kit.js';
import { FACT_MESSAGES, RATE_MESSAGES } from '../../text/messages/rate.js';
import { cited } from '../../text/origin.js';
import type { AnyRatingRule, ArrayFacts, ConverterFacts, RatingFacts } from '../rating-facts.js';
import { ALL, sources } from '../sources.js';

const FACTS = ['basis', 'occupancy', 'arrays', 'converters', 'lowestTemp', 'lowestTempUnreadable'] as const;
type Facts = Given<RatingFacts, typeof FACTS>;

export const arrayVoltage = {
  id: 'rate/array-voltage',
  title: 'Highest voltage of an array to ground',
  why: 'Solar modules give their highest voltage on the coldest morning, before anything draws current.',
  sources: sources(
    {
      of: ALL,
      cite: [
        'cold-voltage',
        'cold-voltage-table',
        'maximum-pv-voltage',
        'maker-instructions',
        'array-ground-fault',
      ],
    },
    { of: ['iec'], cite: ['cold-voltage'] },
  ),
  facts: FACTS,
  decide(f: Facts): RatingDecision {
    if (f.arrays.length === 0)
      return { outcome: 'outside', because: 'no array on the list is behind this port' };
    const notes: PlacedNote[] = [];
    let best: Working | undefined;
    let unknown = false;
    for (const array of f.arrays) {
      const found = voltageOf(f, array, notes);
      if (!found) unknown = true;
      else {
        checkLimits(f, array, found, notes);
        if (!best || found.value > best.value) best = found;
      }
    }
    if (!best || unknown) {
      return { outcome: 'unknown', because: 'the open-circuit voltage of an array isn’t known', notes };
    }
    return { outcome: 'asks', value: best.value, working: best, notes };
  },
} satisfies AnyRatingRule;

/** What the converter bears bounds what may stand on its input. */
function bound(converters: readonly ConverterFacts[]): ConverterFacts | undefined {
  let most: ConverterFacts | undefined;
  for (const one of converters) {
    if (one.maxDcVoltage && one.maxDcVoltage.value > (most?.maxDcVoltage?.value ?? 0)) most = one;
  }
  return most;
}

function boundWorking(converter: ConverterFacts): Working | undefined {
  const fact = converter.maxDcVoltage;
  if (!fact) return undefined;
  const says = `Highest DC voltage that ${converter.tag} bears: the bound for what isn’t stated`;
  return workingOf([], taken('Umax', says, fact.value, 'V', 'stated', cited(fact.origin)));
}

function voltageOf(f: Facts, array: ArrayFacts, notes: PlacedNote[]): Working | undefined {
  const stated = array.openCircuitVoltage;
  if (stated) {
    return workingOf(
      [],
      taken(
        'Voc',
        `Open-circuit voltage of the string of ${array.tag}`,
        stated.value,
        'V',
        'stated',
        cited(stated.origin),
      ),
    );
  }
  const limit = bound(f.converters);
  if (array.optimizers) {
    if (!array.unreadable.has('open_circuit_voltage')) {
      const p = { tag: array.tag, why: 'the voltage of a string behind DC optimizers is set by them' };
      notes.push(about(FACT_MESSAGES.open_circuit_voltage, p, array.tag, 'open_circuit_voltage'));
    }
    return limit && boundWorking(limit);
  }
  const voc = array.vocStc;
  const modules = array.modulesInSeries;
  if (!voc || !modules) return fromBound(array, limit, notes);
  return fromModules(f, array, { voc: voc.value, modules: modules.value }, limit, notes);
}

/** Voc or modules unknown: what the converter bears is the bound, and the rest is asked for. */
function fromBound(
  array: ArrayFacts,
  limit: ConverterFacts | undefined,
  notes: PlacedNote[],
): Working | undefined {
  const missing = (['voc_stc', 'modules_in_series'] as const).filter((field) =>
    field === 'voc_stc' ? !array.vocStc : !array.modulesInSeries,
  );
  if (limit?.maxDcVoltage) {
    const p = {
      tag: array.tag,
      missing: missing.join(' and '),
      converter: limit.tag,
      volts: figure(limit.maxDcVoltage.value, 'V'),
    };
    notes.push(about(RATE_MESSAGES.boundByConverter, p, array.tag, missing[0] ?? 'voc_stc'));
    return boundWorking(limit);
  }
  for (const field of missing) {
    if (array.unreadable.has(field)) continue;
    const p = {
      tag: array.tag,
      why: 'its open-circuit voltage can’t be worked out, and no converter bounds it',
    };
    notes.push(about(FACT_MESSAGES[field], p, array.tag, field));
  }
  return undefined;
}

function fromModules(
  f: Facts,
  array: ArrayFacts,
  string: { readonly voc: number; readonly modules: number },
  limit: ConverterFacts | undefined,
  notes: PlacedNote[],
): Working | undefined {
  const input = { vocStc: string.voc, modulesInSeries: string.modules };
  const technology = array.technology?.value.trim().toLowerCase() ?? 'crystalline';
  const places = {
    Voc: array.vocStc ? cited(array.vocStc.origin) : '',
    n: array.modulesInSeries ? cited(array.modulesInSeries.origin) : '',
    T: f.lowestTemp ? cited(f.lowestTemp.origin) : '',
    β: array.coefficient ? cited(array.coefficient.origin) : '',
    cells: array.cells ? cited(array.cells.origin) : '',
  };
  if (!f.lowestTemp) {
    const assumed = coldVoltageWithoutTemperature({ ...input, basis: f.basis });
    const working = statedAt(assumed.working, places);
    if (!isNec(f.basis)) {
      notes.push(
        about(RATE_MESSAGES.coldFactorAssumed, { factor: figure(assumed.factor, '') }, '', 'lowest_temp'),
      );
      return working;
    }
    if (!f.lowestTempUnreadable) {
      const p = {
        tag: '',
        why: `the open-circuit voltage of ${array.tag} depends on it; the draft takes the safe side`,
      };
      notes.push(about(FACT_MESSAGES.lowest_temp, p, '', 'lowest_temp'));
    }
    return larger(working, limit);
  }
  const isCrystalline = technology.includes('crystalline') && !technology.includes('non-crystalline');
  if (!array.coefficient && !isCrystalline) {
    if (!array.unreadable.has('voc_coefficient')) {
      const p = { tag: array.tag, why: `no table covers ${technology.slice(0, 40)} modules` };
      notes.push(about(FACT_MESSAGES.voc_coefficient, p, array.tag, 'voc_coefficient'));
    }
    return limit && boundWorking(limit);
  }
  const cold = coldOpenCircuitVoltage({
    ...input,
    lowestTemp: f.lowestTemp.value,
    coefficient: array.coefficient?.value,
    cells: array.cells?.value,
  });
  if (cold.ok) return statedAt(cold.working, places);
  if (cold.reason === 'cells-missing' && !array.unreadable.has('cells')) {
    notes.push(
      about(
        FACT_MESSAGES.cells,
        { tag: array.tag, why: 'the coefficient is given for one cell' },
        array.tag,
        'cells',
      ),
    );
  } else if (cold.reason === 'no-table-row' && !array.unreadable.has('voc_coefficient')) {
    const p = { tag: array.tag, why: 'the table ends at -40 C, and the site is colder' };
    notes.push(about(FACT_MESSAGES.voc_coefficient, p, array.tag, 'voc_coefficient'));
  } else if (cold.reason === 'coefficient-not-negative') {
    const p = { tag: array.tag, found: array.coefficient?.text ?? '' };
    notes.push(about(RATE_MESSAGES.coefficientNotNegative, p, array.tag, 'voc_coefficient'));
  }
  // The safe side of the NEC's draft: the coldest row of the table is the least that this string can reach.
  return larger(
    statedAt(coldVoltageWithoutTemperature({ ...input, basis: 'nec-2023' }).working, places),
    limit,
  );
}

function larger(working: Working, limit: ConverterFacts | undefined): Working {
  const other = limit && boundWorking(limit);
  return other && other.value > working.value ? other : working;
}

/** Voc(cold) above the converter's maximum, or above the limit of 690.7: a conflict each. */
function checkLimits(f: Facts, array: ArrayFacts, found: Working, notes: PlacedNote[]): void {
  for (const converter of f.converters) {
    const most = converter.maxDcVoltage?.value;
    if (most !== undefined && found.value > most) {
      const p = {
        tag: array.tag,
        volts: figure(found.value, 'V'),
        converter: converter.tag,
        most: figure(most, 'V'),
      };
      notes.push(
        about(
          RATE_MESSAGES.aboveConverter,
          p,
          array.tag,
          array.openCircuitVoltage ? 'open_circuit_voltage' : 'modules_in_series',
        ),
      );
    }
  }
  if (!isNec(f.basis)) return;
  const most = pvVoltageLimit({ occupancy: f.occupancy, groundMounted: array.groundMounted });
  if (found.value > most) {
    const p = { tag: array.tag, volts: figure(found.value, 'V'), most: figure(most, 'V') };
    notes.push(
      about(
        RATE_MESSAGES.aboveLimit,
        p,
        array.tag,
        array.openCircuitVoltage ? 'open_circuit_voltage' : 'modules_in_series',
      ),
    );
  }
}
