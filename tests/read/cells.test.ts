import { saidOf } from '../told.js';
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { FIELD_NAMES, FIELDS } from '../../src/model/fields.js';
import type { Connection, ConnectsTo, Field } from '../../src/model/list.js';
import { BASES } from '../../src/model/editions.js';
import { AC_SYSTEMS, KINDS } from '../../src/model/words.js';
import type { CellContext, CellReading } from '../../src/read/cell/cell-reading.js';
import { readCell } from '../../src/read/cell/cells.js';
import { unitOf } from '../../src/read/cell/units.js';

const context: CellContext = { mark: 'auto', unit: null, temperature: 'C', words: new Map() };
const read = (field: Field, text: string, more: Partial<CellContext> = {}): CellReading =>
  readCell(field, text, { ...context, ...more });

/** The value, `blank`, or `wrong: because`. */
function value(field: Field, text: string, more: Partial<CellContext> = {}): unknown {
  const cell = read(field, text, more);
  if (cell.is === 'value') return cell.value;
  return cell.is === 'blank' ? 'blank' : `wrong: ${saidOf(cell.note).message ?? ''}`;
}

describe('what says nothing is missing, not zero', () => {
  const nothing = ['', ' ', '-', '--', '\u2014', 'n/a', 'N/A', 'none', 'None', 'TBD', 'tbc', '?', 'unknown'];
  test.each(FIELD_NAMES)('%s', (field) => {
    const type = FIELDS[field].type;
    for (const text of nothing) {
      const word = typeof type !== 'string' && type.words.includes(text.toLowerCase());
      expect(value(field, text), text).toBe(word ? 'none' : 'blank');
    }
  });
});

describe('words are read without regard to case, with spaces for hyphens', () => {
  test.each(KINDS)('kind %s', (kind) => {
    for (const text of [
      kind,
      kind.toUpperCase(),
      kind.replaceAll('-', ' '),
      ` ${kind.replaceAll('-', '_')} `,
    ])
      expect(value('kind', text)).toBe(kind);
  });
  test.each(BASES)('basis %s', (basis) => {
    expect(value('basis', basis.toUpperCase().replace('-', ' '))).toBe(basis);
  });
  test.each(AC_SYSTEMS)('AC system %s', (system) => {
    for (const text of [system, `${system} V`, system.toLowerCase(), system.replace('/', ' / ')])
      expect(value('ac_in', text), text).toBe(system);
  });
  test.each<[Field, string, unknown]>([
    ['ac_out', 'Unused', 'unused'],
    ['earthing', 'tt', 'TT'],
    ['overvoltage_category', 'iii', 'III'],
    ['overvoltage_category', 'Cat. III', 'III'],
    ['overvoltage_category', '3', 'III'],
    ['system_grounding', 'None', 'none'],
    ['lightning_protection', 'none', 'none'],
    ['output', 'Three phase', 'three-phase'],
    ['battery_chemistry', 'Lead acid', 'lead-acid'],
    ['battery_chemistry', 'LiFePO4', 'lfp'],
    ['battery_chemistry', 'Ni-Cd', 'nicd'],
    ['battery_chemistry', 'Sodium ion', 'sodium-ion'],
    ['mounting', 'Roof', 'roof'],
    ['mounting', 'ground-mounted', 'ground'],
    ['module_technology', 'Monocrystalline', 'crystalline'],
    ['module_technology', 'CdTe', 'CdTe'],
    ['owner_language', 'ES', 'es'],
    ['existing', 'No', 'blank'],
    ['existing', 'P-75, old', 'P-75, old'],
    ['protector', 'no', 'blank'],
  ])('%s %s', (field, text, expected) => {
    expect(value(field, text)).toBe(expected);
  });
  it('says which word may have been meant', () => {
    const cell = read('kind', 'arrray');
    expect(cell.is === 'wrong' ? saidOf(cell.note).hint : '').toContain('array');
  });
  it("knows the company's own words", () => {
    expect(value('kind', 'PV String', { words: new Map([['pv-string', 'array']]) })).toBe('array');
    expect(value('outdoors', 'draussen', { words: new Map([['draussen', 'yes']]) })).toBe(true);
  });
});

