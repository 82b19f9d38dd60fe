import { FIELDS } from '../../model/fields.js';
import type { Connection, ConnectsTo, Field, VoltageCoefficient } from '../../model/list.js';
import { inOurUnit, readQuantity, unitOf, type Dimension, type Unit } from './units.js';
import { readYesNo, wordKey } from './yes-no.js';
import { damagedName, SPREADSHEET } from './damage.js';
import { wrong, type CellContext, type Wrong } from './cell-reading.js';
import { dimensionOf } from './field-dimension.js';
import { quantityProblem } from './quantity-problem.js';
import { readWord } from './word-cells.js';

export interface Typed {
  readonly value: unknown;
  /** The value of bare lengths in m where they are feet. */
  readonly feet?: number | readonly number[];
  /** What the unit of a bare figure may be beside the field's own. */
  readonly unsure?: string;
}

/** No figure of a small power system is larger, in whatever unit. */
const LARGEST = 1e9;

/** m; exact (NIST SP 811, appendix B). */
const FOOT = 0.3048;

const NAMES: { readonly [D in Dimension]: string } = {
  length: 'a length',
  voltage: 'a voltage',
  current: 'a current',
  temperature: 'a temperature',
  power: 'a power',
  'apparent-power': 'an apparent power',
  share: 'a share',
  area: 'an area',
  speed: 'a speed',
  'flash-density': 'a density of flashes',
  days: 'a number of days',
  pieces: 'a number of pieces',
  coefficient: 'a temperature coefficient',
};

/** Fields whose voltage is DC whatever the cell says; a cell that says AC contradicts its field. */
const DC_ONLY = new Set<Field>(['max_dc_voltage', 'voc_stc', 'battery_voltage']);

/** A cell that holds a unit and no number, as in a line of units under the heading that isn't taken for one. */
function unitAlone(field: Field, text: string): Wrong | null {
  const unit = unitOf(text);
  if (unit === null) return null;
  const heading = `${field} (${unit.symbol})`;
  return wrong(
    'it is a unit without a number',
    `Write the unit in the heading, such as ${heading}; not in a row.`,
  );
}

/** A figure in our unit, with the heading's unit or `bare` for a bare number; bare null: it needs a unit. */
function quantity(
  field: Field,
  text: string,
  dimension: Dimension,
  context: CellContext,
  bare: number | null,
): Wrong | { readonly value: number; readonly unit: Unit | null } {
  const reading = readQuantity(text, context.mark);
  if (!reading.ok) return unitAlone(field, text) ?? quantityProblem(reading);
  if (Math.abs(reading.figure) > LARGEST) return wrong('it is larger than any such figure');
  const unit = reading.unit ?? context.unit;
  if (unit !== null) {
    if (unit.dimension !== dimension)
      return wrong(`${unit.symbol} is the unit of ${NAMES[unit.dimension]}, not of ${NAMES[dimension]}`);
    return { value: inOurUnit(reading.figure, unit), unit };
  }
  if (bare === null) return wrong('its unit is not stated');
  return { value: reading.figure * bare, unit: null };
}

/**
 * A bare figure below this is in kA or kV more likely than in A or V: an available fault current below 100 A (common practice, no source), a
 * rated impulse withstand voltage below 330 V (the lowest of IEC 60664-1, Table F.1).
 */
const LEAST_BARE = new Map<Field, { readonly value: number; readonly units: string }>([
  ['fault_current', { value: 100, units: 'A or kA' }],
  ['impulse_withstand', { value: 330, units: 'V or kV' }],
]);

function positive(
  field: Field,
  text: string,
  dimension: Dimension,
  context: CellContext,
  zero: boolean,
): Wrong | Typed {
  const read = quantity(field, text, dimension, context, 1);
  if ('because' in read) return read;
  const least = LEAST_BARE.get(field);
  if (read.value < 0 || (read.value === 0 && !zero))
    return wrong(zero ? 'it is less than zero' : 'it is not more than zero');
  if (read.unit?.current === 'ac' && DC_ONLY.has(field))
    return wrong('it is stated as AC, and the field is a DC voltage');
  const { value, unit } = read;
  if (unit !== null) return { value };
  if (dimension === 'length') return { value, feet: Number((value * FOOT).toPrecision(12)) };
  return least !== undefined && value < least.value ? { value, unsure: least.units } : { value };
}

/** Lengths between semicolons, each in m; what is bare waits for its job's unit. */
function lengths(field: Field, text: string, context: CellContext): Wrong | Typed {
  const metres: number[] = [];
  const feet: number[] = [];
  for (const part of text.split(';')) {
    const read = positive(field, part.trim(), 'length', context, true);
    if ('because' in read) return read;
    const value = Number(read.value);
    metres.push(value);
    feet.push(typeof read.feet === 'number' ? read.feet : value);
  }
  return { value: metres, feet };
}

/** The most that one row may stand for: more is a slip of the hand, and a plan of it could be read by nobody. */
const MOST = new Map<Field, number>([
  ['quantity', 1000],
  ['dc_inputs', 100],
]);

function count(field: Field, text: string, context: CellContext): Wrong | Typed {
  const read = quantity(field, text, 'pieces', { ...context, unit: null }, 1);
  if ('because' in read) return read;
  if (!Number.isSafeInteger(read.value) || read.value < 1)
    return wrong('it is not a whole number of 1 or more');
  const most = MOST.get(field) ?? Number.MAX_SAFE_INTEGER;
  return read.value <= most
    ? { value: read.value }
    : wrong(`it is more than ${most}, the most that one row may state`);
}

