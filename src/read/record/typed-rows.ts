import { OUTCOMES, type Outcome } from '../../model/site-form-headings.js';
import { RECORD_CHECKS, type RecordCheck, type RecordDeviation } from '../../model/record.js';
import type { OpenItem } from '../../model/open-item.js';
import { SEEN, type FormRow, type HousingRow, type Seen } from '../../model/site-form-rows.js';
import { readDay, readTime } from './days.js';
import { readFigure, type Read } from './figures.js';
import { rowReader } from './row-reader.js';

/** A row as it is meant, and what of it isn't understood. */
export interface Typed<T> {
  readonly row: T;
  readonly items: readonly OpenItem[];
}

const wordOf = (text: string): string =>
  text
    .trim()
    .toLowerCase()
    .replace(/[\s_-]+/g, ' ');

function readOutcome(text: string): Read<Outcome> {
  const word = wordOf(text);
  const value = OUTCOMES.find((outcome) => outcome === word);
  return value === undefined ? { fault: 'outcome' } : { value };
}

/** Cartridges of one housing: serials and date codes side by side; one date code is of all of them. */
function serialsOf(serials: readonly string[], codes: readonly string[]): HousingRow['serials'] {
  const all = serials.length > 0 ? serials : codes.length > 0 ? [''] : [];
  return all.map((serial, i) => ({
    serial: wordOf(serial) === 'none' ? 'none' : serial,
    dateCode: (codes.length === 1 ? codes[0] : codes[i]) ?? '',
  }));
}

/**
 * A row of `site-record.csv`.
 * @param bareLength unit of a bare length, `ft` or `m`
 */
export function housingRow(form: FormRow, bareLength: 'ft' | 'm'): Typed<HousingRow> {
  const read = rowReader(form, form.cells.protector ?? '');
  const row: HousingRow = {
    outcome: read.by('outcome', readOutcome) ?? null,
    partFitted: read.text('part_fitted'),
    serials: serialsOf(read.texts('serial'), read.texts('date_code')),
    serialRemoved: read.texts('serial_removed'),
    place: read.text('place'),
    leadLength: read.figure('lead_length', 'length', bareLength),
    leadGauge: read.text('lead_gauge'),
    device: {
      fitted: read.text('device_fitted'),
      volts: read.figure('device_volts', 'voltage', 'V'),
      interrupting: read.figure('device_interrupting_ka', 'current', 'kA'),
      position: read.text('device_position'),
    },
    torque: read.text('torque'),
    instrument: read.text('instrument'),
    groundPoint: read.text('ground_point'),
    faultCurrent: read.figure('fault_current', 'current', 'A'),
    photos: read.texts('photo'),
    change: read.text('change'),
    reason: read.text('reason'),
    date: read.by('date', readDay) ?? '',
    time: read.by('time', readTime) ?? '',
    name: read.text('name'),
    licence: read.text('licence'),
  };
  return { row, items: read.items };
}

/** What a reading says. */
export interface FoundReading {
  /** V with its sign as text, or how a light was seen; `` not read. */
  readonly found: string;
  readonly whyNot: string;
  readonly date: string;
  readonly name: string;
}

/** Words that a crew has for how a light looks, in its languages. */
const LOOKS: Readonly<Record<string, Seen>> = {
  on: 'lit',
  off: 'dark',
  flickering: 'flickers',
  flicker: 'flickers',
  'used up': 'used',
  encendida: 'lit',
  encendido: 'lit',
  apagada: 'dark',
  apagado: 'dark',
  parpadea: 'flickers',
  bien: 'good',
  agotado: 'used',
};

/** The words of a part's flag, as its catalogue has them. */
export interface FlagWords {
  readonly good: string;
  readonly used: string;
}

function readLook(text: string, flag: FlagWords): Read<Seen> {
  const word = wordOf(text);
  if (flag.good !== '' && word === wordOf(flag.good)) return { value: 'good' };
  if (flag.used !== '' && word === wordOf(flag.used)) return { value: 'used' };
  const value = SEEN.find((look) => look === word) ?? LOOKS[word];
  return value === undefined ? { fault: 'look' } : { value };
}

/**
 * A row of `site-readings.csv`.
 * @param kind what is read
 * @param flag words of the part's flag
 */
export function readingRow(
  form: FormRow,
  kind: 'volts' | 'light' | 'flag',
  flag: FlagWords,
): Typed<FoundReading> {
  const read = rowReader(form, form.cells.protector ?? '');
  const found =
    kind === 'volts'
      ? read.by('found', (text) => readFigure(text, 'voltage', { mark: form.mark, bare: 'V' }))
      : read.by('found', (text) => readLook(text, flag));
  const row = {
    found: found === undefined ? '' : String(found),
    whyNot: read.text('why_not'),
    date: read.by('date', readDay) ?? '',
    name: read.text('name'),
  };
  return { row, items: read.items };
}

/** What a row says of an assumption. */
export interface FoundFact {
  readonly found: string;
  readonly by: string;
  readonly date: string;
  readonly photos: readonly string[];
}

/** A row of `site-facts.csv`. */
export function factRow(form: FormRow): Typed<FoundFact> {
  const read = rowReader(form, form.cells.tag ?? '');
  const row = {
    found: read.text('found'),
    by: read.text('by'),
    date: read.by('date', readDay) ?? '',
    photos: read.texts('photo'),
  };
  return { row, items: read.items };
}

/** What else names a check: the column that it is about. */
const CHECK_COLUMNS: Readonly<Record<string, RecordCheck>> = {
  part_fitted: 'part',
  lead_length: 'lead',
  'fault current': 'fault_current',
  date_code: 'serial',
  found: 'volts',
};

function readCheck(text: string): Read<RecordCheck> {
  const word = text
    .trim()
    .toLowerCase()
    .replace(/[\s-]+/g, '_');
  const value = RECORD_CHECKS.find((check) => check === word) ?? CHECK_COLUMNS[word];
  return value === undefined ? { fault: 'check' } : { value };
}

/** A row of `deviations.csv`; undefined where it doesn't say which check is meant. */
export function deviationRow(form: FormRow): Typed<RecordDeviation | undefined> {
  const read = rowReader(form, form.cells.protector ?? '');
  const check = read.by('check', readCheck);
  const row = {
    protector: read.text('protector'),
    by: read.text('by'),
    date: read.by('date', readDay) ?? '',
    reason: read.text('reason'),
    paper: read.text('paper'),
  };
  return { row: check === undefined ? undefined : { ...row, check }, items: read.items };
}