/** A cell of `connects_to` that names one row. */
const alone = (connection: Connection): ConnectsTo => ({ ...connection, each: [connection] });

describe('figures', () => {
  test.each<[Field, string, unknown]>([
    ['quantity', '3', 3],
    ['quantity', '3 pcs', 3],
    ['quantity', '3.0', 3],
    ['voc_stc', '49.5', 49.5],
    ['voc_stc', '49,5 V', 49.5],
    ['max_dc_voltage', '0.6 kV', 600],
    ['fault_current', '10 kA', 10_000],
    ['fault_current', '10', 10],
    ['run_length', '100 ft', [30.48]],
    ['lv_overhead_km', '0.4', 0.4],
    ['lv_overhead_km', '400 m', 0.4],
    ['lowest_temp', '-12', -12],
    ['lowest_temp', '14 F', -10],
    ['rpm', '300 rpm', 300],
    ['flash_density', '2.5', 2.5],
    ['thunderstorm_days', '25 days', 25],
    ['voc_coefficient', '-0.27 %/C', { value: -0.27, unit: '%/C' }],
    ['voc_coefficient', '-0.13 V/C', { value: -0.13, unit: 'V/C' }],
    ['voc_coefficient', '-2.1 mV/cell/C', { value: -2.1, unit: 'mV/cell/C' }],
    ['voc_coefficient', '-0.0027/K', { value: -0.27, unit: '%/C' }],
    ['control_voltage', '24 V dc', { volts: 24, current: 'dc' }],
    ['control_voltage', '24VAC', { volts: 24, current: 'ac' }],
    ['connects_to', 'INV', alone({ whole: 'INV', tag: 'INV', inputs: [] })],
    ['connects_to', 'INV/2', alone({ whole: 'INV/2', tag: 'INV', inputs: [2] })],
    ['connects_to', 'INV / 1 + 2', alone({ whole: 'INV / 1 + 2', tag: 'INV', inputs: [1, 2] })],
    ['connects_to', 'A/B', alone({ whole: 'A/B', tag: 'A/B', inputs: [] })],
    ['connects_to', 'A/B/2', alone({ whole: 'A/B/2', tag: 'A/B', inputs: [2] })],
    ['connects_to', 'A/0', alone({ whole: 'A/0', tag: 'A/0', inputs: [] })],
  ])('%s %s', (field, text, expected) => {
    expect(value(field, text)).toEqual(expected);
  });

  test.each<[Field, string, RegExp]>([
    ['quantity', '0', /whole number/],
    ['quantity', '-1', /whole number/],
    ['quantity', '2.5', /whole number/],
    ['quantity', 'three', /not a number/],
    ['dc_inputs', '0', /whole number/],
    ['quantity', '1001', /more than 1000/],
    ['dc_inputs', '400', /more than 100/],
    ['voc_stc', '9'.repeat(40), /larger than any/],
    ['voc_stc', '5 kW', /unit of a power/],
    ['voc_stc', '49.5 Vac', /stated as AC/],
    ['voc_stc', '0', /not more than zero/],
    ['voc_stc', '-49', /not more than zero/],
    ['run_length', '-5 m', /less than zero/],
    ['run_length', '100-120 ft', /not a unit/],
    ['run_length', 'about 100', /not a number/],
    ['run_length', '10,000', /two ways/],
    ['fault_current', '1.2E+03', /spreadsheet/],
    ['voc_coefficient', '-0.27', /unit is not stated/],
    ['voc_coefficient', '-0.27 %', /unit of a share/],
    ['voc_coefficient', '0.27 %/C', /not negative/],
    ['control_voltage', '24 V', /AC or DC/],
    ['outdoors', 'perhaps', /neither yes nor no/],
    ['isolated', 'x', /neither yes nor no/],
    ['lowest_temp', '-300 C', /absolute zero/],
    ['kind', '=1+1', /no kind/],
    ['basis', 'nec-2026', /none of the words/],
    ['voc_stc', '#REF!', /error of a formula/],
    ['run_length', '####', /too narrow/],
    ['tag', '1-Mar', /made a date/],
    ['connects_to', '2026-03-01', /made a date/],
    ['model', '1.20E+12', /shortened/],
  ])('%s %s is wrong', (field, text, because) => {
    expect(value(field, text)).toMatch(because);
  });

  test.each(['MAR-1', 'MAR-01', 'DEC', 'PV-1', '3/4', 'E+1'])('a tag %s is no date', (tag) => {
    expect(value('tag', tag)).toBe(tag);
  });

  it("takes the heading's unit for a bare number, and the cell's before it", () => {
    const unit = unitOf('kV');
    expect(value('impulse_withstand', '2.5', { unit })).toBe(2500);
    expect(value('impulse_withstand', '2500 V', { unit })).toBe(2500);
    expect(value('lowest_temp', '14', { unit: unitOf('F') })).toBe(-10);
    expect(value('lowest_temp', '14', { temperature: 'F' })).toBe(-10);
    expect(value('lowest_temp', '-10 C', { temperature: 'F' })).toBe(-10);
    expect(value('control_voltage', '24', { unit: unitOf('V dc') })).toEqual({ volts: 24, current: 'dc' });
    expect(value('voc_coefficient', '-0.27', { unit: unitOf('%/K') })).toEqual({ value: -0.27, unit: '%/C' });
  });

  it('keeps both readings of a bare length until the basis of its job is known', () => {
    expect(read('run_length', '100')).toMatchObject({ value: [100], feet: [30.48] });
    expect(read('run_length', '100 m')).toMatchObject({ value: [100], feet: [100] });
    expect(read('run_length', '100', { unit: unitOf('m') })).toMatchObject({ value: [100], feet: [100] });
  });
});