const FAHRENHEIT_STEP = 5 / 9;
/** C; by the definition of the scale (SI brochure). */
const ABSOLUTE_ZERO = -273.15;
/** C; the highest temperature of the air on record (WMO archive of extremes, value from memory). */
const HOTTEST_AIR = 56.7;

function temperature(text: string, context: CellContext): Wrong | Typed {
  const reading = readQuantity(text, context.mark);
  if (!reading.ok) return quantityProblem(reading);
  const unit = reading.unit ?? context.unit;
  if (unit !== null && unit.dimension !== 'temperature')
    return wrong(`${unit.symbol} is the unit of ${NAMES[unit.dimension]}, not of a temperature`);
  const fahrenheit = unit === null ? context.temperature === 'F' : unit.symbol === 'F';
  const value = fahrenheit ? (reading.figure - 32) * FAHRENHEIT_STEP : reading.figure;
  if (value > HOTTEST_AIR)
    return wrong('the air is nowhere so hot', 'Write its unit: C, or F if that is meant.');
  return value < ABSOLUTE_ZERO
    ? wrong('it is below absolute zero')
    : { value: Number(value.toPrecision(12)) };
}

function coefficient(field: Field, text: string, context: CellContext): Wrong | Typed {
  const read = quantity(field, text.replace(/\s*(?:of|\()?\s*voc\)?$/i, ''), 'coefficient', context, null);
  if ('because' in read) return read;
  const unit = read.unit?.symbol;
  if (unit !== '%/C' && unit !== 'V/C' && unit !== 'mV/cell/C') return wrong('its unit is not stated');
  if (read.value >= 0) {
    return wrong(
      'it is not negative, and the open-circuit voltage of a module rises as it gets colder',
      'Write it with its minus sign, as the module’s data sheet has it.',
    );
  }
  return { value: { value: read.value, unit } satisfies VoltageCoefficient };
}

function controlVoltage(field: Field, text: string, context: CellContext): Wrong | Typed {
  const read = quantity(field, text, 'voltage', context, 1);
  if ('because' in read) return read;
  if (read.value <= 0) return wrong('it is not more than zero');
  const current = read.unit?.current ?? context.unit?.current ?? null;
  if (current === null) return wrong('it does not say whether it is AC or DC');
  return { value: { volts: read.value, current } };
}

const INPUTS = /^(.+?)\s*\/\s*(\d{1,3}(?:\s*\+\s*\d{1,3})*)$/s;

/**
 * What `connects_to` names; the planner decides whether the whole or a part of it is a tag.
 * @param text the cell, trimmed
 */
function readConnectsTo(text: string): ConnectsTo {
  const whole = readConnection(text);
  const parts = text
    .split(';')
    .map((part) => part.trim())
    .filter((part) => part !== '');
  return { ...whole, each: parts.length < 2 ? [whole] : parts.map(readConnection) };
}

function readConnection(text: string): Connection {
  const match = INPUTS.exec(text);
  const inputs = match === null ? [] : (match[2] ?? '').split('+').map(Number);
  return match === null || inputs.includes(0)
    ? { whole: text, tag: text, inputs: [] }
    : { whole: text, tag: match[1] ?? text, inputs };
}

/** Spellings of a chemistry: the same substance under the trade's other names. */
const CHEMISTRIES = new Map<string, string>([
  ['leadacid', 'lead-acid'],
  ['pb', 'lead-acid'],
  ['agm', 'lead-acid'],
  ['gel', 'lead-acid'],
  ['vrla', 'lead-acid'],
  ['flooded-lead-acid', 'lead-acid'],
  ['lifepo4', 'lfp'],
  ['lithium-iron-phosphate', 'lfp'],
  ['ni-cd', 'nicd'],
  ['nickel-cadmium', 'nicd'],
]);

/**
 * Reads a cell that says something, by the type of its field.
 * @param field of the contract; not a text field
 * @param text the cell, trimmed, at most 120 characters
 * @param context what the column's cells are read with
 */
export function readTyped(field: Field, text: string, context: CellContext): Wrong | Typed {
  const type = FIELDS[field].type;
  if (typeof type !== 'string') return readWord(field, text, type.words);
  switch (type) {
    case 'text':
      return { value: text };
    case 'yesno': {
      const value = readYesNo(text);
      return value === null ? wrong('it is neither yes nor no') : { value };
    }
    case 'count':
      return count(field, text, context);
    case 'number':
      return positive(field, text, dimensionOf(field) ?? 'days', context, true);
    case 'voltage':
    case 'current':
      // A converter may send nothing back.
      return positive(field, text, type, context, field === 'backfeed_a');
    case 'length':
      return positive(field, text, 'length', context, true);
    case 'lengths':
      return lengths(field, text, context);
    case 'kilometres': {
      const read = quantity(field, text, 'length', context, 1000);
      if ('because' in read) return read;
      return read.value < 0
        ? wrong('it is less than zero')
        : { value: Number((read.value / 1000).toPrecision(12)) };
    }
    case 'temperature':
      return temperature(text, context);
    case 'coefficient':
      return coefficient(field, text, context);
    case 'connection': {
      const damage = damagedName(text);
      return damage === null ? { value: readConnectsTo(text) } : wrong(damage, SPREADSHEET);
    }
    case 'control-voltage':
      return controlVoltage(field, text, context);
    case 'chemistry':
      return { value: CHEMISTRIES.get(wordKey(text)) ?? wordKey(text) };
    case 'mounting': {
      const value = /^(roof|ground|recessed|flush|surface)(?:top)?(?:-?mount(?:ed)?)?$/.exec(
        wordKey(text),
      )?.[1];
      return value === undefined
        ? wrong('it is none of roof, ground, recessed, surface')
        : { value: value === 'flush' ? 'recessed' : value };
    }
  }
}
