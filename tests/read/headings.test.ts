import { describe, expect, it, test } from 'vitest';
import { FIELD_NAMES } from '../../src/model/fields.js';
import { ALIASES } from '../../src/read/table/aliases.js';
import { CATALOGUE_VOCABULARY } from '../../src/read/company/catalogue-fields.js';
import { headingIndex, headingKey, readHeading, type MappedHeading } from '../../src/read/table/headings.js';
import { LIST_VOCABULARY } from '../../src/read/table/list-vocabulary.js';

const index = headingIndex(LIST_VOCABULARY, new Map());
const withMap = (map: Record<string, MappedHeading>): typeof index =>
  headingIndex(LIST_VOCABULARY, new Map(Object.entries(map)));

describe('a heading is brought to its field', () => {
  // What the contract says that the alias table knows at least.
  test.each([
    ['Job', 'job'],
    ['Tag', 'tag'],
    ['Type', 'kind'],
    ['Qty', 'quantity'],
    ['Connected to', 'connects_to'],
    ['Cable length', 'run_length'],
    ['Location', 'place'],
    ['Voc', 'voc_stc'],
    ['Modules per string', 'modules_in_series'],
    ['Temp coeff Voc', 'voc_coefficient'],
    ['Max DC voltage', 'max_dc_voltage'],
    ['DC inputs', 'dc_inputs'],
    ['Min temp', 'lowest_temp'],
  ])('%s is %s', (heading, field) => {
    for (const spelt of [
      heading,
      heading.toUpperCase(),
      heading.replaceAll(' ', '_'),
      heading.replaceAll(' ', '-'),
      `${heading}.`,
    ]) {
      expect(readHeading(index, spelt).field, spelt).toBe(field);
    }
  });

  test.each(FIELD_NAMES)('%s is itself', (field) => {
    expect(readHeading(index, field)).toMatchObject({ field, how: 'name' });
    expect(readHeading(index, ` ${field.toUpperCase().replaceAll('_', ' ')} `)).toMatchObject({
      field,
      how: 'name',
    });
  });

  test.each([
    ['run_length (ft)', 'run_length', 'ft'],
    ['Cable length [m]', 'run_length', 'm'],
    ['Cable length, ft', 'run_length', 'ft'],
    ['run_length_m', 'run_length', 'm'],
    ['Voc (V)', 'voc_stc', 'V'],
    ['Voc (STC)', 'voc_stc', undefined],
    ['Temp coeff Voc (%/\u00b0C)', 'voc_coefficient', '%/C'],
    ['fault_current (kA)', 'fault_current', 'kA'],
    ['Min temp (F)', 'lowest_temp', 'F'],
    ['kind (see note)', 'kind', undefined],
  ])('%s is %s in %s', (heading, field, unit) => {
    const reading = readHeading(index, heading);
    expect([reading.field, reading.unit?.symbol, reading.fault]).toEqual([field, unit, null]);
  });

  test.each([
    ['run_length (kV)', 'unit-wrong'],
    ['voc_stc (furlong)', 'unit-unknown'],
    ['Maker / Model', 'two-fields'],
    ['Kind and Place', 'two-fields'],
  ])('%s has a fault: %s', (heading, fault) => {
    expect(readHeading(index, heading).fault).toBe(fault);
  });

  test.each(['', '   '])('"%s" is blank', (heading) => {
    expect(readHeading(index, heading).how).toBe('blank');
  });

  test.each(['__proto__', 'constructor', 'toString', 'Colour', 'Voltage', 'x'.repeat(5_000)])(
    '%.20s is not known',
    (heading) => {
      expect(readHeading(index, heading)).toMatchObject({ field: null, how: 'unknown' });
    },
  );
});

describe('the column map', () => {
  it('goes before names and aliases', () => {
    const map = withMap({
      Type: 'description',
      Feet: { field: 'run_length', unit: 'ft' },
      Model: null,
      'Run (m)': 'run_length',
    });
    expect(readHeading(map, 'type').field).toBe('description');
    expect(readHeading(map, 'Feet')).toMatchObject({ field: 'run_length', unit: { symbol: 'ft' } });
    expect(readHeading(map, 'Model')).toMatchObject({ field: null, how: 'left-out' });
    expect(readHeading(map, 'Run  (m)')).toMatchObject({ field: 'run_length', unit: { symbol: 'm' } });
    expect(readHeading(map, 'Tag').field).toBe('tag');
  });
  it('tells two headings of one text apart', () => {
    const map = withMap({ Voltage: 'voc_stc', 'Voltage #2': 'max_dc_voltage' });
    expect(readHeading(map, 'Voltage', 1).field).toBe('voc_stc');
    expect(readHeading(map, 'Voltage', 2).field).toBe('max_dc_voltage');
  });
  it('finds a unit that does not fit', () => {
    expect(readHeading(withMap({ L: { field: 'run_length', unit: 'A' } }), 'L').fault).toBe('unit-wrong');
  });
});

test('no alias means two fields, and none is another field by name', () => {
  const owner = new Map(FIELD_NAMES.map((f) => [headingKey(f), f]));
  for (const field of FIELD_NAMES) {
    for (const alias of ALIASES[field] ?? []) {
      expect(owner.get(headingKey(alias)) ?? field, alias).toBe(field);
      owner.set(headingKey(alias), field);
    }
  }
  const parts = new Map<string, string>(CATALOGUE_VOCABULARY.fields.map((f) => [headingKey(f), f]));
  for (const field of CATALOGUE_VOCABULARY.fields) {
    for (const alias of CATALOGUE_VOCABULARY.aliases(field)) {
      expect(parts.get(headingKey(alias)) ?? field, alias).toBe(field);
      parts.set(headingKey(alias), field);
    }
  }
});