describe('text', () => {
  it('is kept as typed, trimmed', () => {
    expect(value('description', '  =1+1 <script> {{x}}  ')).toBe('=1+1 <script> {{x}}');
  });
  it('of exactly 255 characters may have been cut', () => {
    const cell = read('description', 'x'.repeat(255));
    expect(cell.is === 'value' ? cell.note?.code : '').toBe('cell/cut');
    expect(read('description', 'x'.repeat(254))).toMatchObject({ note: null });
  });
  it('of megabytes is not taken', () => {
    const cell = read('description', 'x'.repeat(5_000_000));
    expect(cell.is === 'wrong' ? saidOf(cell.note).found?.length : 0).toBe(80);
  });
});

it('never throws, and gives every wrong cell what was found and what was expected', () => {
  const texts = fc.oneof(
    fc.string(),
    fc.stringMatching(/^[-+]?\d{0,4}[.,]?\d{0,4} ?(?:ft|m|V|kV|A|C|F|%\/C|mV\/C|pcs|"|')?$/),
    fc.constantFrom('#REF!', '1-Mar', '__proto__', '=1+1', 'yes', '120/240', 'A/1+2'),
  );
  fc.assert(
    fc.property(fc.constantFrom(...FIELD_NAMES), texts, (field, text) => {
      const cell = read(field, text);
      if (cell.is === 'wrong' && cell.note !== null) {
        expect(saidOf(cell.note).expected).not.toBe('');
        expect(saidOf(cell.note).hint).not.toBe('');
        expect(saidOf(cell.note).found?.length).toBeLessThanOrEqual(80 * 8);
      }
      if (cell.is === 'value' && typeof cell.value === 'number')
        expect(Number.isFinite(cell.value)).toBe(true);
    }),
    { numRuns: 5000 },
  );
});
