import { readFileSync, writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { defaultSettings } from '../../src/model/settings.js';
import { ColumnMapSchema } from '../../src/read/table/column-map.js';
import { jsonSchemas } from '../../src/read/company/schemas.js';

test.each(jsonSchemas().map((s) => [s.path, s.text] as const))(
  '%s is what the code says (npm run docs:schemas writes it)',
  (path, text) => {
    if (process.env['UPDATE_DOCS'] === '1') writeFileSync(path, text);
    expect(readFileSync(path, 'utf8')).toBe(text);
  },
);

test('every key of the default settings is in the schema of the settings', () => {
  const schema = JSON.parse(jsonSchemas()[0]?.text ?? '') as { properties: Record<string, unknown> };
  expect(Object.keys(schema.properties)).toEqual(expect.arrayContaining(Object.keys(defaultSettings())));
});

test('the schema of the column map names every field and refuses others', () => {
  expect(
    ColumnMapSchema.safeParse({
      columns: { Ref: 'tag', Price: null, L: { field: 'run_length', unit: 'ft' } },
    }).success,
  ).toBe(true);
  expect(ColumnMapSchema.safeParse({ columns: { Ref: 'tagg' } }).success).toBe(false);
  expect(ColumnMapSchema.safeParse({ kolumns: {} }).success).toBe(false);
});
